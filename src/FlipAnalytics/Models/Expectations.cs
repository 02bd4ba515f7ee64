namespace FlipAnalytics;

/// <summary>
/// What is expected of slopes and spreads before the owner's log speaks, on the log scale. Common practice and judgement,
/// from memory; a few sales lean on them and a few dozen overrule them. The hours range of the trade's usual jobs is in
/// <see cref="TradeHours"/>.
/// </summary>
internal static class Expectations
{
    /// <summary>A pair brings a little less than twice one; a piece 10 % larger by volume brings some 3.5 % more.</summary>
    public static EffectsSpecification SalePrice { get; } = new()
    {
        Response = "sale price",
        Count = new(0.8, 0.25),
        Size = new(0.35, 0.2),
        Worn = new(-0.08, 0.1),
        Damaged = new(-0.2, 0.15),
        Hours = new(0.15, 0.15),
        TypeHours = new(0.6, 0.3),
        Season = new(0, 0.04),
        Type = new(0.3),
        Family = new(0.06),
        Colour = new(0.08),
        Finish = new(0.06),
        Material = new(0.03),
        MonthlyDrift = new(0.02),
        Residual = 0.22,
    };

    /// <summary>Larger and rougher pieces take longer; two items take less than twice one.</summary>
    public static EffectsSpecification Hours { get; } = new()
    {
        Response = "hours",
        Slips = AmountSlip.Hours,
        Count = new(0.8, 0.25),
        Size = new(0.35, 0.2),
        Worn = new(0.1, 0.15),
        Damaged = new(0.3, 0.25),
        Type = new(0.35),
        Finish = new(0.08),
        Residual = 0.25,
    };

    /// <summary>Supplies follow the painted area.</summary>
    public static EffectsSpecification Supplies { get; } = new()
    {
        Response = "supplies",
        Count = new(0.8, 0.25),
        Size = new(0.5, 0.25),
        Worn = new(0.1, 0.15),
        Damaged = new(0.3, 0.25),
        TypeHours = new(0.6, 0.3),
        Type = new(0.25),
        Finish = new(0.15),
        Residual = 0.35,
    };

    /// <summary>Middle guess and spread (as the standard deviation of a log) of supplies as a share of the sale price.</summary>
    public const double SuppliesShare = 0.1;

    /// <summary>Standard deviation of the log of that share.</summary>
    public const double SuppliesShareSpread = 0.5;

    /// <summary>Log of the days a piece waits when nothing is known: 30, 8 in 10 between a week and four months.</summary>
    public static SlopePrior LogDays { get; } = new(Math.Log(30), 1);

    /// <summary>Asking 10 % more makes the wait some 15 % longer (Anglin, Rutherford and Springer, 2003, for the direction).</summary>
    public static SlopePrior Asking { get; } = new(1.5, 0.75);

    /// <summary>How far the log of asking over expected price scatters from piece to piece.</summary>
    public const double AskingHabitSpread = 0.15;

    /// <summary>Other slopes of log days are expected to be small.</summary>
    public static SlopePrior DaysSlope { get; } = new(0, 0.3);

    /// <summary>Log of the Weibull scale: sales come a little steadier than by pure chance.</summary>
    public static SlopePrior LogScale { get; } = new(Math.Log(0.8), 0.3);

    /// <summary>
    /// A Weibull scale below this is hardly believed. Days are written down whole: a piece sold on its seventh day waited between
    /// six and a half and seven and a half, which alone makes a scale of about 0.03. So a log whose pieces all sold on the day
    /// they were listed, or after a week, has a small scale and not none; it does not show from twice this on (judgement).
    /// </summary>
    public const double LeastScale = 0.05;

    /// <summary>Standard deviation of type and colour effects on log days.</summary>
    public static SpreadPrior DaysEffects { get; } = new(0.25);

    /// <summary>How sure that spread is: standard deviation of the log of the variance.</summary>
    public const double DaysEffectsUncertainty = 1.2;
}
