namespace FlipAnalytics;

/// <summary><c>uses.csv</c>: uses of supplies on pieces, and waste.</summary>
internal static class UseColumns
{
    public static readonly RecordTable<SupplyUse> Table = new(
        "uses.csv",
        "With what went onto which piece, supplies are charged to the pieces that used them, not spread evenly.",
        Row);

    private static readonly Column<SupplyUse, string?> PieceId = Table.Name(
        "id", "The piece; empty for what went to waste, such as a can that dried up.", use => use.PieceId);
    private static readonly Column<SupplyUse, DateOnly?> Date = Table.Date("date", "Day of the use.", use => use.Date);
    private static readonly Column<SupplyUse, string> Item = Table.RequiredName(
        "item", "What you used; an item of supplies.csv.", use => use.Item);
    private static readonly Column<SupplyUse, decimal?> Quantity = Table.Number(
        "quantity", "Measured quantity, in the unit beside it.", use => use.Quantity, "the unit beside it", Smallest.AboveZero);
    private static readonly Column<SupplyUse, string?> Unit = Table.Label(
        "unit", "Unit of the quantity.", use => use.Unit);
    private static readonly Column<SupplyUse, decimal?> Coats = Table.Number(
        "coats", "Number of coats, where you did not measure.", use => use.Coats, "coats", Smallest.AboveZero);
    private static readonly Column<SupplyUse, decimal?> Area = Table.Number(
        "area",
        "Area coated, where you did not measure.",
        use => use.Area, "square feet, or square metres where lengths are in cm", Smallest.AboveZero);

    private static SupplyUse Row(Cells cells) => new(
        PieceId.In(cells), Date.In(cells), Item.In(cells), Quantity.In(cells), Unit.In(cells),
        Coats.In(cells), Area.In(cells), cells.Row);
}
