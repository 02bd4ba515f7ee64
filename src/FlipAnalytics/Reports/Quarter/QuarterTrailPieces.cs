using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>Lines that stand in the sales and in the costs of pieces: sales, fees, cost of sold and its parts, written off.</summary>
internal static class QuarterTrailPieces
{
    public static QuarterTrail Of(QuarterBooks books, QuarterReport report, string word)
    {
        QuarterProfit profit = report.Profit;
        return word switch
        {
            QuarterLine.Sales => Taken(books, report, word, profit.Sales, "The sale price, as written down.", sale => sale.SalePrice,
                report.Sales.Where(sale => sale.SalePrice is null).Select(sale => $"The sale price of {sale.Id} is not written down.")),
            QuarterLine.DeliveryCharged => Taken(
                books, report, word, profit.DeliveryCharged, "As written down.", sale => sale.DeliveryCharged, []),
            QuarterLine.Returns => Returns(books, report),
            QuarterLine.Purchases => OneKind(books, report, word, profit.Purchases, CostKind.Purchase, "bought"),
            QuarterLine.Supplies => CostsOfSold(books, report, word, profit.Supplies, [CostKind.Supplies]),
            QuarterLine.Outings => OneKind(books, report, word, profit.Outings, CostKind.Trip, ""),
            QuarterLine.CostOfSold => CostsOfSold(books, report, word, profit.CostOfPiecesSold, [.. StockMovement.UsualKinds]),
            QuarterLine.Fees => OneKind(books, report, word, profit.Fees, CostKind.Fees, "selling fees"),
            QuarterLine.Delivery => OneKind(books, report, word, profit.Delivery, CostKind.Delivery, "delivery"),
            QuarterLine.WrittenOff => Costs(report, word, profit.WrittenOff,
                books.LeftIn(report.Reckoned, StockEnd.WrittenOff).OrderBy(line => line.Left)
                    .GroupBy(line => line.Cost, (cost, lines) => (Gone(cost.Piece), cost, lines.Select(line => line.Line))),
                [.. StockMovement.UsualKinds], []),
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

    private static QuarterTrail Taken(
        QuarterBooks books, QuarterReport report, string word, decimal total, string rule, Func<QuarterSale, decimal?> amount,
        IEnumerable<string> unknown)
    {
        QuarterTrailPart[] parts =
        [
            .. report.Sales.OrderBy(sale => sale.SoldOn).Where(sale => amount(sale) is not (null or 0)).Select(sale =>
            {
                Piece piece = books.Costs[sale.Id].Piece;
                SaleReturn? undone = UndoneOf(books, sale);
                string came = undone is null ? "" : Invariant($" The piece came back on {undone.ReturnedOn:yyyy-MM-dd}.");
                return new QuarterTrailPart
                {
                    What = Name(piece),
                    Id = piece.Id,
                    Date = sale.SoldOn,
                    File = undone is null ? Columns.Pieces.File : Columns.Returns.File,
                    Row = undone?.Row ?? piece.Row,
                    Rule = (word == QuarterLine.Sales && piece.Commission is { } share
                        ? Invariant($"Your share of {share} of the sale price of {undone?.SoldPrice ?? piece.SoldPrice}.")
                        : rule) + came,
                    Amount = amount(sale)!.Value,
                };
            }),
        ];
        return QuarterTrail.Of(report, word, total, parts.Length, "piece", parts,
            unknown.Concat(QuarterTrail.Undated(report, QuarterUndated.Sold)));
    }

    private static SaleReturn? UndoneOf(QuarterBooks books, QuarterSale sale) => sale.ReturnedOn is null ? null
        : books.Costs[sale.Id].Undone.First(back => back.SoldOn == sale.SoldOn && back.ReturnedOn == sale.ReturnedOn);

    private static QuarterTrail Returns(QuarterBooks books, QuarterReport report)
    {
        QuarterTrailPart[] parts =
        [
            .. books.ReturnsIn(report.Reckoned).OrderBy(back => back.Return.Row.ReturnedOn).Select(back =>
            {
                SaleReturn row = back.Return.Row;
                string what = row.CameBack ? Invariant($"came back, sold {row.SoldOn:yyyy-MM-dd}") : "money given back, the sale stands";
                string rule = back.Return.GivenBack == row.Refund ? "What was given back, as written down."
                    : Invariant($"Given back {row.Refund}; its owner's share of it is not yours, and what its buyer still owed is no longer due.");
                return QuarterTrailPart.Of(
                    new(Columns.Returns.File, row.Row, rule), $"{Name(back.Cost.Piece)}, {what}", row.ReturnedOn, back.Return.GivenBack) with
                {
                    Id = back.Cost.Piece.Id,
                };
            }),
        ];
        return QuarterTrail.Of(report, QuarterLine.Returns, report.Profit.Returns, parts.Length, "return", parts);
    }

    // Mostly one line a piece, so no groups; what the line is named as usual goes without saying.
    private static QuarterTrail OneKind(
        QuarterBooks books, QuarterReport report, string word, decimal total, CostKind kind, string usual)
    {
        IEnumerable<(PieceCost Cost, CostLine Line, string? CameBack)> lines = kind is CostKind.Fees or CostKind.Delivery
            ? books.Selling.Where(line => line.Line.Kind == kind && report.Reckoned.Contains(line.Counted))
                .OrderBy(line => line.Counted).Select(line => (line.Cost, line.Line, (string?)null))
            : SoldLines(books, report).Where(line => line.Line.Kind == kind);
        QuarterTrailPart[] parts =
        [
            .. from line in lines
               where line.Line.Amount != 0
               let what = line.CameBack ?? (line.Line.What != usual ? line.Line.What : kind == CostKind.Fees ? line.Cost.Piece.Channel : null)
               select QuarterTrailPart.Of(
                   line.Line.Origin, what is null ? Name(line.Cost.Piece) : $"{Name(line.Cost.Piece)}, {what}", line.Line.Date,
                   line.Line.Amount) with
               {
                   Id = line.Cost.Piece.Id,
               },
        ];
        return QuarterTrail.Of(report, word, total, parts.Select(part => part.Id).Distinct().Count(), "piece", parts,
            Gaps(Sold(books, report), kind).Concat(QuarterTrail.Undated(report, QuarterUndated.Sold)));
    }

    // What pieces had cost when they were sold, and below zero when they came back.
    private static IEnumerable<(PieceCost Cost, CostLine Line, string? CameBack)> SoldLines(QuarterBooks books, QuarterReport report) =>
        books.LeftIn(report.Reckoned, StockEnd.Sold).OrderBy(line => line.Left)
            .Select(line => (line.Cost, line.Line, (string?)null))
            .Concat(books.Lines.Where(line => line.IsBack && report.Reckoned.Contains(line.Arose)).OrderBy(line => line.Arose).Select(line => (
                line.Cost, line.Line with { Amount = -line.Line.Amount }, (string?)Invariant($"came back {line.Arose:yyyy-MM-dd}"))));

    private static IEnumerable<PieceCost> Sold(QuarterBooks books, QuarterReport report) =>
        report.Sales.OrderBy(sale => sale.SoldOn).Select(sale => books.Costs[sale.Id]).Distinct();

    private static QuarterTrail CostsOfSold(QuarterBooks books, QuarterReport report, string word, decimal total, CostKind[] kinds) => Costs(
        report, word, total,
        SoldLines(books, report).GroupBy(line => (line.Cost, line.CameBack), (key, lines) => (
            key.CameBack is { } cameBack ? $"{Name(key.Cost.Piece)}, {cameBack}" : Sold(key.Cost.Piece), key.Cost, lines.Select(line => line.Line))),
        kinds,
        Sold(books, report));

    private static QuarterTrail Costs(
        QuarterReport report, string word, decimal total, IEnumerable<(string Heading, PieceCost Cost, IEnumerable<CostLine> Lines)> pieces,
        CostKind[] kinds, IEnumerable<PieceCost> sold)
    {
        (string Heading, PieceCost Cost, IEnumerable<CostLine> Lines)[] all = [.. pieces];
        QuarterTrailPart[] parts =
        [
            .. all.SelectMany(piece => Parts(piece.Heading, piece.Cost.Piece, piece.Lines.Where(line => kinds.Contains(line.Kind)))),
        ];
        PieceCost[] told = word == QuarterLine.WrittenOff ? [.. all.Select(piece => piece.Cost)] : [.. sold];
        string[] further = word != QuarterLine.CostOfSold || told.Length == 0 ? [] :
        [
            $"Each kind by itself: --explain purchases, supplies or outings. One piece: flip wages --explain {told[0].Piece.Id}.",
        ];
        return QuarterTrail.Of(
            report, word, total, parts.Select(part => part.Id).Distinct().Count(), "piece",
            kinds.Length == 1 ? parts.Select(part => part with { Sort = null }) : parts,
            further.Concat(Gaps(told, kinds)).Concat(QuarterTrail.Undated(
                report, word == QuarterLine.WrittenOff ? QuarterUndated.Gone : QuarterUndated.Sold)));
    }
}
