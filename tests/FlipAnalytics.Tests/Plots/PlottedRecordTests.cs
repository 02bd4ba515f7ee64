using FlipAnalytics.Plots;

namespace FlipAnalytics.Tests.Plots;

/// <summary>The records that plots are drawn from, from logs whose answers can be worked out.</summary>
public sealed class PlottedRecordTests
{
    private static readonly DateOnly Day0 = new(2026, 1, 1);

    // At risk 3, 2, 1: sold on day 10 and 20, the third still on sale after 30 days. Ŝ = 2/3, then 1/3.
    [Fact]
    public void ThreePiecesByHand()
    {
        MarketCurves curves = MarketCurves.Of(ThreePieces(), GroupedBy.Color);
        MarketCurve sage = Assert.Single(curves.Curves);
        Assert.Equal("color", curves.By);
        Assert.Equal([2.0 / 3, 1.0 / 3, 1.0 / 3], sage.Curve.Steps.Select(step => step.Survival), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal([3, 3, 2, 1, 0], new[] { 1.0, 10, 11, 30, 31 }.Select(sage.AtRisk));
        Assert.Null(curves.DifferenceP);
    }

    [Fact]
    public void APieceWithoutTheTraitIsLeftOutOfTheCurves() =>
        Assert.Empty(MarketCurves.Of(ThreePieces(), GroupedBy.Finish).Curves);

    [Fact]
    public void TheAskingPathHoldsTheListingTheCutsAndTheSale()
    {
        AskingHistory sold = Assert.Single(AskingHistory.Of(ThreePieces(), ["p2"]));
        Assert.Equal<IEnumerable<AskedPrice>>([new(0, 300), new(7, 280), new(14, 250)], sold.Asked.ToArray());
        Assert.Equal((20, PieceState.Sold, 240m), (sold.LastDay, sold.State, sold.SalePrice!.Value));
        AskingHistory waiting = Assert.Single(AskingHistory.Of(ThreePieces()));
        Assert.Equal(("P3", 30, PieceState.OnSale), (waiting.PieceId, waiting.LastDay, waiting.State));
    }

    [Theory]
    [InlineData(ModelName.Price)]
    [InlineData(ModelName.Hours)]
    public void AModelCheckCountsTheSameRangesInRowsAndInCoverage(ModelName model)
    {
        var check = ModelCheck.Of(FittedModels.Of(Workbench.Demo(60, seed: 5)), model);
        Assert.True(check.Rows.Length > 20);
        Assert.Equal(check.Held, check.Coverage.Single(at => at.Level == check.Level).Held);
        Assert.All(check.Rows, row => Assert.Equal(Math.Sign(row.Actual - row.Predicted), Math.Sign(row.Residual)));
        Assert.All(check.Rows, row => Assert.True(row.Low < row.Predicted && row.Predicted < row.High));
        Assert.Equal(
            check.Rows.OrderBy(row => row.Residual).Select(row => row.PieceId),
            check.Rows.OrderBy(row => row.NormalScore).Select(row => row.PieceId));
        Assert.Equal(0, check.Rows.Sum(row => row.NormalScore), 9);
    }

    // Blom's lowest score of n is Φ⁻¹((1 − 3/8) / (n + 1/4)).
    [Fact]
    public void TheLowestNormalScoreIsThatOfBlom()
    {
        var check = ModelCheck.Of(FittedModels.Of(Workbench.Demo(60, seed: 5)), ModelName.Price);
        int n = check.Rows.Length;
        double lowest = check.Rows.Min(row => row.NormalScore);
        Assert.Equal(
            MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, 0.625 / (n + 0.25)), lowest, 9);
    }

