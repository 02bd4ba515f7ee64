using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A report as tables, for a spreadsheet, a data frame or a page of a notebook.</summary>
public static class QuarterTables
{
    private sealed record QuarterFigure(string Name, string Meaning, decimal? Value);

    private sealed record QuarterBesideEarlier(string Name, string Meaning, decimal Now, decimal? Before, decimal? YearEarlier);

    private sealed record QuarterTiedUp(string Day, string By, QuarterStockGroup Group);

    /// <summary>All tables: profit-and-loss, cash, stock, stock-pieces, supplies-by-can, pieces-sold, ratios, comparison, next-steps and sums.</summary>
    /// <param name="report">The report.</param>
    public static ImmutableArray<ReportTable> Of(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return
        [
            ProfitAndLoss(report), Cash(report), Stock(report), StockPieces(report), SuppliesByCan(report), PiecesSold(report), Ratios(report),
            Comparison(report), NextSteps(report), Sums(report),
            WageBridgeText.Table(report.Hours.Bridge, report.Period, report.Workshop),
            WageBridgeText.Table(report.Hours.Everywhere, report.Period),
            .. report.SinceKept is { Lines.IsEmpty: false } since ? [QuarterKeptText.Table(since)] : ImmutableArray<ReportTable>.Empty,
            .. report.SetAside.IsEmpty ? ImmutableArray<ReportTable>.Empty : [SetAsideText.Table(report.SetAside)],
        ];
    }

