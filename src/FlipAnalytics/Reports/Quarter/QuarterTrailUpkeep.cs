using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// What falls into a span whatever is sold: wear of tools and overhead, each by its days in the span, and what is left of the
/// tools.
/// </summary>
internal static class QuarterTrailUpkeep
{
    public static QuarterTrail Tools(QuarterBooks books, QuarterReport report)
    {
        // What pieces carry and what idle months do not: a tool's wear is one part.
        QuarterTrailPart[] parts =
        [
            .. Within(books, report, books.Costs.ToolWear).GroupBy(worn => (worn.Line.What, worn.Line.Origin)).Select(tool =>
                QuarterTrailPart.Of(tool.Key.Origin, tool.Key.What, null, tool.Sum(worn => worn.Amount)) with
                {
                    Rule = tool.Key.Origin.Rule
                        + (tool.Any(worn => worn.Amount != worn.Line.Amount) ? " A month that the span cuts counts by its days." : ""),
                }),
        ];
        return QuarterTrail.Of(report, QuarterLine.Tools, report.Profit.ToolWear, parts.Length, "tool", parts.OrderBy(part => part.Row),
            [
                .. books.Costs.Notes.Where(note => note.Contains(Columns.Tools.File, StringComparison.Ordinal)),
                .. StillToArise(report), .. QuarterTrail.Undated(report, QuarterUndated.Wear),
            ]);
    }

    public static QuarterTrail Overhead(QuarterBooks books, QuarterReport report)
    {
        (CostLine Line, decimal Amount)[] lines = [.. Within(books, report, books.Costs.Overheads)];
        Func<CostLine, TripPurpose?> purposeOf = PurposeOf(books);
        QuarterTrailPart[] parts =
        [
            .. lines.Where(line => purposeOf(line.Line) is null).GroupBy(line => line.Line.What, StringComparer.OrdinalIgnoreCase)
                .SelectMany(item => item.OrderBy(line => line.Line.Date).Select(line => Part(line.Line, line.Amount, item.Key))),
            .. lines.Where(line => purposeOf(line.Line) is not null).GroupBy(line => purposeOf(line.Line)!.Value)
                .OrderBy(purpose => purpose.Key)
                .SelectMany(purpose => purpose.OrderBy(line => line.Line.Date)
                    .Select(line => Part(line.Line, line.Amount, Heading(purpose.Key)))),
        ];
        return QuarterTrail.Of(
            report, QuarterLine.Overhead, report.Profit.Overheads, parts.Select(part => part.Group).Distinct().Count(), "item", parts,
            StillToArise(report));

        QuarterTrailPart Part(CostLine line, decimal amount, string item) =>
            QuarterTrailPart.Of(line.Origin, line.What, line.Date, amount) with
            {
                Group = item,
                Rule = line.Origin.Rule + (amount == line.Amount ? "" : DaysOf(line, report.Reckoned)),
            };
    }

    /// <summary>What the outing behind an overhead was for; null for a row of <c>overheads.csv</c>.</summary>
    public static Func<CostLine, TripPurpose?> PurposeOf(QuarterBooks books)
    {
        var outings = books.Costs.Cash.Where(movement => movement.Outing is not null)
            .ToLookup(movement => movement.Origin, movement => movement.Outing!.Purpose);
        return line => line.Origin.File == Columns.Trips.File ? outings[line.Origin].FirstOrDefault() : null;
    }

    public static QuarterTrail BookValue(QuarterBooks books, QuarterReport report)
    {
        DateOnly day = report.Closing.Day;
        var boughtLater = books.Costs.Cash.Where(movement => movement.Kind == CostKind.Tools && movement.Date > day)
            .ToLookup(movement => movement.Origin, movement => -movement.Amount);
        var wornLater = books.Costs.ToolWear.ToLookup(line => line.Origin, line => line.Amount - line.ArisenBy(day, books.Currency));
        var tools = books.Costs.ToolsLeft.GroupBy(tool => tool.Origin).Select(same => QuarterTrailPart.Of(
            same.Key, same.First().Item, null,
            same.Sum(tool => tool.Value) - boughtLater[same.Key].Sum() + wornLater[same.Key].Sum()));
        QuarterTrailPart[] parts = [.. tools.Where(part => part.Amount != 0)];
        return QuarterTrail.Of(report, QuarterLine.BookValue, report.Closing.Tools, parts.Length, "tool", parts);
    }

    private static string Heading(TripPurpose purpose) => purpose switch
    {
        TripPurpose.Delivery => "drives to deliver",
        TripPurpose.Supplies => "supply runs",
        TripPurpose.Other => "other drives",
        _ => "outings that brought nothing home",
    };

    private static IEnumerable<(CostLine Line, decimal Amount)> Within(
        QuarterBooks books, QuarterReport report, ImmutableArray<CostLine> lines) => lines
        .Select(line => (line, CostsBySpan.Of(books.Costs, line, report.Reckoned)))
        .Where(line => line.Item2 != 0);

    private static string DaysOf(CostLine line, ReportPeriod period)
    {
        DateOnly first = line.Date!.Value, last = line.Until ?? first;
        DateOnly from = first < period.From ? period.From : first, to = last > period.To ? period.To : last;
        return Invariant(
            $" {to.DayNumber - from.DayNumber + 1} of its {last.DayNumber - first.DayNumber + 1} days count here.");
    }

    private static IEnumerable<string> StillToArise(QuarterReport report) =>
        WageBridgeText.StillToArise(report.StillToArise, report.AsOf, report.Workshop) is { } rest ? [rest] : [];
}
