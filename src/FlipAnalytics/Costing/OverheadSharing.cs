using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// Overheads of a month are shared by the hours worked on each piece in it; a piece whose hours are unknown counts as
/// an average one, and where no hours are known at all every piece counts the same. A row of <c>overheads.csv</c> arises
/// evenly over the days of its month; a fruitless trip on its day. A row for a channel is shared by days on sale there
/// (<see cref="ChannelShares"/>), whoever was worked on.
/// </summary>
internal static class OverheadSharing
{
    /// <summary>Adds the rows of <c>overheads.csv</c>, shares all overheads and returns those no piece carries.</summary>
    public static ImmutableArray<CostLine> Write(CostSheet sheet)
    {
        List<CostLine> rows = [];
        List<CostLine> unshared = [];
        foreach (Overhead overhead in sheet.Log.Overheads)
        {
            string what = overhead.Item ?? "overhead";
            string use = overhead.Channel is { } channel ? $", for channel {channel}" : "";
            CostOrigin origin = new(
                Columns.Overheads.File, overhead.Row, Invariant($"{overhead.Amount} for {overhead.Month:yyyy-MM}{use}."));
            CostLine line = new(CostKind.Overhead, overhead.Month, overhead.Amount, what, origin)
            {
                Until = overhead.Month.LastOfMonth(),
                Channel = overhead.Channel,
            };
            rows.Add(line);
            sheet.Pay(overhead.Month, -overhead.Amount, what, origin, CostKind.Overhead);
            if (overhead.Channel is null)
                ShareByHours(sheet, [line], unshared);
            else
                ShareByDaysOnSale(sheet, line, overhead.Channel, unshared);
        }

        // The fruitless trips of a month together: a busy month would give every piece dozens of lines of a few cents.
        foreach (var month in sheet.Overheads
            .GroupBy(line => line.Date is { } day ? new DateOnly(day.Year, day.Month, 1) : (DateOnly?)null))
        {
            ShareByHours(sheet, [.. month], unshared);
        }

        sheet.Overheads.InsertRange(0, rows);
        return [.. unshared];
    }

    private static void ShareByHours(CostSheet sheet, CostLine[] lines, List<CostLine> unshared)
    {
        DateOnly? month = lines[0].Date;
        ImmutableArray<WorkShare> pieces = month is { } any ? sheet.Calendar.In(any) : [];
        if (pieces.IsEmpty)
        {
            unshared.AddRange(lines);
            return;
        }

        CostLine shared = Together(lines);
        sheet.Share(CostKind.Overhead, shared.Amount, pieces, null, shared.What, shared.Origin with
        {
            Rule = Invariant($"{shared.Origin.Rule} Shared by the hours of {month:yyyy-MM} over {pieces.Length} pieces."),
        });
    }

    private static void ShareByDaysOnSale(CostSheet sheet, CostLine line, string channel, List<CostLine> unshared)
    {
        ChannelShares shares = ChannelShares.Of(sheet.Log, sheet.Undone, channel, line.Date!.Value);
        CostOrigin origin = line.Origin with { Rule = $"{line.Origin.Rule} {shares.Rule}" };
        if (shares.Pieces.IsEmpty)
            unshared.Add(line with { Origin = origin });
        else
            sheet.Share(CostKind.Overhead, line.Amount, shares.Pieces, null, line.What, origin);
    }

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
