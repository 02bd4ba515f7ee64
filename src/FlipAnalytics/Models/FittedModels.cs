using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// All models fitted to one log as it was known at its date: hours, supplies, sale price, days on market. The same log
/// gives the same digits.
/// </summary>
public sealed class FittedModels
{
    private readonly Lazy<EffectsModel?> supplies;
    private readonly Lazy<DaysModel> days;

    private FittedModels(SalesLog log)
    {
        Log = log;
        Rows = new(log);
        // What was used up takes the books of supplies, which no other model asks for.
        var costs = Task.Run(Rows.SuppliesRows);
        Hours = EffectsModel.TryFit(Expectations.Hours, Rows.HoursRows())!;
        Price = EffectsModel.TryFit(Expectations.SalePrice, PriceRows());
        LeadTime = log.Pieces
            .Where(p => p.BoughtOn is not null && p.SoldOn is not null)
            .Select(p => p.SoldOn!.Value.DayNumber - p.BoughtOn!.Value.DayNumber)
            .Order().ToImmutableArray() is { IsEmpty: false } lags ? lags[lags.Length / 2] : 45;
        days = new(() => DaysModel.Of(this));
        supplies = new(() => EffectsModel.TryFit(Expectations.Supplies, WithTypeHours(costs.GetAwaiter().GetResult())));
    }

    /// <summary>The log.</summary>
    public SalesLog Log { get; }

    internal AmountRows Rows { get; }

    internal EffectsModel Hours { get; }

    /// <summary>Null where neither the log nor the owner's guesses know the cost of supplies.</summary>
    internal EffectsModel? Supplies => supplies.Value;

    /// <summary>Null where there is neither a sale nor a guess of a sale price.</summary>
    internal EffectsModel? Price { get; }

    /// <summary>Fitted when it is asked for: prices, hours and supplies do without.</summary>
    internal DaysModel Days => days.Value;

    /// <summary>Median days from buying to selling; 45 where no sale tells.</summary>
    internal int LeadTime { get; }

    /// <summary>The day on which a piece bought at the log's date is likely sold.</summary>
    internal DateOnly SaleDate => Crossing.Later(Log.Date, LeadTime);

    /// <summary>The model of an amount; null where nothing tells it, and for days on market, which are none.</summary>
    internal EffectsModel? Amount(ModelName model) => model switch
    {
        ModelName.Price => Price,
        ModelName.Hours => Hours,
        ModelName.Supplies => Supplies,
        _ => null,
    };

    /// <summary>Fits every model to a log.</summary>
    /// <param name="log">The log as known at its date.</param>
    public static FittedModels Of(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return new(log);
    }

    /// <summary>The observations of the price model.</summary>
    internal ImmutableArray<EffectsRow> PriceRows() =>
    [
        .. Rows.PriceRows().Select(r => r with
        {
            RelativeHours = r.Origin == RowOrigin.Log ? RelativeHours(r.Facts, r.PieceId) : (0, 0),
            TypeHours = Hours.TypeEffect(r.Facts.Type),
        }),
    ];

    /// <summary>The observations of the supplies model.</summary>
    internal ImmutableArray<EffectsRow> SuppliesRows() => WithTypeHours(Rows.SuppliesRows());

    private ImmutableArray<EffectsRow> WithTypeHours(ImmutableArray<EffectsRow> rows) =>
        [.. rows.Select(r => r with { TypeHours = Hours.TypeEffect(r.Facts.Type) })];

    /// <summary>What the models need to know of a piece that would be sold at a date.</summary>
    internal DesignValues ValuesOf(PieceFacts facts, DateOnly date, double relativeHours) =>
        new(facts, Rows.Size.Of(facts).Size, date, relativeHours, Hours.TypeEffect(facts.Type));

    /// <summary>Every amount that counts less than in full, by model, least first.</summary>
    public ImmutableArray<WeighedRow> Weighed =>
    [
        .. new[] { ModelName.Price, ModelName.Hours, ModelName.Supplies }
            .SelectMany(model => Amount(model)?.Weighed(model) ?? []),
    ];

    /// <summary>
    /// Log hours of a piece over what such a piece usually takes, and its variance where unrecorded. Wild hours are held
    /// within three spreads: further out they tell of a slip or a job of another kind, not of a better piece.
    /// </summary>
    internal (double Value, double Variance) RelativeHours(PieceFacts facts, string? pieceId)
    {
        if (facts.LogHours is { } logHours)
        {
            double usual = (pieceId is null ? null : Hours.PredictedWithout(pieceId))
                ?? Hours.Predict(new(facts, Rows.Size.Of(facts).Size, Log.Date), 0).Mean;
            double furthest = pieceId is not null && !Hours.IsWild(pieceId) ? double.PositiveInfinity : Hours.FurthestOff;
            return (Math.Clamp(logHours - usual, -furthest, furthest), 0);
        }

        return (0, Hours.Fit.ResidualVariance);
    }
}
