using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// The truth behind a demo log: an invented town's market and workshop, in USD and inches. "Log" is the natural
/// logarithm, "size" is log(width × depth × height / the same of the typical piece of the type).
/// <list type="bullet">
/// <item>log hours = log type hours + SizeOnHours·size + CountOnHours·log count + condition + finish + noise.</item>
/// <item>log supplies likewise.</item>
/// <item>log sale price = Base + type + colour + condition + finish + SizeOnPrice·size + CountOnPrice·log count
/// + HoursOnPrice·(log hours − log usual hours) + season + level + noise. Usual hours are those of a sound, satin piece
/// of that type, size and count. The asking price does not enter.</item>
/// <item>days on market: Weibull with hazard (k/λ)(t/λ)^(k−1), log λ = DaysBase + type + colour
/// + AskingOnDays·log(asking price / median sale price); after a cut, t runs on and λ is that of the new price.</item>
/// </list>
/// Material, source and channel have no effect on price, hours, supplies or days.
/// </summary>
internal sealed partial record DemoMarket
{
    /// <summary>The standard town.</summary>
    public static DemoMarket Standard { get; } = new();

    /// <summary>Kinds of furniture.</summary>
    public ImmutableArray<DemoType> Types { get; init; } = DemoStandard.Types;

    /// <summary>Colour words.</summary>
    public ImmutableArray<DemoColour> Colours { get; init; } = DemoStandard.Colours;

    /// <summary>Kinds of finish.</summary>
    public ImmutableArray<DemoFinish> Finishes { get; init; } = DemoStandard.Finishes;

    /// <summary>Conditions.</summary>
    public ImmutableArray<DemoCondition> Conditions { get; init; } = DemoStandard.Conditions;

    /// <summary>Selling channels.</summary>
    public ImmutableArray<DemoChannel> Channels { get; init; } = DemoStandard.Channels;

    /// <summary>How the owner buys, asks and keeps the log.</summary>
    public DemoHabits Habits { get; init; } = new();

    /// <summary>Log sale price, in USD, of a piece whose effects are all zero: 314.</summary>
    public double Base { get; init; } = 5.75;

    /// <summary>Effect of size on the log sale price.</summary>
    public double SizeOnPrice { get; init; } = 0.38;

    /// <summary>Effect of log count on the log sale price.</summary>
    public double CountOnPrice { get; init; } = 0.85;

    /// <summary>Effect of log hours beyond the usual on the log sale price.</summary>
    public double HoursOnPrice { get; init; } = 0.25;

    /// <summary>Height of the yearly wave (a cosine) in the log sale price.</summary>
    public double SeasonOnPrice { get; init; } = 0.03;

    /// <summary>Day of the year on which the wave is highest: 130 is in early May.</summary>
    public int SeasonPeak { get; init; } = 130;

    /// <summary>Standard deviation of the monthly step of the level, a random walk.</summary>
    public double LevelStep { get; init; } = 0.02;

    /// <summary>Standard deviation of the noise in the log sale price.</summary>
    public double PriceNoise { get; init; } = 0.2;

    /// <summary>
    /// Whether that noise is Student's t with 4 degrees of freedom, scaled to the same standard deviation and held
    /// within 6 of them, rather than normal.
    /// </summary>
    public bool HeavyTails { get; init; }

    /// <summary>Effect of size on log hours.</summary>
    public double SizeOnHours { get; init; } = 0.4;

    /// <summary>Effect of log count on log hours.</summary>
    public double CountOnHours { get; init; } = 0.8;

    /// <summary>Standard deviation of the normal noise in log hours.</summary>
    public double HoursNoise { get; init; } = 0.2;

    /// <summary>Effect of size on log supplies: area grows about as the two-thirds power of volume.</summary>
    public double SizeOnSupplies { get; init; } = 0.6;

    /// <summary>Effect of log count on log supplies.</summary>
    public double CountOnSupplies { get; init; } = 0.9;

    /// <summary>Standard deviation of the normal noise in log supplies.</summary>
    public double SuppliesNoise { get; init; } = 0.3;

