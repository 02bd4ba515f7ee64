using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// Wear of tools in equal parts of the pieces or the months of their life, down to salvage and never below. Wear to date
/// is rounded and each part is the difference, so the parts add up.
/// </summary>
/// <param name="Bought">Prices of all tools.</param>
/// <param name="Left">Book values.</param>
/// <param name="All">
/// All wear, before it is shared: a line for each month, over its days, or for each piece, on the day it was worked on.
/// </param>
/// <param name="Idle">Those of months in which no piece was worked on.</param>
internal sealed record ToolWear(
    decimal Bought, ImmutableArray<ToolValue> Left, ImmutableArray<CostLine> All, ImmutableArray<CostLine> Idle)
{
    public static ToolWear Write(CostSheet sheet)
    {
        List<CostLine> all = [];
        List<CostLine> idle = [];
        List<ToolValue> left = [];
        decimal bought = 0;
        foreach (Tool tool in sheet.Log.Tools)
        {
            if (tool.Price is not { } price)
            {
                sheet.Notes.Add($"What {tool.Item} cost is not written down in tools.csv, so its wear is unknown.");
                continue;
            }

            bought += price;
            CostOrigin origin = new(Columns.Tools.File, tool.Row, Rule(tool, price));
            sheet.Pay(tool.BoughtOn, -price, tool.Item, origin, CostKind.Tools);
            decimal worn = tool switch
            {
                { LifePieces: > 0 } => ByPieces(sheet, tool, price, origin, all),
                { LifeMonths: > 0 } => ByMonths(sheet, tool, price, origin, all, idle),
                _ => 0,
            };
            if (tool is { LifePieces: not > 0, LifeMonths: not > 0 })
                sheet.Notes.Add($"{tool.Item} has no life in tools.csv, so its wear is unknown and its whole price is still here.");
            left.Add(new(tool.Item, price - worn, worn, origin));
        }

        return new(bought, [.. left], [.. all], [.. idle]);
    }

    /// <summary>
    /// Wear after part of a life: (price − salvage) × used / life, rounded; never past salvage. Multiplied before it is
    /// divided, so that a half cent is one: 75 × 20 / 96 is 15.625, while 20 / 96 has no end in decimals.
    /// </summary>
    /// <param name="price">Price.</param>
    /// <param name="salvage">Salvage; unknown counts as nothing.</param>
    /// <param name="used">Pieces or months so far.</param>
    /// <param name="life">Pieces or months in all.</param>
    /// <param name="currency">Currency to round to.</param>
    public static decimal Worn(decimal price, decimal? salvage, decimal used, decimal life, Currency currency) =>
        currency.Round(Math.Max(0, price - (salvage ?? 0)) * Math.Min(used, life) / life);

    private static string Rule(Tool tool, decimal price) => tool switch
    {
        { LifePieces: > 0 and { } pieces } =>
            Invariant($"{price} less {tool.Salvage ?? 0} at the end, over {pieces:0.##} pieces worked on, in the order of their work."),
        { LifeMonths: > 0 and { } months } =>
            Invariant($"{price} less {tool.Salvage ?? 0} at the end, over {months:0.##} months, the first in full, by hours within a month."),
        _ => "No life is written down.",
    };

    private static decimal ByPieces(CostSheet sheet, Tool tool, decimal price, CostOrigin origin, List<CostLine> all)
    {
        var worked = Enumerable.Range(0, sheet.Log.Pieces.Length)
            .Where(sheet.Calendar.IsWorked)
            .Select(i => (Index: i, Day: sheet.Calendar.WorkDay(i)))
            .Where(work => tool.BoughtOn is null || work.Day >= tool.BoughtOn)
            .OrderBy(work => work.Day);
        decimal worn = 0;
        int count = 0;
        foreach (var (index, day) in worked)
        {
            decimal next = Worn(price, tool.Salvage, ++count, tool.LifePieces!.Value, sheet.Currency);
            if (next != worn)
            {
                CostLine line = new(CostKind.Tools, day, next - worn, $"wear of {tool.Item}", origin);
                all.Add(line);
                sheet.Lines[index].Add(line);
            }

            worn = next;
            if (count >= tool.LifePieces)
                break;
        }

        return worn;
    }

    private static decimal ByMonths(
        CostSheet sheet, Tool tool, decimal price, CostOrigin origin, List<CostLine> all, List<CostLine> idle)
    {
        DateOnly? first = tool.BoughtOn ?? sheet.Log.Pieces.Min(piece => piece.BoughtOn);
        if (first is not { } start)
        {
            sheet.Notes.Add($"When {tool.Item} was bought is not written down in tools.csv, so its wear is unknown.");
            return 0;
        }

        if (tool.BoughtOn is null)
            sheet.Notes.Add($"When {tool.Item} was bought is not written down; its wear counts from the first purchase of a piece.");
        decimal worn = 0;
        int firstMonth = start.Year * 12 + start.Month - 1;
        int lastMonth = sheet.Log.Date.Year * 12 + sheet.Log.Date.Month - 1;

        // The month of purchase counts in full, over the days left of it, and so does the month of the books.
        for (int month = firstMonth; month <= lastMonth && month - firstMonth < tool.LifeMonths; month++)
        {
            decimal next = Worn(price, tool.Salvage, month - firstMonth + 1, tool.LifeMonths!.Value, sheet.Currency);
            DateOnly day = month == firstMonth ? start : new(month / 12, month % 12 + 1, 1);
            CostLine line = new(CostKind.Tools, day, next - worn, $"wear of {tool.Item}", origin) { Until = day.LastOfMonth() };
            worn = next;
            if (line.Amount == 0)
                continue;
            all.Add(line);
            ImmutableArray<WorkShare> pieces = sheet.Calendar.In(day);
            if (pieces.IsEmpty)
                idle.Add(line);
            else
                sheet.Share(CostKind.Tools, line.Amount, pieces, day, line.What, origin);
        }

        return worn;
    }
}
