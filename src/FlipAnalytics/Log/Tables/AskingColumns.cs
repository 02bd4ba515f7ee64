namespace FlipAnalytics;

/// <summary><c>asking.csv</c>: changes of asking prices.</summary>
internal static class AskingColumns
{
    public static readonly RecordTable<AskingPrice> Table = new(
        "asking.csv",
        "With your price cuts on record, how much a lower price speeds a sale can be told, and when to cut.",
        Row);

    private static readonly Column<AskingPrice, string> PieceId = Table.RequiredName(
        "id", "The piece; an id of pieces.csv.", change => change.PieceId);
    private static readonly Column<AskingPrice, DateOnly> Date = Table.RequiredDate(
        "date", "Day from which the price holds.", change => change.Date);
    private static readonly Column<AskingPrice, decimal> Price = Table.RequiredMoney(
        "price", "The new asking price.", change => change.Price, Smallest.AboveZero);

    private static AskingPrice Row(Cells cells) => new(PieceId.In(cells), Date.In(cells), Price.In(cells), cells.Row);
}
