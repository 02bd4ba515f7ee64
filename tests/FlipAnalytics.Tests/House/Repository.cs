namespace FlipAnalytics.Tests.House;

/// <summary>The files of this repository, as the house rules see them.</summary>
internal static class Repository
{
    private static readonly string[] MadeByBuilding = ["bin", "obj", "artifacts", "TestResults", "BenchmarkDotNet.Artifacts"];

    public static DirectoryInfo Root { get; } = FindRoot();

    public static string PathOf(params string[] parts) => Path.Combine([Root.FullName, .. parts]);

    public static string Read(params string[] parts) => File.ReadAllText(PathOf(parts));

    public static bool IsMadeByBuilding(string name) => MadeByBuilding.Contains(name, StringComparer.Ordinal);

    /// <summary>The C# files below a folder, without what building makes.</summary>
    public static IEnumerable<FileInfo> Sources(params string[] folder)
    {
        var pending = new Stack<DirectoryInfo>([new(PathOf(folder))]);
        while (pending.TryPop(out DirectoryInfo? next))
        {
            foreach (FileInfo file in next.EnumerateFiles("*.cs"))
                yield return file;
            foreach (DirectoryInfo child in next.EnumerateDirectories().Where(child => !IsMadeByBuilding(child.Name)))
                pending.Push(child);
        }
    }

    /// <summary>A file's path below the root, with forward slashes.</summary>
    public static string Relative(FileInfo file) =>
        Path.GetRelativePath(Root.FullName, file.FullName).Replace('\\', '/');

    private static DirectoryInfo FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "FlipAnalytics.sln")))
                return folder;
        }

        throw new InvalidOperationException($"No FlipAnalytics.sln in or above {AppContext.BaseDirectory}.");
    }
}
