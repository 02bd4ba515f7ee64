namespace FlipAnalytics;

/// <summary><c>overheads.csv</c>: costs of no single piece.</summary>
internal static class OverheadColumns
{
    public static readonly RecordTable<Overhead> Table = new(
        "overheads.csv",
        "With rent, insurance and the like, the quarter and the full wage show what is really left.",
        Row);

    private static readonly Column<Overhead, DateOnly> Month = Table.RequiredMonth(
        "month", "Month it belongs to; it counts evenly over its days.", overhead => overhead.Month);
    private static readonly Column<Overhead, string?> Item = Table.Label(
        "item", "What it was for, such as rent.", overhead => overhead.Item);
    private static readonly Column<Overhead, decimal> Amount = Table.RequiredMoney(
        "amount", "What it cost; below zero for money back.", overhead => overhead.Amount, Smallest.Any);
    private static readonly Column<Overhead, string?> Channel = Table.Label(
        "channel", "The channel it is for, such as a booth; the pieces on sale there share it.", overhead => overhead.Channel);

    private static Overhead Row(Cells cells) => new(Month.In(cells), Item.In(cells), Amount.In(cells), cells.Row)
    {
        Channel = Channel.In(cells),
    };
}
