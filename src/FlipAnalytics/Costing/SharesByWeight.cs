namespace FlipAnalytics;

/// <summary>
/// Shares of one amount after another by the same weights, each as <see cref="Shares.InProportion"/> gives it. A busy month has
/// thousands of short errands and thousands of pieces: of an hour or two most pieces bear nothing, and those that do are known.
/// </summary>
/// <param name="weights">Weights of 0 or more; at least one.</param>
/// <param name="digits">Digits after the point.</param>
internal sealed class SharesByWeight(decimal[] weights, int digits)
{
    private readonly decimal largest = weights.Max();
    private long[]? whole;
    private int[] heaviest = [];
    private Int128 total;

    /// <summary>The shares that are not 0, by place of their weight.</summary>
    /// <param name="amount">The amount, of either sign.</param>
    public IEnumerable<(int Place, decimal Share)> Of(decimal amount)
    {
        decimal unit = new(1, 0, 0, false, (byte)digits);
        if (amount >= 0 && amount.Trimmed().Scale <= digits && largest > 0)
        {
            Weigh();
            Int128 units = (Int128)(amount / unit);
            // Nobody's part comes to a whole unit, so the largest remainders are those of the heaviest.
            if (units * whole![heaviest[0]] < total)
                return heaviest.Take((int)units).Select(place => (place, unit));
        }

        return Shares.InProportion(amount, weights, digits).Select((share, place) => (place, share)).Where(part => part.share != 0);
    }

    private void Weigh()
    {
        if (whole is not null)
            return;
        whole = Shares.Whole(weights, largest, 0);
        heaviest = [.. Enumerable.Range(0, whole.Length).OrderByDescending(place => whole[place])];
        foreach (long weight in whole)
            total += weight;
    }
}
