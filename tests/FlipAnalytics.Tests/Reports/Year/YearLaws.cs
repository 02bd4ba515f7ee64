namespace FlipAnalytics.Tests;

/// <summary>What holds for the sheet of every log and every year, said as a list of breaches, empty where all is well.</summary>
internal static class YearLaws
{
    /// <summary>
    /// Every sum comes out; all that a column of the log holds is in the tally, whatever its day; and what counts in the year is on
    /// its line and on no other.
    /// </summary>
    public static IEnumerable<string> Breaches(SalesLog log, ReportPeriod year)
    {
        var sheet = YearReport.Of(log, year);
        return
        [
            .. sheet.Sums.Where(sum => sum.Difference != 0).Select(sum => $"{year.Name}: {sum.Name} is off by {sum.Difference}"),
            .. ColumnsOf(log).Select(column => (column.What, column.Amount, Tallied: Tallied(sheet, column.What)))
                .Where(column => column.Amount != column.Tallied)
                .Select(column => $"{year.Name}: {column.What} are {column.Amount} in the log and {column.Tallied} in the tally"),
            .. Lines(sheet).Except(OnTheSheet(sheet)).Select(line => $"{year.Name}: the tally has {line.Amount} on {line.Name}, the sheet has not"),
            .. OnTheSheet(sheet).Except(Lines(sheet)).Select(line => $"{year.Name}: the sheet has {line.Amount} on {line.Name}, the tally has not"),
        ];
    }

    private static IEnumerable<(string What, decimal Amount)> ColumnsOf(SalesLog log)
    {
        Piece[] sold = [.. log.Pieces.Where(piece => piece.IsSold)];
        SaleReturn[] undone = [.. log.Returns.Where(back => back.CameBack)];
        return
        [
            ("delivery charged", sold.Sum(piece => piece.DeliveryCharged ?? 0)),
            ("delivery charged for pieces that came back", undone.Sum(back => back.DeliveryCharged ?? 0)),
            ("fees of sales that were undone", undone.Sum(back => back.Fees ?? 0)),
            ("delivery and taking back of pieces that came back",
                undone.Sum(back => back.DeliveryCost ?? 0) + log.Returns.Sum(back => back.Cost ?? 0)),
            ("pieces bought", log.Pieces.Sum(piece => piece.BoughtPrice ?? 0)),
            ("fees, as written down", sold.Sum(piece => piece.Fees ?? 0)),
            ("delivery", sold.Sum(piece => piece.DeliveryCost ?? 0)),
            ("supplies bought", log.Supplies.Sum(purchase => purchase.Price ?? 0)),
            ("tools bought", log.Tools.Sum(tool => tool.Price ?? 0)),
            ("overheads", log.Overheads.Sum(row => row.Amount)),
        ];
    }

    private static decimal Tallied(YearReport sheet, string what) => sheet.Tally.Where(row => row.What == what).Sum(row => row.Total);

    private static (string Name, decimal Amount)[] Lines(YearReport sheet) =>
    [
        .. sheet.Tally.GroupBy(row => row.Line).Select(line => (line.Key, line.Sum(row => row.InYear))).Where(line => line.Item2 != 0),
    ];

    private static (string Name, decimal Amount)[] OnTheSheet(YearReport sheet) =>
    [
        .. sheet.Lines.Where(line => sheet.Tally.Any(row => row.Line == line.Name))
            .GroupBy(line => line.Name).Select(line => (line.Key, line.Sum(part => part.Amount)))
            .Append(("tools_bought", sheet.Tools.Where(tool => tool.IsBoughtInYear).Sum(tool => tool.Price)))
            .Where(line => line.Item2 != 0),
    ];
}
