using System.Globalization;

namespace FlipAnalytics;

/// <summary>Makes records of rows, one method a table.</summary>
internal static class Rows
{
    public static Piece Piece(Cells cells) => new()
    {
        Row = cells.Row,
        Id = cells.Text("id") ?? string.Create(CultureInfo.InvariantCulture, $"row {cells.Row}"),
        Type = cells.RequiredText("type"),
        Title = cells.Text("title"),
        Count = cells.WholeNumber("count"),
        Width = cells.Decimal("width"),
        Depth = cells.Decimal("depth"),
        Height = cells.Decimal("height"),
        Material = cells.Text("material"),
        Condition = cells.Word<Condition>("condition"),
        Colour = cells.Text("color"),
        Finish = cells.Text("finish"),
        Source = cells.Text("source"),
        Trip = cells.Text("trip"),
        Lot = cells.Text("lot"),
        BoughtOn = cells.Date("bought_on"),
        StickerPrice = cells.Decimal("sticker_price"),
        BoughtPrice = cells.Decimal("bought_price"),
        ExpectedPrice = cells.Decimal("expected_price"),
        ReadyOn = cells.Date("ready_on"),
        ListedOn = cells.Date("listed_on"),
        AskingPrice = cells.Decimal("asking_price"),
        SoldOn = cells.Date("sold_on"),
        SoldPrice = cells.Decimal("sold_price"),
        SalesTax = cells.Decimal("sales_tax"),
        Commission = cells.Decimal("commission"),
        Channel = cells.Text("channel"),
        Fees = cells.Decimal("fees"),
        DeliveryCharged = cells.Decimal("delivery_charged"),
        DeliveryCost = cells.Decimal("delivery_cost"),
        Hours = cells.Decimal("hours"),
        SuppliesCost = cells.Decimal("supplies_cost"),
        LeftOn = cells.Date("left_on"),
        LeftAs = cells.Word<LeftAs>("left_as"),
        Notes = cells.Text("notes"),
    };

    public static AskingPrice Asking(Cells cells) => new(
        cells.RequiredText("id"), cells.RequiredDate("date"), cells.RequiredDecimal("price"), cells.Row);

    public static HoursEntry Hours(Cells cells) => new(
        cells.Text("id"), cells.Date("date"), cells.Word<WorkTask>("task"), cells.RequiredDecimal("hours"), cells.Row);

    public static SupplyPurchase Supply(Cells cells) => new(
        cells.RequiredText("item"),
        cells.Text("kind"),
        cells.Date("bought_on"),
        cells.Decimal("quantity"),
        cells.Text("unit"),
        cells.Decimal("price"),
        cells.Decimal("coverage"),
        cells.Text("coverage_unit"),
        cells.Row);

    public static SupplyUse Use(Cells cells) => new(
        cells.Text("id"),
        cells.Date("date"),
        cells.RequiredText("item"),
        cells.Decimal("quantity"),
        cells.Text("unit"),
        cells.Decimal("coats"),
        cells.Decimal("area"),
        cells.Row);

    public static StockCount Count(Cells cells) => new(
        cells.RequiredDate("date"),
        cells.RequiredText("item"),
        cells.RequiredDecimal("quantity"),
        cells.Text("unit"),
        cells.Text("notes"),
        cells.Row);

    public static Trip Trip(Cells cells) => new(
        cells.RequiredText("trip"),
        cells.Date("date"),
        cells.Decimal("distance"),
        cells.Decimal("hours"),
        cells.Decimal("other_cost"),
        cells.Text("notes"),
        cells.Row)
    {
        Purpose = cells.Word<TripPurpose>("purpose") ?? TripPurpose.Sourcing,
        PieceId = cells.Text("id"),
    };

    public static CostMove Move(Cells cells) => new(
        cells.RequiredDate("date"),
        cells.RequiredText("from"),
        cells.RequiredText("to"),
        cells.RequiredDecimal("cost"),
        cells.Text("notes"),
        cells.Row);

    public static MoneyEntry Money(Cells cells) => new(
        cells.RequiredDate("date"),
        cells.RequiredWord<MoneyKind>("kind"),
        cells.Text("id"),
        cells.RequiredDecimal("amount"),
        cells.Text("notes"),
        cells.Row);

    public static SaleReturn Return(Cells cells) => new(
        cells.RequiredText("id"), cells.RequiredDate("returned_on"), cells.RequiredDecimal("refund"), cells.Row)
    {
        SalesTax = cells.Decimal("sales_tax"),
        SoldOn = cells.Date("sold_on"),
        SoldPrice = cells.Decimal("sold_price"),
        Fees = cells.Decimal("fees"),
        DeliveryCharged = cells.Decimal("delivery_charged"),
        DeliveryCost = cells.Decimal("delivery_cost"),
        Cost = cells.Decimal("cost"),
        Notes = cells.Text("notes"),
    };

    public static Tool Tool(Cells cells) => new(
        cells.RequiredText("item"),
        cells.Date("bought_on"),
        cells.Decimal("price"),
        cells.Decimal("salvage"),
        cells.Decimal("life_pieces"),
        cells.Decimal("life_months"),
        cells.Row);

    public static Overhead Overhead(Cells cells) => new(
        cells.RequiredMonth("month"), cells.Text("item"), cells.RequiredDecimal("amount"), cells.Row)
    {
        Channel = cells.Text("channel"),
    };

    public static Colour Colour(Cells cells) => new(
        cells.RequiredText("color"), cells.Text("family"), cells.Hex("hex"), cells.Row);
}
