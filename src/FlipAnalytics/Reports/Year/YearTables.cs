using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A year's sheet as tables, for a spreadsheet. Their names begin with year-, so that none is that of a log's own file.</summary>
public static class YearTables
{
    /// <summary>All tables; each is there also where it is empty, so that a sheet always has the same files.</summary>
    /// <param name="report">The report.</param>
    public static ImmutableArray<ReportTable> Of(YearReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return
        [
            Lines(report), Sales(report), Left(report), Driving(report), Overheads(report), Tools(report), Stock(report),
            Supplies(report), QuarterTables.Cash("year-cash", report.Period, report.Cash), EveryCent(report), Questions(report),
            QuarterTables.Sums("year-sums", report.Sums),
            SetAsideText.Table(report.SetAside) with { Name = "year-set-aside" },
        ];
    }

    /// <summary>The lines of the sheet.</summary>
    /// <param name="report">The report.</param>
    public static ReportTable Lines(YearReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return ReportTable.Of(
            "year-lines",
            $"Receipts, cost of goods sold and expenses of {report.Period.Name}",
            report.Lines.Where(line => line.IsAlways || line.Amount != 0),
            ("section", "receipts, cost of goods sold or expenses", line => line.Section),
            ("line", "name of the line", line => line.Name),
            ("meaning", "what it is", line => line.What),
            ("counts", "adds to the profit, takes from it, is a sum, or is a part of the line above", line => line.Sign switch
            {
                '+' => "adds",
                '-' => "takes",
                '=' => "sum",
                _ => "part",
            }),
            ("amount", "amount", line => line.Amount));
    }

    private static ReportTable Sales(YearReport report) => ReportTable.Of(
        "year-sales",
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
        ("cost", "cost of goods sold", sale => sale.Cost),
        ("fees", "fees", sale => sale.Fees),
        ("delivery", "delivery", sale => sale.Delivery),
        ("missing", "not written down", sale => string.Join(", ", sale.Missing)));

    private static ReportTable Left(YearReport report) => ReportTable.Of(
        "year-left-unsold",
        $"Pieces that left unsold in {report.Period.Name}",
        report.Left,
        ("id", "id", left => left.Id),
        ("what", "title or type", left => left.What),
        ("left_on", "left on", left => left.LeftOn),
        ("left_as", "how", left => left.How is { } how ? Columns.WordOf(how) : null),
        ("cost", "what it had cost", left => left.Cost),
        ("is_written_off", "a loss; one kept is a withdrawal", left => left.IsWrittenOff));

    private static ReportTable Driving(YearReport report)
    {
        string unit = report.Workshop.DistanceUnit == DistanceUnit.Mile ? "miles" : "km";
        return ReportTable.Of(
            "year-driving",
            $"Outings of {report.Period.Name}; their cost is in other lines already",
            report.Driving.Outings,
            ("date", "day", outing => outing.Date),
            ("trip", "name in trips.csv", outing => outing.Trip),
            ("purpose", "what it was for", outing => Columns.WordOf(outing.Purpose)),
            ("distance", $"distance in {unit}", outing => outing.Distance),
            ("rate", "driving over distance", outing => outing.Rate),
            ("driving", "driving at the rate", outing => outing.Driving),
            ("other_cost", "parking, tolls, van hire", outing => outing.OtherCost),
            ("pieces", "pieces brought home", outing => outing.Pieces),
            ("included_in", "where it counts already", outing => outing.IsOverhead ? "overheads" : outing.IsDelivery ? "delivery" : "cost of pieces"),
            ("rule", "which rate", outing => outing.Rule),
            ("notes", "notes of trips.csv", outing => outing.Notes));
    }

    private static ReportTable Overheads(YearReport report) => ReportTable.Of(
        "year-overheads",
        $"Overheads of {report.Period.Name}",
        report.Overheads,
        ("item", "what for", item => item.Item),
        ("entries", "rows or outings it is made of", item => item.Entries),
        ("amount", "amount", item => item.Amount),
        ("is_fruitless_outings", "outings that brought nothing home", item => item.IsFruitless));

    private static ReportTable Tools(YearReport report) => ReportTable.Of(
        "year-tools",
        FormattableString.Invariant($"Tools there on {report.Reckoned.To:yyyy-MM-dd}; wear is the books' own reckoning"),
        report.Tools,
        ("item", "tool", tool => tool.Item),
        ("bought_on", "bought on", tool => tool.BoughtOn),
        ("price", "price", tool => tool.Price),
        ("is_bought_in_year", "bought in the year", tool => tool.IsBoughtInYear),
        ("wear", "wear in the year", tool => tool.Wear),
        ("value", "left of its price (book value)", tool => tool.Value),
        ("rule", "how wear is reckoned", tool => tool.Rule));

    private static ReportTable Stock(YearReport report) => ReportTable.Of(
        "year-stock",
        FormattableString.Invariant($"Pieces in stock on {report.Reckoned.To:yyyy-MM-dd}, at cost"),
        report.Stock,
        ("id", "id", piece => piece.Id),
        ("what", "title or type", piece => piece.What),
        ("bought_on", "bought on", piece => piece.BoughtOn),
        ("purchase", "bought for", piece => piece.Purchase),
        ("supplies", "supplies", piece => piece.Supplies),
        ("outing", "share of the outing", piece => piece.Outing),
        ("cost", "cost so far", piece => piece.Cost));

    private static ReportTable Supplies(YearReport report) => ReportTable.Of(
        "year-supplies",
        FormattableString.Invariant($"Supplies in cans on {report.Reckoned.To:yyyy-MM-dd}, at cost"),
        report.Supplies,
        ("item", "supply", supply => supply.Item),
        ("value", "what the rest cost", supply => supply.Value));

    private static ReportTable EveryCent(YearReport report) => ReportTable.Of(
        "year-every-cent",
        "All money in the files by kind, and where it counts",
        report.Tally,
        ("what", "what", row => row.What),
        ("column", "where it is written", row => row.Column),
        ("line", "line of the sheet", row => row.Line),
        ("in_year", $"in {report.Period.Name}", row => row.InYear),
        ("before", "before it", row => row.Before),
        ("after", "after it", row => row.After),
        ("without_day", "without a day", row => row.WithoutDay),
        ("total", "all of it", row => row.Total));

    private static ReportTable Questions(YearReport report) => ReportTable.Of(
        "year-questions",
        "To ask a tax professional; these are no advice",
        report.Prompts,
        ("place", "if you are in", prompt => prompt.Place),
        ("question", "question", prompt => prompt.Text),
        ("source", "source", prompt => prompt.Source),
        ("status", "how well the source backs it", prompt => prompt.Status));
}
