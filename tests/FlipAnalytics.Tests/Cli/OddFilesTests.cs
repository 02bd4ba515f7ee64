using System.Diagnostics;

namespace FlipAnalytics.Tests;

/// <summary>Pipes, devices, links to nothing and closed folders: each is refused at once with what to do.</summary>
[Collection("console")]
public sealed class OddFilesTests : IDisposable
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    private readonly LogFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("pieces.csv")]
    [InlineData("hours.csv")]
    [InlineData("workshop.toml")]
    public void APipeInPlaceOfATableIsRefusedAtOnce(string name)
    {
        if (OperatingSystem.IsWindows())
            return;
        folder.With("pieces.csv", "type,bought_price\ndesk,5\n");
        Pipe(name);
        FlipRun run = FlipHere.Run("check", "--log", folder.Path);
        Assert.Equal(1, run.ExitCode);
        Assert.StartsWith(
            $"{name}: expected an ordinary file. This is a pipe or a device, which is not read; put a file in its place.\n",
            run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void APipeADeviceOrALinkToOneIsNoListOfCandidatesAndNoPlaceForATable()
    {
        if (OperatingSystem.IsWindows())
            return;
        string pipe = Pipe("list.csv");
        string link = Path.Combine(folder.Path, "link.csv");
        File.CreateSymbolicLink(link, "list.csv");
        foreach (string path in new[] { pipe, link, "/dev/zero", "/dev/null" })
        {
            FlipRun run = FlipHere.Run("buy", "--candidates", path, "--log", Demo);
            Assert.Equal((1, ""), (run.ExitCode, run.Output));
            Assert.Contains("This is a pipe or a device", run.Error, StringComparison.Ordinal);
            run = FlipHere.Run("fit", "--model", "price", "--plain", "--design", path, "--force", "--log", Demo);
            Assert.Equal((2, ""), (run.ExitCode, run.Output));
            Assert.Contains("is no ordinary file: name a file in a folder of yours.", run.Error, StringComparison.Ordinal);
        }

        Assert.True(PlainFile.IsPipeOrDevice(pipe));
    }

    [Fact]
    public void AnEmptyFileIsAnOrdinaryFile()
    {
        string path = Path.Combine(folder.With("empty.csv", "").Path, "empty.csv");
        Assert.False(PlainFile.IsPipeOrDevice(path));
        Assert.Empty(PlainFile.Read(path, 10)!);
        Assert.Null(PlainFile.Read(Path.Combine(folder.With("long.csv", "12345678901").Path, "long.csv"), 10));
    }

    [Fact]
    public void ALinkToNothingIsNoMissingTable()
    {
        folder.With("pieces.csv", "type,bought_price\ndesk,5\n");
        File.CreateSymbolicLink(Path.Combine(folder.Path, "hours.csv"), "gone.csv");
        FlipRun run = FlipHere.Run("check", "--log", folder.Path);
        Assert.Equal(1, run.ExitCode);
        Assert.StartsWith("hours.csv: expected a file that can be opened. It is there but cannot be reached", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(UnixFileMode.None, "expected a folder that you may read. You may not look into it; ask for the right, or name another folder.")]
    [InlineData(UnixFileMode.UserRead, "pieces.csv: expected a file that can be opened. It is there but cannot be reached")]
    public void AFolderThatMayNotBeReadSaysSo(UnixFileMode mode, string expected)
    {
        // The superuser may read everything, so the command is run as nobody.
        if (OperatingSystem.IsWindows() || !OutsideProgramExists("setpriv"))
            return;
        folder.With("pieces.csv", "type,bought_price\ndesk,5\n");
        bool isSuperuser = Environment.UserName == "root";
        if (isSuperuser)
            Process.Start("chown", ["-R", "65534", folder.Path])!.WaitForExit();
        File.SetUnixFileMode(folder.Path, mode);
        try
        {
            FlipRun run = isSuperuser ? FlipAsNobody("check", "--log", folder.Path) : Flip.Run("check", "--log", folder.Path);
            Assert.Equal(1, run.ExitCode);
            Assert.Contains(expected, run.Error, StringComparison.Ordinal);
        }
        finally
        {
            File.SetUnixFileMode(folder.Path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }
    }

    [Fact]
    public void WhereTheAnswerTurnsOnTodayTheTimeZoneIsNamed()
    {
        string today = Cli.Clock.Today.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
        folder.With("pieces.csv", $"type,bought_price,bought_on,sold_price\ndesk,5,{today},90\ndesk,5,2026-01-02,80\n");
        FlipRun run = FlipHere.Run("buy", "--type", "desk", "--log", folder.Path);
        Assert.EndsWith($"\n\nToday is {today} ({TimeZoneInfo.Local.Id}).\n", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Today is", FlipHere.Run("buy", "--type", "desk", "--log", folder.Path, "--json").Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Today is", FlipHere.Run("buy", "--type", "desk", "--log", Demo).Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Today is", FlipHere.Run("buy", "--type", "desk", "--log", folder.Path, "--as-of", "2026-03-01").Output, StringComparison.Ordinal);
    }

    private static bool OutsideProgramExists(string name) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(':').Any(place => File.Exists(Path.Combine(place, name)));

    private static FlipRun FlipAsNobody(params string[] arguments)
    {
        // Where this is built, nobody may not be allowed to look either.
        var start = new ProcessStartInfo("setpriv", [
            "--reuid=65534", "--clear-groups", "dotnet", Path.Combine(AppContext.BaseDirectory, "flip.dll"), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        using Process process = Process.Start(start)!;
        Task<string> error = process.StandardError.ReadToEndAsync();
        string output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return new(process.ExitCode, output, error.Result);
    }

    private string Pipe(string name)
    {
        string path = Path.Combine(folder.Path, name);
        File.Delete(path);
        using Process made = Process.Start("mkfifo", [path])!;
        made.WaitForExit();
        return path;
    }
}
