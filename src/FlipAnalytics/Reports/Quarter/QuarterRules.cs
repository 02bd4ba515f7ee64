using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// The rules of thumb that figures of a span rest on, in the owner's words: where the log leaves a choice, one was made. What each of
/// them is stands in README.md under the same words, with its source in DEVELOPERS.md.
/// </summary>
internal static class QuarterRules
{
    /// <summary>Where the owner finds them, under the heading "Rules of thumb".</summary>
    public const string Place = "see README";

    private const string LotsByPrice = "lots by expected price";
    private const string LotsEqually = "lots equally";
    private const string Outings = "outings equally";
    private const string Driving = "driving by rate";
    private const string OldestFirst = "oldest can first";
    private const string AverageCan = "cans at their average";
    private const string Coats = "15 % lost of coats";
    private const string Spread = "sandpaper by hours";
    private const string WearByMonths = "wear by months";
    private const string WearByPieces = "wear by pieces";
    private const string WearByBoth = "wear by months and pieces";
    private const string PartOfAMonth = "part of a month by days";
    private const string RentByHours = "rent by hours";
    private const string BoothByDays = "booth rent by days for sale";
    private const string UnknownHours = "unknown hours averaged";

    /// <summary>All of them, in the order in which they are named.</summary>
    public static ImmutableArray<string> All { get; } =
    [
        LotsByPrice, LotsEqually, Outings, Driving, OldestFirst, AverageCan, Coats, Spread, WearByMonths, WearByPieces, WearByBoth,
        PartOfAMonth, RentByHours, BoothByDays, UnknownHours,
    ];

    /// <summary>Those that figures of a span rest on: what was in stock in it or at its end, and what fell into it.</summary>
    /// <param name="books">The books.</param>
    /// <param name="span">The span, up to the date of the books.</param>
    public static ImmutableArray<string> Of(QuarterBooks books, ReportPeriod span)
    {
        StockLine[] stock = [.. books.Lines.Where(line => line.Line.Amount != 0 && line.Arose <= span.To && !(line.Left < span.From))];
        HashSet<string> used =
        [
            .. OfPurchases(books.Log, stock), .. OfOutings(books, stock, span), .. OfSupplies(books.Log, stock), .. OfUpkeep(books, span),
        ];
        return [.. All.Where(used.Contains)];
    }

    /// <summary>The rules in a sentence; null where none was used.</summary>
    public static string? Sentence(ImmutableArray<string> rules) =>
        rules.IsEmpty ? null : $"Rules of thumb used ({Place}): {string.Join(", ", rules)}.";

    private static IEnumerable<string> OfPurchases(SalesLog log, StockLine[] stock)
    {
        HashSet<Piece> bought = new(
            stock.Where(line => line.Line.Kind == CostKind.Purchase).Select(line => line.Cost.Piece), ReferenceEqualityComparer.Instance);
        return LotPrices.Shared(log).Select(lot => lot.Select(i => log.Pieces[i]).ToArray()).Where(lot => lot.Any(bought.Contains))
            .Select(lot => lot.All(piece => piece.ExpectedPrice is not null) ? LotsByPrice : LotsEqually);
    }

    private static IEnumerable<string> OfOutings(QuarterBooks books, StockLine[] stock, ReportPeriod span)
    {
        var borne = stock.Where(line => line.Line.Kind == CostKind.Trip).Select(line => line.Cost.Piece.Trip!)
            .ToHashSet(StringComparer.OrdinalIgnoreCase);
        if (books.Log.Pieces.Where(piece => piece.Trip is not null && borne.Contains(piece.Trip))
            .GroupBy(piece => piece.Trip, StringComparer.OrdinalIgnoreCase).Any(trip => trip.Count() > 1))
        {
            yield return Outings;
        }

        if (books.Costs.Cash.Any(paid => paid.IsReckoned && (span.Contains(paid.Date) || borne.Contains(paid.Outing!.Name))))
            yield return Driving;
    }

    private static IEnumerable<string> OfSupplies(SalesLog log, StockLine[] stock)
    {
        CostOrigin[] supplies = [.. stock.Where(line => line.Line.Kind == CostKind.Supplies && !line.IsStated).Select(line => line.Line.Origin)];
        int ofUses = supplies.Count(origin => origin.File == Columns.Uses.File);
        HashSet<int?> uses = [.. supplies.Where(origin => origin.File == Columns.Uses.File).Select(origin => origin.Row)];
        if (ofUses > 0)
            yield return log.Workshop.Costing == CostingMethod.Average ? AverageCan : OldestFirst;
        if (log.Uses.Any(use => use is { Quantity: null, Coats: not null } && uses.Contains(use.Row)))
            yield return Coats;
        if (ofUses < supplies.Length)
            yield return Spread;
    }

    private static IEnumerable<string> OfUpkeep(QuarterBooks books, ReportPeriod span)
    {
        CostLine[] fell = [.. books.Costs.ToolWear.Concat(books.Costs.Overheads).Where(line => CostsBySpan.Of(books.Costs, line, span) != 0)];
        CostLine[] wear = [.. fell.Where(line => line.Kind == CostKind.Tools)];
        if (wear.Length > 0)
            yield return wear.All(line => line.Until is not null) ? WearByMonths : wear.All(line => line.Until is null) ? WearByPieces : WearByBoth;
        if (fell.Any(line => CostsBySpan.Of(books.Costs, line, span) != line.Amount))
            yield return PartOfAMonth;

        // What the pieces sold carry of costs of no single piece is in their full wage.
        var booths = books.Costs.Overheads.Where(line => line.Channel is not null).Select(line => line.Origin.Row).ToHashSet();
        CostLine[] carried =
        [
            .. books.Costs.Pieces.Where(cost => span.Contains(cost.Piece.SoldOn))
                .SelectMany(cost => cost.Lines).Where(line => line.Kind == CostKind.Overhead && line.Amount != 0),
        ];
        bool isByHours = carried.Any(line => !IsOfABooth(line));
        if (isByHours)
            yield return RentByHours;
        if (carried.Any(IsOfABooth))
            yield return BoothByDays;
        if (isByHours && Enumerable.Range(0, books.Log.Pieces.Length).Any(i =>
            books.Calendar.IsWorked(i) && !books.Calendar.Hours.ContainsKey(books.Log.Pieces[i].Id)))
        {
            yield return UnknownHours;
        }

        bool IsOfABooth(CostLine line) => line.Origin.File == Columns.Overheads.File && booths.Contains(line.Origin.Row);
    }
}
