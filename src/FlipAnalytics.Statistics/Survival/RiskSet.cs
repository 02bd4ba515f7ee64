namespace FlipAnalytics.Statistics;

/// <summary>Those under observation just before an event time, as weighted moments of their columns: Σ r, then Σ r x, then
/// the lower triangle of Σ r xxᵀ, with r = weight × exp(xᵀβ).</summary>
internal sealed class RiskSet(int width, int order)
{
    /// <summary>Of all at risk, those ending now included.</summary>
    public double[] All { get; } = new double[Size(width, order)];

    /// <summary>Of those that end now.</summary>
    public double[] Ending { get; } = new double[Size(width, order)];

    public double Time { get; set; }

    public int Stratum { get; set; }

    /// <summary>The first row that ends now; the others follow it.</summary>
    public int First { get; set; }

    public int EndingCount { get; set; }

    /// <summary>Sum of the weights of those that end now.</summary>
    public double EndingWeight { get; set; }

    /// <summary>Where row j of the second moments begins.</summary>
    public static int Second(int width, int j) => 1 + width + j * (j + 1) / 2;

    /// <summary>Terms of the likelihood at this time: one a tied ending with Efron, each with the share of the ending rows
    /// that counts as gone already; one in all with Breslow.</summary>
    public IEnumerable<(double Weight, double Gone)> Terms(TieMethod ties)
    {
        if (ties == TieMethod.Breslow)
        {
            yield return (EndingWeight, 0);
            yield break;
        }
        for (int k = 0; k < EndingCount; k++)
            yield return (EndingWeight / EndingCount, (double)k / EndingCount);
    }

    /// <summary>Adds a row, or takes it away with a negative risk.</summary>
    public void Add(double[] moments, ReadOnlySpan<double> x, double risk)
    {
        moments[0] += risk;
        if (order == 0)
            return;
        Span<double> first = moments.AsSpan(1, x.Length);
        for (int j = 0; j < x.Length; j++)
            first[j] += risk * x[j];
        if (order == 1)
            return;
        Span<double> second = moments.AsSpan(1 + x.Length);
        int at = 0;
        for (int j = 0; j < x.Length; j++)
        {
            double scaled = risk * x[j];
            for (int k = 0; k <= j; k++)
                second[at++] += scaled * x[k];
        }
    }

    private static int Size(int width, int order) => order switch
    {
        0 => 1,
        1 => 1 + width,
        _ => Second(width, width),
    };
}
