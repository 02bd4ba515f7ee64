using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What selling costs this person, as their own log and settings show it.</summary>
public sealed record SellingTerms
{
    /// <summary>Share of the sale price that channels keep, 0 to below 1.</summary>
    public required decimal FeeRate { get; init; }

    /// <summary>Amount kept a sale, on top of the share.</summary>
    public required decimal FeeFixed { get; init; }

    /// <summary>Where the fee figures come from, in words that follow "fees: "; null where fees are unknown.</summary>
    public string? FeeSource { get; init; }

    /// <summary>Whether fees through the channel asked for are known; if not, those of the usual mix are taken.</summary>
    public bool IsChannelKnown { get; init; } = true;

    /// <summary>
    /// Delivery cost, drives to the buyer included, less delivery charge of each sale that has any of them on record, lowest
    /// first. A sale with none is taken as collected by the buyer.
    /// </summary>
    public required ImmutableArray<decimal> Deliveries { get; init; }

    /// <summary>Sales in the log.</summary>
    public required int SaleCount { get; init; }

    /// <summary>Total bought below the sticker price over the total of sticker prices, 0 to 1; null where unknown.</summary>
    public decimal? UsualDiscount { get; init; }

    /// <summary>Share off the sticker price of each purchase that has both prices, lowest first, 0 to 1; slips left out.</summary>
    public ImmutableArray<decimal> Discounts { get; init; } = [];

    /// <summary>Average net cost of delivery a sale, collected pieces included; negative where delivery earns.</summary>
    public decimal AverageDelivery => SaleCount == 0 ? 0 : Deliveries.Sum() / SaleCount;

    /// <summary>The terms that a log shows.</summary>
    /// <param name="log">The log.</param>
    /// <param name="channel">Channel the sale will go through; null takes the mix of past sales.</param>
    public static SellingTerms Of(SalesLog log, string? channel = null)
    {
        ArgumentNullException.ThrowIfNull(log);
        var sales = log.Pieces.Where(p => p.SoldPrice > 0).ToImmutableArray();
        var (rate, fixedFee, source) = Fees(log.Workshop, sales, channel);
        bool isChannelKnown = source is not null || channel is null;
        if (!isChannelKnown)
            (rate, fixedFee, source) = Fees(log.Workshop, sales, null);
        // The sum for a lot says nothing about the sticker of the one piece it stands at.
        var inLots = LotPrices.Shared(log).SelectMany(lot => lot).Select(i => log.Pieces[i]).ToHashSet<Piece>(ReferenceEqualityComparer.Instance);
        var bargains = log.Pieces.Where(p => p.StickerPrice > 0 && p.BoughtPrice is not null && !inLots.Contains(p))
            .ToImmutableArray();
        ImmutableArray<Piece> usual = Usual(bargains);
        return new()
        {
            FeeRate = rate,
            FeeFixed = fixedFee,
            FeeSource = source,
            IsChannelKnown = isChannelKnown,
            Deliveries = [.. NetDeliveries(log, sales).Order()],
            SaleCount = sales.Length,
            UsualDiscount = Discount(usual),
            Discounts = [.. usual.Select(p => Math.Clamp(1 - p.BoughtPrice!.Value / p.StickerPrice!.Value, 0, 1)).Order()],
        };
    }

    // Cost and charge each by itself: a slip in either would hide in the difference. A drive costs what the books charge the sale
    // with: not one that brought a piece home, and none that took several pieces to their buyers. A piece that came back before has
    // drives of the sale that was undone, and one that took it back; neither is of the sale that stands.
    private static IEnumerable<decimal> NetDeliveries(SalesLog log, ImmutableArray<Piece> sales)
    {
        Dictionary<Piece, decimal> drives = Drives(log);
        (decimal? Cost, decimal? Charged)[] delivered =
        [
            .. sales.Select(piece => (
                    Cost: drives.TryGetValue(piece, out decimal drive) ? drive + (piece.DeliveryCost ?? 0) : piece.DeliveryCost,
                    Charged: piece.DeliveryCharged))
                .Where(sale => sale.Cost is not null || sale.Charged is not null),
        ];
        var cost = OrdinaryAmounts.Of(delivered.Select(sale => sale.Cost));
        var charged = OrdinaryAmounts.Of(delivered.Select(sale => sale.Charged));
        return delivered.Select(sale => cost.Hold(sale.Cost ?? 0) - charged.Hold(sale.Charged ?? 0));
    }

