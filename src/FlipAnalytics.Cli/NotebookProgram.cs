using System.ComponentModel;
using System.Diagnostics;

namespace FlipAnalytics.Cli;

/// <summary>
/// The program that runs notebooks, looked for beside the command, then in the sources that the command was built in. The
/// command does not refer to it: its engine is large, and no other verb should wait until it is fetched and built.
/// </summary>
internal static class NotebookProgram
{
    private const string Name = "FlipAnalytics.Notebooks";

    /// <summary>Runs it with these arguments; what it prints is printed, what it ends with is returned.</summary>
    public static int Run(params string[] arguments)
    {
        string here = AppContext.BaseDirectory;
        string[] start = File.Exists(Path.Combine(here, Name + ".dll")) ? [Path.Combine(here, Name + ".dll")]
            : FromSources(here)
            ?? throw new CommandProblemException(HowToGet(here));
        return Start([.. start, .. arguments]);
    }

    // A build of the command stands in src/FlipAnalytics.Cli/bin/CONFIGURATION/FRAMEWORK, with the other project beside it.
    private static string[]? FromSources(string here)
    {
        DirectoryInfo? configuration = new DirectoryInfo(Path.TrimEndingDirectorySeparator(here)).Parent;
        if (configuration is not { Parent: { Name: "bin", Parent.Parent: { } sources } })
            return null;
        string project = Path.Combine(sources.FullName, Name, Name + ".csproj");
        if (!File.Exists(project))
            return null;
        if (!Directory.Exists(Path.Combine(sources.FullName, Name, "bin", configuration.Name)))
        {
            Console.Error.WriteLine(
                "The first notebook needs the notebook program, which is now fetched and built: this takes a minute or two.");
        }

        return ["run", "--project", project, "--configuration", configuration.Name, "--"];
    }

    private static string HowToGet(string here) =>
        $"Notebooks need a program of their own beside flip: run  dotnet publish src/{Name} -c Release -o \"{Path.TrimEndingDirectorySeparator(here)}\"  in the folder of FlipAnalytics, and flip notebook works from then on.";

    private static int Start(string[] arguments)
    {
        try
        {
            using Process process = Process.Start(new ProcessStartInfo("dotnet", arguments))!;
            process.WaitForExit();
            return process.ExitCode;
        }
        catch (Win32Exception)
        {
            throw new CommandProblemException("Notebooks need .NET, and dotnet cannot be started: install the .NET SDK 10.");
        }
    }
}
