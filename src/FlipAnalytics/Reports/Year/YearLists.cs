using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>An overhead of the year by item.</summary>
/// <param name="Item">What it was for, such as rent.</param>
/// <param name="Entries">Rows of <c>overheads.csv</c>, or outings, that it is made of.</param>
/// <param name="Amount">Amount in the year.</param>
/// <param name="IsFruitless">
/// Whether it is the outings that looked for pieces and brought nothing home: driving at the rate, and what else was paid.
/// </param>
public sealed record YearOverhead(string Item, int Entries, decimal Amount, bool IsFruitless)
{
    /// <summary>What the outings it is made of were for; null for rows of <c>overheads.csv</c>.</summary>
    public TripPurpose? Purpose { get; init; }

    internal static ImmutableArray<YearOverhead> In(QuarterBooks books, ReportPeriod period)
    {
        Func<CostLine, TripPurpose?> purposeOf = QuarterTrailUpkeep.PurposeOf(books);
        var lines = books.Costs.Overheads
            .Select(line => (Line: line, Amount: CostsBySpan.Of(books.Costs, line, period), Purpose: purposeOf(line)))
            .Where(line => line.Amount != 0)
            .ToArray();
        return
        [
            .. lines.Where(line => line.Purpose is null)
                .GroupBy(line => line.Line.What, StringComparer.OrdinalIgnoreCase)
                .Select(item => new YearOverhead(item.Key, item.Count(), item.Sum(line => line.Amount), false))
                .OrderByDescending(item => item.Amount).ThenBy(item => item.Item, StringComparer.Ordinal),
            .. lines.Where(line => line.Purpose is not null).GroupBy(line => line.Purpose!.Value).OrderBy(purpose => purpose.Key)
                .Select(all => new YearOverhead(
                    NameOf(all.Key), all.Count(), all.Sum(line => line.Amount), all.Key == TripPurpose.Sourcing)
                {
                    Purpose = all.Key,
                }),
        ];
    }

    private static string NameOf(TripPurpose purpose) => purpose switch
    {
        TripPurpose.Delivery => "delivery drives",
        TripPurpose.Supplies => "supply runs",
        TripPurpose.Other => "other drives",
        _ => "fruitless outings",
    };
}

/// <summary>A tool, as it was bought and as it stands in the books on the last day.</summary>
/// <param name="Item">What it is.</param>
/// <param name="BoughtOn">Day it was bought; null where unknown.</param>
/// <param name="Price">What it cost.</param>
/// <param name="IsBoughtInYear">Whether it was bought in the year.</param>
/// <param name="Wear">Its wear in the year, as the books reckon it: no tax depreciation.</param>
/// <param name="Value">Price less all wear up to the last day (book value); 0 before it was bought.</param>
/// <param name="Rule">How its wear is reckoned.</param>
public sealed record YearTool(
    string Item, DateOnly? BoughtOn, decimal Price, bool IsBoughtInYear, decimal Wear, decimal Value, string Rule)
{
    internal static ImmutableArray<YearTool> At(QuarterBooks books, ReportPeriod period)
    {
        // Wear is known by its line of tools.csv and the tool's name: either may stand twice.
        ILookup<(int? Row, string What), CostLine> wear =
            books.Costs.ToolWear.ToLookup(line => (line.Origin.Row, line.What));
        HashSet<(int? Row, string What)> seen = [];
        List<YearTool> tools = [];
        foreach ((Tool tool, ToolValue value) in books.Log.Tools.Where(tool => tool.Price is not null).Zip(books.Costs.ToolsLeft))
        {
            var name = ((int?)tool.Row, $"wear of {tool.Item}");
            CostLine[] lines = seen.Add(name) ? [.. wear[name]] : [];
            decimal worn = lines.Sum(line => line.ArisenBy(period.To, books.Currency));
            bool isHere = !(tool.BoughtOn > period.To);
            tools.Add(new(
                tool.Item,
                tool.BoughtOn,
                tool.Price!.Value,
                period.Contains(tool.BoughtOn),
                lines.Sum(line => CostsBySpan.Of(books.Costs, line, period)),
                (isHere ? tool.Price.Value : 0) - worn,
                value.Origin.Rule));
        }

        return [.. tools.Where(tool => !(tool.BoughtOn > period.To))];
    }
}

/// <summary>A piece in stock on the last evening.</summary>
/// <param name="Id">Its id.</param>
/// <param name="What">Its title, else its type.</param>
/// <param name="BoughtOn">Day it was bought; null where unknown.</param>
/// <param name="Purchase">What was paid for it.</param>
/// <param name="Supplies">What had been used up on it.</param>
/// <param name="Outing">Its share of the outing that brought it home.</param>
public sealed record YearStockPiece(string Id, string What, DateOnly? BoughtOn, decimal Purchase, decimal Supplies, decimal Outing)
{
    /// <summary>What it had cost so far.</summary>
    public decimal Cost => Purchase + Supplies + Outing;

    internal static ImmutableArray<YearStockPiece> At(QuarterBooks books, QuarterStock closing)
    {
        ILookup<string, StockLine> lines = books.Lines.Where(line => line.IsHeldOn(closing.Day))
            .ToLookup(line => line.Cost.Piece.Id, StringComparer.OrdinalIgnoreCase);
        return
        [
            .. closing.Pieces.Select(held =>
            {
                Piece piece = books.Costs[held.Id].Piece;
                decimal Of(CostKind kind) => lines[held.Id].Where(line => line.Line.Kind == kind).Sum(line => line.Line.Amount);
                return new YearStockPiece(
                    held.Id, CleanText.Shown(piece.Title ?? piece.Type), piece.BoughtOn, Of(CostKind.Purchase), Of(CostKind.Supplies), Of(CostKind.Trip));
            }),
        ];
    }
}

/// <summary>A supply in cans on the last evening, at cost.</summary>
/// <param name="Item">The owner's name for it.</param>
/// <param name="Value">What the rest cost.</param>
public sealed record YearSupply(string Item, decimal Value)
{
    internal static ImmutableArray<YearSupply> At(ImmutableArray<SupplyCan> cans) =>
    [
        .. cans.GroupBy(can => can.Item, StringComparer.OrdinalIgnoreCase)
            .Select(item => new YearSupply(item.Key, item.Sum(can => can.ValueLeft)))
            .Where(supply => supply.Value != 0)
            .OrderBy(supply => supply.Item, StringComparer.OrdinalIgnoreCase),
    ];
}

/// <summary>A piece that left in the year without being sold.</summary>
/// <param name="Id">Its id.</param>
/// <param name="What">Its title, else its type.</param>
/// <param name="LeftOn">Day it left.</param>
/// <param name="How">How; null where the log does not say.</param>
/// <param name="Cost">What it had cost.</param>
public sealed record YearLeft(string Id, string What, DateOnly LeftOn, LeftAs? How, decimal Cost)
{
    /// <summary>Whether its cost is a loss; one that you kept is a withdrawal.</summary>
    public bool IsWrittenOff => How is not LeftAs.Kept;

    internal static ImmutableArray<YearLeft> In(QuarterBooks books, ReportPeriod period) =>
    [
        .. books.Costs.Pieces.Where(cost => cost.Piece.IsGone && period.Contains(cost.Piece.LeftOn))
            .Select(cost => new YearLeft(
                cost.Piece.Id, CleanText.Shown(cost.Piece.Title ?? cost.Piece.Type), cost.Piece.LeftOn!.Value, cost.Piece.LeftAs,
                StockMovement.UsualKinds.Sum(cost.Of)))
            .OrderBy(left => left.LeftOn),
    ];
}
