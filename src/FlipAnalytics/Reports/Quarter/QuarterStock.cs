using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Pieces in stock with something in common.</summary>
/// <param name="Name">What they have in common: where they stand, or days since they were bought.</param>
/// <param name="Pieces">How many.</param>
/// <param name="Cost">What they have cost so far: purchase, supplies and outing.</param>
/// <param name="Floor">Floor they stand on, in square feet where lengths are in inches, else in square metres.</param>
/// <param name="FloorUnknown">Pieces without a width or a depth; their floor is not in it.</param>
public sealed record QuarterStockGroup(string Name, int Pieces, decimal Cost, decimal Floor, int FloorUnknown);

/// <summary>A piece in stock on an evening.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Type">Its type.</param>
/// <param name="IsOnSale">Whether it was on offer.</param>
/// <param name="Cost">What it had cost so far.</param>
/// <param name="DaysHere">Days since it was bought; null where unknown.</param>
/// <param name="DaysOnSale">Days on offer; null where not on offer or unknown.</param>
/// <param name="Floor">Floor it stands on; null where unknown.</param>
public sealed record QuarterStockPiece(
    string Id, string Type, bool IsOnSale, decimal Cost, int? DaysHere, int? DaysOnSale, decimal? Floor);

/// <summary>What was there on an evening, at cost.</summary>
/// <param name="Day">The evening.</param>
/// <param name="Pieces">Each piece in stock, in the order of the log.</param>
/// <param name="ByState">In the workshop, on sale.</param>
/// <param name="ByAge">By days since bought: 0-30, 31-90, 91-180, over 180, unknown.</param>
/// <param name="InCans">What is left of the supplies bought, by the books: never below zero.</param>
/// <param name="StatedBeyondCans">
/// What pieces state for supplies so far that no can was charged for and no count has settled, as far as the cans that were
/// there and not counted since reach: that much may be missing in them.
/// </param>
/// <param name="Tools">Book value of tools: price less wear.</param>
public sealed record QuarterStock(
    DateOnly Day,
    ImmutableArray<QuarterStockPiece> Pieces,
    ImmutableArray<QuarterStockGroup> ByState,
    ImmutableArray<QuarterStockGroup> ByAge,
    decimal InCans,
    decimal StatedBeyondCans,
    decimal Tools)
{
    private const decimal SquareInches = 144;
    private const decimal SquareCentimetres = 10_000;

    private static readonly (string Name, int From)[] Ages =
        [("0-30 days", 0), ("31-90 days", 31), ("91-180 days", 91), ("over 180 days", 181)];

    /// <summary>Cost of all pieces in stock.</summary>
    public decimal Cost => Pieces.Sum(piece => piece.Cost);

    internal static QuarterStock At(QuarterBooks books, DateOnly day) => At(books, day, books.Costs.CansOn(day));

    internal static QuarterStock At(QuarterBooks books, DateOnly day, ImmutableArray<SupplyCan> cans)
    {
        Dictionary<Piece, decimal> costs = new(ReferenceEqualityComparer.Instance);
        foreach (StockLine line in books.Lines.Where(line => line.IsHeldOn(day)))
            costs[line.Cost.Piece] = costs.GetValueOrDefault(line.Cost.Piece) + line.Line.Amount;
        ImmutableArray<QuarterStockPiece> pieces =
        [
            .. books.Costs.Pieces
                .Where(cost => !HasLeft(cost, day) && (!(cost.Piece.BoughtOn > day) || costs.GetValueOrDefault(cost.Piece) != 0))
                .Select(cost => Of(cost.Piece, costs.GetValueOrDefault(cost.Piece), day, books.Log.Workshop.LengthUnit)),
        ];
        return new(
            day,
            pieces,
            [
                Group("in the workshop", pieces.Where(piece => !piece.IsOnSale)),
                Group("on sale", pieces.Where(piece => piece.IsOnSale)),
            ],
            [
                .. Ages.Select((age, i) => Group(age.Name, pieces.Where(piece => piece.DaysHere >= age.From
                    && (i == Ages.Length - 1 || piece.DaysHere < Ages[i + 1].From)))),
                Group("unknown", pieces.Where(piece => piece.DaysHere is null)),
            ],
            cans.Sum(can => can.ValueLeft),
            SuppliesInDoubt.Of(books, day, cans),
            books.Costs.ToolsLeft.Sum(tool => tool.Value)
                - QuarterMovement.Paid(books, CostKind.Tools, movement => movement > day)
                + books.Costs.ToolWear.Sum(line => line.Amount - line.ArisenBy(day, books.Currency)));
    }

    /// <summary>Cost of the pieces in stock on an evening.</summary>
    internal static decimal CostAt(QuarterBooks books, DateOnly day) =>
        books.Lines.Where(line => line.IsHeldOn(day)).Sum(line => line.Line.Amount);

    /// <summary>
    /// Day from which a piece was on offer; null where it never was. One with an asking price but no day of listing
    /// counts from when it was ready, else bought.
    /// </summary>
    internal static DateOnly? OfferedOn(Piece piece) => piece.ListedOn
        ?? (piece.AskingPrice is null ? null : piece.ReadyOn ?? piece.BoughtOn ?? DateOnly.MinValue);

    private static bool HasLeft(PieceCost cost, DateOnly day) => cost.Stays.IsOutOn(day);

    private static QuarterStockPiece Of(Piece piece, decimal cost, DateOnly day, LengthUnit unit)
    {
        bool isOnSale = OfferedOn(piece) <= day;
        return new(
            piece.Id,
            piece.Type,
            isOnSale,
            cost,
            piece.BoughtOn is { } bought && bought <= day ? day.DayNumber - bought.DayNumber : null,
            isOnSale && piece.ListedOn is { } listed ? day.DayNumber - listed.DayNumber : null,
            piece is { Width: { } width, Depth: { } depth }
                ? width * depth * (piece.Count ?? 1) / (unit == LengthUnit.Inch ? SquareInches : SquareCentimetres)
                : null);
    }

    private static QuarterStockGroup Group(string name, IEnumerable<QuarterStockPiece> pieces)
    {
        QuarterStockPiece[] all = [.. pieces];
        return new(
            name,
            all.Length,
            all.Sum(piece => piece.Cost),
            decimal.Round(all.Sum(piece => piece.Floor ?? 0), 2, MidpointRounding.AwayFromZero),
            all.Count(piece => piece.Floor is null));
    }
}
