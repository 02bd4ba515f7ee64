using System.Collections.Immutable;
using System.Runtime.InteropServices;

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

    /// <summary>
    /// An amount shared in proportion to weights: each share is rounded down, and the units left go to the largest
    /// remainders, ties to the earlier. Where all weights are 0 the shares are equal.
    /// </summary>
    /// <param name="amount">The amount, of either sign.</param>
    /// <param name="weights">Weights of 0 or more; at least one.</param>
    /// <param name="digits">Digits after the point; more where the amount has more.</param>
    /// <exception cref="ArgumentException">There is no weight, or one is below 0.</exception>
    public static ImmutableArray<decimal> InProportion(decimal amount, IReadOnlyList<decimal> weights, int digits)
    {
        ArgumentNullException.ThrowIfNull(weights);
        if (weights.Count == 0)
            throw new ArgumentException("An amount cannot be shared among none; give at least one weight.", nameof(weights));
        decimal[] parts = weights as decimal[] ?? [.. weights];
        decimal least = parts[0];
        decimal largest = parts[0];
        foreach (decimal part in parts)
        {
            least = part < least ? part : least;
            largest = part > largest ? part : largest;
        }

        if (least < 0)
            throw new ArgumentException($"The weight {least} is below 0; weights are 0 or more.", nameof(weights));
        if (largest == 0)
        {
            largest = 1;
            parts = [.. Enumerable.Repeat(largest, parts.Length)];
        }

        int scale = amount.Trimmed().Scale;
        decimal unit = 1;
        for (int digit = 0; digit < Math.Max(digits, scale); digit++)
            unit /= 10;

        Int128 units = (Int128)(amount / unit);
        long[] whole = Whole(parts, largest, units);
        Int128 total = 0;
        foreach (long weight in whole)
            total += weight;
        var shares = new decimal[whole.Length];
        var remainders = new Int128[whole.Length];
        Int128 left = units;
        for (int i = 0; i < whole.Length; i++)
        {
            (Int128 quotient, Int128 remainder) = Int128.DivRem(units * whole[i], total);
            (Int128 floor, remainders[i]) = remainder < 0 ? (quotient - 1, remainder + total) : (quotient, remainder);
            shares[i] = (decimal)floor * unit;
            left -= floor;
        }

        foreach (int i in Enumerable.Range(0, shares.Length).OrderByDescending(i => remainders[i]).Take((int)left))
            shares[i] += unit;
        return ImmutableCollectionsMarshal.AsImmutableArray(shares);
    }

    // The same proportions in whole numbers, so that no tie is rounded away: exact for weights of up to 18 digits.
    internal static long[] Whole(decimal[] weights, decimal largest, Int128 units)
    {
        decimal limit = (decimal)Int128.Min(1_000_000_000_000_000_000, Int128.MaxValue / 8 / (Int128.Abs(units) + 1));
        int scale = 0;
        foreach (decimal weight in weights)
            scale = Math.Max(scale, weight.Scale);
        decimal factor = 1;
        for (; scale > 0 && largest * factor * 10 <= limit; scale--)
            factor *= 10;
        while (largest * factor > limit)
            factor /= 10;
        var whole = new long[weights.Length];
        for (int i = 0; i < whole.Length; i++)
            whole[i] = (long)decimal.Round(weights[i] * factor);
        return whole;
    }
}
