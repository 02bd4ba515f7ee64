using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A rate for each mile or kilometre driven for a business, as an authority published it.</summary>
/// <param name="Country">US, UK or Canada.</param>
/// <param name="From">First day.</param>
/// <param name="To">Last day.</param>
/// <param name="Per">Unit of distance.</param>
/// <param name="Rate">Money a unit, up to the threshold.</param>
/// <param name="Threshold">Distance in a year up to which the rate holds; null for any.</param>
/// <param name="Beyond">Money a unit beyond the threshold; null where there is none.</param>
/// <param name="Source">Where it was published.</param>
/// <param name="Status">How sure it is, and for whom it holds.</param>
public sealed record PublishedMileageRate(
    string Country,
    DateOnly From,
    DateOnly To,
    DistanceUnit Per,
    decimal Rate,
    decimal? Threshold,
    decimal? Beyond,
    string Source,
    string Status);

/// <summary>
/// Published mileage rates by country and date. They are defaults: rates change, also within a year, and
/// <c>[mileage]</c> in <c>workshop.toml</c> overrides them. Whether one may be claimed is for a tax professional to say.
/// </summary>
public static class MileageRates
{
    private const decimal KilometresPerMile = 1.609344m;

    /// <summary>The rates, by country and date.</summary>
    public static ImmutableArray<PublishedMileageRate> Published { get; } =
    [
        UnitedStates(2019, 1, 2019, 12, 0.58m, "IRS, IR-2018-251", "published"),
        UnitedStates(2020, 1, 2020, 12, 0.575m, "IRS, IR-2019-215", "published"),
        UnitedStates(2021, 1, 2021, 12, 0.56m, "IRS rate, from a tax reference table", "published, secondary source"),
        UnitedStates(2022, 1, 2022, 6, 0.585m, "IRS rate, from a secondary source", "published, secondary source"),
        UnitedStates(2022, 7, 2022, 12, 0.625m, "IRS rate, from a secondary source", "published, secondary source"),
        UnitedStates(2023, 1, 2023, 12, 0.655m, "IRS rate, from a secondary source", "published, secondary source"),
        UnitedStates(2024, 1, 2024, 12, 0.67m, "IRS rate, from a secondary source", "published, secondary source"),
        UnitedStates(2025, 1, 2025, 12, 0.70m, "IRS, Notice 2025-5, from a secondary source", "published, secondary source"),
        UnitedStates(
            2026, 1, 2026, 12, 0.725m, "IRS, Notice 2026-10, from secondary sources",
            "published, secondary source; a change within 2026 is not excluded"),
        new(
            "UK", new(2011, 4, 6), new(2026, 4, 5), DistanceUnit.Mile, 0.45m, 10_000, 0.25m,
            "HMRC research summary of 28 May 2025; first day from memory",
            "published; sole traders: simplified expenses, kept for the vehicle's life"),
        new(
            "UK", new(2026, 4, 6), new(2027, 4, 5), DistanceUnit.Mile, 0.55m, 10_000, 0.25m,
            "announced on 21 May 2026, from an accountants' bulletin",
            "published for employees; not verified for sole traders"),
        Canada(2019, 0.58m, "from memory"),
        Canada(2020, 0.59m, "from memory"),
        Canada(2021, 0.59m, "from memory"),
        Canada(2022, 0.61m, "published"),
        Canada(2023, 0.68m, "from memory"),
        Canada(2024, 0.70m, "published"),
        Canada(2025, 0.72m, "published"),
        Canada(2026, 0.73m, "published"),
    ];

    /// <summary>The country whose rates are the default for a currency; null for a currency without any.</summary>
    /// <param name="currency">The workshop's currency.</param>
    public static string? CountryOf(Currency currency)
    {
        ArgumentNullException.ThrowIfNull(currency);
        return currency.Code switch { "USD" => "US", "GBP" => "UK", "CAD" => "Canada", _ => null };
    }

    /// <summary>
    /// The rate of a country on a day; after the last one known, that one; null before the first and for a country
    /// without any.
    /// </summary>
    /// <param name="country">US, UK or Canada.</param>
    /// <param name="day">The day.</param>
    public static PublishedMileageRate? On(string country, DateOnly day) =>
        Published.LastOrDefault(rate => rate.Country == country && rate.From <= day);

    /// <summary>What a distance comes to, unrounded.</summary>
    /// <param name="rate">The rate.</param>
    /// <param name="distance">Distance, in the rate's unit.</param>
    /// <param name="driven">Distance driven earlier in the same year, which counts towards the threshold.</param>
    public static decimal Amount(PublishedMileageRate rate, decimal distance, decimal driven = 0)
    {
        ArgumentNullException.ThrowIfNull(rate);
        decimal full = rate.Threshold is { } threshold ? Math.Clamp(threshold - driven, 0, distance) : distance;
        return full * rate.Rate + (distance - full) * (rate.Beyond ?? rate.Rate);
    }

    /// <summary>First day of the year within which distances count towards a threshold: 6 April in the UK.</summary>
    /// <param name="country">US, UK or Canada.</param>
    /// <param name="day">A day in the year.</param>
    public static DateOnly YearStart(string country, DateOnly day)
    {
        if (country != "UK")
            return new(day.Year, 1, 1);
        DateOnly april = new(day.Year, 4, 6);
        return day >= april || day.Year == 1 ? april : april.AddYears(-1);
    }

    /// <summary>A distance in another unit; a mile is 1.609344 km exactly.</summary>
    /// <param name="distance">The distance.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="wanted">The unit wanted.</param>
    public static decimal Convert(decimal distance, DistanceUnit unit, DistanceUnit wanted) =>
        unit == wanted ? distance
        : wanted == DistanceUnit.Kilometre ? distance * KilometresPerMile
        : distance / KilometresPerMile;

    private static PublishedMileageRate UnitedStates(
        int year, int month, int lastYear, int lastMonth, decimal rate, string source, string status) => new(
        "US",
        new(year, month, 1),
        new(lastYear, lastMonth, DateTime.DaysInMonth(lastYear, lastMonth)),
        DistanceUnit.Mile,
        rate,
        null,
        null,
        source,
        status);

    // Beyond 5,000 km it is 6 cents less in every year listed; the territories' 4 cents more are left out.
    private static PublishedMileageRate Canada(int year, decimal rate, string status) => new(
        "Canada",
        new(year, 1, 1),
        new(year, 12, 31),
        DistanceUnit.Kilometre,
        rate,
        5_000,
        rate - 0.06m,
        "Department of Finance Canada, limits on tax-exempt allowances",
        $"{status}; a limit for employers' allowances, the self-employed deduct actual costs");
}
