using System.Collections.Immutable;
using System.Globalization;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>What a line of the quarter is made of, for whoever reads the kept file.</summary>
/// <param name="Line">Word of the line, as <see cref="QuarterLine.All"/> has it.</param>
/// <param name="Total">Its figure; the parts add up to it.</param>
/// <param name="Parts">
/// A text each: file and line, what it is, the piece, the day, the amount, such as
/// <c>pieces.csv, line 33: sold, P0031, 2026-02-11, 240</c>.
/// </param>
public sealed record QuarterKeptParts(string Line, decimal Total, ImmutableArray<string> Parts)
{
    // Sums of other lines: their parts stand there.
    private static readonly string[] SumsOfLines = [QuarterLine.CostOfSold, QuarterLine.GrossProfit, QuarterLine.Profit];

    /// <summary>The lines of a report that have any part.</summary>
    internal static ImmutableArray<QuarterKeptParts> Of(QuarterReport report, SalesLog log)
    {
        QuarterBooks books = new(log);
        return
        [
            .. QuarterLine.All.Where(line => !SumsOfLines.Contains(line.Word))
                .Select(line => QuarterTrail.Of(books, report, line))
                .Where(trail => trail.Parts.Length > 0)
                .Select(trail => new QuarterKeptParts(trail.Line.Word, trail.Total, [.. trail.Parts.Select(TextOf)])),
        ];
    }

    private static string TextOf(QuarterTrailPart part)
    {
        string place = part.File is null ? "" : part.Row is > 0 and { } row ? Invariant($"{part.File}, line {row}: ") : $"{part.File}: ";
        string[] words =
        [
            .. new[]
            {
                part.What,
                part.Id is { } id && !part.What.Contains(id, StringComparison.Ordinal) ? id : null,
                part.Date is { } day ? Invariant($"{day:yyyy-MM-dd}") : null,
                part.Amount.Trimmed().ToString(CultureInfo.InvariantCulture),
            }.OfType<string>(),
        ];
        return place + string.Join(", ", words);
    }
}