    /// <summary>Profit and loss, a row a line, beside the spans it is compared with.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable ProfitAndLoss(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        (string, string, Func<QuarterProfit, decimal>)[] lines =
        [
            ("pieces_sold", "pieces sold", p => p.Pieces),
            ("sales", "sales", p => p.Sales),
            ("delivery_charged", "delivery charged", p => p.DeliveryCharged),
            ("returns", "given back to buyers", p => p.Returns),
            ("purchases", "what the pieces sold had been bought for", p => p.Purchases),
            ("supplies", "supplies used up on them", p => p.Supplies),
            ("outings", "outings that brought them home", p => p.Outings),
            ("cost_of_pieces_sold", "cost of the pieces sold", p => p.CostOfPiecesSold),
            ("gross_profit", "gross profit", p => p.GrossProfit),
            ("fees", "fees", p => p.Fees),
            ("delivery", "delivery", p => p.Delivery),
            ("written_off", "written off", p => p.WrittenOff),
            ("tool_wear", "wear of tools", p => p.ToolWear),
            ("overheads", "overheads", p => p.Overheads),
            ("supplies_lost", "supplies wasted, or missing at a count", p => p.SuppliesLost),
            ("net_profit", "net profit", p => p.Net),
        ];
        return ReportTable.Of(
            "profit-and-loss",
            $"Profit and loss of {report.Period.Name}",
            lines.Select(line => new QuarterBesideEarlier(
                line.Item1, line.Item2, line.Item3(report.Profit), Then(report.AgainstBefore, line.Item3),
                Then(report.AgainstYearEarlier, line.Item3))),
            ("line", "name of the line", row => row.Name),
            ("meaning", "what it is", row => row.Meaning),
            ("amount", $"amount in {report.Period.Name}", row => row.Now),
            ("before", "the span before", row => row.Before),
            ("year_earlier", "a year earlier", row => row.YearEarlier));
    }

    /// <summary>Money in and out by kind.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable Cash(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return Cash("cash", report.Period, report.Cash);
    }

    internal static ReportTable Cash(string name, ReportPeriod period, QuarterCash cash) => ReportTable.Of(
        name,
        $"Money in and out in {period.Name}; driving is reckoned, not paid",
        [.. cash.Lines, new QuarterCashLine("driving, reckoned", 0, cash.DrivingReckoned)],
        ("what", "what for", line => line.What),
        ("money_in", "money in", line => line.In),
        ("money_out", "money out", line => line.Out));

    /// <summary>Stock at the start and at the end by state and by age, in cans and in tools.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable Stock(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        string unit = report.Workshop.LengthUnit == LengthUnit.Inch ? "square feet" : "square metres";
        return ReportTable.Of(
            "stock",
            "What is tied up, at cost, on the evening before and on the last evening",
            new[] { report.Opening, report.Closing }.SelectMany(stock => stock.ByState
                .Select(group => new QuarterTiedUp(ReportTable.TextOf(stock.Day), "state", group))
                .Concat(stock.ByAge.Select(group => new QuarterTiedUp(ReportTable.TextOf(stock.Day), "days since bought", group)))
                .Append(new(ReportTable.TextOf(stock.Day), "other", new("supplies in cans", 0, stock.InCans, 0, 0)))
                .Append(new(ReportTable.TextOf(stock.Day), "other", new("tools at book value", 0, stock.Tools, 0, 0)))),
            ("evening", "on the evening of", row => row.Day),
            ("by", "grouped by", row => row.By),
            ("group", "group", row => row.Group.Name),
            ("pieces", "pieces", row => row.Group.Pieces),
            ("cost", "cost so far", row => row.Group.Cost),
            ("floor", $"floor in {unit}", row => row.Group.Floor),
            ("floor_unknown", "pieces without a size", row => row.Group.FloorUnknown));
    }

    /// <summary>Each piece in stock on the last evening.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable StockPieces(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ReportTable.Of(
            "stock-pieces",
            "Pieces in stock on the last evening",
            report.Closing.Pieces,
            ("id", "id", piece => piece.Id),
            ("type", "type", piece => piece.Type),
            ("is_on_sale", "on sale", piece => piece.IsOnSale),
            ("cost", "cost so far", piece => piece.Cost),
            ("days_here", "days since bought", piece => piece.DaysHere),
            ("days_on_sale", "days on sale", piece => piece.DaysOnSale),
            ("floor", "floor", piece => piece.Floor is { } floor ? decimal.Round(floor, 2, MidpointRounding.AwayFromZero) : null));
    }

    /// <summary>Each purchase of supplies, and what became of it by the last evening.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable SuppliesByCan(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ReportTable.Of(
            "supplies-by-can",
            "Supplies by purchase: bought is used, wasted, missing at a count and left",
            report.Cans,
            ("item", "item", can => can.Item),
            ("bought_on", "bought on", can => can.BoughtOn),
            ("bought", "bought", can => can.Bought),
            ("unit", "unit", can => can.Unit),
            ("used", "used on pieces", can => can.Used),
            ("wasted", "wasted", can => can.Wasted),
            ("counted_away", "missing at counts, below zero where found", can => can.CountedAway),
            ("left", "left", can => can.Left),
            ("cost", "paid", can => can.Cost),
            ("cost_used", "of it used on pieces", can => can.CostUsed),
            ("cost_wasted", "of it wasted", can => can.CostWasted),
            ("cost_counted_away", "of it missing at counts", can => can.CostCountedAway),
            ("value_left", "of it left", can => can.ValueLeft),
            ("line", "line of supplies.csv", can => can.Row));
    }

    /// <summary>Each piece sold.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable PiecesSold(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ReportTable.Of(
            "pieces-sold",
            $"Pieces sold in {report.Period.Name}",
            report.Sales,
            ("id", "id", sale => sale.Id),
            ("type", "type", sale => sale.Type),
            ("sold_on", "sold on", sale => sale.SoldOn),
            ("sale_price", "sale price", sale => sale.SalePrice),
            ("delivery_charged", "delivery charged", sale => sale.DeliveryCharged),
            ("purchase", "bought for", sale => sale.Purchase),
            ("supplies", "supplies", sale => sale.Supplies),
            ("outing", "share of the outing", sale => sale.Outing),
            ("fees", "fees", sale => sale.Fees),
            ("delivery", "delivery", sale => sale.Delivery),
            ("left", "left after its own costs", sale => sale.Contribution),
            ("hours", "hours at the bench and on the outing", sale => sale.Hours),
            ("missing", "not written down", sale => string.Join(", ", sale.Missing)),
            ("came_back_on", "day it came back; empty where the sale stands", sale => sale.ReturnedOn));
    }

    /// <summary>Each return.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable Returns(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ReportTable.Of(
            "returns",
            $"Pieces that came back and money given back in {report.Period.Name}",
            report.Returns,
            ("id", "id", back => back.Id),
            ("type", "type", back => back.Type),
            ("returned_on", "day of the return", back => back.ReturnedOn),
            ("sold_on", "day of the sale that was undone; empty where the sale stands", back => back.SoldOn),
            ("given_back", "given back", back => back.GivenBack),
            ("cost", "what the piece that is back had cost", back => back.Cost),
            ("taking_back", "what taking it back cost", back => back.TakingBack));
    }

    /// <summary>Hours, counts and ratios with their definitions; empty where undefined.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable Ratios(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        StockRatios stock = report.Ratios.Stock;
        QuarterFigure[] figures =
        [
            new("wage", "profit an hour, over the pieces whose hours and prices are known", report.Hours.Wage?.PerHour),
            new("wage_hours", "hours it rests on", report.Hours.Wage?.Hours),
            new("hours_worked", "hours worked in the span", report.Hours.Worked),
            new("sell_through", "sold over on sale at the start and listed since", report.Ratios.SellThrough.Share),
            new("average_stock", "mean stock at cost of the start, each month's end and the end", stock.AverageStock),
            new("turnover", "cost of pieces sold over average stock", stock.Turnover),
            new("turnover_a_year", "the same at this pace for 365 days", stock.TurnoverAYear),
            new("days_of_stock", "days the average stock lasts at this pace", stock.DaysOfStock),
            new("return_on_stock", "gross profit over average stock", stock.ReturnOnStock),
            new("return_on_stock_a_year", "the same at this pace for 365 days", stock.ReturnOnStockAYear),
            new("break_even_flips", "overheads and tool wear over what a flip leaves", report.Ratios.BreakEven?.Flips),
            new("bought", "pieces bought", report.Counts.Bought),
            new("finished", "pieces finished", report.Counts.Finished),
            new("listed", "pieces listed", report.Counts.Listed),
            new("sold", "pieces sold", report.Counts.Sold),
            new("came_back", "pieces that came back", report.Counts.CameBack),
            new("withdrawn", "pieces gone without a sale", report.Counts.Withdrawn),
        ];
        return ReportTable.Of(
            "ratios",
            $"Hours, ratios and counts of {report.Period.Name}",
            figures,
            ("name", "name", figure => figure.Name),
            ("meaning", "definition", figure => figure.Meaning),
            ("value", "value", figure => figure.Value is { } value
                ? decimal.Round(value, 6, MidpointRounding.AwayFromZero) : null));
    }

    /// <summary>What drove the change of net profit; the amounts of a span add up to the change.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable Comparison(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ReportTable.Of(
            "comparison",
            "What drove the change of net profit",
            new[] { report.AgainstBefore, report.AgainstYearEarlier }.OfType<QuarterChange>()
                .Where(change => !change.IsBeforeTheLog)
                .SelectMany(change => change.Effects
                    .Append(new("net profit", "all of it", change.Net)).Select(effect => (change.With.Name, Effect: effect))),
            ("against", "against", row => row.Name),
            ("effect", "effect", row => row.Effect.Name),
            ("meaning", "meaning", row => row.Effect.Meaning),
            ("amount", "amount", row => row.Effect.Amount));
    }

    /// <summary>What to do next.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable NextSteps(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ReportTable.Of(
            "next-steps",
            "What to do next",
            report.Steps,
            ("what", "what to do", step => step.What),
            ("subject", "with what", step => step.Subject),
            ("count", "how many", step => step.Count),
            ("amount", "money", step => step.Amount),
            ("hours", "hours", step => step.Hours),
            ("wage", "profit an hour", step => step.Wage),
            ("text", "in words", step => step.Text));
    }

    /// <summary>The reconciliations, a row a term; what adds up to nothing is right.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable Sums(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return Sums("sums", report.Sums);
    }

    internal static ReportTable Sums(string name, ImmutableArray<QuarterSum> sums) => ReportTable.Of(
        name,
        "Sums that must come out",
        sums.SelectMany(sum => sum.Terms
            .Append(new(sum.Result, -sum.Total)).Append(new("difference", sum.Difference)).Select(term => (sum.Name, term))),
        ("sum", "sum", row => row.Name),
        ("term", "term", row => row.term.What),
        ("amount", "amount", row => row.term.Amount));

    private static decimal? Then(QuarterChange? change, Func<QuarterProfit, decimal> line) =>
        change is { IsBeforeTheLog: false } ? line(change.Profit) : null;
}
