using System.Globalization;

namespace FlipAnalytics;

/// <summary>Amounts and names as the texts of the wages report write them.</summary>
internal static class WageFigures
{
    /// <summary>Hours with at most one digit after the point.</summary>
    public static string Hours(decimal hours) =>
        decimal.Round(hours, 1, MidpointRounding.AwayFromZero).ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>A share as a whole per cent.</summary>
    public static string Percent(decimal part, decimal whole) => whole == 0 ? "0 %"
        : decimal.Round(100 * part / whole, 0, MidpointRounding.AwayFromZero).ToString("0", CultureInfo.InvariantCulture) + " %";

    /// <summary>The first few names and how many more there are.</summary>
    public static string Names(IReadOnlyList<string> names, int shown)
    {
        string first = string.Join(", ", names.Take(shown));
        return names.Count > shown
            ? string.Create(CultureInfo.InvariantCulture, $"{first} and {names.Count - shown} more")
            : first;
    }
}
