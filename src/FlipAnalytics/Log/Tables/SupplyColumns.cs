namespace FlipAnalytics;

/// <summary><c>supplies.csv</c>: purchases of what is used up.</summary>
internal static class SupplyColumns
{
    public static readonly RecordTable<SupplyPurchase> Table = new(
        "supplies.csv",
        "With what paint and the rest cost, each piece carries its supplies, and half-used cans are stock.",
        Row);

    private static readonly Column<SupplyPurchase, string> Item = Table.RequiredName(
        "item", "Your own name for it; purchases of one item share it.", purchase => purchase.Item);
    private static readonly Column<SupplyPurchase, string?> Kind = Table.Label(
        "kind", "What kind of thing it is, such as paint or abrasive.", purchase => purchase.Kind);
    private static readonly Column<SupplyPurchase, DateOnly?> BoughtOn = Table.Date(
        "bought_on", "Day you bought it.", purchase => purchase.BoughtOn);
    private static readonly Column<SupplyPurchase, decimal?> Quantity = Table.Number(
        "quantity", "How much, in the unit beside it.", purchase => purchase.Quantity, "the unit beside it", Smallest.AboveZero);
    private static readonly Column<SupplyPurchase, string?> Unit = Table.Label(
        "unit", "Unit of the quantity, such as quart, l or sheet.", purchase => purchase.Unit);
    private static readonly Column<SupplyPurchase, decimal?> Price = Table.Money(
        "price",
        "What you paid for the whole quantity.",
        purchase => purchase.Price, Smallest.Zero, column => column with { IsDeciding = true });
    private static readonly Column<SupplyPurchase, decimal?> Coverage = Table.Number(
        "coverage",
        "Area that one unit covers in one coat, by the label.",
        purchase => purchase.Coverage, "the coverage unit", Smallest.AboveZero);
    private static readonly Column<SupplyPurchase, string?> UnitOfCoverage = Table.Label(
        "coverage_unit", "Unit of the coverage, such as ft2/quart.", purchase => purchase.CoverageUnit);

    private static SupplyPurchase Row(Cells cells) => new(
        Item.In(cells), Kind.In(cells), BoughtOn.In(cells), Quantity.In(cells), Unit.In(cells),
        Price.In(cells), Coverage.In(cells), UnitOfCoverage.In(cells), cells.Row);
}
