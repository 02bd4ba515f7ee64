using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A number and what it came to in every replicate.</summary>
public sealed class BootstrapSample
{
    private readonly double[] sorted;
    private readonly Lazy<double[]> withoutEach;

    internal BootstrapSample(double estimate, ImmutableArray<double> replicates, Func<double[]> withoutEach)
    {
        Estimate = estimate;
        Replicates = replicates;
        sorted = [.. replicates.Order()];
        this.withoutEach = new(withoutEach);
        double mean = sorted.Average();
        Bias = mean - estimate;
        StandardError = Math.Sqrt(sorted.Sum(value => (value - mean) * (value - mean)) / (sorted.Length - 1));
    }

    /// <summary>The number from the rows as they are.</summary>
    public double Estimate { get; }

    /// <summary>One value a replicate, in the order of the replicates.</summary>
    public ImmutableArray<double> Replicates { get; }

    /// <summary>Mean of the replicates less the estimate.</summary>
    public double Bias { get; }

    /// <summary>Standard deviation of the replicates; not a number with only one.</summary>
    public double StandardError { get; }

    /// <summary>The middle share of the replicates: Efron (1981), Can. J. Stat. 9, 139–172.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public Limits Percentile(double level = 0.95)
    {
        Limits.RefuseLevel(level);
        return new(Quantile((1 - level) / 2), Quantile((1 + level) / 2));
    }

    /// <summary>Percentiles moved for bias and for an error that changes with the number, which covers better in small
    /// samples: Efron (1987), J. Am. Stat. Assoc. 82, 171–185. The acceleration is the jackknife's (his equation 6.6), over
    /// clusters where there are clusters.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    /// <exception cref="InvalidOperationException">No replicate lies below the estimate, or all do, or the number cannot be
    /// computed without some row.</exception>
    public Limits Bca(double level = 0.95)
    {
        Limits.RefuseLevel(level);
        if (sorted[0] == sorted[^1] && sorted[0] == Estimate)
            return new(Estimate, Estimate);
        double below = sorted.Count(value => value < Estimate) / (double)sorted.Length;
        if (below is 0 or 1)
            throw new InvalidOperationException(
                $"None of the {sorted.Length} replicates lies {(below == 0 ? "below" : "at or above")} the estimate {Estimate}, so its bias cannot be judged; use Percentile, or more replicates.");
        double shift = Tails.NormalQuantile(below), acceleration = Acceleration();
        double Moved(double probability)
        {
            double z = shift + Tails.NormalQuantile(probability);
            return Quantile(Tails.Normal(shift + z / (1 - acceleration * z)));
        }
        return new(Moved((1 - level) / 2), Moved((1 + level) / 2));
    }

    /// <summary>Σ d³ / 6 (Σ d²)^(3/2), d how far the number without one row lies below the mean of such.</summary>
    private double Acceleration()
    {
        double[] without = withoutEach.Value;
        if (!without.All(double.IsFinite))
            throw new InvalidOperationException(
                "The statistic is not finite without some row, which these limits need; use Percentile.");
        double mean = without.Average();
        double squares = without.Sum(value => Math.Pow(mean - value, 2)), cubes = without.Sum(value => Math.Pow(mean - value, 3));
        return squares == 0 ? 0 : cubes / (6 * Math.Pow(squares, 1.5));
    }

    /// <summary>The (R + 1)p-th smallest replicate, between two of them in proportion on the normal scale, and never past the
    /// outermost: Davison and Hinkley, Bootstrap Methods and their Application (1997), equation 5.8.</summary>
    private double Quantile(double probability)
    {
        int count = sorted.Length, below = (int)Math.Floor((count + 1) * probability);
        if (below < 1)
            return sorted[0];
        if (below >= count)
            return sorted[^1];
        double low = Tails.NormalQuantile(below / (count + 1.0)), high = Tails.NormalQuantile((below + 1) / (count + 1.0));
        double share = (Tails.NormalQuantile(probability) - low) / (high - low);
        return sorted[below - 1] + share * (sorted[below] - sorted[below - 1]);
    }
}
