using System.Globalization;

namespace FlipAnalytics;

/// <summary>Checks pieces against themselves and each other.</summary>
internal static class PieceChecks
{
    public static void Run(ReadTables tables, LogProblems problems)
    {
        ReadTable<Piece> pieces = tables.Pieces;
        Dictionary<string, Piece> firsts = new(StringComparer.OrdinalIgnoreCase);
        foreach (Piece piece in pieces.Read)
        {
            // A set-aside row does not hold its id against a later row that may be its correction.
            if (firsts.TryGetValue(piece.Id, out Piece? first))
            {
                problems.Error(
                    pieces.Table.File,
                    piece.Row,
                    "id",
                    piece.Id,
                    "an id of its own",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Line {first.Row} has the same id; give one of the two another."));
                pieces.SetAside(piece);
            }
            else if (Contradiction(piece) is { } contradiction)
            {
                problems.Error(
                    pieces.Table.File,
                    piece.Row,
                    contradiction.Column,
                    contradiction.Found,
                    contradiction.Expected,
                    contradiction.Remedy);
                pieces.SetAside(piece);
                pieces.Contradicting.Add(piece);
            }
            else
            {
                firsts.Add(piece.Id, piece);
            }
        }

        WarnOfGaps(pieces, problems);
    }

    private static (string Column, string? Found, string Expected, string Remedy)? Contradiction(Piece piece)
    {
        if (piece.IsSold && (piece.LeftOn is not null || piece.LeftAs is not null))
            return (
                "left_on",
                CellText.Of(piece.LeftOn),
                "either a sale or a departure without one",
                "Empty the sale or left_on and left_as.");
        if (piece.SoldOn is not null && piece.SoldPrice is null)
            return (
                "sold_price",
                null,
                "a sale price, as the piece has a day of sale",
                "Fill in what the buyer paid; if it was given away, empty sold_on and fill in left_on and left_as.");
        return Earlier("sold_on", piece.SoldOn, "listed_on", piece.ListedOn)
            ?? Earlier("sold_on", piece.SoldOn, "bought_on", piece.BoughtOn)
            ?? Earlier("left_on", piece.LeftOn, "listed_on", piece.ListedOn)
            ?? Earlier("left_on", piece.LeftOn, "bought_on", piece.BoughtOn)
            ?? Earlier("listed_on", piece.ListedOn, "bought_on", piece.BoughtOn)
            ?? Earlier("ready_on", piece.ReadyOn, "bought_on", piece.BoughtOn);
    }

    private static (string, string?, string, string)? Earlier(
        string column, DateOnly? date, string before, DateOnly? bound) =>
        date < bound
            ? (column, CellText.Of(date), $"{CellText.Of(bound)} or later, its {before}", "Correct the date that is wrong.")
            : null;

    private static void WarnOfGaps(ReadTable<Piece> pieces, LogProblems problems)
    {
        bool salesHaveDates = pieces.Kept.Any(piece => piece.SoldOn is not null);
        var pricedLots = pieces.Kept.Where(piece => piece is { Lot: not null, BoughtPrice: not null })
            .Select(piece => piece.Lot!)
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (Piece piece in pieces.Kept)
        {
            if (piece is { BoughtPrice: null, IsOnCommission: false }
                && pieces.Headers.Contains("bought_price")
                && !(piece.Lot is { } lot && pricedLots.Contains(lot)))
            {
                problems.Warning(
                    pieces.Table.File,
                    piece.Row,
                    "bought_price",
                    null,
                    "what you paid",
                    "Fill it in, 0 if it cost nothing; until then no profit is known for this piece.");
            }

            if (piece.SoldPrice is not null && piece.SoldOn is null && salesHaveDates)
            {
                problems.Warning(
                    pieces.Table.File,
                    piece.Row,
                    "sold_on",
                    null,
                    "a day of sale, as other sales have one",
                    "Fill it in; until then the sale counts in no quarter and says nothing about speed.");
            }
        }
    }
}
