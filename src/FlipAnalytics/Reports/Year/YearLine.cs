using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A line of the year's sheet.</summary>
/// <param name="Section">Receipts, cost of goods sold, or expenses.</param>
/// <param name="Name">Its name in snake_case.</param>
/// <param name="What">What it is, in the owner's words.</param>
/// <param name="Sign">
/// How it counts towards the profit: + adds, - takes away, = is the sum of what stands above it, and a blank tells a part of
/// the line above it. The lines with + less those with - are the profit.
/// </param>
/// <param name="Amount">Amount.</param>
/// <param name="IsAlways">Whether it is shown though it is 0.</param>
public sealed record YearLine(string Section, string Name, string What, char Sign, decimal Amount, bool IsAlways = false)
{
    internal const string Receipts = "receipts";
    internal const string CostOfGoods = "cost of goods sold";
    internal const string Expenses = "expenses";
    internal const string Outside = "outside the profit";

    internal const string OtherDrives = "other_drives";

    /// <summary>What it does to the profit.</summary>
    public decimal Effect => Sign switch { '+' => Amount, '-' => -Amount, _ => 0 };

    internal static ImmutableArray<YearLine> Of(
        QuarterProfit profit, YearCostOfGoods goods, ImmutableArray<YearOverhead> overheads, ImmutableArray<QuarterHeld> held,
        ReportPeriod reckoned, decimal feesByRule) =>
    [
        .. ReceiptLines(profit),
        .. GoodsLines(goods, reckoned),
        new(Expenses, "gross_profit", "gross profit", '=', profit.GrossProfit, true),
        new(Expenses, "fees", "fees of selling channels", '-', profit.Fees),
        new(Expenses, "fees_by_rule", "of them by your rule in workshop.toml, not from a statement", ' ', feesByRule),
        new(Expenses, "delivery", "delivery", '-', profit.Delivery),
        .. OverheadLines(overheads),
        new(Expenses, "tool_wear", "wear of tools (the books' own reckoning)", '-', profit.ToolWear),
        new(Expenses, "supplies_lost", "supplies wasted, or missing at a count; not in the cost above", '-', profit.SuppliesLost),
        new(Expenses, "written_off", "pieces written off; not in the cost above", '-', profit.WrittenOff),
        new(Expenses, "net_profit", profit.Net < 0 ? "loss" : "profit", '=', profit.Net, true),
        .. held.Select(line => new YearLine(Outside, OutsideProfit(line.Of).Name, OutsideProfit(line.Of).What, '=', line.More)),
    ];

    /// <summary>The line of money that is no profit, and where it is written.</summary>
    internal static (string Name, string What, string Column) OutsideProfit(MoneyOf of) => of switch
    {
        MoneyOf.TaxOffice => ("sales_tax", "sales tax taken, less what was paid over", "sales_tax in pieces.csv, and in money.csv"),
        MoneyOf.Buyers => ("paid_by_buyers", "paid by buyers, less what was due at the sale", "payment in money.csv"),
        MoneyOf.OwnersOfPieces => ("owners_of_pieces", "owed to owners of pieces you sold for them", "sold_price less commission in pieces.csv, paid_owner in money.csv"),
        _ => ("own_money", "put in by you, less what you took out", "put_in and taken in money.csv"),
    };

    // What comes in and goes back: only what the log holds is shown.
    private static IEnumerable<YearLine> ReceiptLines(QuarterProfit profit) =>
    [
        new(Receipts, "sales", "sales", '+', profit.Sales, true),
        new(Receipts, "delivery_charged", "delivery you charged", '+', profit.DeliveryCharged),
        new(Receipts, "returns", "given back to buyers", '-', profit.Returns),
    ];

    // Drives that looked for nothing share a line; the lists have them by what they were for.
    private static IEnumerable<YearLine> OverheadLines(ImmutableArray<YearOverhead> overheads)
    {
        YearOverhead[] drives = [.. overheads.Where(item => item is { Purpose: not null, IsFruitless: false })];
        return
        [
            .. overheads.Where(item => item.Purpose is null)
                .Select(item => new YearLine(Expenses, "overheads", $"overhead: {item.Item}", '-', item.Amount)),
            .. overheads.Where(item => item.IsFruitless).Select(item => new YearLine(
                Expenses, "fruitless_outings", $"outings that brought nothing home ({TextLines.Counted(item.Entries, "outing")})", '-',
                item.Amount)),
            .. drives.Length == 0 ? Array.Empty<YearLine>() :
            [
                new(Expenses, OtherDrives,
                    $"{string.Join(", ", drives.Select(item => item.Item))} ({TextLines.Counted(drives.Sum(item => item.Entries), "outing")})",
                    '-', drives.Sum(item => item.Amount)),
            ],
        ];
    }

    private static IEnumerable<YearLine> GoodsLines(YearCostOfGoods goods, ReportPeriod reckoned)
    {
        string before = FormattableString.Invariant($"{reckoned.From.AddDays(-1):yyyy-MM-dd}");
        string last = FormattableString.Invariant($"{reckoned.To:yyyy-MM-dd}");
        return
        [
            new(CostOfGoods, "opening_stock", $"stock and supplies in cans on {before}", '-', goods.Opening, true),
            new(CostOfGoods, "opening_pieces", "pieces", ' ', goods.OpeningPieces),
            new(CostOfGoods, "opening_in_cans", "in cans", ' ', goods.OpeningInCans),
            new(CostOfGoods, "purchases",
                goods.TakenOut.Any(taken => taken.Purchase != 0) ? "purchases: pieces bought, less those that left unsold" : "purchases: pieces bought",
                '-', goods.Purchases, true),
            new(CostOfGoods, "pieces_bought", "pieces bought", ' ', goods.PiecesBought),
            .. goods.TakenOut.Select(taken => new YearLine(CostOfGoods, "purchases_taken_out", $"less {taken.Why}", ' ', -taken.Purchase)),
            new(CostOfGoods, "other_costs", "other costs: supplies and outings", '-', goods.OtherCosts, true),
            new(CostOfGoods, "supplies_bought", "supplies bought", ' ', goods.SuppliesBought),
            new(CostOfGoods, "supplies_stated", "supplies stated in pieces.csv beyond the cans", ' ', goods.SuppliesStated),
            new(CostOfGoods, "supplies_other_day", "supplies from cans bought after the piece had left", ' ', goods.SuppliesOfOtherDay),
            new(CostOfGoods, "supplies_taken_out", "less wasted, or missing at a count", ' ', -goods.SuppliesLost),
            new(CostOfGoods, "outings", "outings that brought pieces home", ' ', goods.Outings),
            .. goods.TakenOut.Select(taken => new YearLine(CostOfGoods, "other_costs_taken_out", $"less {taken.Why}", ' ', -taken.Other)),
            new(CostOfGoods, "closing_stock", $"stock and supplies in cans on {last}", '+', goods.Closing, true),
            new(CostOfGoods, "closing_pieces", "pieces", ' ', goods.ClosingPieces),
            new(CostOfGoods, "closing_in_cans", "in cans", ' ', goods.ClosingInCans),
            new(CostOfGoods, "cost_of_goods_sold", "cost of goods sold", '=', goods.CostOfGoodsSold, true),
        ];
    }
}
