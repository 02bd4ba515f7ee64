using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>Lines that stand in the sales and in the costs of pieces: sales, fees, cost of sold and its parts, written off.</summary>
internal static class QuarterTrailPieces
{
    public static QuarterTrail Of(QuarterBooks books, QuarterReport report, string word)
    {
        PieceCost[] sold = [.. report.Sales.Select(sale => books.Costs[sale.Id]).OrderBy(cost => cost.Piece.SoldOn)];
        QuarterProfit profit = report.Profit;
        return word switch
        {
            QuarterLine.Sales => Taken(report, word, profit.Sales, sold, "The sale price, as written down.", cost => cost.SalePrice,
                sold.Where(cost => cost.Piece.SoldPrice is null).Select(cost => $"The sale price of {cost.Piece.Id} is not written down.")),
            QuarterLine.DeliveryCharged => Taken(
                report, word, profit.DeliveryCharged, sold, "As written down.", cost => cost.Piece.DeliveryCharged, []),
            QuarterLine.Purchases => OneKind(report, word, profit.Purchases, sold, CostKind.Purchase, "bought"),
            QuarterLine.Supplies => Costs(report, word, profit.Supplies, sold, [CostKind.Supplies], Sold),
            QuarterLine.Outings => OneKind(report, word, profit.Outings, sold, CostKind.Trip, ""),
            QuarterLine.CostOfSold => Costs(report, word, profit.CostOfPiecesSold, sold, [.. StockMovement.UsualKinds], Sold),
            QuarterLine.Fees => OneKind(report, word, profit.Fees, sold, CostKind.Fees, "selling fees"),
            QuarterLine.Delivery => OneKind(report, word, profit.Delivery, sold, CostKind.Delivery, "delivery"),
            QuarterLine.WrittenOff => Costs(report, word, profit.WrittenOff,
                [.. books.Costs.Pieces.Where(cost => cost.Piece.IsWrittenOff && report.Reckoned.Contains(cost.Piece.LeftOn))
                    .OrderBy(cost => cost.Piece.LeftOn)],
                [.. StockMovement.UsualKinds], Gone),
            _ => throw new ArgumentException(QuarterLine.Refusal(word) ?? $"The line {word} is no sum over pieces.", nameof(word)),
        };
    }

    /// <summary>A piece in a few words.</summary>
    public static string Name(Piece piece) => $"{piece.Id} {piece.Type}";

    /// <summary>A piece sold, with the day.</summary>
    public static string Sold(Piece piece) => Invariant($"{Name(piece)}, sold {piece.SoldOn:yyyy-MM-dd}");

    /// <summary>A piece that left without a sale, with how and the day.</summary>
    public static string Gone(Piece piece)
    {
        string how = piece.LeftAs is { } left ? left.ToString().ToLowerInvariant() : "gone";
        return Invariant($"{Name(piece)}, {how} {piece.LeftOn:yyyy-MM-dd}");
    }

    /// <summary>Lines of a piece's cost under one heading, each with the word of its kind.</summary>
    public static IEnumerable<QuarterTrailPart> Parts(string heading, Piece piece, IEnumerable<CostLine> lines) => lines
        .Where(line => line.Amount != 0)
        .Select(line => QuarterTrailPart.Of(line.Origin, line.What, line.Date, line.Amount) with
        {
            Group = heading,
            Id = piece.Id,
            Sort = line.Kind switch
            {
                CostKind.Purchase => QuarterLine.Purchases,
                CostKind.Supplies => QuarterLine.Supplies,
                _ => QuarterLine.Outings,
            },
        });

    /// <summary>What the log does not tell of some kinds of cost of some pieces.</summary>
    public static IEnumerable<string> Gaps(IEnumerable<PieceCost> pieces, params CostKind[] kinds) =>
        pieces.SelectMany(cost => cost.Gaps).Where(gap => kinds.Contains(gap.Kind)).Select(gap => gap.What);

    private static IEnumerable<string> Further(PieceCost[] sold) => sold.Length == 0 ? [] :
    [
        $"Each kind by itself: --explain purchases, supplies or outings. One piece: flip wages --explain {sold[0].Piece.Id}.",
    ];

    private static QuarterTrail Taken(
        QuarterReport report, string word, decimal total, PieceCost[] sold, string rule, Func<PieceCost, decimal?> amount,
        IEnumerable<string> unknown)
    {
        QuarterTrailPart[] parts =
        [
            .. sold.Where(cost => amount(cost) is not (null or 0)).Select(cost => new QuarterTrailPart
            {
                What = Name(cost.Piece),
                Id = cost.Piece.Id,
                Date = cost.Piece.SoldOn,
                File = Columns.Pieces.File,
                Row = cost.Piece.Row,
                Rule = word == QuarterLine.Sales && cost.Piece.Commission is { } share
                    ? Invariant($"Your share of {share} of the sale price of {cost.Piece.SoldPrice}.")
                    : rule,
                Amount = amount(cost)!.Value,
            }),
        ];
        return QuarterTrail.Of(report, word, total, parts.Length, "piece", parts,
            unknown.Concat(QuarterTrail.Undated(report, QuarterUndated.Sold)));
    }

    // Mostly one line a piece, so no groups; what the line is named as usual goes without saying.
    private static QuarterTrail OneKind(
        QuarterReport report, string word, decimal total, PieceCost[] sold, CostKind kind, string usual)
    {
        QuarterTrailPart[] parts =
        [
            .. from cost in sold
               from line in cost.Lines
               where line.Kind == kind && line.Amount != 0
               let what = line.What != usual ? line.What : kind == CostKind.Fees ? cost.Piece.Channel : null
               select QuarterTrailPart.Of(
                   line.Origin, what is null ? Name(cost.Piece) : $"{Name(cost.Piece)}, {what}", line.Date, line.Amount) with
               {
                   Id = cost.Piece.Id,
               },
        ];
        return QuarterTrail.Of(report, word, total, parts.Select(part => part.Id).Distinct().Count(), "piece", parts,
            Gaps(sold, kind).Concat(QuarterTrail.Undated(report, QuarterUndated.Sold)));
    }

    private static QuarterTrail Costs(
        QuarterReport report, string word, decimal total, PieceCost[] pieces, CostKind[] kinds, Func<Piece, string> name)
    {
        QuarterTrailPart[] parts =
        [
            .. pieces.SelectMany(cost => Parts(name(cost.Piece), cost.Piece, cost.Lines.Where(line => kinds.Contains(line.Kind)))),
        ];
        return QuarterTrail.Of(
            report, word, total, parts.Select(part => part.Id).Distinct().Count(), "piece",
            kinds.Length == 1 ? parts.Select(part => part with { Sort = null }) : parts,
            (word == QuarterLine.CostOfSold ? Further(pieces) : []).Concat(Gaps(pieces, kinds)).Concat(QuarterTrail.Undated(
                report, word == QuarterLine.WrittenOff ? QuarterUndated.Gone : QuarterUndated.Sold)));
    }
}
