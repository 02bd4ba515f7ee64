using System.Globalization;
using System.Text.Json.Serialization;
using System.Text.RegularExpressions;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>A span of days that a report is about.</summary>
public sealed partial record ReportPeriod
{
    /// <summary>What a span is written like, for help and errors.</summary>
    public const string Examples = "2026-Q1, 2026-01, 2026 or 2026-01-01..2026-02-14";

    /// <summary>The years that a span may be in, in words.</summary>
    public const string Years = "in the years 1900 to 2100";

    private readonly int months;

    private ReportPeriod(DateOnly from, DateOnly to, int months) => (From, To, this.months) = (from, to, months);

    /// <summary>First day.</summary>
    public DateOnly From { get; }

    /// <summary>Last day, not before the first.</summary>
    public DateOnly To { get; }

    /// <summary>Days, both ends included.</summary>
    [JsonIgnore]
    public int Days => To.DayNumber - From.DayNumber + 1;

    /// <summary>How it is written: 2026, 2026-Q1, 2026-01 or 2026-01-01..2026-02-14.</summary>
    [JsonPropertyOrder(-1)]
    public string Name => months switch
    {
        12 => Invariant($"{From:yyyy}"),
        3 => Invariant($"{From:yyyy}-Q{(From.Month + 2) / 3}"),
        1 => Invariant($"{From:yyyy-MM}"),
        _ => Invariant($"{From:yyyy-MM-dd}..{To:yyyy-MM-dd}"),
    };

    /// <summary>What it is in a sentence: year, quarter, month or span.</summary>
    [JsonIgnore]
    public string Noun => months switch { 12 => "year", 3 => "quarter", 1 => "month", _ => "span" };

    /// <summary>
    /// The span of the same kind just before it: the month, quarter or year before, else as many days; null before the
    /// year 1.
    /// </summary>
    [JsonIgnore]
    public ReportPeriod? Before => months > 0
        ? Earlier(months)
        : From.DayNumber < Days ? null : new(From.AddDays(-Days), From.AddDays(-1), 0);

    /// <summary>The same span a year earlier; null before the year 1.</summary>
    [JsonIgnore]
    public ReportPeriod? YearEarlier => Earlier(12);

    /// <summary>Whether a day is in it.</summary>
    /// <param name="day">The day; null is in no span.</param>
    public bool Contains(DateOnly? day) => day >= From && day <= To;

    /// <summary>A span from one day to another.</summary>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day.</param>
    /// <exception cref="ArgumentOutOfRangeException">The last day is before the first.</exception>
    public static ReportPeriod Of(DateOnly from, DateOnly to)
    {
        if (to < from)
            throw new ArgumentOutOfRangeException(nameof(to), to, Invariant($"The last day must be {from:yyyy-MM-dd} or later."));
        foreach (int months in (int[])[12, 3, 1])
        {
            if (from.Day == 1 && (from.Month - 1) % months == 0 && LastDay(from, months) == to)
                return new(from, to, months);
        }

        return new(from, to, 0);
    }

    /// <summary>The days of it that have gone by on the evening of a day that is not before the first.</summary>
    /// <param name="day">The day.</param>
    public ReportPeriod UpTo(DateOnly day) => To <= day ? this : Of(From, day);

    /// <summary>The quarter of the calendar year that a day is in.</summary>
    /// <param name="day">The day.</param>
    public static ReportPeriod QuarterOf(DateOnly day) => Whole(day.Year, (day.Month - 1) / 3 * 3 + 1, 3);

    /// <summary>The span that a text names; null where it names none.</summary>
    /// <param name="text">
    /// A year (2026), a quarter (2026-Q1), a month (2026-01), or two of these or two days joined by two points
    /// (2026-01-01..2026-02-14).
    /// </param>
    public static ReportPeriod? Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string[] ends = text.Split("..");
        ReportPeriod? first = One(ends[0].Trim());
        ReportPeriod? last = ends.Length == 1 ? first : One(ends[1].Trim());
        return ends.Length > 2 || first is null || last is null || last.To < first.From ? null : Of(first.From, last.To);
    }

    private static ReportPeriod? One(string text)
    {
        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
            return NumberRange.Holds(day) ? new(day, day, 0) : null;
        Match parts = Pattern().Match(text);
        if (!parts.Success || Number(parts.Groups["year"]) is var year && (year < NumberRange.FirstDay.Year || year > NumberRange.LastDay.Year))
            return null;
        return parts.Groups["quarter"].Success ? Whole(year, Number(parts.Groups["quarter"]) * 3 - 2, 3)
            : !parts.Groups["month"].Success ? Whole(year, 1, 12)
            : Number(parts.Groups["month"]) is >= 1 and <= 12 and var month ? Whole(year, month, 1)
            : null;
    }

    private static int Number(Group digits) => int.Parse(digits.Value, CultureInfo.InvariantCulture);

    private static ReportPeriod Whole(int year, int month, int months)
    {
        DateOnly from = new(year, month, 1);
        return new(from, LastDay(from, months), months);
    }

    private static DateOnly LastDay(DateOnly first, int months)
    {
        int last = first.Month + months - 1;
        return new(first.Year, last, DateTime.DaysInMonth(first.Year, last));
    }

    private ReportPeriod? Earlier(int by)
    {
        if ((From.Year - 1) * 12 + From.Month - 1 < by)
            return null;
        DateOnly from = From.AddMonths(-by);
        return months > 0 ? Whole(from.Year, from.Month, months) : new(from, To.AddMonths(-by), 0);
    }

    [GeneratedRegex("^(?<year>[0-9]{4})(-[Qq](?<quarter>[1-4])|-(?<month>[0-9]{2}))?$", RegexOptions.CultureInvariant)]
    private static partial Regex Pattern();
}
