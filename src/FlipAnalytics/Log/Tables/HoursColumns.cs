namespace FlipAnalytics;

/// <summary><c>hours.csv</c>: hours worked.</summary>
internal static class HoursColumns
{
    public static readonly RecordTable<HoursEntry> Table = new(
        "hours.csv",
        "With hours by task, your wage counts all your time, and pieces without a total get one.",
        Row);

    private static readonly Column<HoursEntry, string?> PieceId = Table.Name(
        "id", "The piece; empty for work on no single piece.", entry => entry.PieceId);
    private static readonly Column<HoursEntry, DateOnly?> Date = Table.Date(
        "date", "Day of the work.", entry => entry.Date);
    private static readonly Column<HoursEntry, WorkTask?> Task = Table.Word<WorkTask>(
        "task", "What you did.", entry => entry.Task);
    private static readonly Column<HoursEntry, decimal> Hours = Table.RequiredNumber(
        "hours", "Hands-on hours.", entry => entry.Hours, "hours", Smallest.Zero);

    private static HoursEntry Row(Cells cells) => new(
        PieceId.In(cells), Date.In(cells), Task.In(cells), Hours.In(cells), cells.Row);
}