    [Fact]
    public void DaysHaveNoModelCheck()
    {
        var models = FittedModels.Of(Workbench.Demo(3, seed: 5));
        Assert.Contains("name price, hours or supplies", Assert.Throws<ArgumentException>(
            () => ModelCheck.Of(models, ModelName.Days)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void TheForecastByWidthSpansTheSalesAndRisesWithTheWidth()
    {
        var prices = PriceBySize.Of(FittedModels.Of(Workbench.Demo(150, seed: 1)), "dresser");
        Assert.Equal(prices.Sales.Min(sale => sale.Width), prices.Curve[0].Width);
        Assert.Equal(prices.Sales.Max(sale => sale.Width), prices.Curve[^1].Width);
        Assert.All(prices.Curve, at => Assert.True(at.Low < at.Median && at.Median < at.High));
        Assert.Equal(prices.Curve.Select(at => at.Median).Order(), prices.Curve.Select(at => at.Median));
    }

    [Theory]
    [InlineData(ModelName.Price)]
    [InlineData(ModelName.Days)]
    public void EffectsAreThoseOfTheComparisonInPercent(ModelName amount)
    {
        GroupComparisonReport report = GroupComparison.Of(Workbench.Demo(100, seed: 2), GroupedBy.Color);
        var effects = EffectIntervals.Of(report, amount);
        Assert.Equal(("color", 0.8), (effects.Group, effects.Level));
        Assert.True(effects.Rows.Length >= 5);
        int best = amount == ModelName.Days ? 1 : -1;
        Assert.Equal(effects.Rows.Select(row => row.Estimate).OrderBy(share => best * share), effects.Rows.Select(row => row.Estimate));
        Assert.All(effects.Rows, row =>
        {
            LevelRecord level = report.Levels.Single(l => l.Level == row.Name);
            RelativeDifference effect = (amount == ModelName.Days ? level.DaysLately : level.Price)!;
            Assert.Equal((100 * effect.Low, 100 * effect.High), (row.Low, row.High));
            Assert.Equal(amount == ModelName.Days ? level.Curve[0].AtRisk : level.Sold, row.Count);
        });
    }

    [Fact]
    public void TheCurvesOfAComparisonClaimWhatTheComparisonClaimsAndNoMore()
    {
        GroupComparisonReport report = GroupComparison.Of(Workbench.Demo(60, seed: 4), GroupedBy.Finish);
        Figure figure = SurvivalPlot.Of(report);
        Assert.Equal("Your sales cannot tell how fast one finish sells from another", figure.Title);
        Assert.All(report.Market.Curves, curve => Assert.Equal(
            curve.Curve.Median(), report.Levels.Single(level => level.Level == curve.Name).MedianDays));
        Assert.Contains(figure.Texts, text => text.Text.Contains("80 % range", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(60)]
    public void EveryPlotOfALogOfAnySizeCanBeRead(int flips)
    {
        SalesLog log = Workbench.Demo(flips, seed: 4);
        var models = FittedModels.Of(log);
        foreach (GroupedBy trait in Enum.GetValues<GroupedBy>())
            LayoutCheck.IsReadable(SurvivalPlot.Of(MarketCurves.Of(log, trait)));

        foreach (GroupedBy by in new[] { GroupedBy.Color, GroupedBy.Channel })
        {
            GroupComparisonReport report = GroupComparison.Of(log, by);
            LayoutCheck.IsReadable(SurvivalPlot.Of(report));
            LayoutCheck.IsReadable(GroupComparisonPlot.Of(report));
            LayoutCheck.IsReadable(IntervalPlot.Of(EffectIntervals.Of(report, ModelName.Days)));
        }

        foreach (ModelName model in new[] { ModelName.Price, ModelName.Hours, ModelName.Supplies })
        {
            var check = ModelCheck.Of(models, model);
            LayoutCheck.IsReadable(ActualPlot.Of(check));
            LayoutCheck.IsReadable(ResidualPlot.Of(check));
            LayoutCheck.IsReadable(CoveragePlot.Of(check));
        }

        LayoutCheck.IsReadable(PricePlot.Of(PriceBySize.Of(models)));
        LayoutCheck.IsReadable(AskingPlot.Of(AskingHistory.Of(log), log.Workshop));
        LayoutCheck.IsReadable(WagePlot.Of(WagesReport.Of(log)));
        LayoutCheck.IsReadable(QuarterPlot.Of(QuarterReport.Of(log, QuarterReport.UsualPeriod(log))));
    }

    private static SalesLog ThreePieces() => new()
    {
        Date = Day0.AddDays(30),
        Pieces =
        [
            Listed("P1") with { SoldOn = Day0.AddDays(10), SoldPrice = 200 },
            Listed("P2") with { SoldOn = Day0.AddDays(20), SoldPrice = 240 },
            Listed("P3"),
        ],
        AskingPrices = [new("P2", Day0.AddDays(14), 250), new("P2", Day0.AddDays(7), 280), new("P2", Day0.AddDays(25), 100)],
    };

    private static Piece Listed(string id) =>
        new() { Id = id, Type = "dresser", Colour = "sage", ListedOn = Day0, AskingPrice = 300 };
}
