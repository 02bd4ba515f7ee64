using FlipAnalytics.Plots;

namespace FlipAnalytics.Tests.Plots;

public sealed class DecisionPlotTests
{
    private static readonly Workshop Usual = new();

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(40)]
    public void TheAnswerForAnyPieceCanBeReadAsAPicture(int flips)
    {
        SalesLog log = Workbench.Demo(flips, seed: 3);
        foreach (PurchaseDecision decision in Workbench.Decide(log, Workbench.Various))
        {
            LayoutCheck.IsReadable(DecisionPlot.Of(decision, log.Workshop));
            LayoutCheck.IsReadable(ChancePlot.Of(decision, log.Workshop));
        }
    }

    [Fact]
    public void ThePictureTellsTheChancesOfTheAnswer()
    {
        PurchaseDecision decision = Workbench.Decide(Workbench.Demo(40, seed: 3), Workbench.StatedDresser);
        int inHundred = (int)decimal.Round(100 * decision.ChanceOfTargetWage!.Value);
        Assert.Contains($"sticker price 40: {inHundred} %", ChancePlot.Of(decision, Usual).Alternative, StringComparison.Ordinal);
        Assert.Contains($"careful limit {MoneyText.Whole(decision.CeilingCautious!.Value, Usual)}: 75 %", ChancePlot.Of(decision, Usual).Alternative, StringComparison.Ordinal);
        Assert.Contains($"most to pay {MoneyText.Whole(decision.Ceiling!.Value, Usual)}: ", DecisionPlot.Of(decision, Usual).Alternative, StringComparison.Ordinal);
    }

    [Fact]
    public void ThePictureOfAnOpenAnswerIsTitledAsItsPageBegins()
    {
        SalesLog log = new()
        {
            Date = new(2026, 3, 31),
            Pieces = [new() { Id = "P1", Type = "nightstand", BoughtPrice = 10, SoldPrice = 80 }],
        };
        PurchaseDecision decision = Workbench.Decide(log, Workbench.Dresser);
        Assert.Equal(Verdict.CannotSayYet, decision.Verdict);
        Assert.True(decision.CeilingLow < 0);
        string title = DecisionPlot.Of(decision, log.Workshop).Alternative.Split("sale price")[0];
        Assert.StartsWith("CANNOT SAY YET", title, StringComparison.Ordinal);
        Assert.DoesNotContain("-", title, StringComparison.Ordinal);
        Assert.StartsWith(title.TrimEnd('.', ' '), DoubtText.Headline(decision, log.Workshop), StringComparison.Ordinal);
    }

    [Fact]
    public void TheChanceFallsAsThePriceRises()
    {
        var chances = Workbench.Decide(Workbench.Demo(40, seed: 3), Workbench.MeasuredDresser).Chances;
        Assert.True(chances.Length > 30);
        Assert.Equal(0, chances[0].Price);
        Assert.Equal(chances.Select(c => c.Price).Order().Distinct(), chances.Select(c => c.Price));
        Assert.Equal(chances.Select(c => c.Chance).OrderDescending(), chances.Select(c => c.Chance));
    }

    [Fact]
    public void WhereNothingTellsASalePriceThereIsASentence()
    {
        PurchaseDecision unknown = Workbench.Decide(
            new SalesLog { Date = new(2026, 3, 31) }, new Candidate { Id = "C1", Type = "dresser" });
        Assert.StartsWith("No sale and no guess tells what a dresser brings", LayoutCheck.Sentence(DecisionPlot.Of(unknown, Usual)), StringComparison.Ordinal);
        Assert.StartsWith("No sale and no guess", LayoutCheck.Sentence(ChancePlot.Of(unknown, Usual)), StringComparison.Ordinal);
    }
}
