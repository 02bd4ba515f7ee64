using System.Runtime.CompilerServices;

namespace FlipAnalytics.Benchmarks;

/// <summary>Where things lie.</summary>
internal static class Places
{
    /// <summary>A script in R beside this source file.</summary>
    public static string Script(string name) => Path.Combine(HereIs(), "R", name);

    /// <summary>The project of the command.</summary>
    public static string Command => Path.GetFullPath(Path.Combine(HereIs(), "..", "..", "src", "FlipAnalytics.Cli"));

    /// <summary>A folder for generated files, kept between runs.</summary>
    public static string Work(string name) =>
        Directory.CreateDirectory(Path.Combine(Path.GetTempPath(), "flip-benchmarks", name)).FullName;

    private static string HereIs([CallerFilePath] string path = "") => Path.GetDirectoryName(path)!;
}
