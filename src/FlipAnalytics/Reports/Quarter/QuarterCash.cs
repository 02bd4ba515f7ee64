using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Money of one kind that came in and went out.</summary>
/// <param name="What">What it was for, in a few words.</param>
/// <param name="In">Money in.</param>
/// <param name="Out">Money out, above zero.</param>
public sealed record QuarterCashLine(string What, decimal In, decimal Out);

/// <summary>Money in and out in a span. What one had at its start is not in the log.</summary>
/// <param name="Lines">By kind, those without any money left out.</param>
/// <param name="DrivingReckoned">
/// Driving at a rate for each mile or kilometre: it stands for fuel, wear and insurance, which the log does not hold, so it is
/// in no line.
/// </param>
public sealed record QuarterCash(ImmutableArray<QuarterCashLine> Lines, decimal DrivingReckoned)
{
    private const string GivenBack = "given back to buyers";

    private static readonly (string What, CostKind? Kind, MoneyOf? Of)[] Kinds =
    [
        ("sales and delivery charged", null, null),
        (GivenBack, null, null),
        ("pieces bought", CostKind.Purchase, null),
        ("supplies bought", CostKind.Supplies, null),
        ("tools bought", CostKind.Tools, null),
        ("outings, without driving", CostKind.Trip, null),
        ("rent and other overheads", CostKind.Overhead, null),
        ("delivery", CostKind.Delivery, null),
        ("fees", CostKind.Fees, null),
        ("sales tax paid over", null, MoneyOf.TaxOffice),
        ("to owners of pieces sold for them", null, MoneyOf.OwnersOfPieces),
        ("your own, put in and taken out", null, MoneyOf.Owner),
    ];

    /// <summary>Money in.</summary>
    public decimal In => Lines.Sum(line => line.In);

    /// <summary>Money out.</summary>
    public decimal Out => Lines.Sum(line => line.Out);

    /// <summary>Money in less money out.</summary>
    public decimal Change => In - Out;

    /// <summary>Change less driving as reckoned.</summary>
    public decimal ChangeAfterDriving => Change - DrivingReckoned;

    /// <summary>What money was for, by its place among the lines.</summary>
    internal static string NameOf(int place) => Kinds[place].What;

    /// <summary>Place of a movement among the lines.</summary>
    internal static int PlaceOf(CashMovement movement) =>
        Array.IndexOf(Kinds, KindOf(movement));

    internal static QuarterCash Of(QuarterBooks books, ReportPeriod period) =>
        Of(books.Costs.Cash.Where(movement => period.Contains(movement.Date)));

    internal static QuarterCash Of(IEnumerable<CashMovement> movements)
    {
        CashMovement[] all = [.. movements];
        ILookup<(string, CostKind?, MoneyOf?), decimal> paid = all.Where(movement => !movement.IsReckoned)
            .ToLookup(KindOf, movement => movement.Amount);
        return new(
            [
                .. Kinds.Select(kind => new QuarterCashLine(
                        kind.What,
                        paid[kind].Where(amount => amount > 0).Sum(),
                        -paid[kind].Where(amount => amount < 0).Sum()))
                    .Where(line => line.In != 0 || line.Out != 0),
            ],
            -all.Where(movement => movement.IsReckoned).Sum(movement => movement.Amount));
    }

    private static (string, CostKind?, MoneyOf?) KindOf(CashMovement movement) => Array.Find(
        Kinds, kind => kind.Kind == movement.Kind && kind.Of == movement.Of && (kind.What == GivenBack) == movement.IsGivenBack);
}
