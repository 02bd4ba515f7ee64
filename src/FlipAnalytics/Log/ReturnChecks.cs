using System.Globalization;

namespace FlipAnalytics;

/// <summary>Checks returns against the piece and against each other: a piece is sold, comes back, and may be sold again.</summary>
internal static class ReturnChecks
{
    private sealed record Doubt(string Column, string? Found, string Expected, string Remedy);

    public static void Run(ReadTables tables, LogProblems problems)
    {
        Dictionary<string, Piece> pieces = tables.Pieces.Kept.ToDictionary(piece => piece.Id, StringComparer.OrdinalIgnoreCase);
        Dictionary<string, DateOnly> lastBack = new(StringComparer.OrdinalIgnoreCase);
        foreach (SaleReturn back in tables.Returns.Kept.OrderBy(back => back.ReturnedOn).ToArray())
        {
            Piece piece = pieces[back.PieceId];
            DateOnly? before = lastBack.TryGetValue(back.PieceId, out DateOnly day) ? day : null;
            if ((back is { SoldOn: null, SoldPrice: null } ? OfStanding(back, piece, before) : OfUndone(back, piece, before)) is { } doubt)
            {
                problems.Error(tables.Returns.Table.File, back.Row, doubt.Column, doubt.Found, doubt.Expected, doubt.Remedy);
                tables.Returns.SetAside(back);
            }
            else
            {
                if (back.CameBack)
                    lastBack[back.PieceId] = back.ReturnedOn;
                WarnOfTooMuch(back, back.CameBack ? back.SoldPrice + (back.DeliveryCharged ?? 0) : piece.SoldPrice + (piece.DeliveryCharged ?? 0));
            }
        }

        void WarnOfTooMuch(SaleReturn back, decimal? paid)
        {
            if (back.Refund > paid)
            {
                problems.Warning(
                    tables.Returns.Table.File, back.Row, "refund", back.Refund.ToString(CultureInfo.InvariantCulture),
                    string.Create(CultureInfo.InvariantCulture, $"at most {paid}, what the buyer had paid"),
                    "Correct it; sales tax that you gave back stands in sales_tax. It counts as it stands.");
            }
        }
    }

    private static Doubt? OfUndone(SaleReturn back, Piece piece, DateOnly? before)
    {
        if (back.SoldPrice is null)
            return new("sold_price", null, "what the buyer had paid, as the row has the day of the sale",
                "Fill it in; if the buyer kept the piece, empty sold_on.");
        if (back.SoldOn is not { } sold)
            return new("sold_on", null, "the day of the sale that was undone", "Fill it in; if the buyer kept the piece, empty sold_price.");
        if (back.ReturnedOn < sold)
            return new("returned_on", CellText.Of(back.ReturnedOn), $"{CellText.Of(sold)} or later, its sold_on", "Correct the date that is wrong.");
        if (sold < piece.BoughtOn)
            return new("sold_on", CellText.Of(sold), $"{CellText.Of(piece.BoughtOn)} or later, when the piece was bought", "Correct the date that is wrong.");
        if (sold < piece.ListedOn)
            return new("sold_on", CellText.Of(sold), $"{CellText.Of(piece.ListedOn)} or later, when the piece was first listed", "Correct the date that is wrong.");
        if (sold < before)
            return new("sold_on", CellText.Of(sold), $"{CellText.Of(before)} or later, when the piece came back before", "Correct the date that is wrong.");
        if (piece.SoldOn == sold)
            return new("sold_on", CellText.Of(sold), "a sale that pieces.csv does not have as well",
                $"If {piece.Id} came back, empty sold_on and sold_price in pieces.csv; if the buyer kept it, empty them here.");
        if ((piece.SoldOn ?? piece.LeftOn) < back.ReturnedOn)
            return new("returned_on", CellText.Of(back.ReturnedOn), $"{CellText.Of(piece.SoldOn ?? piece.LeftOn)} or earlier, when the piece left for good",
                "Correct the date that is wrong.");
        return null;
    }

    private static Doubt? OfStanding(SaleReturn back, Piece piece, DateOnly? before)
    {
        if (back is not { Fees: null, DeliveryCharged: null, DeliveryCost: null })
            return new("sold_price", null, "the sale that the fees or the delivery in this row belong to",
                "If the piece came back, fill in sold_on and sold_price of that sale; else empty fees, delivery_charged and delivery_cost.");
        if (!piece.IsSold)
            return new("sold_price", null, $"the sale that was undone, as {piece.Id} is not sold",
                "If the piece came back, fill in sold_on and sold_price of that sale; else fill in the sale in pieces.csv.");
        if (back.ReturnedOn < piece.SoldOn)
            return new("returned_on", CellText.Of(back.ReturnedOn), $"{CellText.Of(piece.SoldOn)} or later, when the piece was sold", "Correct the date that is wrong.");
        return back.ReturnedOn < before
            ? new("returned_on", CellText.Of(back.ReturnedOn), $"{CellText.Of(before)} or later, when the piece came back before", "Correct the date that is wrong.")
            : null;
    }
}
