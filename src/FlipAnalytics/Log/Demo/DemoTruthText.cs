using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The truth in words, for readers of <c>truth.json</c>.</summary>
internal static class DemoTruthText
{
    public static readonly ImmutableArray<string> Formulas =
    [
        "log is the natural logarithm; size = log(width x depth x height / the same of the type's typical piece)",
        "log hours = log(type hours) + size_on_hours size + count_on_hours log(count) + condition + finish"
            + " + normal noise (hours_noise)",
        "log supplies = log(type supplies) + size_on_supplies size + count_on_supplies log(count) + condition + finish"
            + " + normal noise (supplies_noise)",
        "log sale price = base + type + color + condition + finish + size_on_price size + count_on_price log(count)"
            + " + hours_on_price log(hours / usual hours) + season + level + noise (price_noise)",
        "usual hours: a sound, satin piece of that type, size and count",
        "season = season_on_price cos(2 pi (day of the year - season_peak) / 365.25)",
        "level: monthly_levels on the first of each month, straight lines between, a random walk of level_step",
        "days on market: Weibull, hazard (k / scale) (t / scale)^(k - 1), k = days_shape, log scale = days_base + type"
            + " + color + asking_on_days log(asking price / median sale price); t runs on after a cut",
        "material, source and channel have no effect",
    ];
}
