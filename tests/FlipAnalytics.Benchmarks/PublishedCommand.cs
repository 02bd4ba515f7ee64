using System.Runtime.InteropServices;

namespace FlipAnalytics.Benchmarks;

/// <summary>The command <c>flip</c> as it can be published.</summary>
internal static class PublishedCommand
{
    /// <summary>Publishes a form of it into a folder of its own and says where the program is.</summary>
    public static string Make(string work, string form, params string[] how)
    {
        string target = Path.Combine(work, form);
        ChildProcess.Run("dotnet",
        [
            "publish", Places.Command, "-c", "Release", "-o", target, "--artifacts-path", Path.Combine(work, "artifacts", form),
            "--nologo", "-v", "quiet", "-nodeReuse:false", "-p:TreatWarningsAsErrors=false", .. how,
        ]);
        return Path.Combine(target, "flip");
    }

    /// <summary>Compiled to the machine's own code, with no runtime to start.</summary>
    public static string Native(string work) =>
        Make(work, "native", "-r", RuntimeInformation.RuntimeIdentifier, "-p:PublishAot=true");
}
