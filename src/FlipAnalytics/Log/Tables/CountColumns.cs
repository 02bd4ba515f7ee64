namespace FlipAnalytics;

/// <summary><c>counts.csv</c>: stock counts of supplies.</summary>
internal static class CountColumns
{
    public static readonly RecordTable<StockCount> Table = new(
        "counts.csv",
        "With a count of what is left now and then, the value of your supplies is a fact, and what is missing is seen.",
        Row)
    {
        IsOccasional = true,
    };

    private static readonly Column<StockCount, DateOnly> Date = Table.RequiredDate(
        "date", "Day of the count; what was used that day is off already.", count => count.Date);
    private static readonly Column<StockCount, string> Item = Table.RequiredName(
        "item", "What you counted; an item of supplies.csv.", count => count.Item);
    private static readonly Column<StockCount, decimal> Quantity = Table.RequiredNumber(
        "quantity",
        "What is left, in the unit beside it, or the word empty; rows of one item and day add up.",
        count => count.Quantity, "the unit beside it", Smallest.Zero, column => column with { WordForNone = "empty" });
    private static readonly Column<StockCount, string?> Unit = Table.Label(
        "unit", "Unit of the quantity; without one, the unit it was bought in.", count => count.Unit);
    private static readonly Column<StockCount, string?> Notes = Table.Text(
        "notes", "Anything else.", count => count.Notes);

    private static StockCount Row(Cells cells) => new(
        Date.In(cells), Item.In(cells), Quantity.In(cells), Unit.In(cells), Notes.In(cells), cells.Row);
}
