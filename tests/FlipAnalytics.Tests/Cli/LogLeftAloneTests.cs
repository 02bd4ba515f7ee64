using System.Globalization;

namespace FlipAnalytics.Tests;

/// <summary>A log without a new entry for long is told of as of its last entry, once, and its quarters are not called running.</summary>
public sealed class LogLeftAloneTests
{
    private const string Note = "If nothing has sold since, add --as-of today";

    // Days since the last entry: well inside and well beyond what counts as left alone, whatever the hour of the test.
    private const int Lately = AsOfDate.LongestSilenceInDays - 5;
    private const int LongAgo = AsOfDate.LongestSilenceInDays + 5;

    public static TheoryData<string[]> Verbs => new(
        ["wages"], ["quarter"], ["colors"], ["buy", "--type", "desk", "--sticker-price", "20"]);

    [Theory]
    [MemberData(nameof(Verbs))]
    public void TheReasonForTheDateIsSaidOnceAndOnlyOfALogLeftAlone(string[] verb)
    {
        using LogFolder old = Log(LongAgo), recent = Log(Lately);
        FlipRun run = Flip.Run([.. verb, "--log", old.Path]);
        string text = string.Join(' ', run.Output.Split((char[])['\n', ' '], StringSplitOptions.RemoveEmptyEntries));
        Assert.Equal(2, text.Split(Note).Length);
        Assert.DoesNotContain("--as-of today", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain(Note, Flip.Run([.. verb, "--log", old.Path, "--as-of", Day(0)]).Output, StringComparison.Ordinal);
        Assert.DoesNotContain(Note, Flip.Run([.. verb, "--log", recent.Path]).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AQuarterThatNobodyNamedIsOneThatTheLogTellsOfAndSaysSo()
    {
        // Begun and left alone within one quarter, long over.
        using LogFolder one = Pieces(new(2024, 1, 10), new(2024, 2, 20));
        string text = Flip.Run("quarter", "--log", one.Path).Output;
        Assert.StartsWith("In 2024-Q1, as known on 2024-02-20, you made 100", text, StringComparison.Ordinal);
        Assert.Contains("No span was named: this is the one quarter your log tells of, up to 2024-02-20.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("so far", text, StringComparison.OrdinalIgnoreCase);

        // The last entry is in the middle of a later quarter: the one before it is told to its end.
        using LogFolder two = Pieces(new(2024, 1, 10), new(2024, 5, 20));
        text = Flip.Run("quarter", "--log", two.Path).Output;
        Assert.StartsWith("In 2024-Q1 ", text, StringComparison.Ordinal);
        Assert.Contains("No span was named: 2024-Q1 is the last quarter that your log tells to its end.", text, StringComparison.Ordinal);
        text = Flip.Run("quarter", "2024-Q2", "--log", two.Path).Output;
        Assert.DoesNotContain("so far", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("No span was named", text, StringComparison.Ordinal);
    }

    [Fact]
    public void AQuarterOfALogInUseNeedsNoWordOnItsChoice()
    {
        using LogFolder recent = Log(Lately);
        Assert.DoesNotContain("No span was named", Flip.Run("quarter", "--log", recent.Path).Output, StringComparison.Ordinal);
    }

    private static LogFolder Log(int daysAgo) => Pieces(Date(daysAgo + 40), Date(daysAgo));

    private static LogFolder Pieces(DateOnly first, DateOnly last) => new LogFolder().With("pieces.csv", string.Create(
        CultureInfo.InvariantCulture,
        $"""
        id,type,color,bought_on,bought_price,listed_on,sold_on,sold_price,hours
        P1,desk,navy,{first:yyyy-MM-dd},20,{first.AddDays(4):yyyy-MM-dd},{first.AddDays(20):yyyy-MM-dd},120,5
        P2,desk,sage,{first:yyyy-MM-dd},20,{last:yyyy-MM-dd},,,6

        """));

    private static string Day(int daysAgo) => Date(daysAgo).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static DateOnly Date(int daysAgo) => DateOnly.FromDateTime(DateTime.Now).AddDays(-daysAgo);
}
