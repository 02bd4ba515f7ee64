using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Sharing amounts so that the shares add up exactly.</summary>
public static class Shares
{
    /// <summary>
    /// Rounds amounts so that they add up to their rounded total: each is rounded down, and the units left go to the
    /// largest remainders, ties to the earlier.
    /// </summary>
    /// <param name="amounts">Amounts of either sign.</param>
    /// <param name="total">What they must add up to, rounded to as many digits.</param>
    /// <param name="digits">Digits after the point.</param>
    /// <exception cref="ArgumentOutOfRangeException">The total is not the amounts' rounded total.</exception>
    public static ImmutableArray<decimal> Rounded(IReadOnlyList<decimal> amounts, decimal total, int digits)
    {
        ArgumentNullException.ThrowIfNull(amounts);
        decimal unit = 1;
        for (int digit = 0; digit < digits; digit++)
            unit /= 10;
        decimal[] floors = [.. amounts.Select(a => decimal.Floor(a / unit) * unit)];
        int left = (int)decimal.Round((total - floors.Sum()) / unit);
        if (left < 0 || left > amounts.Count)
        {
            throw new ArgumentOutOfRangeException(
                nameof(total), total, $"The amounts add up to {amounts.Sum()}; their rounded total must be next to it.");
        }

        foreach (int i in Enumerable.Range(0, amounts.Count).OrderByDescending(i => amounts[i] - floors[i]).Take(left))
            floors[i] += unit;
        return [.. floors];
    }
}
