using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary>
/// A year with every event, worked out a second time by a script that knows nothing of this code: see
/// ReferenceData/year-by-hand/README.md.
/// </summary>
public sealed class YearByRecomputationTests
{
    private static readonly string Folder =
        House.Repository.PathOf("tests", "FlipAnalytics.Tests", "ReferenceData", "year-by-hand");

    [Fact]
    public void TheReaderFindsNothingWrongInTheLogOfTheYear() => Assert.Empty(SalesLogReader.Read(Folder).Problems);

    [Theory]
    [InlineData(CostingMethod.Fifo)]
    [InlineData(CostingMethod.Average)]
    public void QuartersYearAndTwoWeeksAreWhatAScriptFindsInTheFiles(CostingMethod method)
    {
        using JsonDocument document = Answers();
        SalesLog log = LogOf(document, method);
        foreach (JsonElement span in SpansOf(document, method))
        {
            IReadOnlyList<(string Name, decimal Amount)> found = Figures(QuarterReport.Of(log, PeriodOf(span)));
            AssertSame(span, found);
            Assert.Equal(
                span.EnumerateObject().Where(field => field.Value.ValueKind == JsonValueKind.Number).Select(field => field.Name),
                found.Select(figure => figure.Name));
        }
    }

    [Theory]
    [InlineData(CostingMethod.Fifo)]
    [InlineData(CostingMethod.Average)]
    public void TheSheetOfTheYearIsWhatAScriptFindsInTheFiles(CostingMethod method)
    {
        using JsonDocument document = Answers();
        SalesLog log = LogOf(document, method);
        foreach (JsonElement span in SpansOf(document, method))
        {
            var sheet = YearReport.Of(log, PeriodOf(span));
            decimal soldAtCost = Of("purchases") + Of("supplies") + Of("outings");
            AssertSame(span, Figures(sheet.Profit));
            AssertSame(span, Figures(sheet.Cash));
            Assert.Equal(Of("driving_reckoned"), sheet.Driving.Amount);
            Assert.Equal(soldAtCost, sheet.CostOfGoods.CostOfGoodsSold);
            Assert.Equal(Of("stock_closing"), sheet.CostOfGoods.ClosingPieces);
            Assert.Equal(Of("stock_closing"), sheet.Stock.Sum(piece => piece.Cost));
            Assert.Equal(Of("cans_closing"), sheet.CostOfGoods.ClosingInCans);
            Assert.Equal(Of("cans_closing"), sheet.Supplies.Sum(supply => supply.Value));
            Assert.Equal(Of("tools_closing"), sheet.Tools.Sum(tool => tool.Value));

            decimal Of(string name) => span.GetProperty(name).GetDecimal();
        }
    }

    [Fact]
    public void PiecesOfABoothBearItsRentAsAScriptFindsInTheFiles()
    {
        using JsonDocument document = Answers();
        var books = CostBook.Of(LogOf(document, CostingMethod.Fifo));
        HashSet<int?> rents = [.. books.Overheads.Where(line => line.Channel is not null).Select(line => line.Origin.Row)];
        bool IsRent(CostLine line) => line.Origin.File == Columns.Overheads.File && rents.Contains(line.Origin.Row);
        Assert.Equal(
            Amounts(document, "rent_of_channels"),
            books.Pieces.Select(cost => (cost.Piece.Id, cost.Lines.Where(IsRent).Sum(line => line.Amount)))
                .Append(("nobody", books.OverheadsUnshared.Where(IsRent).Sum(line => line.Amount)))
                .Where(borne => borne.Item2 != 0).Order());
    }

    [Fact]
    public void WhatDeliveriesCostNetIsWhatAScriptFindsInTheFiles()
    {
        using JsonDocument document = Answers();
        Assert.Equal(
            Amounts(document, "net_deliveries").Select(sale => sale.Amount).Order(),
            SellingTerms.Of(LogOf(document, CostingMethod.Fifo)).Deliveries);
    }

    private static IEnumerable<(string Name, decimal Amount)> Amounts(JsonDocument answers, string name) =>
        answers.RootElement.GetProperty(name).EnumerateObject().Select(amount => (amount.Name, amount.Value.GetDecimal())).Order();

    private static JsonDocument Answers() => JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, "answers.json")));

    private static SalesLog LogOf(JsonDocument answers, CostingMethod method)
    {
        SalesLog log = SalesLogReader.Read(Folder).Log!.AsOf(Day(answers.RootElement, "as_of"));
        return log with { Workshop = log.Workshop with { Costing = method } };
    }

    private static JsonElement.ArrayEnumerator SpansOf(JsonDocument answers, CostingMethod method) =>
        answers.RootElement.GetProperty(method == CostingMethod.Fifo ? "fifo" : "average").EnumerateArray();

    private static ReportPeriod PeriodOf(JsonElement span) => ReportPeriod.Of(Day(span, "first"), Day(span, "last"));

    private static DateOnly Day(JsonElement element, string name) =>
        DateOnly.ParseExact(element.GetProperty(name).GetString()!, "yyyy-MM-dd");

    private static void AssertSame(JsonElement span, IReadOnlyList<(string Name, decimal Amount)> found)
    {
        string days = $"{span.GetProperty("first")} to {span.GetProperty("last")}";
        Assert.Equal(
            found.Select(figure => (days, figure.Name, span.GetProperty(figure.Name).GetDecimal())),
            found.Select(figure => (days, figure.Name, figure.Amount)));
    }

    private static IReadOnlyList<(string Name, decimal Amount)> Figures(QuarterReport report) =>
    [
        .. Figures(report.Profit),
        .. Figures(report.Cash),
        ("stock_closing", report.Closing.Cost),
        ("cans_closing", report.Closing.InCans),
        ("tools_closing", report.Closing.Tools),
        ("held_for_tax_office", Held(report, MoneyOf.TaxOffice)),
        ("held_for_buyers", Held(report, MoneyOf.Buyers)),
        ("held_for_owners_of_pieces", Held(report, MoneyOf.OwnersOfPieces)),
        ("put_in_less_taken", Held(report, MoneyOf.Owner)),
    ];

    private static IReadOnlyList<(string Name, decimal Amount)> Figures(QuarterProfit profit) =>
    [
        ("sales", profit.Sales),
        ("delivery_charged", profit.DeliveryCharged),
        ("returns", profit.Returns),
        ("purchases", profit.Purchases),
        ("supplies", profit.Supplies),
        ("outings", profit.Outings),
        ("fees", profit.Fees),
        ("delivery", profit.Delivery),
        ("written_off", profit.WrittenOff),
        ("tool_wear", profit.ToolWear),
        ("overheads", profit.Overheads),
        ("supplies_lost", profit.SuppliesLost),
        ("net", profit.Net),
    ];

    private static IReadOnlyList<(string Name, decimal Amount)> Figures(QuarterCash cash) =>
    [
        ("money_in", cash.In),
        ("money_out", cash.Out),
        ("change_of_cash", cash.Change),
        ("driving_reckoned", cash.DrivingReckoned),
    ];

    // A kind of money of which there is none is not in the report.
    private static decimal Held(QuarterReport report, MoneyOf of) =>
        report.Held.Where(held => held.Of == of).Sum(held => held.Closing);
}
