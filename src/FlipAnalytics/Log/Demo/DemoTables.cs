using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The tables of a demo log that do not hang on its pieces: settings, tools, overheads, colours.</summary>
internal static class DemoTables
{
    // Business standard mileage rates of the US tax authority, in USD a mile, by the first day they hold.
    private static readonly ImmutableArray<MileageRate> Mileage =
    [
        new(new(2019, 1, 1), 0.58m), new(new(2020, 1, 1), 0.575m), new(new(2021, 1, 1), 0.56m),
        new(new(2022, 1, 1), 0.585m), new(new(2022, 7, 1), 0.625m), new(new(2023, 1, 1), 0.655m),
        new(new(2024, 1, 1), 0.67m), new(new(2025, 1, 1), 0.70m), new(new(2026, 1, 1), 0.725m),
    ];

    public static Workshop Workshop(DemoMarket market) => new()
    {
        Name = "Ostrelby Refinishing",
        Symbol = "$",
        TargetWage = (decimal)market.TargetWage,
        HoursPerWeek = 14,
        Fees = market.Channels.ToImmutableDictionary(
            channel => channel.Name,
            channel => new FeeRule(channel.FeeRate, channel.FixedFee),
            StringComparer.OrdinalIgnoreCase),
        Mileage = Mileage,
        Guesses = ImmutableDictionary.CreateRange(
            StringComparer.OrdinalIgnoreCase,
            [
                KeyValuePair.Create("dresser", Guess((340, 500, 720), (6, 9, 13), (7, 20, 60), (18, 30, 50))),
                KeyValuePair.Create("nightstand", Guess((140, 220, 340), (2.5m, 4, 6), (3, 14, 45), (7, 12, 20))),
                KeyValuePair.Create("bookcase", Guess((95, 150, 240), (5, 7, 10), (7, 25, 80), (20, 35, 55))),
            ]),
    };

    public static ImmutableArray<Tool> Tools(DateOnly first, DateOnly last) =>
    [
        .. new Tool[]
        {
            new("random orbit sander", first, 89, 10, 150, null),
            new("brushes and roller frames", first.AddDays(3), 46, null, 60, null),
            new("cordless drill", first.AddDays(9), 119, 25, null, 60),
            new("bar clamps, set of six", first.AddDays(40), 64, 20, null, 120),
            new("respirator and filters", first.AddDays(41), 38, null, null, 24),
            new("hand truck", first.AddDays(130), 75, 20, null, 96),
            new("paint sprayer", first.AddDays(260), 159, 40, null, 48),
            new("second sander", first.AddDays(700), 95, 10, 150, null),
        }.Where(tool => tool.BoughtOn <= last),
    ];

    public static ImmutableArray<Overhead> Overheads(DateOnly first, DateOnly last)
    {
        var rows = ImmutableArray.CreateBuilder<Overhead>();
        for (DateOnly month = new(first.Year, first.Month, 1); month <= last; month = month.AddMonths(1))
        {
            rows.Add(new(month, "storage unit", month.Year < 2025 ? 58m : 64m));
            rows.Add(new(month, "insurance", 21.50m));
            if (month.Month is >= 4 and <= 10)
                rows.Add(new(month, "market stall pitch", 25m));
            if (month.Month == 1)
                rows.Add(new(month, "phone and data", 96m));
        }
        return rows.ToImmutable();
    }

    public static ImmutableArray<Colour> Colours(DemoMarket market) =>
        [.. market.Colours.Select(colour => new Colour(colour.Word, colour.Family, colour.Hex))];

    private static TypeGuess Guess(
        (decimal, decimal, decimal) salePrice,
        (decimal, decimal, decimal) hours,
        (decimal, decimal, decimal) days,
        (decimal, decimal, decimal) supplies)
    {
        return new(Three(salePrice), Three(hours), Three(days), Three(supplies));

        static ThreePointGuess Three((decimal Low, decimal Likely, decimal High) guess) =>
            new(guess.Low, guess.Likely, guess.High);
    }
}
