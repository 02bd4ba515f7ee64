using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>What was paid for a piece, as far as the log tells.</summary>
/// <param name="Amount">Amount, in whole minor units where it is a share.</param>
/// <param name="Rule">How it follows from the log: a sentence.</param>
internal readonly record struct PricePaid(decimal Amount, string Rule);

/// <summary>
/// Purchase prices, where pieces bought together for one sum share it: the prices stated for pieces of a lot of which one
/// has none are the price of the whole lot, shared by the sale prices expected at the time, or equally where one of these
/// is unknown.
/// </summary>
/// <remarks>
/// Sharing a joint cost by sales value is the accountant's rule for joint products (relative sales value method). A lot
/// whose pieces all have a price has nothing to share.
/// </remarks>
internal static class LotPrices
{
    /// <summary>What was paid for each piece, in the order of the log; null where unknown.</summary>
    public static ImmutableArray<PricePaid?> Of(SalesLog log)
    {
        PricePaid?[] paid =
        [
            .. log.Pieces.Select(piece => piece.BoughtPrice is { } price
                ? new PricePaid(price, "The price paid, as written down.")
                : (PricePaid?)null),
        ];
        foreach (int[] lot in Shared(log))
        {
            Piece[] pieces = [.. lot.Select(i => log.Pieces[i])];
            decimal sum = pieces.Sum(piece => piece.BoughtPrice ?? 0);
            bool isExpected = pieces.All(piece => piece.ExpectedPrice is not null);
            ImmutableArray<decimal> shares = Shares.InProportion(
                sum, [.. pieces.Select(piece => isExpected ? piece.ExpectedPrice!.Value : 1)], log.Workshop.Currency.MinorDigits);
            string by = isExpected ? "by the sale prices expected when buying" : "equally";
            string rule = Invariant($"Its share of {sum} for the {lot.Length} pieces of lot {pieces[0].Lot}, shared {by}.");
            for (int k = 0; k < lot.Length; k++)
                paid[lot[k]] = new(shares[k], rule);
        }

        return [.. paid];
    }

    /// <summary>Places of the pieces of each lot whose price is shared.</summary>
    public static IEnumerable<int[]> Shared(SalesLog log) => Enumerable.Range(0, log.Pieces.Length)
        .Where(i => log.Pieces[i].Lot is not null)
        .GroupBy(i => log.Pieces[i].Lot!, StringComparer.OrdinalIgnoreCase)
        .Select(lot => lot.ToArray())
        .Where(lot => lot.Any(i => log.Pieces[i].BoughtPrice is null) && lot.Any(i => log.Pieces[i].BoughtPrice is not null));
}
