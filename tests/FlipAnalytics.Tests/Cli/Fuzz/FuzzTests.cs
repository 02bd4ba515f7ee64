namespace FlipAnalytics.Tests;

/// <summary>
/// Whatever bytes, cells, settings, options and candidates the command is given, it answers or refuses in its own words: no fault
/// of its own, nothing raw on the terminal, no file changed. <c>fuzz N</c> of the benchmarks runs as many as one likes.
/// </summary>
[Collection("console")]
public sealed class FuzzTests
{
    private const int Runs = 2_000;

    [Fact]
    public void TwoThousandGeneratedCallsKeepEveryRule()
    {
        for (int number = 0; number < Runs; number++)
        {
            FuzzCase given = FuzzCases.Of(number, fitsOneIn: 40);
            string? breach = FuzzRules.Breach(given, FlipHere.Run);
            Assert.True(breach is null, $"Case {number}: {breach}\n{given}");
        }
    }

    [Fact]
    public void ACallThatGoesWrongIsFound()
    {
        FuzzCase given = FuzzCases.Of(1);
        Assert.NotNull(FuzzRules.Breach(given, _ => new(1, "", "Something went wrong inside flip: x. Your files are unchanged; please report this.\n")));
        Assert.NotNull(FuzzRules.Breach(given, _ => new(0, "a\u001b[31m", "")));
        Assert.NotNull(FuzzRules.Breach(given, _ => new(0, "", "\u202e")));
        Assert.NotNull(FuzzRules.Breach(given, _ => new(134, "", "")));
        Assert.NotNull(FuzzRules.Breach(given, _ => new(2, "an answer", "a refusal")));
        Assert.NotNull(FuzzRules.Breach(given, _ => new(1, "", "")));
        Assert.NotNull(FuzzRules.Breach(given with { Arguments = ["check", "--json"] }, _ => new(0, "{", "")));
        Assert.NotNull(FuzzRules.Breach(given with { Arguments = ["LOG"] }, call =>
        {
            File.Delete(Path.Combine(call[0], "pieces.csv"));
            File.WriteAllText(Path.Combine(call[0], "pieces.csv"), "gone");
            return new(0, "", "");
        }));
        Assert.Null(FuzzRules.Breach(given, _ => new(0, "an answer\n", "")));
    }
}
