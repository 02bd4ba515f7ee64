using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>What is tied up on the last evening: pieces with their cost and age, and what is left of each supply.</summary>
internal static class QuarterTrailStock
{
    private const string Bought = "bought";
    private const string UsedUp = "used up";
    private const string LostSort = "lost";

    public static QuarterTrail Pieces(QuarterBooks books, QuarterReport report)
    {
        QuarterStock stock = report.Closing;
        ILookup<string, StockLine> held = books.Lines.Where(line => line.IsHeldOn(stock.Day))
            .ToLookup(line => line.Cost.Piece.Id, StringComparer.OrdinalIgnoreCase);
        // The oldest first: it is the one to do something about.
        QuarterStockPiece[] pieces = [.. stock.Pieces.OrderByDescending(piece => piece.DaysHere ?? -1)];
        return QuarterTrail.Of(report, QuarterLine.Stock, stock.Cost, pieces.Length, "piece",
            pieces.SelectMany(piece => QuarterTrailPieces.Parts(
                Heading(piece), books.Costs[piece.Id].Piece, held[piece.Id].Select(line => line.Line))),
            QuarterTrailPieces.Gaps(
                pieces.Select(piece => books.Costs[piece.Id]), CostKind.Purchase, CostKind.Supplies, CostKind.Trip));
    }

    public static QuarterTrail Cans(QuarterBooks books, QuarterReport report)
    {
        DateOnly day = report.Closing.Day;
        var bought = books.Costs.Cash.Where(movement => movement.Kind == CostKind.Supplies && !(movement.Date > day))
            .Select(movement => QuarterTrailPart.Of(movement.Origin, Bought, movement.Date, -movement.Amount) with
            {
                Group = movement.What,
                Sort = Bought,
            });
        // One use is a row of uses.csv; what has no uses was spread over pieces, a row of supplies.csv at a time.
        var used = books.Lines.Where(line => !line.IsBack && line.Line.Kind == CostKind.Supplies && !line.IsStated && line.Arose <= day)
            .GroupBy(line => (Item: line.Line.What, line.Line.Origin))
            .Select(use => QuarterTrailPart.Of(
                use.Key.Origin,
                use.Count() == 1 ? $"used on {use.First().Cost.Piece.Id}" : Invariant($"used on {use.Count()} pieces"),
                use.Count() == 1 ? use.First().Arose : null,
                -use.Sum(line => line.Line.Amount)) with
            {
                Group = use.Key.Item,
                Id = use.Count() == 1 ? use.First().Cost.Piece.Id : null,
                Sort = UsedUp,
            });
        // A piece that had left before the can was bought bears it, but the can holds it until it is there.
        var early = books.Costs.Shelf.UsedTooEarly().Where(part => part.Borne <= day && part.Left > day).Select(part => QuarterTrailPart.Of(
            new(Columns.Supplies.File, part.Can.Purchase.Row, "The piece bears it from the day it left, the can from the day it was bought."),
            "used before it was bought", part.Left, part.Cost) with
        {
            Group = part.Can.Purchase.Item,
            Sort = UsedUp,
        });
        var lost = books.Costs.SuppliesOnNoPiece.Where(line => !(line.Date > day)).Select(line => PartOf(line, -1));
        var stated = books.Costs.StatedByCounts.Where(piece => piece.Date <= day).Select(piece => QuarterTrailPart.Of(
            piece.Origin, $"missing at the count, as stated for {piece.PieceId}", piece.Date, -piece.Amount) with
        {
            Group = piece.Item,
            Id = piece.PieceId,
            Sort = LostSort,
        });
        var items = bought.Concat(used).Concat(early).Concat(lost).Concat(stated).Where(part => part.Amount != 0).GroupBy(part => part.Group!, StringComparer.OrdinalIgnoreCase)
            .Where(item => item.Sum(part => part.Amount) != 0)
            .ToArray();
        string[] notes = QuarterSentences.CansInDoubt(report) is { } doubt ? [doubt] : [];
        return QuarterTrail.Of(report, QuarterLine.Cans, report.Closing.InCans, items.Length, "item",
            items.OrderByDescending(item => item.Sum(part => part.Amount))
                .SelectMany(item => item.Select(part => part with { Group = item.Key }).OrderBy(part => part.Sort != Bought).ThenBy(part => part.Date)),
            notes);
    }

    public static QuarterTrail Lost(QuarterBooks books, QuarterReport report)
    {
        QuarterTrailPart[] parts =
        [
            .. books.Costs.SuppliesOnNoPiece.Where(line => report.Reckoned.Contains(line.Date)).Select(line => PartOf(line, 1))
                .GroupBy(part => part.Group!, StringComparer.OrdinalIgnoreCase)
                .SelectMany(item => item.Select(part => part with { Group = item.Key }).OrderBy(part => part.Date)),
        ];
        return QuarterTrail.Of(
            report, QuarterLine.SuppliesLost, report.Profit.SuppliesLost, parts.Select(part => part.Group).Distinct().Count(), "item", parts,
            QuarterTrail.Undated(report, QuarterUndated.Wasted));
    }

    private static QuarterTrailPart PartOf(CostLine line, int sign) =>
        QuarterTrailPart.Of(line.Origin, line.What, line.Date, sign * line.Amount) with
        {
            Group = SupplyLosses.ItemOf(line),
            Sort = LostSort,
        };

    private static string Heading(QuarterStockPiece piece)
    {
        string state = !piece.IsOnSale ? "in the workshop" : piece.DaysOnSale is { } days ? Invariant($"on sale {TextLines.Counted(days, "day")}") : "on sale";
        string age = piece.DaysHere is { } here ? Invariant($"here {TextLines.Counted(here, "day")}") : "since an unknown day";
        return $"{piece.Id} {piece.Type}, {state}, {age}";
    }
}
