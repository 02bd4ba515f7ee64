using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>What holds for the report of every log and every span, said as a list of breaches, empty where all is well.</summary>
internal static class QuarterLaws
{
    /// <summary>A messy log with a span and a day to split it at; the span may reach beyond the date of the log.</summary>
    public static readonly Gen<(SalesLog Log, DateOnly From, DateOnly Split, DateOnly To)> Cases = Gen.Select(
        MessyLogs.Any, Gen.Int[0, 1_999], Gen.Int[0, 1_999], Gen.Int[1, 500],
        (log, first, second, length) =>
        {
            // Both parts begin on a day that the log knows, or begin long before it.
            int days = Math.Max(1, log.Date.DayNumber - MessyLogs.FirstDay.DayNumber + 200);
            DateOnly from = log.Date.AddDays(-1 - first * days / 2_000);
            DateOnly split = from.AddDays(second * (log.Date.DayNumber - from.DayNumber) / 2_000);
            return (log, from, split, split.AddDays(length));
        });

    public static IEnumerable<string> Breaches(SalesLog log, DateOnly from, DateOnly split, DateOnly to)
    {
        var whole = QuarterReport.Of(log, ReportPeriod.Of(from, to));
        var first = QuarterReport.Of(log, ReportPeriod.Of(from, split));
        var second = QuarterReport.Of(log, ReportPeriod.Of(split.AddDays(1), to));
        return
        [
            .. Different("the whole is not its parts", Flows(whole), Added(Flows(first), Flows(second))),
            .. Different("hours worked", [("hours", decimal.Round(whole.Hours.Worked, 12))],
                [("hours", decimal.Round(first.Hours.Worked + second.Hours.Worked, 12))]),
            .. Different("the whole opens as its first part", Levels(whole.Opening), Levels(first.Opening)),
            .. Different("the first part closes as the second opens", Levels(first.Closing), Levels(second.Opening)),
            .. Different("the whole closes as its second part", Levels(whole.Closing), Levels(second.Closing)),
            .. new[] { whole, first, second }.SelectMany(Within),
            .. AgainstTheBooks(log, whole),
            .. WholeLife(log),
        ];
    }

    // Every sum comes out, and what drove a change adds up to it.
    private static IEnumerable<string> Within(QuarterReport report)
    {
        foreach (QuarterSum sum in report.Sums.Where(sum => sum.Difference != 0))
            yield return $"{report.Period.Name}: {sum.Name} is off by {sum.Difference}";
        foreach (QuarterChange change in new[] { report.AgainstBefore, report.AgainstYearEarlier }.OfType<QuarterChange>())
        {
            if (change.Effects.Sum(effect => effect.Amount) != change.Net)
                yield return $"effects against {change.With.Name} do not add up to {change.Net}";
            if (change.WageByProfit + change.WageByHours != change.Wage)
                yield return $"effects on the wage against {change.With.Name} do not add up to {change.Wage}";
        }

        if (report.Opening.InCans < 0 || report.Cans.Any(can => can.ValueLeft < 0 || can.Left < 0))
            yield return $"{report.Period.Name}: a can holds less than nothing";
        if (report.Cans.Sum(can => can.ValueLeft) != report.Closing.InCans)
            yield return $"{report.Period.Name}: the cans do not add up to {report.Closing.InCans}";
        if (report.Sales.Sum(sale => sale.Contribution) + report.Returns.Sum(back => back.Contribution) - report.Profit.OtherCosts != report.Profit.Net)
            yield return "the pieces sold do not add up to the profit";
    }

    // The costing's own movement of stock, found line by line in another way.
    private static IEnumerable<string> AgainstTheBooks(SalesLog log, QuarterReport report)
    {
        StockMovement stock = CostBook.Of(log).Stock(report.Reckoned.From, report.Reckoned.To);
        QuarterMovement moved = report.Moved;
        return Different(
            "the costing's movement of stock",
            [
                ("opening", stock.Opening), ("added", stock.Added), ("came back", stock.CameBack), ("sold", stock.Sold),
                ("gone", stock.WrittenOff + stock.Kept), ("closing", stock.Closing),
            ],
            [
                ("opening", report.Opening.Cost), ("added", moved.Bought + moved.FromCans + moved.Stated + moved.Outings),
                ("came back", moved.CameBack),
                ("sold", moved.Sold + moved.SoldUndated), ("gone", moved.WrittenOff + moved.Kept + moved.LeftUndated),
                ("closing", report.Closing.Cost),
            ]);
    }

