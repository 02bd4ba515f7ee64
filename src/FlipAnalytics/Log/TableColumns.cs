using System.Globalization;

namespace FlipAnalytics;

/// <summary>What a record has in each column of its table, as the text of a cell; the mirror of <see cref="Rows"/>.</summary>
internal static class TableColumns
{
    /// <summary>The cell of a column; null where it is empty.</summary>
    public static string? Piece(Piece piece, string column) => column switch
    {
        "id" => piece.Id,
        "type" => piece.Type,
        "title" => piece.Title,
        "count" => piece.Count?.ToString(CultureInfo.InvariantCulture),
        "width" => Number(piece.Width),
        "depth" => Number(piece.Depth),
        "height" => Number(piece.Height),
        "material" => piece.Material,
        "condition" => Word(piece.Condition),
        "color" => piece.Colour,
        "finish" => piece.Finish,
        "source" => piece.Source,
        "trip" => piece.Trip,
        "lot" => piece.Lot,
        "bought_on" => CellText.Of(piece.BoughtOn),
        "sticker_price" => Number(piece.StickerPrice),
        "bought_price" => Number(piece.BoughtPrice),
        "expected_price" => Number(piece.ExpectedPrice),
        "ready_on" => CellText.Of(piece.ReadyOn),
        "listed_on" => CellText.Of(piece.ListedOn),
        "asking_price" => Number(piece.AskingPrice),
        "sold_on" => CellText.Of(piece.SoldOn),
        "sold_price" => Number(piece.SoldPrice),
        "sales_tax" => Number(piece.SalesTax),
        "commission" => Number(piece.Commission),
        "channel" => piece.Channel,
        "fees" => Number(piece.Fees),
        "delivery_charged" => Number(piece.DeliveryCharged),
        "delivery_cost" => Number(piece.DeliveryCost),
        "hours" => Number(piece.Hours),
        "supplies_cost" => Number(piece.SuppliesCost),
        "left_on" => CellText.Of(piece.LeftOn),
        "left_as" => Word(piece.LeftAs),
        "notes" => piece.Notes,
        _ => throw Unknown(column),
    };

    public static string? Asking(AskingPrice change, string column) => column switch
    {
        "id" => change.PieceId,
        "date" => CellText.Of(change.Date),
        "price" => Number(change.Price),
        _ => throw Unknown(column),
    };

    public static string? Hours(HoursEntry entry, string column) => column switch
    {
        "id" => entry.PieceId,
        "date" => CellText.Of(entry.Date),
        "task" => Word(entry.Task),
        "hours" => Number(entry.Hours),
        _ => throw Unknown(column),
    };

    public static string? Supply(SupplyPurchase purchase, string column) => column switch
    {
        "item" => purchase.Item,
        "kind" => purchase.Kind,
        "bought_on" => CellText.Of(purchase.BoughtOn),
        "quantity" => Number(purchase.Quantity),
        "unit" => purchase.Unit,
        "price" => Number(purchase.Price),
        "coverage" => Number(purchase.Coverage),
        "coverage_unit" => purchase.CoverageUnit,
        _ => throw Unknown(column),
    };

    public static string? Use(SupplyUse use, string column) => column switch
    {
        "id" => use.PieceId,
        "date" => CellText.Of(use.Date),
        "item" => use.Item,
        "quantity" => Number(use.Quantity),
        "unit" => use.Unit,
        "coats" => Number(use.Coats),
        "area" => Number(use.Area),
        _ => throw Unknown(column),
    };

    public static string? Count(StockCount count, string column) => column switch
    {
        "date" => CellText.Of(count.Date),
        "item" => count.Item,
        "quantity" => count.Quantity == 0 ? Columns.Counts[column].WordForNone : Number(count.Quantity),
        "unit" => count.Unit,
        "notes" => count.Notes,
        _ => throw Unknown(column),
    };

    public static string? Trip(Trip trip, string column) => column switch
    {
        "trip" => trip.Name,
        "date" => CellText.Of(trip.Date),
        "distance" => Number(trip.Distance),
        "hours" => Number(trip.Hours),
        "other_cost" => Number(trip.OtherCost),
        "purpose" => trip.Purpose == TripPurpose.Sourcing ? null : Columns.WordOf(trip.Purpose),
        "id" => trip.PieceId,
        "notes" => trip.Notes,
        _ => throw Unknown(column),
    };

    public static string? Move(CostMove move, string column) => column switch
    {
        "date" => CellText.Of(move.Date),
        "from" => move.From,
        "to" => move.To,
        "cost" => Number(move.Cost),
        "notes" => move.Notes,
        _ => throw Unknown(column),
    };

    public static string? Money(MoneyEntry entry, string column) => column switch
    {
        "date" => CellText.Of(entry.Date),
        "kind" => Columns.WordOf(entry.Kind),
        "id" => entry.PieceId,
        "amount" => Number(entry.Amount),
        "notes" => entry.Notes,
        _ => throw Unknown(column),
    };

    public static string? Return(SaleReturn back, string column) => column switch
    {
        "id" => back.PieceId,
        "returned_on" => CellText.Of(back.ReturnedOn),
        "refund" => Number(back.Refund),
        "sales_tax" => Number(back.SalesTax),
        "sold_on" => CellText.Of(back.SoldOn),
        "sold_price" => Number(back.SoldPrice),
        "fees" => Number(back.Fees),
        "delivery_charged" => Number(back.DeliveryCharged),
        "delivery_cost" => Number(back.DeliveryCost),
        "cost" => Number(back.Cost),
        "notes" => back.Notes,
        _ => throw Unknown(column),
    };

    public static string? Tool(Tool tool, string column) => column switch
    {
        "item" => tool.Item,
        "bought_on" => CellText.Of(tool.BoughtOn),
        "price" => Number(tool.Price),
        "salvage" => Number(tool.Salvage),
        "life_pieces" => Number(tool.LifePieces),
        "life_months" => Number(tool.LifeMonths),
        _ => throw Unknown(column),
    };

    public static string? Overhead(Overhead overhead, string column) => column switch
    {
        "month" => overhead.Month.ToString("yyyy-MM", CultureInfo.InvariantCulture),
        "item" => overhead.Item,
        "amount" => Number(overhead.Amount),
        "channel" => overhead.Channel,
        _ => throw Unknown(column),
    };

    public static string? Colour(Colour colour, string column) => column switch
    {
        "color" => colour.Word,
        "family" => colour.Family,
        "hex" => colour.Hex,
        _ => throw Unknown(column),
    };

    private static string? Number(decimal? number) => number?.ToString(CultureInfo.InvariantCulture);

    private static string? Word<T>(T? value)
        where T : struct, Enum => value is { } word ? Columns.WordOf(word) : null;

    private static ArgumentException Unknown(string column) =>
        new($"There is no column '{column}' in this table.", nameof(column));
}
