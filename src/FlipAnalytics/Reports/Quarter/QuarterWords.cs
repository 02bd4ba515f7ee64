using System.Globalization;

namespace FlipAnalytics;

/// <summary>Hours, shares and ratios in words and digits, the same in every culture.</summary>
internal static class QuarterWords
{
    /// <summary>Hours with up to one digit.</summary>
    public static string Hours(decimal hours) =>
        decimal.Round(hours, 1, MidpointRounding.AwayFromZero).ToString("#,0.#", CultureInfo.InvariantCulture);

    /// <summary>A share as a percentage.</summary>
    public static string Percent(decimal share) =>
        decimal.Round(100 * share, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture) + " %";

    /// <summary>A ratio with two digits.</summary>
    public static string Ratio(decimal ratio) =>
        decimal.Round(ratio, 2, MidpointRounding.AwayFromZero).ToString("#,0.00", CultureInfo.InvariantCulture);
}
