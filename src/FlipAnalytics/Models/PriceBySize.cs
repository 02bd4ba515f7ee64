using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A past sale by its width.</summary>
/// <param name="PieceId">The piece.</param>
/// <param name="Width">Width of one item, in the log's length unit.</param>
/// <param name="SalePrice">Sale price.</param>
public sealed record SaleAtWidth(string PieceId, decimal Width, decimal SalePrice);

/// <summary>The forecast sale price of a piece of which type, count and width are known, and nothing else.</summary>
/// <param name="Width">Width of one item, in the log's length unit.</param>
/// <param name="Low">Lower end of the range.</param>
/// <param name="Median">Median.</param>
/// <param name="High">Upper end of the range.</param>
public sealed record PriceAtWidth(decimal Width, decimal Low, decimal Median, decimal High);

/// <summary>What pieces of a type bring, by width, if sold when a piece bought now would likely sell.</summary>
public sealed record PriceBySize
{
    private const decimal RangeLevel = 0.8m;
    private const int CurvePoints = 25;

    /// <summary>The type.</summary>
    public required string Type { get; init; }

    /// <summary>Items sold as one: the number most often sold of this type.</summary>
    public required int Count { get; init; }

    /// <summary>Chance that a sale falls into the range, 0 to 1.</summary>
    public decimal Level { get; init; } = RangeLevel;

    /// <summary>The workshop, for its units.</summary>
    public required Workshop Workshop { get; init; }

    /// <summary>Sales of the type and count with a known width.</summary>
    public ImmutableArray<SaleAtWidth> Sales { get; init; } = [];

    /// <summary>Other sales of the type, whose width is not known or whose count differs.</summary>
    public int OtherSales { get; init; }

    /// <summary>The forecast from the narrowest to the widest sale; empty where nothing tells a price or a width.</summary>
    public ImmutableArray<PriceAtWidth> Curve { get; init; } = [];

    /// <summary>The forecast for a type.</summary>
    /// <param name="models">The fitted models.</param>
    /// <param name="type">The type; null takes the one with the most sales of known width.</param>
    public static PriceBySize Of(FittedModels models, string? type = null)
    {
        ArgumentNullException.ThrowIfNull(models);
        Piece[] sold = [.. models.Log.Pieces.Where(p => p.SoldPrice > 0)];
        string chosen = type
            ?? sold.GroupBy(p => p.Type, StringComparer.OrdinalIgnoreCase)
                .OrderByDescending(g => g.Count(p => p.Width is not null)).ThenBy(g => g.Key, StringComparer.OrdinalIgnoreCase)
                .FirstOrDefault()?.Key ?? "piece";
        Piece[] ofType = [.. sold.Where(p => string.Equals(p.Type, chosen, StringComparison.OrdinalIgnoreCase))];
        int count = ofType.GroupBy(p => p.Count ?? 1).OrderByDescending(g => g.Count()).ThenBy(g => g.Key)
            .FirstOrDefault()?.Key ?? 1;
        ImmutableArray<SaleAtWidth> shown =
        [
            .. ofType.Where(p => p.Width is not null && (p.Count ?? 1) == count)
                .Select(p => new SaleAtWidth(p.Id, p.Width!.Value, p.SoldPrice!.Value)),
        ];
        return new()
        {
            Type = chosen,
            Count = count,
            Workshop = models.Log.Workshop,
            Sales = shown,
            OtherSales = ofType.Length - shown.Length,
            Curve = shown.IsEmpty ? [] : Forecast(models, chosen, count, shown.Min(s => s.Width), shown.Max(s => s.Width)),
        };
    }

    private static ImmutableArray<PriceAtWidth> Forecast(
        FittedModels models, string type, int count, decimal narrowest, decimal widest)
    {
        var selling = SellingTerms.Of(models.Log, channel: null);
        int points = widest > narrowest ? CurvePoints : 1;
        return
        [
            .. from i in Enumerable.Range(0, points)
               let width = decimal.Round(narrowest + (widest - narrowest) * i / Math.Max(1, points - 1), 2)
               let candidate = new Candidate { Id = "", Type = type, Count = count, Width = width }
               let laws = CandidateLaws.TryOf(models, candidate)
               where laws is not null
               let prices = JointForecast.Of(candidate, laws, selling, JointForecast.Nodes).SalePrice
               let currency = models.Log.Workshop.Currency
               select new PriceAtWidth(
                   width, At(prices, (1 - RangeLevel) / 2, currency), At(prices, 0.5m, currency),
                   At(prices, (1 + RangeLevel) / 2, currency)),
        ];
    }

    private static decimal At(double[] values, decimal probability, Currency currency) => Crossing.Money(
        EquallyLikely.Quantile(values, Crossing.Number(probability)), currency);
}
