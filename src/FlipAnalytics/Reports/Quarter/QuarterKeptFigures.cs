using System.Collections.Immutable;
using System.Text.Json;

namespace FlipAnalytics;

/// <summary>A figure of a span, as it is kept.</summary>
/// <param name="Part">profit, hours, money or stock.</param>
/// <param name="Line">Name of the line in its part.</param>
/// <param name="Unit">"money", "hours" or "pieces".</param>
/// <param name="Amount">The figure; null where it is unknown.</param>
public sealed record QuarterKeptFigure(string Part, string Line, string Unit, decimal? Amount);

/// <summary>The figures of a span that are kept and compared, in the order of the page.</summary>
internal static class QuarterKeptFigures
{
    public const string Money = "money";
    public const string Hours = "hours";
    public const string Pieces = "pieces";

    private const int HoursDigits = 4;

    /// <summary>The figures of a report.</summary>
    public static ImmutableArray<QuarterKeptFigure> Of(QuarterReport report) =>
        Of(report.Profit, report.Hours, report.Cash, report.Held, report.Opening, report.Closing, report.Workshop.Currency);

    /// <summary>The same figures of a log, without the rest of a report.</summary>
    /// <param name="log">The log, as of its date.</param>
    /// <param name="period">The span; it may reach beyond the date of the log, but not begin after it.</param>
    public static ImmutableArray<QuarterKeptFigure> Of(SalesLog log, ReportPeriod period)
    {
        QuarterBooks books = new(log);
        ReportPeriod reckoned = period.UpTo(log.Date);
        var sales = QuarterSale.In(books, reckoned);
        var profit = QuarterProfit.Of(books, reckoned, sales);
        return Of(
            profit,
            QuarterHours.Of(books, reckoned, sales, profit),
            QuarterCash.Of(books, reckoned),
            QuarterHeld.In(books, reckoned),
            QuarterStock.At(books, reckoned.From.AddDays(-1)),
            QuarterStock.At(books, reckoned.To),
            books.Currency);
    }

    private static ImmutableArray<QuarterKeptFigure> Of(
        QuarterProfit profit, QuarterHours hours, QuarterCash cash, ImmutableArray<QuarterHeld> held, QuarterStock opening,
        QuarterStock closing, Currency currency)
    {
        // Every line of profit and loss is kept under the name it has in the JSON, so a new one is kept without more ado.
        IEnumerable<QuarterKeptFigure> profitLines = JsonSerializer
            .SerializeToElement(profit, QuarterJsonContext.Readable.QuarterProfit).EnumerateObject()
            .Where(line => line.Value.ValueKind == JsonValueKind.Number)
            .Select(line => new QuarterKeptFigure(
                "profit", line.Name, line.Name == "pieces" ? Pieces : Money, line.Value.GetDecimal()));
        return
        [
            .. profitLines,
            new("hours", "hours it took", Hours, hours.Wage?.Hours),
            new("hours", "an hour", Money, hours.Wage?.PerHour),
            new("hours", "an hour of the pieces sold", Money, hours.Bridge is { } bridge ? currency.Round(bridge.FullWage) : null),
            new("hours", "hours worked", Hours, decimal.Round(hours.Worked, HoursDigits)),
            .. cash.Lines.Where(line => line.In != 0).Select(line => new QuarterKeptFigure("money", $"in: {line.What}", Money, line.In)),
            .. cash.Lines.Where(line => line.Out != 0).Select(line => new QuarterKeptFigure("money", $"out: {line.What}", Money, line.Out)),
            new("money", "in hand", Money, cash.Change),
            new("money", "driving, reckoned", Money, cash.DrivingReckoned),
            .. held.Select(other => new QuarterKeptFigure("money", NameOf(other.Of), Money, other.Closing)),
            .. new[] { ("start", opening), ("end", closing) }.SelectMany(stock => new QuarterKeptFigure[]
            {
                new("stock", $"pieces at the {stock.Item1}", Money, stock.Item2.Cost),
                new("stock", $"in cans at the {stock.Item1}", Money, stock.Item2.InCans),
                new("stock", $"tools at the {stock.Item1}", Money, stock.Item2.Tools),
            }),
        ];
    }

    private static string NameOf(MoneyOf whose) => whose switch
    {
        MoneyOf.TaxOffice => "held: sales tax to pay over",
        MoneyOf.Buyers => "held: paid by buyers before the sale",
        MoneyOf.OwnersOfPieces => "held: owed to owners of pieces sold for them",
        _ => "held: put in by you, less what you took out",
    };
}
