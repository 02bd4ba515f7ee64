using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Facts of one kind whose day is not written down: they belong to no span.</summary>
/// <param name="What">What they are, after a number: "sales".</param>
/// <param name="Count">How many.</param>
/// <param name="Amount">Money they hold, or hours; known amounts only.</param>
/// <param name="Unit">"money" or "hours".</param>
/// <param name="Column">Where the day belongs, such as sold_on in pieces.csv.</param>
public sealed record QuarterUndated(string What, int Count, decimal Amount, string Unit, string Column)
{
    /// <summary>The <see cref="What"/> of sales without a day.</summary>
    public const string Sold = "pieces sold";

    internal const string Gone = "pieces gone without a sale";
    internal const string Wear = "parts of the wear of tools";
    internal const string Wasted = "supplies wasted";
    internal const string Hours = "entries of general hours and outings";

    /// <summary>The <see cref="What"/> of money paid without a day, sales left out.</summary>
    internal static readonly ImmutableArray<string> Payments =
        ["pieces bought", "purchases of supplies", "tools bought", "costs of outings"];

    internal static ImmutableArray<QuarterUndated> Of(QuarterBooks books)
    {
        PieceCost[] sold = [.. books.Costs.Pieces.Where(cost => cost.Piece is { IsSold: true, SoldOn: null })];
        PieceCost[] gone = [.. books.Costs.Pieces.Where(cost => cost.Piece is { IsGone: true, LeftOn: null })];
        CashMovement[] paid = [.. books.Costs.Cash.Where(movement => movement.Date is null)];
        CostLine[] wear = [.. books.Costs.ToolWear.Where(line => line.Date is null)];
        CostLine[] wasted = [.. books.Costs.SuppliesOnNoPiece.Where(line => line.Date is null)];
        GeneralHours[] hours = [.. books.Hours.General.Concat(books.Hours.Outings).Where(entry => entry.Date is null)];
        return
        [
            .. new QuarterUndated[]
            {
                new(Sold, sold.Length, sold.Sum(cost => (cost.SalePrice ?? 0) + (cost.Piece.DeliveryCharged ?? 0)),
                    "money", "sold_on in pieces.csv"),
                new(Gone, gone.Length, gone.Sum(StockCost), "money", "left_on in pieces.csv"),
                Paid(CostKind.Purchase, Payments[0], "bought_on in pieces.csv"),
                Paid(CostKind.Supplies, Payments[1], "bought_on in supplies.csv"),
                Paid(CostKind.Tools, Payments[2], "bought_on in tools.csv"),
                Paid(CostKind.Trip, Payments[3], "date in trips.csv"),
                new(Wear, wear.Length, wear.Sum(line => line.Amount), "money",
                    "ready_on in pieces.csv"),
                new(Wasted, wasted.Length, wasted.Sum(line => line.Amount), "money", "date in uses.csv"),
                new(Hours, hours.Length, hours.Sum(entry => entry.Hours), "hours",
                    "date in hours.csv and trips.csv"),
            }.Where(facts => facts.Count > 0),
        ];

        QuarterUndated Paid(CostKind kind, string what, string column) => new(
            what,
            paid.Count(movement => movement.Kind == kind),
            -paid.Where(movement => movement.Kind == kind).Sum(movement => movement.Amount),
            "money",
            column);
    }

    private static decimal StockCost(PieceCost cost) => StockMovement.UsualKinds.Sum(cost.Of);
}
