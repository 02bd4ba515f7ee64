using System.Collections.Immutable;
using System.Globalization;

namespace FlipAnalytics.Plots;

/// <summary>An axis from Low to High with ticks at round numbers.</summary>
/// <param name="Low">Left or lower end.</param>
/// <param name="High">Right or upper end.</param>
/// <param name="Ticks">Values with their labels.</param>
/// <param name="IsLogarithmic">Whether equal factors, not equal differences, are equally far apart.</param>
internal sealed record Scale(
    double Low, double High, ImmutableArray<(double Value, string Label)> Ticks, bool IsLogarithmic = false)
{
    /// <summary>A scale that holds all values, its ends at ticks.</summary>
    /// <param name="values">What it must hold; not finite ones are passed over.</param>
    /// <param name="format">Label of a tick; null for the plain number.</param>
    /// <param name="about">How many steps, more or less.</param>
    public static Scale Of(IEnumerable<double> values, Func<double, string>? format = null, int about = 5)
    {
        double[] finite = [.. values.Where(double.IsFinite)];
        double low = finite.DefaultIfEmpty(0).Min(), high = finite.DefaultIfEmpty(1).Max();
        if (high - low <= 1e-9 * Math.Max(Math.Abs(low), Math.Abs(high)))
            (low, high) = low == 0 ? (0, 1) : (low - 0.1 * Math.Abs(low), high + 0.1 * Math.Abs(high));
        double step = RoundStep((high - low) / about);
        long first = (long)Math.Floor(low / step + 1e-9), last = (long)Math.Ceiling(high / step - 1e-9);
        return new(first * step, last * step,
            [.. Enumerable.Range(0, (int)(last - first + 1)).Select(k => Tick((first + k) * step, format))]);
    }

    /// <summary>A logarithmic scale that holds all positive values with a little room, ticks at 1, 2 and 5 times powers of
    /// ten.</summary>
    public static Scale Logarithmic(IEnumerable<double> values, Func<double, string>? format = null)
    {
        double[] positive = [.. values.Where(value => value > 0 && double.IsFinite(value))];
        double low = positive.DefaultIfEmpty(1).Min() / 1.1, high = positive.DefaultIfEmpty(10).Max() * 1.1;
        int firstPower = (int)Math.Floor(Math.Log10(low)), lastPower = (int)Math.Ceiling(Math.Log10(high));
        int[] leading = Math.Log10(high / low) switch { > 3 => [1], > 1.2 => [1, 2, 5], _ => [1, 2, 3, 4, 5, 6, 8] };
        return new(low, high,
            [
                .. from power in Enumerable.Range(firstPower, lastPower - firstPower + 1)
                   from digit in leading
                   let value = digit * Math.Pow(10, power)
                   where value >= low && value <= high
                   select Tick(value, format),
            ],
            IsLogarithmic: true);
    }

    /// <summary>A scale of days, by day number, with a little room and ticks at the first of months.</summary>
    /// <param name="days">What it must hold.</param>
    public static Scale Days(IReadOnlyCollection<DateOnly> days)
    {
        const int MonthsAYear = 12, MostTicks = 7, LeastRoom = 10;
        int first = days.Min(day => day.DayNumber), last = days.Max(day => day.DayNumber);
        int room = Math.Max(LeastRoom, (last - first) / 25);
        int low = Math.Max(DateOnly.MinValue.DayNumber, first - room), high = Math.Min(DateOnly.MaxValue.DayNumber, last + room);
        int firstMonth = Month(low), lastMonth = Month(high);
        int[] withinAYear = [1, 2, 3, 6];
        int step = withinAYear.FirstOrDefault(months => (lastMonth - firstMonth) / months <= MostTicks);
        for (int years = 1; step == 0 || (lastMonth - firstMonth) / step > MostTicks; years++)
            step = years * MonthsAYear;
        return new(low, high,
            [
                .. from month in Enumerable.Range(firstMonth, lastMonth - firstMonth + 1)
                   where month % step == 0
                   let start = new DateOnly(month / MonthsAYear, month % MonthsAYear + 1, 1)
                   where start.DayNumber >= low
                   select ((double)start.DayNumber, start.ToString(
                       step < MonthsAYear ? "yyyy-MM" : "yyyy", CultureInfo.InvariantCulture)),
            ]);

        static int Month(int dayNumber)
        {
            DateOnly day = DateOnly.FromDayNumber(dayNumber);
            return day.Year * MonthsAYear + day.Month - 1;
        }
    }

    /// <summary>A scale with given ends and ticks.</summary>
    public static Scale Fixed(double low, double high, IEnumerable<double> ticks, Func<double, string>? format = null) =>
        new(low, high, [.. ticks.Select(value => Tick(value, format))]);

    /// <summary>A number with a thousands separator and a real minus sign.</summary>
    public static string Number(double value) =>
        value.ToString("#,0.####;\u2212#,0.####", CultureInfo.InvariantCulture);

    /// <summary>A share as a whole percentage.</summary>
    public static string Percent(double share) =>
        (100 * share).ToString("0.#;\u22120.#", CultureInfo.InvariantCulture) + " %";

    /// <summary>A change in percent with its sign.</summary>
    public static string SignedPercent(double percent) =>
        percent.ToString("+#,0.#;\u2212#,0.#;0", CultureInfo.InvariantCulture) + " %";

    /// <summary>A change in whole percent with its sign.</summary>
    public static string SignedWholePercent(double percent) =>
        percent.ToString("+#,0;\u2212#,0;0", CultureInfo.InvariantCulture) + " %";

    /// <summary>Where a value stands, 0 at the low end and 1 at the high end.</summary>
    public double Share(double value) => (Place(value) - Place(Low)) / (Place(High) - Place(Low));

    /// <summary>A value in the coordinates that are drawn.</summary>
    public double Place(double value) => IsLogarithmic ? Math.Log10(value) : value;

    /// <summary>Width of the widest label.</summary>
    public float LabelWidth => Ticks.IsEmpty ? 0 : Ticks.Max(tick => Lettering.Small.Measure(tick.Label).Width);

    private static (double, string) Tick(double value, Func<double, string>? format) => (value, (format ?? Number)(value));

    private static double RoundStep(double rough)
    {
        double power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        // Whole numbers are counted in twos and fives; a step of two and a half would need a fraction.
        double quarter = power is 1 ? 2.0001 : 2.5001;
        return power * ((rough / power) switch { <= 1.0001 => 1, <= 2.0001 => 2, _ when rough / power <= quarter => 2.5, <= 5.0001 => 5, _ => 10 });
    }
}
