using System.Globalization;

namespace FlipAnalytics.Plots;

/// <summary>A quarter: from its sales to what was made, that against earlier spans, and what is in stock for how long.</summary>
public static class QuarterPlot
{
    private const float PanelGap = 14;

    /// <summary>The plot.</summary>
    /// <param name="report">The report.</param>
    public static Figure Of(QuarterReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        string headline = QuarterSentences.Headline(report);
        bool hasProfit = report.Profit.Pieces > 0 || report.Profit.OtherCosts != 0;
        if (!hasProfit && report.Closing.Pieces.IsEmpty)
            return Sheet.Sentence($"What {report.Reckoned.Name} paid", $"{headline} No piece was in stock at its end.");
        // The first sentence is the answer; what it leaves out stands below it.
        string[] sentences = headline.Split(". ", 2);
        string paid = QuarterSentences.AgainstTarget(report) is { } verdict ? $". {verdict.TrimEnd('.')}" : "";
        var sheet = new Sheet(sentences[0].TrimEnd('.') + paid, sentences.Length > 1 ? sentences[1] : null);
        string currency = report.Workshop.Currency.Code;
        var words = new List<string>();
        if (hasProfit)
        {
            words.Add(WaterfallPlot.AddTo(
                sheet,
                report.Profit.Waterfall(),
                $"{report.Reckoned.Name}, {currency}",
                report.Workshop));
            sheet.Top += PanelGap;
            words.Add(AddChanges(sheet, report, currency));
            sheet.Top += PanelGap;
        }

        words.Add(AddStock(sheet, report, currency));
        return sheet.Finish(string.Join(" ", words));
    }

    private static string AddChanges(Sheet sheet, QuarterReport report, string currency)
    {
        BarRow[] rows =
        [
            Row(report.Reckoned.Name, report.Profit),
            .. new[] { (report.AgainstBefore, "the one before"), (report.AgainstYearEarlier, "a year earlier") }
                .Where(earlier => earlier.Item1 is not null)
                .Select(earlier => Earlier(earlier.Item1!, earlier.Item2)),
        ];
        BarRows.AddTo(sheet, rows, Bars(rows, $"net profit, {currency}") with { Heading = "What you made, then and now", NameLines = 2, RowHeight = 40 });
        return string.Join("; ", rows.Select(row => $"{row.Name}: {row.Label}")) + ".";

        BarRow Earlier(QuarterChange change, string when) => change.IsBeforeTheLog
            ? new($"{change.With.Name}, {when}", 0, "the log begins later")
            : Row($"{change.With.Name}, {when}", change.Profit);

        BarRow Row(string name, QuarterProfit profit) => new(
            name, (double)profit.Net,
            string.Create(CultureInfo.InvariantCulture, $"{MoneyText.Exact(profit.Net, report.Workshop)}, {profit.Pieces} sold"));
    }

    private static string AddStock(Sheet sheet, QuarterReport report, string currency)
    {
        QuarterStock stock = report.Closing;
        string evening = string.Create(CultureInfo.InvariantCulture, $"{stock.Day:yyyy-MM-dd}");
        if (stock.Pieces.IsEmpty)
        {
            string nothing = $"No piece in stock on {evening}.";
            sheet.AddLines(nothing, Lettering.Heading, 1);
            return nothing;
        }

        string heading = $"In stock on {evening}, by days since bought: {Style.Count(stock.Pieces.Length, "piece")} that cost {MoneyText.Exact(stock.Cost, report.Workshop)}";
        BarRow[] rows =
        [
            .. stock.ByAge.Where((age, i) => age.Pieces > 0 || i < stock.ByAge.Length - 1).Select(age => new BarRow(
                age.Name, (double)age.Cost, age.Pieces == 0 ? "none" : $"{MoneyText.Exact(age.Cost, report.Workshop)}, {Style.Count(age.Pieces, "piece")}")),
        ];
        BarRows.AddTo(sheet, rows, Bars(rows, $"cost so far, {currency}") with { Heading = heading });
        return $"{heading}. {string.Join("; ", rows.Select(row => $"{row.Name}: {row.Label}"))}.";
    }

    private static BarRowsLook Bars(BarRow[] rows, string label) =>
        new(Scale.Of(rows.Select(row => row.Amount).Append(0)), label);
}