    // From before the first day to the date of the log: all that has a day, and with what has none all there is. The books wear
    // tools to the end of the month that the log ends in; the days of it still to come have worn nothing yet, so the tools are
    // worth that much more on the last evening. The rent of those days is in no span either.
    private static IEnumerable<string> WholeLife(SalesLog log)
    {
        CostBook book = CostBook.Of(log);
        var life = QuarterReport.Of(log, ReportPeriod.Of(new(2, 1, 1), log.Date));
        decimal undatedSales = life.Undated.Where(facts => facts.What == "pieces sold").Sum(facts => facts.Amount);
        decimal undatedCash = book.Cash.Where(movement => movement.Date is null && !movement.IsReckoned).Sum(movement => movement.Amount);
        decimal wearToCome = ToCome(log, book.ToolWear);
        decimal undatedOverheads = book.Overheads.Where(line => line.Date is null).Sum(line => line.Amount);
        decimal undatedWear = book.ToolWear.Where(line => line.Date is null).Sum(line => line.Amount);
        return Different(
            "the whole life",
            [
                ("sales", log.Pieces.Where(piece => piece.IsSold).Sum(piece =>
                    log.Workshop.Currency.Round((piece.SoldPrice ?? 0) * (piece.Commission ?? 1)) + (piece.DeliveryCharged ?? 0))
                    + book.Pieces.SelectMany(piece => piece.Returns).Sum(back => back.SalePrice + back.DeliveryCharged)),
                ("given back", book.Pieces.SelectMany(piece => piece.Returns).Sum(back => back.GivenBack)),
                ("cash", book.Cash.Where(movement => !movement.IsReckoned).Sum(movement => movement.Amount)),
                ("cans", book.SuppliesLeft.Sum(stock => stock.Value)),
                ("tools", book.ToolsLeft.Sum(tool => tool.Value) + wearToCome),
                ("wear", log.Tools.Sum(tool => tool.Price ?? 0) - book.ToolsLeft.Sum(tool => tool.Value)),
                ("overheads", log.Overheads.Sum(row => row.Amount)
                    + book.Overheads.Where(line => line.Origin.File == Columns.Trips.File).Sum(line => line.Amount)),
            ],
            [
                ("sales", life.Profit.Sales + life.Profit.DeliveryCharged + undatedSales),
                ("given back", life.Profit.Returns),
                ("cash", life.Cash.Change + undatedCash),
                ("cans", life.Closing.InCans),
                ("tools", life.Closing.Tools),
                ("wear", life.Profit.ToolWear + undatedWear + wearToCome),
                ("overheads", life.Profit.Overheads + undatedOverheads + ToCome(log, book.Overheads)),
            ]);
    }

    // What is left of the month that the log ends in: its amount less that of the days so far.
    private static decimal ToCome(SalesLog log, IEnumerable<CostLine> lines)
    {
        int month = DateTime.DaysInMonth(log.Date.Year, log.Date.Month);
        return lines.Where(line => line.Until > log.Date).Sum(line => line.Amount - log.Workshop.Currency.Round(
            line.Amount * (log.Date.Day - line.Date!.Value.Day + 1) / (month - line.Date.Value.Day + 1)));
    }

    private static (string Name, decimal Amount)[] Flows(QuarterReport report) =>
    [
        ("pieces", report.Profit.Pieces),
        ("sales", report.Profit.Sales),
        ("delivery charged", report.Profit.DeliveryCharged),
        ("returns", report.Profit.Returns),
        ("came back", report.Moved.CameBack),
        ("pieces that came back", report.Counts.CameBack),
        ("purchases", report.Profit.Purchases),
        ("supplies", report.Profit.Supplies),
        ("outings", report.Profit.Outings),
        ("fees", report.Profit.Fees),
        ("delivery", report.Profit.Delivery),
        ("written off", report.Profit.WrittenOff),
        ("tool wear", report.Profit.ToolWear),
        ("overheads", report.Profit.Overheads),
        ("supplies lost", report.Profit.SuppliesLost),
        ("net", report.Profit.Net),
        ("hours of pieces sold", report.Hours.Belonging),
        ("money in", report.Cash.In),
        ("money out", report.Cash.Out),
        ("driving", report.Cash.DrivingReckoned),
        ("bought", report.Moved.Bought),
        ("from cans", report.Moved.FromCans),
        ("stated", report.Moved.Stated),
        ("out of cans", report.Moved.OutOfCans),
        ("stated, by counts", report.Moved.StatedByCounts),
        ("outings in", report.Moved.Outings),
        ("sold", report.Moved.Sold),
        ("sold undated", report.Moved.SoldUndated),
        ("written off of stock", report.Moved.WrittenOff),
        ("kept", report.Moved.Kept),
        ("left undated", report.Moved.LeftUndated),
        ("supplies bought", report.Moved.SuppliesBought),
        ("tools bought", report.Moved.ToolsBought),
        ("wear", report.Moved.ToolWear),
        ("other day", report.Moved.OtherDay),
        .. Enum.GetValues<MoneyOf>().Select(of => ($"held for {of}", report.Held.Where(held => held.Of == of).Sum(held => held.More))),
        ("pieces bought", report.Counts.Bought),
        ("pieces finished", report.Counts.Finished),
        ("pieces listed", report.Counts.Listed),
        ("pieces withdrawn", report.Counts.Withdrawn),
    ];

    private static (string Name, decimal Amount)[] Levels(QuarterStock stock) =>
    [
        ("cost", stock.Cost),
        ("cans", stock.InCans),
        ("stated", stock.StatedBeyondCans),
        ("tools", stock.Tools),
        .. stock.ByState.Concat(stock.ByAge).SelectMany(group => new (string, decimal)[]
        {
            (group.Name, group.Cost), ($"{group.Name}, pieces", group.Pieces), ($"{group.Name}, floor", group.Floor),
        }),
    ];

    private static (string Name, decimal Amount)[] Added((string Name, decimal Amount)[] a, (string Name, decimal Amount)[] b) =>
        [.. a.Zip(b, (x, y) => (x.Name, x.Amount + y.Amount))];

    private static IEnumerable<string> Different(
        string law, (string Name, decimal Amount)[] expected, (string Name, decimal Amount)[] found) =>
        expected.Zip(found).Where(pair => pair.First.Amount != pair.Second.Amount)
            .Select(pair => FormattableString.Invariant(
                $"{law}: {pair.First.Name} {pair.First.Amount} against {pair.Second.Amount}"));
}