    /// <summary>Log scale, in days, of a piece asked at its median sale price whose effects are all zero: 27.</summary>
    public double DaysBase { get; init; } = 3.296;

    /// <summary>Shape of the Weibull distribution of days on market.</summary>
    public double DaysShape { get; init; } = 1.3;

    /// <summary>Effect of log(asking price / median sale price) on the log scale of the days.</summary>
    public double AskingOnDays { get; init; } = 1.8;

    /// <summary>Standard deviation of log width within a type.</summary>
    public double WidthSpread { get; init; } = 0.14;

    /// <summary>Standard deviation of log depth within a type.</summary>
    public double DepthSpread { get; init; } = 0.06;

    /// <summary>Standard deviation of log height within a type.</summary>
    public double HeightSpread { get; init; } = 0.1;

    /// <summary>Share of sales that the workshop delivers.</summary>
    public double DeliveryShare { get; init; } = 0.2;

    /// <summary>What a delivery costs the workshop, in USD: each as likely.</summary>
    public ImmutableArray<int> DeliveryCosts { get; init; } = [8, 10, 12, 15, 18, 20, 25];

    /// <summary>What the buyer pays for a delivery, in USD: each as likely.</summary>
    public ImmutableArray<int> DeliveryCharges { get; init; } = [0, 0, 0, 10, 15, 20];

    /// <summary>Target wage, in USD an hour.</summary>
    public double TargetWage { get; init; } = 15;

    /// <summary>First day of the first month of <see cref="MonthlyLevels"/>.</summary>
    public DateOnly FirstMonth { get; init; } = DemoLog.LastDay;

    /// <summary>
    /// Level of the market on the first day of each month, in log sale price; in between by straight lines, before and
    /// after flat. A market that has generated no log has a level of zero.
    /// </summary>
    public ImmutableArray<double> MonthlyLevels { get; init; } = [0.0];

    /// <summary>
    /// Another town: the types' prices, days and hours of the standard one moved by normal steps (standard deviations
    /// 0.15, 0.15 and 0.12 in logs), the colours' effects drawn anew (0.08 on price, 0.3 on days).
    /// </summary>
    /// <param name="seed">Any number; the same gives the same town.</param>
    public static DemoMarket Drawn(ulong seed)
    {
        DemoDraws draws = new(seed, DemoStream.Market);
        return new()
        {
            Types =
            [
                .. DemoStandard.Types.Select(type => type with
                {
                    OnPrice = Math.Round(type.OnPrice + draws.Normal(0, 0.15), 3),
                    OnDays = Math.Round(type.OnDays + draws.Normal(0, 0.15), 3),
                    Hours = Math.Round(type.Hours * Math.Exp(draws.Normal(0, 0.12)), 2),
                }),
            ],
            Colours =
            [
                .. DemoStandard.Colours.Select(colour => colour with
                {
                    OnPrice = Math.Round(draws.Normal(0, 0.08), 3),
                    OnDays = Math.Round(draws.Normal(0, 0.3), 3),
                }),
            ],
        };
    }

    /// <summary>The same market where no colour brings more or sells sooner than another.</summary>
    public DemoMarket WithoutColourEffects() =>
        this with { Colours = [.. Colours.Select(colour => colour with { OnPrice = 0, OnDays = 0 })] };

    /// <summary>The same market where one colour's days on market are multiplied by a factor.</summary>
    /// <param name="word">The colour word.</param>
    /// <param name="factor">Above 0; 0.7 sells in 30 % fewer days.</param>
    /// <exception cref="ArgumentException">The market has no such colour.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not above 0.</exception>
    public DemoMarket WithColourDays(string word, double factor)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(factor);
        if (Colours.All(colour => colour.Word != word))
            throw new ArgumentException($"The market has no color '{word}'; it has {string.Join(", ", Colours.Select(c => c.Word))}.", nameof(word));
        return this with
        {
            Colours =
            [
                .. Colours.Select(colour => colour.Word == word
                    ? colour with { OnDays = colour.OnDays + Math.Log(factor) } : colour),
            ],
        };
    }
}
