namespace FlipAnalytics.Tests;

/// <summary>
/// The exercise "Below is a series of cost of goods sold sections" for companies A, F, L and V (Weygandt, Kimmel and Kieso,
/// Accounting Principles, chapter 5, periodic system): stock at the start, net purchases, freight-in and stock at the end give
/// the cost of goods sold. Here freight-in is what an outing cost, and the goods are pieces bought in lots of that value.
/// </summary>
public sealed class YearTextbookTests
{
    [Theory]
    [InlineData("A", 350, 1_412, 138, 383, 1_517)]
    [InlineData("F", 90, 1_040, 220, 90, 1_260)]
    [InlineData("L", 1_120, 7_780, 310, 1_520, 7_690)]
    [InlineData("V", 6_000, 41_660, 2_300, 6_240, 43_720)]
    public void TheFiveLinesAreThoseOfTheTextbook(string company, int opening, int purchases, int freight, int closing, int cost)
    {
        SalesLog log = new()
        {
            Date = new(2026, 1, 31),
            Pieces =
            [
                new() { Id = "there", Type = "lot", BoughtOn = new(2024, 12, 1), BoughtPrice = opening, SoldOn = new(2025, 3, 1), SoldPrice = opening },
                new()
                {
                    Id = "bought", Type = "lot", BoughtOn = new(2025, 5, 1), BoughtPrice = purchases - closing, Trip = "freight",
                    SoldOn = new(2025, 9, 1), SoldPrice = purchases,
                },
                new() { Id = "left", Type = "lot", BoughtOn = new(2025, 12, 1), BoughtPrice = closing },
            ],
            Trips = [new("freight", new(2025, 5, 1), 0, null, freight, company)],
        };
        YearCostOfGoods goods = YearReport.Of(log, ReportPeriod.Parse("2025")!).CostOfGoods;
        Assert.Equal(
            (opening, purchases, freight, closing, cost),
            (goods.Opening, goods.Purchases, goods.OtherCosts, goods.Closing, goods.CostOfGoodsSold));
    }
}
