namespace FlipAnalytics;

/// <summary><c>returns.csv</c>: pieces that came back, and money given back to buyers.</summary>
internal static class ReturnColumns
{
    public static readonly RecordTable<SaleReturn> Table = new(
        "returns.csv",
        "With returns, a piece that came back is in stock again, and the profit holds what you gave back.",
        Row)
    {
        IsOccasional = true,
    };

    private static readonly Column<SaleReturn, string> PieceId = Table.RequiredName(
        "id", "The piece; an id of pieces.csv.", back => back.PieceId);
    private static readonly Column<SaleReturn, DateOnly> ReturnedOn = Table.RequiredDate(
        "returned_on", "Day it came back, or you gave the money back.", back => back.ReturnedOn);
    private static readonly Column<SaleReturn, decimal> Refund = Table.RequiredMoney(
        "refund", "What you gave back of sale price and delivery charge.", back => back.Refund, Smallest.Zero);
    private static readonly Column<SaleReturn, decimal?> SalesTax = Table.Money(
        "sales_tax", "Sales tax that you gave back with it.", back => back.SalesTax, Smallest.Zero);
    private static readonly Column<SaleReturn, DateOnly?> SoldOn = Table.Date(
        "sold_on",
        "Of a piece that came back: day of the sale that was undone; pieces.csv then tells of the piece as it is now.",
        back => back.SoldOn);
    private static readonly Column<SaleReturn, decimal?> SoldPrice = Table.Money(
        "sold_price",
        "Of a piece that came back: what the buyer had paid for it; empty where the buyer kept the piece.",
        back => back.SoldPrice, Smallest.AboveZero);
    private static readonly Column<SaleReturn, decimal?> Fees = Table.Money(
        "fees", "What the channel kept of that sale in the end.", back => back.Fees, Smallest.Zero);
    private static readonly Column<SaleReturn, decimal?> DeliveryCharged = Table.Money(
        "delivery_charged", "What the buyer had paid for delivery.", back => back.DeliveryCharged, Smallest.Zero);
    private static readonly Column<SaleReturn, decimal?> DeliveryCost = Table.Money(
        "delivery_cost", "What delivery had cost you.", back => back.DeliveryCost, Smallest.Zero);
    private static readonly Column<SaleReturn, decimal?> Cost = Table.Money(
        "cost", "What it cost to take the piece back.", back => back.Cost, Smallest.Zero);
    private static readonly Column<SaleReturn, string?> Notes = Table.Text(
        "notes", "Anything else.", back => back.Notes);

    private static SaleReturn Row(Cells cells) => new(
        PieceId.In(cells), ReturnedOn.In(cells), Refund.In(cells), cells.Row)
    {
        SalesTax = SalesTax.In(cells),
        SoldOn = SoldOn.In(cells),
        SoldPrice = SoldPrice.In(cells),
        Fees = Fees.In(cells),
        DeliveryCharged = DeliveryCharged.In(cells),
        DeliveryCost = DeliveryCost.In(cells),
        Cost = Cost.In(cells),
        Notes = Notes.In(cells),
    };
}
