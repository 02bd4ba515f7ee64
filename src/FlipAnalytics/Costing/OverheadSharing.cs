using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// Overheads of a month are shared by the hours worked on each piece in it; a piece whose hours are unknown counts as
/// an average one, and where no hours are known at all every piece counts the same. A row of <c>overheads.csv</c> arises
/// evenly over the days of its month; a fruitless trip on its day.
/// </summary>
internal static class OverheadSharing
{
    /// <summary>Adds the rows of <c>overheads.csv</c>, shares all overheads and returns those no piece carries.</summary>
    public static ImmutableArray<CostLine> Write(CostSheet sheet)
    {
        List<CostLine> rows = [];
        foreach (Overhead overhead in sheet.Log.Overheads)
        {
            string what = overhead.Item ?? "overhead";
            CostOrigin origin = new(
                Columns.Overheads.File, overhead.Row, Invariant($"{overhead.Amount} for {overhead.Month:yyyy-MM}."));
            rows.Add(new(CostKind.Overhead, overhead.Month, overhead.Amount, what, origin)
            {
                Until = overhead.Month.LastOfMonth(),
            });
            sheet.Pay(overhead.Month, -overhead.Amount, what, origin, CostKind.Overhead);
        }

        sheet.Overheads.InsertRange(0, rows);
        List<CostLine> unshared = [];
        foreach (CostLine[] lines in Groups(sheet.Overheads, rows.Count))
        {
            DateOnly? month = lines[0].Date;
            ImmutableArray<WorkShare> pieces = month is { } any ? sheet.Calendar.In(any) : [];
            if (pieces.IsEmpty)
            {
                unshared.AddRange(lines);
                continue;
            }

            CostLine shared = Together(lines);
            sheet.Share(CostKind.Overhead, shared.Amount, pieces, null, shared.What, shared.Origin with
            {
                Rule = Invariant($"{shared.Origin.Rule} Shared by the hours of {month:yyyy-MM} over {pieces.Length} pieces."),
            });
        }

        return [.. unshared];
    }

    // Each row of overheads.csv by itself, the fruitless trips of a month together: a busy month would give every piece
    // dozens of lines of a few cents.
    private static IEnumerable<CostLine[]> Groups(List<CostLine> overheads, int rows) =>
        overheads.Take(rows).Select(line => new[] { line }).Concat(overheads.Skip(rows)
            .GroupBy(line => line.Date is { } day ? new DateOnly(day.Year, day.Month, 1) : (DateOnly?)null)
            .Select(month => month.ToArray()));

    private static CostLine Together(CostLine[] lines)
    {
        if (lines.Length == 1)
            return lines[0];
        decimal amount = lines.Sum(line => line.Amount);
        string what = Invariant($"{lines.Length} fruitless trips");
        return new(CostKind.Overhead, lines[0].Date, amount, what, new(
            lines[0].Origin.File, null, Invariant($"{what} of {lines[0].Date:yyyy-MM} for {amount}.")));
    }
}
