using FlipAnalytics.Plots;

namespace FlipAnalytics.Tests.Plots;

/// <summary>What a title claims can be seen in its own picture.</summary>
public sealed class TitleClaimTests
{
    public static TheoryData<int, GroupedBy> Comparisons => new()
    {
        { 200, GroupedBy.Color }, { 200, GroupedBy.Type }, { 60, GroupedBy.Finish }, { 14, GroupedBy.Color },
    };

    [Theory]
    [MemberData(nameof(Comparisons))]
    public void A_ranked_picture_names_in_its_title_what_has_a_filled_mark(int flips, GroupedBy by)
    {
        DemoMarket market = DemoMarket.Standard.WithColourDays("sage", 0.5);
        GroupComparisonReport report = GroupComparison.Of(DemoLog.Generate(flips, 6, market).Log, by);
        string title = GroupComparisonPlot.Of(report).Title;
        foreach (ModelName amount in new[] { ModelName.Days, ModelName.Price })
        {
            foreach (EffectInterval row in EffectIntervals.Of(report, amount).Rows.Where(row => row.StandsOut))
            {
                string clause = title.Split(';').First(part => part.Contains(row.Name, StringComparison.OrdinalIgnoreCase)
                    && part.Contains(Word(amount, row.Estimate), StringComparison.Ordinal));
                Assert.NotEmpty(clause);
            }
        }

        bool anyMark = new[] { ModelName.Days, ModelName.Price }.Any(amount => EffectIntervals.Of(report, amount).Rows.Any(row => row.StandsOut));
        Assert.Equal(anyMark, title.Contains("than your other", StringComparison.Ordinal));

        static string Word(ModelName amount, double estimate) => (amount, estimate < 0) switch
        {
            (ModelName.Days, true) => "faster",
            (ModelName.Days, false) => "more slowly",
            (_, true) => "less",
            _ => "more",
        };
    }

    [Theory]
    [MemberData(nameof(Comparisons))]
    public void A_picture_of_days_says_nothing_of_prices(int flips, GroupedBy by)
    {
        DemoMarket market = DemoMarket.Standard.WithColourDays("sage", 0.5);
        GroupComparisonReport report = GroupComparison.Of(DemoLog.Generate(flips, 6, market).Log, by);
        string title = SurvivalPlot.Of(report).Title;
        Assert.DoesNotContain("bring", title, StringComparison.Ordinal);
        Assert.DoesNotContain("price", title, StringComparison.Ordinal);
        if (report.ToldApart.Compared.Length > 1)
            Assert.Equal(report.Advice.Faster.Length + report.Advice.Slower.Length > 0, title.Contains("than your other", StringComparison.Ordinal));
    }

    [Fact]
    public void The_chance_in_the_title_is_the_height_of_the_curve_at_the_sticker_price()
    {
        PurchaseDecision decision = Workbench.Decide(Workbench.Demo(40, seed: 3), Workbench.StatedDresser);
        decimal drawn = decision.Chances.Single(c => c.Price == decision.Candidate.StickerPrice).Chance;
        Assert.Contains($", {100 * drawn:0} in 100 such purchases", ChancePlot.Of(decision, new()).Title, StringComparison.Ordinal);
    }

    [Fact]
    public void A_piece_that_falls_short_even_as_a_gift_has_no_most_to_pay_in_its_title()
    {
        PurchaseDecision decision = Workbench.Decide(
            Workbench.Demo(40, seed: 3), Workbench.StatedDresser with { Hours = 60 });
        Assert.True(decision.Ceiling < 0);
        Assert.StartsWith("Even as a gift this dresser falls ", DecisionPlot.Of(decision, new()).Title, StringComparison.Ordinal);
    }

    [Fact]
    public void The_piece_that_took_longest_is_one_that_is_drawn() => Assert.Contains(
        "16 pieces", AskingPlot.Of(MadeUp.Asking(40), new()).Title, StringComparison.Ordinal);
}
