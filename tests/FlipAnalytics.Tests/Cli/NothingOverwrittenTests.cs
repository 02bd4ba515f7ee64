namespace FlipAnalytics.Tests;

/// <summary>No verb replaces a file of the owner's unasked, and none a file of a log.</summary>
[Collection("console")]
public sealed class NothingOverwrittenTests : IDisposable
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    private readonly LogFolder folder = new();

    public static TheoryData<string, string> Writing => new()
    {
        { "check --plot", "gaps.svg" },
        { "buy --type desk --sticker-price 20 --plot", "limit.png" },
        { "buy --type desk --sticker-price 20 --tables", "candidates.csv" },
        { "colors --plot", "colors.png" },
        { "wages --plot", "wages.svg" },
        { "wages --tables", "flips.csv" },
        { "quarter 2026-Q1 --plot", "quarter.svg" },
        { "quarter 2026-Q1 --tables", "profit.csv" },
        { "quarter 2026-Q1 --explain overhead --tables", "trail.csv" },
        { "fit --model price --plain --plot", "fit.png" },
        { "fit --model price --plain --design", "design.csv" },
    };

    public void Dispose() => folder.Dispose();

    [Theory]
    [MemberData(nameof(Writing))]
    public void AFileOfTheOwnersIsReplacedOnlyWhenAskedAndOneOfFlipsWithoutAsking(string command, string name)
    {
        string option = command.Split(' ')[^1];
        string[] call = [.. command.Split(' '), option == "--tables" ? folder.Path : Path.Combine(folder.Path, name), "--log", Demo];
        if (option == "--tables")
        {
            Assert.Equal(0, FlipHere.Run(call).ExitCode);
            name = Path.GetFileName(Directory.GetFiles(folder.Path)[0]);
        }


        string path = Path.Combine(folder.With(name, "mine\n").Path, name);
        FlipRun refused = FlipHere.Run(call);
        Assert.Equal((2, ""), (refused.ExitCode, refused.Output));
        Assert.Equal(
            $"{path} is there already, and was not written by flip, or changed since: name another file, or add --force to replace it.\n",
            refused.Error);
        Assert.Equal("mine\n", File.ReadAllText(path));
        Assert.Equal(0, FlipHere.Run([.. call, "--force"]).ExitCode);
        Assert.NotEqual("mine\n", File.ReadAllText(path));
        Assert.Equal(0, FlipHere.Run(call).ExitCode);
        File.AppendAllText(path, "mine\n");
        if (option == "--plot")
            Assert.Equal(2, FlipHere.Run(call).ExitCode);
    }

    [Theory]
    [InlineData("fit --model price --plain --design", "pieces.csv")]
    [InlineData("fit --model price --plain --design", "HOURS.csv")]
    [InlineData("year 2025 --journal", "workshop.toml")]
    [InlineData("fit --model price --plain --design", "link.csv")]
    public void NoVerbWritesOverTheLog(string command, string name)
    {
        foreach (string file in Directory.GetFiles(Demo))
            File.Copy(file, Path.Combine(folder.Path, Path.GetFileName(file)));
        File.CreateSymbolicLink(Path.Combine(folder.Path, "link.csv"), "pieces.csv");
        string before = Contents();
        FlipRun run = FlipHere.Run([.. command.Split(' '), Path.Combine(folder.Path, name), "--log", folder.Path, "--force"]);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.Contains("has the name of a file of a log, which is never written over: name another file.", Assert.Single(run.ErrorLines), StringComparison.Ordinal);
        Assert.Equal(before, Contents());
    }

    [Fact]
    public void ADemoIsNotWrittenOverATruthThatIsThere()
    {
        folder.With("truth.json", "mine\n");
        FlipRun run = FlipHere.Run("demo", folder.Path);
        Assert.Equal(2, run.ExitCode);
        Assert.Equal($"{folder.Path} holds a file truth.json already: name another folder.\n", run.Error);
        Assert.Equal(["truth.json"], Directory.GetFiles(folder.Path).Select(Path.GetFileName));
    }

    [Fact]
    public void ForceWithoutAFileToWriteIsRefused()
    {
        FlipRun run = FlipHere.Run("colors", "--log", Demo, "--force");
        Assert.Equal((2, "--force replaces files, so it goes with --plot or --tables; add one, or leave --force out.\n"), (run.ExitCode, run.Error));
    }

    [Fact]
    public void ATextInTheDesignIsNoFormula()
    {
        folder.With("pieces.csv", "type,bought_price,sold_price,color\n=1+1,5,0.50,@blue\n=1+1,6,0.70,@blue\ndesk,9,90,-red\ndesk,9,80,-red\n");
        string path = Path.Combine(folder.Path, "design.csv");
        FlipRun run = FlipHere.Run("fit", "--model", "price", "--plain", "--design", path, "--log", folder.Path);
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        string design = File.ReadAllText(path);
        Assert.Contains(",'=1+1,", design, StringComparison.Ordinal);
        Assert.Contains(",'@blue", design, StringComparison.Ordinal);
        Assert.Contains(",'-red", design, StringComparison.Ordinal);
        Assert.Contains("\n-0.", design, StringComparison.Ordinal);
    }

    private string Contents() => string.Concat(
        Directory.GetFiles(folder.Path).Order(StringComparer.Ordinal).Select(file => $"{file}\n{File.ReadAllText(file)}"));
}