    // A drive whose distance or rate is unknown tells what else was paid on it and no more.
    private static Dictionary<Piece, decimal> Drives(SalesLog log)
    {
        Dictionary<Piece, decimal> drives = new(ReferenceEqualityComparer.Instance);
        if (!log.Trips.Any(trip => trip.Purpose == TripPurpose.Delivery))
            return drives;
        Dictionary<string, int> places = new(StringComparer.OrdinalIgnoreCase);
        for (int i = 0; i < log.Pieces.Length; i++)
            places.TryAdd(log.Pieces[i].Id, i);
        foreach (OutingCost outing in TripCosts.Of(log, id => places.TryGetValue(id, out int place) ? place : null, []))
        {
            if (outing.Buyer is { } buyer && (outing.Driving is not null || outing.Trip.OtherCost is not null)
                && IsOfStandingSale(log.Pieces[buyer], outing.Day))
                drives[log.Pieces[buyer]] = drives.GetValueOrDefault(log.Pieces[buyer]) + outing.Cost;
        }

        return drives;

        bool IsOfStandingSale(Piece piece, DateOnly? day)
        {
            ImmutableArray<SaleReturn> undone =
            [
                .. log.Returns
                    .Where(back => back.CameBack && string.Equals(back.PieceId, piece.Id, StringComparison.OrdinalIgnoreCase))
                    .OrderBy(back => back.ReturnedOn),
            ];
            return new StockStays(piece, undone).DriveOf(day).Sale == undone.Length;
        }
    }

    private static ImmutableArray<Piece> Usual(ImmutableArray<Piece> bargains)
    {
        var shares = OrdinaryAmounts.Of(bargains.Select(p => p.BoughtPrice / p.StickerPrice));
        return [.. bargains.Where(p => shares.Holds(p.BoughtPrice!.Value / p.StickerPrice!.Value))];
    }

    private static decimal? Discount(ImmutableArray<Piece> usual)
    {
        decimal stickers = usual.Sum(p => p.StickerPrice!.Value);
        return stickers == 0 ? null : Math.Clamp(1 - usual.Sum(p => p.BoughtPrice!.Value) / stickers, 0, 1);
    }

    private static (decimal Rate, decimal Fixed, string? Source) Fees(
        Workshop workshop, ImmutableArray<Piece> sales, string? channel)
    {
        if (channel is not null && workshop.Fees.TryGetValue(channel, out FeeRule? stated))
            return (stated.Rate, stated.Fixed, $"the rule for {channel} in workshop.toml");

        var known = sales
            .Where(p => channel is null || string.Equals(p.Channel, channel, StringComparison.OrdinalIgnoreCase))
            .Select(p => (Price: p.SoldPrice!.Value, Fee: p.Fees ?? Rule(workshop, p)))
            .Where(sale => sale.Fee is not null)
            .ToImmutableArray();
        if (known.Length > 0)
        {
            // A share far from the others tells of a slip in the fee or in the price; either would weigh heavily in the sums,
            // and so would a wild price without a fee.
            var shares = OrdinaryAmounts.Of(known.Select(sale => sale.Fee / sale.Price));
            var prices = OrdinaryAmounts.Of(known.Select(sale => (decimal?)sale.Price));
            var usual = known.Where(sale => shares.Holds(sale.Fee!.Value / sale.Price) && prices.Holds(sale.Price))
                .ToImmutableArray();
            // Where no sale is ordinary in both, they are so far apart that none is a slip among the others.
            usual = usual.IsEmpty ? known : usual;
            decimal share = usual.Sum(sale => sale.Fee!.Value) / usual.Sum(sale => sale.Price);
            return (Math.Min(share, 0.99m), 0, usual.Length == 1 ? "one past sale" : $"{usual.Length} past sales");
        }

        if (channel is null && workshop.Fees.Count > 0)
        {
            return (workshop.Fees.Values.Average(rule => rule.Rate), workshop.Fees.Values.Average(rule => rule.Fixed),
                workshop.Fees.Count == 1 ? "the rule in workshop.toml" : "the average of the rules in workshop.toml");
        }

        return (0, 0, null);
    }

    private static decimal? Rule(Workshop workshop, Piece sold) =>
        sold.Channel is { } channel && workshop.Fees.TryGetValue(channel, out FeeRule? rule)
            ? rule.Rate * sold.SoldPrice!.Value + rule.Fixed
            : null;
}
