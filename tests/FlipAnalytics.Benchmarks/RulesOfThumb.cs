namespace FlipAnalytics.Benchmarks;

/// <summary>What a person without statistics might do: averages of the type, of all sales where the type is new.</summary>
internal sealed class RulesOfThumb
{
    private readonly ILookup<string, Piece> sold;
    private readonly SalesLog log;
    private readonly IReadOnlyDictionary<string, decimal> hours;

    public RulesOfThumb(SalesLog log)
    {
        this.log = log;
        hours = BenchHours.ByPiece(log);
        sold = log.Pieces.Where(p => p.SoldPrice > 0).ToLookup(p => p.Type, StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>A quarter of the type's average sale price.</summary>
    public double QuarterOfAverage(string type) => Average(type, p => p.SoldPrice) / 4;

    /// <summary>The type's average of what was left of the sale price after fees, delivery, supplies and paid hours.</summary>
    public double AverageLeftOver(string type)
    {
        var terms = SellingTerms.Of(log);
        decimal wage = log.Workshop.TargetWage!.Value;
        return Average(type, p => p.SuppliesCost is { } supplies && hours.TryGetValue(p.Id, out decimal worked)
            ? p.SoldPrice - (p.Fees ?? terms.FeeRate * p.SoldPrice) - (p.DeliveryCost ?? 0) + (p.DeliveryCharged ?? 0)
                - supplies - wage * worked
            : null);
    }

    private double Average(string type, Func<Piece, decimal?> value)
    {
        decimal[] own = [.. sold[type].Select(value).Where(v => v is not null).Select(v => v!.Value)];
        if (own.Length == 0)
            own = [.. sold.SelectMany(g => g).Select(value).Where(v => v is not null).Select(v => v!.Value)];
        return own.Length == 0 ? 0 : (double)own.Average();
    }
}
