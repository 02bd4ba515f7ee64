using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The reconciliations of a year: the sheet against the books, and all money in the files against the sheet.</summary>
internal static class YearSums
{
    public static ImmutableArray<QuarterSum> Of(
        QuarterBooks books, YearReport report, QuarterStock opening, QuarterStock closing, QuarterMovement moved)
    {
        YearCostOfGoods goods = report.CostOfGoods;
        return
        [
            Sum("cost of goods sold", "cost of the pieces sold, piece by piece", report.Profit.CostOfPiecesSold,
                ("opening stock", goods.Opening),
                ("purchases", goods.Purchases),
                ("other costs", goods.OtherCosts),
                ("closing stock", -goods.Closing)),
            Sum("lines of the sheet", "net profit", report.Profit.Net,
                [.. report.Lines.Where(line => line.Effect != 0).Select(line => (line.What, line.Effect))]),
            Sum("overheads by item", "overheads", report.Profit.Overheads,
                [.. report.Overheads.Select(item => (item.Item, item.Amount))]),
            Sum("stock by piece", "pieces in stock", closing.Cost, [.. report.Stock.Select(piece => (piece.Id, piece.Cost))]),
            Sum("supplies by item", "in cans", closing.InCans, [.. report.Supplies.Select(supply => (supply.Item, supply.Value))]),
            Sum("tools by tool", "tools at book value", closing.Tools, [.. report.Tools.Select(tool => (tool.Item, tool.Value))]),
            Sum("tools at book value", "tools at the end", closing.Tools,
                ("tools at the start", opening.Tools), ("bought", moved.ToolsBought), ("wear", -moved.ToolWear)),
            Sum("driving", "driving, reckoned", report.Cash.DrivingReckoned,
                ("in the cost of pieces", report.Driving.InPieces), ("on outings that brought nothing home", report.Driving.InFruitless),
                ("on supply runs and other drives", report.Driving.InOtherDrives),
                ("to buyers", report.Driving.InDelivery)),
            Sum("all money in the files", "receipts less all that was spent, of any day", AllMoney(books),
                [.. report.Tally.Where(row => row.Line.Length > 0)
                    .Select(row => (row.What, YearTally.IsReceipt(row.Line) ? row.Total : -row.Total))]),
        ];
    }

    // Found from the movements of money and not from the lines of cost.
    private static decimal AllMoney(QuarterBooks books) =>
        books.Costs.Cash.Sum(movement => movement.Amount) - books.Costs.Totals.Sum(total => total.Stated);

    private static QuarterSum Sum(string name, string result, decimal total, params (string What, decimal Amount)[] terms) =>
        new(name, [.. terms.Select(term => new QuarterTerm(term.What, term.Amount))], result, total);
}
