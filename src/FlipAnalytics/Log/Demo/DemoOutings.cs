using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A piece found on a day.</summary>
internal sealed record DemoFind(DateOnly Date, string Source, string? Trip);

/// <summary>
/// The outings of a demo log: in bursts, mostly on Saturdays, none around the turn of the year nor in two weeks of
/// summer; one in four brings nothing home.
/// </summary>
internal sealed record DemoOutings(ImmutableArray<Trip> Trips, ImmutableArray<DemoFind> Finds)
{
    public const string Roadside = "roadside";

    private static readonly ImmutableArray<(string Source, double Share, double Miles, string[] Notes)> Kinds =
    [
        ("charity shop", 0.46, 14, ["three shops", "usual round", "half-price day"]),
        ("estate sale", 0.22, 22, ["early, queue at the door", "second day, half price", "house clearance"]),
        ("online ad", 0.19, 18, ["pick-up", "seller helped to load"]),
        ("auction", 0.07, 31, ["borrowed the trailer", "evening sale"]),
        (Roadside, 0.06, 0, []),
    ];

    // How many pieces an outing brings home, with the chance of each; 1.3 on average.
    private static readonly ImmutableArray<DemoCount> Brought =
        [new(0, 0.25), new(1, 0.40), new(2, 0.20), new(3, 0.10), new(4, 0.05)];

    /// <summary>Outings from the first day to the last that bring home exactly so many pieces.</summary>
    public static DemoOutings Plan(int flips, DateOnly first, DateOnly last, ulong seed)
    {
        DemoDraws draws = new(seed, DemoStream.Outing);
        List<(string Source, double Miles, string[] Notes, int Brought)> outings = [];
        for (int left = flips; left > 0;)
        {
            var (source, _, miles, notes) = draws.OneOf(Kinds, kind => kind.Share);
            int brought = source == Roadside ? 1 : Math.Min(left, draws.OneOf(Brought, count => count.Share).Count);
            outings.Add((source, miles, notes, brought));
            left -= brought;
        }

        DateOnly[] dates = Dates(outings.Count, first, last, seed);
        var trips = ImmutableArray.CreateBuilder<Trip>();
        var finds = ImmutableArray.CreateBuilder<DemoFind>(flips);
        for (int i = 0; i < outings.Count; i++)
        {
            var (source, miles, notes, brought) = outings[i];
            string? name = null;
            if (source != Roadside)
            {
                name = FormattableString.Invariant($"T{trips.Count + 1:000}");
                trips.Add(Drive(name, dates[i], miles, draws.Chance(0.25) ? draws.OneOf(notes) : null, draws));
            }
            for (int piece = 0; piece < brought; piece++)
                finds.Add(new(dates[i], source, name));
        }
        return new(trips.ToImmutable(), finds.ToImmutable());
    }

    private static Trip Drive(string name, DateOnly date, double miles, string? notes, DemoDraws draws)
    {
        double driven = Math.Max(3, Math.Round(miles * Math.Exp(draws.Normal(0, 0.4))));
        double hours = driven / 28 + draws.Uniform(0.4, 1.3);
        decimal? otherCost = draws.Chance(0.18) ? draws.OneOf<decimal>([2, 3, 4, 5, 6, 12]) : null;
        return new(name, date, (decimal)driven, DemoRounding.Quarters(hours), otherCost, notes);
    }

    private static DateOnly[] Dates(int count, DateOnly first, DateOnly last, ulong seed)
    {
        DemoDraws draws = new(seed, DemoStream.Calendar);
        int days = last.DayNumber - first.DayNumber;
        double[] cumulative = new double[days];
        double sum = 0;
        double burst = 1;
        int summerBreak = 200;
        for (int day = 0; day < days; day++)
        {
            DateOnly date = first.AddDays(day);
            if (date.Day == 1 || day == 0)
                burst = draws.Uniform(0.3, 1.9);
            if (date.DayOfYear == 1 || day == 0)
                summerBreak = 190 + draws.Below(35);
            cumulative[day] = sum += IsHoliday(date, summerBreak) ? 0 : burst * Weight(date.DayOfWeek);
        }

        var dates = new DateOnly[count];
        for (int i = 0; i < count; i++)
        {
            int day = Array.BinarySearch(cumulative, draws.Uniform() * sum);
            dates[i] = first.AddDays(day < 0 ? ~day : day);
        }
        Array.Sort(dates);
        return dates;
    }

    private static bool IsHoliday(DateOnly date, int summerBreak) =>
        date is { Month: 12, Day: >= 18 } or { Month: 1, Day: <= 6 }
        || (date.DayOfYear >= summerBreak && date.DayOfYear < summerBreak + 14);

    private static double Weight(DayOfWeek day) => day switch
    {
        DayOfWeek.Saturday => 3,
        DayOfWeek.Sunday => 1.5,
        DayOfWeek.Thursday or DayOfWeek.Friday => 1,
        _ => 0.4,
    };
}
