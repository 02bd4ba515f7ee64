using System.Globalization;

using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>What holds for the sheet of every log, in currencies of 0, 2 and 3 digits, whatever is missing or contradicts itself.</summary>
public sealed class YearLawsTests
{
    private const int Logs = 200;

    private static readonly Gen<(SalesLog Log, ReportPeriod Year)> Years = Gen.Select(
        MessyLogs.Any, Gen.Int[2023, 2026], Gen.OneOf(new DateOnly(1, 1, 1), new DateOnly(1, 4, 6), new DateOnly(1, 7, 1)),
        (log, year, first) =>
        {
            DateOnly from = first.AddYears(year - 1);
            if (from > log.Date)
                from = first.AddYears(log.Date.Year - 2);
            return (log, ReportPeriod.Of(from, from.AddYears(1).AddDays(-1)));
        });

    [Fact]
    public void TheProfitIsTheOneOfTheQuarterReportAndEverySumComesOut() => Years.Sample(
        given =>
        {
            var sheet = YearReport.Of(given.Log, given.Year);
            var report = QuarterReport.Of(given.Log, given.Year);
            Assert.Equal(report.Profit, sheet.Profit);
            Assert.Equal(report.Profit.Net, sheet.Lines.Sum(line => line.Effect));
            Assert.All(sheet.Sums, sum => Assert.True(sum.Difference == 0, $"{sum.Name} is off by {sum.Difference}"));
        },
        iter: Logs);

    [Fact]
    public void FourPartsOfAYearAddUpToItLineByLine() => Years.Sample(
        given =>
        {
            DateOnly from = given.Year.From;
            YearReport[] parts =
            [
                .. Enumerable.Range(0, 4).Select(i => (From: from.AddMonths(3 * i), To: from.AddMonths(3 * i + 3).AddDays(-1)))
                    .Where(part => part.From <= given.Log.Date)
                    .Select(part => YearReport.Of(given.Log, ReportPeriod.Of(part.From, part.To))),
            ];
            var whole = YearReport.Of(given.Log, given.Year);
            Assert.Equal(Flows(whole), parts.Select(Flows).Aggregate((a, b) => [.. a.Zip(b, (x, y) => (x.Name, x.Amount + y.Amount))]));
            Assert.Equal(whole.CostOfGoods.Opening, parts[0].CostOfGoods.Opening);
            Assert.Equal(whole.CostOfGoods.Closing, parts[^1].CostOfGoods.Closing);
            for (int i = 1; i < parts.Length; i++)
                Assert.Equal(parts[i - 1].CostOfGoods.Closing, parts[i].CostOfGoods.Opening);
        },
        iter: Logs);

