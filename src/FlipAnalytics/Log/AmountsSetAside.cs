namespace FlipAnalytics;

/// <summary>What rows that could not be used hold, as far as it can be read: the size of what no figure counts.</summary>
/// <param name="Sales">Sales whose price can be read.</param>
/// <param name="Takings">Their prices and delivery charges.</param>
/// <param name="Spent">Prices paid, fees, deliveries, supplies, tools and overheads.</param>
/// <param name="Hours">Hours.</param>
public sealed record AmountsSetAside(int Sales, decimal Takings, decimal Spent, decimal Hours)
{
    internal static AmountsSetAside Of(IEnumerable<Piece> pieces)
    {
        Piece[] all = [.. pieces];
        return new(
            all.Count(piece => piece.SoldPrice is not null),
            all.Sum(piece => (piece.SoldPrice ?? 0) + (piece.DeliveryCharged ?? 0)),
            all.Sum(piece => (piece.BoughtPrice ?? 0) + (piece.Fees ?? 0) + (piece.DeliveryCost ?? 0) + (piece.SuppliesCost ?? 0)),
            all.Sum(piece => piece.Hours ?? 0));
    }

    internal static AmountsSetAside Spending(IEnumerable<decimal?> amounts) => new(0, 0, amounts.Sum(amount => amount ?? 0), 0);

    internal static AmountsSetAside Working(IEnumerable<decimal?> hours) => new(0, 0, 0, hours.Sum(worked => worked ?? 0));
}
