using System.Globalization;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>Figures of a comparison in digits, the same on the screen and on a page.</summary>
public static class GroupFigures
{
    /// <summary>Days until half are sold with their range, such as "14 (12 to ?)".</summary>
    /// <param name="median">The median.</param>
    public static string Median(SurvivalQuantile median)
    {
        ArgumentNullException.ThrowIfNull(median);
        return median.Time is { } time ? Invariant($"{time:0} ({Days(median.Low)} to {Days(median.High)})") : "not reached";
    }

    /// <summary>A difference with its range, in per cent, such as "-14 (-27 to 0)".</summary>
    /// <param name="difference">The difference.</param>
    public static string Range(RelativeDifference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        return $"{Signed(difference.Share)} ({Signed(difference.Low)} to {Signed(difference.High)})";
    }

    /// <summary>A chance in whole per cent.</summary>
    /// <param name="chance">0 to 1.</param>
    public static string Chance(double chance) => Invariant($"{100 * chance:0} %");

    private static string Days(double? days) => days is { } known ? Invariant($"{known:0}") : "?";

    private static string Signed(double share) => Invariant($"{100 * share:+0;-0;0}");

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