    [Fact]
    public void EveryCentInTheFilesIsOnOneLineOfTheYearOrInTheListOfWhatIsNotCounted() => Years.Sample(
        given =>
        {
            using LogFolder folder = new();
            SalesLogWriter.Write(given.Log, folder.Path);
            var sheet = YearReport.Of(given.Log, given.Year);
            decimal Tallied(params string[] whats) => sheet.Tally.Where(row => whats.Contains(row.What)).Sum(row => row.Total);

            // All there is in a column, whatever its day.
            decimal theirs = given.Log.Pieces.Where(piece => piece.Commission is not null).Sum(piece =>
                (piece.SoldPrice ?? 0) - given.Log.Workshop.Currency.Round((piece.SoldPrice ?? 0) * piece.Commission!.Value));
            Assert.Equal(Column(folder, "pieces.csv", "sold_price"), Tallied("sales") + theirs);
            Assert.Equal(Column(folder, "pieces.csv", "delivery_charged"), Tallied("delivery charged"));
            SaleReturn[] undone = [.. given.Log.Returns.Where(back => back.CameBack)];
            decimal Yours(SaleReturn back, decimal amount) => given.Log.Workshop.Currency.Round(
                amount * (given.Log.Pieces.Single(piece => string.Equals(piece.Id, back.PieceId, StringComparison.OrdinalIgnoreCase)).Commission ?? 1));
            Assert.Equal(undone.Sum(back => Yours(back, back.SoldPrice!.Value)), Tallied("sales of pieces that came back"));
            Assert.Equal(Column(folder, "returns.csv", "sold_price"), undone.Sum(back => back.SoldPrice));
            Assert.Equal(Column(folder, "returns.csv", "delivery_charged"), Tallied("delivery charged for pieces that came back"));
            Assert.Equal(Column(folder, "returns.csv", "fees"), Tallied("fees of sales that were undone"));
            Assert.Equal(Column(folder, "returns.csv", "delivery_cost") + Column(folder, "returns.csv", "cost"),
                Tallied("delivery and taking back of pieces that came back"));
            Assert.Equal(Column(folder, "pieces.csv", "bought_price"), Tallied("pieces bought"));
            Assert.Equal(Column(folder, "pieces.csv", "fees"), Tallied("fees, as written down"));
            Assert.Equal(Column(folder, "pieces.csv", "delivery_cost"), Tallied("delivery"));
            Assert.Equal(Column(folder, "supplies.csv", "price"), Tallied("supplies bought"));
            Assert.Equal(Column(folder, "tools.csv", "price"), Tallied("tools bought"));
            Assert.Equal(Column(folder, "overheads.csv", "amount"), Tallied("overheads"));
            CostBook books = CostBook.Of(given.Log);
            Assert.Equal(
                Column(folder, "trips.csv", "other_cost") - books.Cash.Where(movement => movement.IsReckoned).Sum(movement => movement.Amount),
                Tallied("outings that brought pieces home", "fruitless outings", "supply runs and other drives", "drives to buyers"));
            // supplies_cost replaces what cans were charged for, so what it adds is the difference.
            Assert.Equal(
                books.Pieces.Sum(cost => cost.SuppliesDifference) - books.StatedByCounts.Sum(settled => settled.Amount), Tallied("supplies stated beyond the cans"));
            Assert.Empty(YearLaws.Breaches(given.Log, given.Year));
        },
        iter: Logs);

    [Fact]
    public void EverySheetCanBePrintedIn100ColumnsAndOnOneScreen() => Years.Sample(
        given =>
        {
            var sheet = YearReport.Of(given.Log, given.Year);
            string text = YearText.Render(sheet);
            Assert.InRange(text.Count(sign => sign == '\n'), 10, 40);
            Assert.All((text + YearText.Render(sheet, all: true)).Split('\n'), line => Assert.InRange(line.Length, 0, 100));
            Assert.StartsWith("{", YearJson.Render(sheet), StringComparison.Ordinal);
        },
        iter: Logs);

    private static (string Name, decimal Amount)[] Flows(YearReport sheet) =>
    [
        ("sales", sheet.Profit.Sales),
        ("delivery charged", sheet.Profit.DeliveryCharged),
        ("returns", sheet.Profit.Returns),
        ("purchases", sheet.CostOfGoods.Purchases),
        ("other costs", sheet.CostOfGoods.OtherCosts),
        ("stock", sheet.CostOfGoods.Opening - sheet.CostOfGoods.Closing),
        ("cost", sheet.CostOfGoods.CostOfGoodsSold),
        ("fees", sheet.Profit.Fees),
        ("delivery", sheet.Profit.Delivery),
        ("overheads", sheet.Overheads.Sum(item => item.Amount)),
        ("driving", sheet.Driving.Amount),
        ("distance", sheet.Driving.Distance),
        ("wear", sheet.Profit.ToolWear),
        ("supplies lost", sheet.Profit.SuppliesLost),
        ("written off", sheet.Profit.WrittenOff),
        ("net", sheet.Profit.Net),
        ("in the year", sheet.Tally.Sum(row => row.InYear)),
    ];

    // Read as any spreadsheet would, not with the reader of the log.
    private static decimal Column(LogFolder folder, string file, string column)
    {
        string path = Path.Combine(folder.Path, file);
        if (!File.Exists(path))
            return 0;
        string[] lines = File.ReadAllLines(path);
        int place = Array.IndexOf(lines[0].Split(','), column);
        return place < 0 ? 0 : lines.Skip(1).Select(line => line.Split(',')[place])
            .Where(cell => cell.Length > 0)
            .Sum(cell => decimal.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture));
    }
}
