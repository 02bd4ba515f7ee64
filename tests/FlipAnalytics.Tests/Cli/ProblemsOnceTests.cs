using System.Diagnostics;

namespace FlipAnalytics.Tests;

/// <summary>A problem is read once where output and errors share a terminal, and is on standard error where they do not.</summary>
public sealed class ProblemsOnceTests
{
    private const string Pieces = "id,type,bought_price,width\nP1,desk,10,wide\n";

    [Fact]
    public void Piped_errors_are_on_standard_error()
    {
        using LogFolder log = new();
        log.With("pieces.csv", Pieces);

        FlipRun run = Flip.Run("check", "--log", log.Path);

        Assert.Equal("pieces.csv line 2, width", Assert.Single(run.ErrorLines)[..24]);
        Assert.Equal(1, run.ExitCode);
    }

    [Fact]
    public void On_a_terminal_a_problem_is_printed_once()
    {
        if (!File.Exists("/usr/bin/script"))
            return;
        using LogFolder log = new();
        log.With("pieces.csv", Pieces);
        ProcessStartInfo start = new("/usr/bin/script") { RedirectStandardOutput = true };
        foreach (string argument in (string[])["-qec", $"dotnet '{Path.Combine(AppContext.BaseDirectory, "flip.dll")}' check --log '{log.Path}'", "/dev/null"])
            start.ArgumentList.Add(argument);
        using Process process = Process.Start(start)!;
        string seen = process.StandardOutput.ReadToEnd();
        process.WaitForExit();

        Assert.Equal(2, seen.Split("pieces.csv line 2, width").Length);
    }
}
