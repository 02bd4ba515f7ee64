namespace FlipAnalytics;

/// <summary><c>tools.csv</c>: what lasts over many pieces.</summary>
internal static class ToolColumns
{
    public static readonly RecordTable<Tool> Table = new(
        "tools.csv",
        "With your tools, every piece carries its share of their wear in the full wage.",
        Row);

    private static readonly Column<Tool, string> Item = Table.RequiredName("item", "What it is.", tool => tool.Item);
    private static readonly Column<Tool, DateOnly?> BoughtOn = Table.Date(
        "bought_on", "Day you bought it.", tool => tool.BoughtOn);
    private static readonly Column<Tool, decimal?> Price = Table.Money(
        "price", "What it cost.", tool => tool.Price, Smallest.Zero, column => column with { IsDeciding = true });
    private static readonly Column<Tool, decimal?> Salvage = Table.Money(
        "salvage", "What it will fetch at the end of its life.", tool => tool.Salvage, Smallest.Zero);
    private static readonly Column<Tool, decimal?> LifePieces = Table.Number(
        "life_pieces", "How many pieces it lasts for.", tool => tool.LifePieces, "pieces", Smallest.AboveZero);
    private static readonly Column<Tool, decimal?> LifeMonths = Table.Number(
        "life_months", "How many months it lasts for.", tool => tool.LifeMonths, "months", Smallest.AboveZero);

    private static Tool Row(Cells cells) => new(
        Item.In(cells), BoughtOn.In(cells), Price.In(cells), Salvage.In(cells), LifePieces.In(cells),
        LifeMonths.In(cells), cells.Row);
}
