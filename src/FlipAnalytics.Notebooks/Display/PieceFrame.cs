using Microsoft.Data.Analysis;

namespace FlipAnalytics.Notebooks;

/// <summary>Pieces as a data frame, to look at and to sort.</summary>
public static class PieceFrame
{
    /// <summary>
    /// A row a piece, a column a property under its name in <c>pieces.csv</c>; money is decimal, what is unknown is null.
    /// For looking only: the frame's own grouped means and descriptions divide by unknown cells too, so they come out too
    /// low.
    /// </summary>
    /// <param name="pieces">Pieces, such as those of a log.</param>
    public static DataFrame ToDataFrame(this IEnumerable<Piece> pieces)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        Piece[] all = [.. pieces];
        return new(
            Text("id", piece => piece.Id),
            Text("type", piece => piece.Type),
            Text("title", piece => piece.Title is { } title ? CleanText.Shown(title) : null),
            new PrimitiveDataFrameColumn<int>("count", all.Select(piece => piece.Count)),
            Amount("width", piece => piece.Width),
            Amount("depth", piece => piece.Depth),
            Amount("height", piece => piece.Height),
            Text("material", piece => piece.Material),
            Text("condition", piece => piece.Condition?.ToString().ToLowerInvariant()),
            Text("color", piece => piece.Colour),
            Text("finish", piece => piece.Finish),
            Text("source", piece => piece.Source),
            Text("trip", piece => piece.Trip),
            Text("lot", piece => piece.Lot),
            Day("bought_on", piece => piece.BoughtOn),
            Amount("sticker_price", piece => piece.StickerPrice),
            Amount("bought_price", piece => piece.BoughtPrice),
            Amount("expected_price", piece => piece.ExpectedPrice),
            Day("ready_on", piece => piece.ReadyOn),
            Day("listed_on", piece => piece.ListedOn),
            Amount("asking_price", piece => piece.AskingPrice),
            Day("sold_on", piece => piece.SoldOn),
            Amount("sold_price", piece => piece.SoldPrice),
            Amount("sales_tax", piece => piece.SalesTax),
            Amount("commission", piece => piece.Commission),
            Text("channel", piece => piece.Channel),
            Amount("fees", piece => piece.Fees),
            Amount("delivery_charged", piece => piece.DeliveryCharged),
            Amount("delivery_cost", piece => piece.DeliveryCost),
            Amount("hours", piece => piece.Hours),
            Amount("supplies_cost", piece => piece.SuppliesCost),
            Day("left_on", piece => piece.LeftOn),
            Text("left_as", piece => piece.LeftAs?.ToString().ToLowerInvariant()),
            Text("notes", piece => piece.Notes));

        StringDataFrameColumn Text(string name, Func<Piece, string?> value) => new(name, all.Select(value));

        DecimalDataFrameColumn Amount(string name, Func<Piece, decimal?> value) => new(name, all.Select(value));

        DateTimeDataFrameColumn Day(string name, Func<Piece, DateOnly?> value) =>
            new(name, all.Select(piece => value(piece)?.ToDateTime(TimeOnly.MinValue)));
    }
}
