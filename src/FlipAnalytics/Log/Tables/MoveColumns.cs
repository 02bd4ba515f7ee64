namespace FlipAnalytics;

/// <summary><c>moves.csv</c>: parts and items that went from one piece to another.</summary>
internal static class MoveColumns
{
    public static readonly RecordTable<CostMove> Table = new(
        "moves.csv",
        "With parts that you moved, and sets that you split, each piece carries what is in it.",
        Row)
    {
        IsOccasional = true,
    };

    private static readonly Column<CostMove, DateOnly> Date = Table.RequiredDate(
        "date", "Day you moved it.", move => move.Date);
    private static readonly Column<CostMove, string> From = Table.RequiredName(
        "from", "The piece that gave it; an id of pieces.csv.", move => move.From);
    private static readonly Column<CostMove, string> To = Table.RequiredName(
        "to", "The piece that took it; an id of pieces.csv.", move => move.To);
    private static readonly Column<CostMove, decimal> Cost = Table.RequiredMoney(
        "cost", "How much of the giving piece's cost goes with it.", move => move.Cost, Smallest.Zero);
    private static readonly Column<CostMove, string?> Notes = Table.Text("notes", "Anything else.", move => move.Notes);

    private static CostMove Row(Cells cells) => new(
        Date.In(cells), From.In(cells), To.In(cells), Cost.In(cells), Notes.In(cells), cells.Row);
}
