namespace FlipAnalytics.Statistics;

/// <summary>What was believed about a number before the data came, as a normal distribution.</summary>
public sealed record NormalPrior
{
    /// <summary>A prior with this mean and standard deviation.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A mean that is not finite, or a standard deviation that is not
    /// positive and finite.</exception>
    public NormalPrior(double mean, double standardDeviation)
    {
        if (!double.IsFinite(mean))
        {
            throw new ArgumentOutOfRangeException(nameof(mean), mean, "The mean of a prior must be finite.");
        }

        if (!(standardDeviation > 0) || !double.IsFinite(standardDeviation))
        {
            throw new ArgumentOutOfRangeException(nameof(standardDeviation), standardDeviation,
                "The standard deviation of a prior must be positive and finite; leave the prior out to say nothing.");
        }

        Mean = mean;
        StandardDeviation = standardDeviation;
    }

    /// <summary>Centre.</summary>
    public double Mean { get; }

    /// <summary>Spread, positive.</summary>
    public double StandardDeviation { get; }

    /// <summary>1 / variance.</summary>
    internal double Precision => 1 / (StandardDeviation * StandardDeviation);

    /// <summary>Logarithm of the density at <paramref name="value"/>, with its constant.</summary>
    internal double LogDensity(double value)
    {
        double z = (value - Mean) / StandardDeviation;
        return -z * z / 2 - Math.Log(StandardDeviation) - Math.Log(2 * Math.PI) / 2;
    }
}
