namespace FlipAnalytics;

/// <summary>
/// The dates of a table, each held against what the rest of the log expects of it. A slip is the day that would make its row
/// much likelier.
/// </summary>
/// <param name="file">The table.</param>
/// <param name="today">The last day that can be past.</param>
internal sealed class DateSheet(string file, DateOnly today)
{
    private const double NoMendRarity = 3.5;
    private const double Future = 14;

    // A date outside what can be is not just rare: only slips explain it, however near it lies.
    private const double Impossible = 6;

    /// <summary>What a date that should not be before or after another is worth, by the days it is.</summary>
    public static double OutOfOrder(int days) => -Impossible - Math.Log(1 + days);

    /// <summary>What a date is worth that lies some days off where dates of its kind lie, give or take a spread.</summary>
    public static double Off(double days, double spread) => -2.5 * Math.Log(1 + (days * days / (4 * spread * spread)));

    /// <summary>Whether a date is in line with the rest, so that there is no slip to look for.</summary>
    /// <param name="found">The date.</param>
    /// <param name="score">The log likelihood of its row, up to a constant.</param>
    public bool IsInLine(DateOnly found, double score) => score - Beyond(found) > -AmountSheet.LeastGain;

    /// <summary>The likeliest slip in a date; null where it is in line.</summary>
    /// <param name="row">Line of the file.</param>
    /// <param name="column">Column name.</param>
    /// <param name="found">The date.</param>
    /// <param name="expected">What is expected of it, to be read after "expected"; asked for a slip alone.</param>
    /// <param name="score">The log likelihood of a row with this date, up to a constant; with none for null.</param>
    public LogFinding? Finding(int row, string column, DateOnly found, Func<string> expected, Func<DateOnly?, double> score)
    {
        double stands = score(found);
        if (IsInLine(found, stands))
            return null;
        stands -= Beyond(found);
        var best = Mends(found)
            .Select(mend => (mend.Date, mend.Words, Gain: score(mend.Date) - Beyond(mend.Date) - mend.Rarity - stands))
            .MaxBy(mend => mend.Gain);
        double removed = score(null) - NoMendRarity - stands;
        double gain = Math.Max(best.Gain, removed);
        if (gain < AmountSheet.LeastGain)
            return null;
        return new(
            file,
            row,
            column,
            LogFinding.Text(found),
            found > today ? $"{LogFinding.Text(today)} or earlier, as nothing is written down before it happens" : expected(),
            best.Gain >= removed
                ? $"If {best.Words}, write {LogFinding.Text(best.Date)}; if it is right, leave it."
                : "Correct it, or leave it if it is right.",
            gain);
    }

    private double Beyond(DateOnly date) => date > today ? Future + Math.Log(date.DayNumber - today.DayNumber) : 0;

    private IEnumerable<(DateOnly Date, string Words, double Rarity)> Mends(DateOnly found)
    {
        if (found.Day <= 12 && found.Day != found.Month)
            yield return (new(found.Year, found.Day, found.Month), "day and month are swapped", 0);
        foreach (int years in new[] { -1, 1 })
        {
            if (InYear(found, found.Year + years) is { } near)
                yield return (near, "the year is wrong", 0.5);
        }

        foreach (int year in Enumerable.Range(today.Year - 12, 13).Where(year => Math.Abs(year - found.Year) > 1))
        {
            if (InYear(found, year) is { } other)
                yield return (other, "the year is wrong", 2);
        }

        foreach (int months in new[] { -1, 1 })
            yield return (found.AddMonths(months), "the month is wrong", 1.5);
    }

    private static DateOnly? InYear(DateOnly date, int year) =>
        year is < 1 or > 9999 || date.Day > DateTime.DaysInMonth(year, date.Month) ? null : new(year, date.Month, date.Day);
}
