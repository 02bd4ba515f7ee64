namespace FlipAnalytics;

/// <summary>What falls into a span whatever is sold: wear of tools and overhead, and what is left of the tools.</summary>
internal static class QuarterTrailUpkeep
{
    private const string Fruitless = "outings that brought nothing home";

    public static QuarterTrail Tools(QuarterBooks books, QuarterReport report)
    {
        // What pieces carry and what idle months do not: a tool's wear is one part.
        QuarterTrailPart[] parts =
        [
            .. books.Wear.Where(line => report.Reckoned.Contains(line.Date))
                .GroupBy(line => (line.What, line.Origin))
                .Select(tool => QuarterTrailPart.Of(tool.Key.Origin, tool.Key.What, null, tool.Sum(line => line.Amount)))
                .OrderBy(part => part.Row),
        ];
        return QuarterTrail.Of(report, QuarterLine.Tools, report.Profit.ToolWear, parts.Length, "tool", parts,
            books.Costs.Notes.Where(note => note.Contains(Columns.Tools.File, StringComparison.Ordinal))
                .Concat(QuarterTrail.Undated(report, QuarterUndated.Wear)));
    }

    public static QuarterTrail Overhead(QuarterBooks books, QuarterReport report)
    {
        CostLine[] lines = [.. books.Costs.Overheads.Where(line => report.Reckoned.Contains(line.Date) && line.Amount != 0)];
        QuarterTrailPart[] parts =
        [
            .. lines.Where(line => !IsFruitless(line)).GroupBy(line => line.What, StringComparer.OrdinalIgnoreCase)
                .SelectMany(item => item.OrderBy(line => line.Date).Select(line => Part(line, item.Key))),
            .. lines.Where(IsFruitless).OrderBy(line => line.Date).Select(line => Part(line, Fruitless)),
        ];
        return QuarterTrail.Of(
            report, QuarterLine.Overhead, report.Profit.Overheads, parts.Select(part => part.Group).Distinct().Count(), "item", parts);

        static bool IsFruitless(CostLine line) => line.Origin.File == Columns.Trips.File;

        static QuarterTrailPart Part(CostLine line, string item) =>
            QuarterTrailPart.Of(line.Origin, line.What, line.Date, line.Amount) with { Group = item };
    }

    public static QuarterTrail BookValue(QuarterBooks books, QuarterReport report)
    {
        DateOnly day = report.Closing.Day;
        var boughtLater = books.Costs.Cash.Where(movement => movement.Kind == CostKind.Tools && movement.Date > day)
            .ToLookup(movement => movement.Origin, movement => -movement.Amount);
        var wornLater = books.Wear.Where(line => line.Date > day).ToLookup(line => line.Origin, line => line.Amount);
        var tools = books.Costs.ToolsLeft.GroupBy(tool => tool.Origin).Select(same => QuarterTrailPart.Of(
            same.Key, same.First().Item, null,
            same.Sum(tool => tool.Value) - boughtLater[same.Key].Sum() + wornLater[same.Key].Sum()));
        QuarterTrailPart[] parts = [.. tools.Where(part => part.Amount != 0)];
        return QuarterTrail.Of(report, QuarterLine.BookValue, report.Closing.Tools, parts.Length, "tool", parts);
    }
}
