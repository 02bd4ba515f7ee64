using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// Overheads of a month are shared by the hours worked on each piece in it; a piece whose hours are unknown counts as
/// an average one, and where no hours are known at all every piece counts the same.
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
            rows.Add(new(CostKind.Overhead, overhead.Month, overhead.Amount, what, origin));
            sheet.Pay(overhead.Month, -overhead.Amount, what, origin, CostKind.Overhead);
        }

        sheet.Overheads.InsertRange(0, rows);
        List<CostLine> unshared = [];
        foreach (CostLine line in sheet.Overheads)
        {
            ImmutableArray<WorkShare> pieces = line.Date is { } month ? sheet.Calendar.In(month) : [];
            if (pieces.IsEmpty)
                unshared.Add(line);
            else
                sheet.Share(CostKind.Overhead, line.Amount, pieces, null, line.What, line.Origin with
                {
                    Rule = Invariant($"{line.Origin.Rule} Shared by the hours of {line.Date:yyyy-MM} over {pieces.Length} pieces."),
                });
        }

        return [.. unshared];
    }
}
