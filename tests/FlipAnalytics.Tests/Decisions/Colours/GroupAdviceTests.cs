using System.Collections.Immutable;

namespace FlipAnalytics.Tests;

/// <summary>A comparison gives one answer, and nothing on its page goes against it: held over generated logs.</summary>
public sealed class GroupAdviceTests
{
    private const int LinesForTheDate = 4;

    private static readonly DateOnly Today = new(2026, 3, 31);

    /// <summary>Markets where colors matter, where they do not, and where no hour is ever paid enough.</summary>
    private static readonly Lazy<ImmutableArray<GroupComparisonReport>> Reports = new(() =>
    [
        .. from seed in Enumerable.Range(1, 4).AsParallel().AsOrdered()
           from flips in new[] { 0, 3, 14, 60, 200 }
           from market in new[]
           {
               DemoMarket.Standard, DemoMarket.Standard.WithoutColourEffects(),
               DemoMarket.Standard.WithColourDays("sage", 0.4), DemoMarket.Standard.WithoutColourEffects().WithColourDays("white", 2.5),
           }
           let log = DemoLog.Generate(flips, (ulong)seed, market).Log
           let wage = seed % 4 == 0 ? 200 : 15
           select GroupComparison.Of(
               log with { Workshop = log.Workshop with { TargetWage = wage } }, seed % 3 == 0 ? GroupedBy.Finish : GroupedBy.Color),
    ]);

    [Fact]
    public void Every_kind_of_answer_comes_about()
    {
        ImmutableArray<AdviceKind> kinds = [.. Reports.Value.Select(report => report.Advice.Kind).Distinct()];
        Assert.Superset(
            new HashSet<AdviceKind> { AdviceKind.CannotSay, AdviceKind.DoesNotPay, AdviceKind.DoesNotMatter, AdviceKind.Choose, AdviceKind.Avoid },
            new HashSet<AdviceKind>(kinds));
    }

    [Fact]
    public void Nothing_is_recommended_that_the_same_page_calls_not_enough_sold() => Assert.All(Reports.Value, report =>
    {
        Assert.All(report.Advice.Recommended, level =>
        {
            Assert.Contains(level, report.ToldApart.Compared);
            Assert.True(report.Levels.Single(l => l.Level == level).Sold >= report.ToldApart.LeastSales);
        });
        Assert.All(report.ToldApart.TooFew, level => Assert.DoesNotContain(report.Choices, choice => choice.Level == level));
    });

    [Fact]
    public void What_does_not_matter_is_recommended_nowhere() => Assert.All(
        Reports.Value.Where(report => report.Advice.Kind == AdviceKind.DoesNotMatter),
        report =>
        {
            string page = OneLine(report);
            Assert.StartsWith($"It does not matter which {report.By.Singular()} you choose, as far as your sales can tell.", page, StringComparison.Ordinal);
            Assert.Empty(report.Advice.Recommended);
            Assert.All(
                new[] { "Paint it", "Choose", "best", "than your other", "stood out" },
                claim => Assert.DoesNotContain(claim, page, StringComparison.Ordinal));
        });

    [Fact]
    public void What_is_recommended_leads_the_page_pays_and_was_no_slower_in_the_last_year() => Assert.All(
        Reports.Value.Where(report => report.Advice.Kind == AdviceKind.Choose),
        report =>
        {
            ImmutableArray<string> recommended = report.Advice.Recommended;
            Assert.StartsWith(
                $"{(report.By == GroupedBy.Color ? "Paint it" : "Choose")} {recommended[0]}", OneLine(report), StringComparison.Ordinal);
            Assert.All(recommended, level =>
            {
                LevelRecord record = report.Levels.Single(l => l.Level == level);
                Assert.True(record.DaysLately!.Share < 0 || report.Advice.BringMore.Contains(level));
                Assert.DoesNotContain(level, report.Advice.Slower.Concat(report.Advice.BringLess));
                Assert.DoesNotContain(report.Choices, choice => choice.Level == level && choice.Money <= 0);
            });
            Assert.Equal(
                recommended.Order(), report.Choices.Take(recommended.Length).Select(choice => choice.Level).Order());
        });

    [Fact]
    public void Where_no_choice_pays_the_page_says_that_first() => Assert.All(
        Reports.Value.Where(report => !report.ToldApart.Compared.IsEmpty && report.Next is { } next && next.Choices.All(c => c.Money <= 0)),
        report =>
        {
            Assert.Empty(report.Advice.Recommended);
            Assert.Matches("^No(ne of the)? [a-z ]+ makes? a [a-z ]+ pay: even as a gift it falls ", OneLine(report));
        });

    [Fact]
    public void A_page_with_the_lines_on_its_date_fits_a_screen_of_40() => Assert.All(
        Reports.Value, report => Assert.InRange(GroupComparisonText.Render(report).Split('\n').Length, 1, 40 - LinesForTheDate));

    /// <summary>
    /// Each sells after the days that the model expects where A has 1 sale of 1 expected and B 1 of 4, halves added: ln(1.5/1.5)
    /// = 0 and ln(4.5/1.5) = ln 3, each with variance 1/1.5, against their average ± ln 3 / 2. With τ² = 1/4 and nothing before,
    /// 0.25 / (0.25 + 0.6667) = 3/11 of it is kept, and 8/11 of τ² is left as variance.
    /// </summary>
    [Fact]
    public void The_last_year_by_hand()
    {
        var recent = new RecentDays([Score("A", 10, 1), Score("B", 10, 4)], GroupedBy.Color, Today, scale: 1, between: 0.25);
        var (effect, variance) = recent.Of("B")!.Value;
        Assert.Equal(3.0 / 11 * Math.Log(3) / 2, effect, 1e-12);
        Assert.Equal(0.25 * 8 / 11, variance, 1e-12);
        Assert.Equal(-effect, recent.Of("A")!.Value.Effect, 1e-12);
        Assert.Null(recent.Of("C"));
    }

    [Fact]
    public void The_last_year_weighs_the_more_the_more_taste_moved()
    {
        // Over the years before A was fast; in the last it is slow. Where the others stay as they were, only A tells of change.
        double Lately(int aLately) => new RecentDays(
            [
                .. Enumerable.Range(0, 20).SelectMany(_ => new[] { Score("A", 500, 0.5), Score("B", 500, 1), Score("C", 500, 1.5) }),
                .. Enumerable.Range(0, aLately).SelectMany(_ => new[] { Score("A", 50, 2.5), Score("B", 50, 1), Score("C", 50, 0.4) }),
            ],
            GroupedBy.Color, Today, scale: 0.8, between: 0.02).Of("A")!.Value.Effect;
        Assert.True(Lately(0) < 0);
        Assert.True(Lately(12) > 0);
    }

    private static DaysScore Score(string colour, int daysAgo, double expected) => new(
        new() { Id = "P", Type = "desk", Colour = colour, ListedOn = Today.AddDays(-daysAgo) }, 1, expected, 10);

    private static string OneLine(GroupComparisonReport report) =>
        string.Join(' ', GroupComparisonText.Render(report, all: true).Split(['\n', ' '], StringSplitOptions.RemoveEmptyEntries));
}
