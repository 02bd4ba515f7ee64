using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>A chance in words, as how many logs in which nothing differs would look like this.</summary>
internal static class LuckWords
{
    /// <summary>Such as 1 of 4 logs.</summary>
    public static string OneIn(double? p) => p switch
    {
        null => "no known number of logs",
        >= 0.95 => "nearly every log",
        > 2.0 / 3 => Invariant($"{10 * p:0} of 10 logs"),
        > 0.4 => "every second log",
        < 0.01 => "fewer than 1 of 100 logs",
        _ => Invariant($"1 of {1 / p:0} logs"),
    };
}
