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
    private static readonly (string What, CostKind? Kind)[] Kinds =
    [
        ("sales and delivery charged", null),
        ("pieces bought", CostKind.Purchase),
        ("supplies bought", CostKind.Supplies),
        ("tools bought", CostKind.Tools),
        ("outings, without driving", CostKind.Trip),
        ("rent and other overheads", CostKind.Overhead),
        ("delivery", CostKind.Delivery),
        ("fees", CostKind.Fees),
    ];

    /// <summary>Money in.</summary>
    public decimal In => Lines.Sum(line => line.In);

    /// <summary>Money out.</summary>
    public decimal Out => Lines.Sum(line => line.Out);

    /// <summary>Money in less money out.</summary>
    public decimal Change => In - Out;

    /// <summary>Change less driving as reckoned.</summary>
    public decimal ChangeAfterDriving => Change - DrivingReckoned;

    internal static QuarterCash Of(QuarterBooks books, ReportPeriod period) =>
        Of(books.Costs.Cash.Where(movement => period.Contains(movement.Date)));

    internal static QuarterCash Of(IEnumerable<CashMovement> movements)
    {
        CashMovement[] all = [.. movements];
        ILookup<CostKind?, decimal> paid = all.Where(movement => !movement.IsReckoned)
            .ToLookup(movement => movement.Kind, movement => movement.Amount);
        return new(
            [
                .. Kinds.Select(kind => new QuarterCashLine(
                        kind.What,
                        paid[kind.Kind].Where(amount => amount > 0).Sum(),
                        -paid[kind.Kind].Where(amount => amount < 0).Sum()))
                    .Where(line => line.In != 0 || line.Out != 0),
            ],
            -all.Where(movement => movement.IsReckoned).Sum(movement => movement.Amount));
    }
}
