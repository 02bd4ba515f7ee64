using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>P values adjusted for being several, in the order given and at most 1.</summary>
public static class MultipleTests
{
    /// <summary>Each p times the number of tests.</summary>
    /// <exception cref="ArgumentException">A p value outside 0..1.</exception>
    public static ImmutableArray<double> Bonferroni(IReadOnlyList<double> p)
    {
        Refuse(p);
        return [.. p.Select(value => Math.Min(1, value * p.Count))];
    }

    /// <summary>The chance of any false alarm is kept, and never more tests are lost than with Bonferroni: the k-th smallest
    /// p times (m + 1 − k), made not to fall. Holm (1979), Scand. J. Stat. 6, 65–70.</summary>
    /// <exception cref="ArgumentException">A p value outside 0..1.</exception>
    public static ImmutableArray<double> Holm(IReadOnlyList<double> p)
    {
        Refuse(p);
        double[] adjusted = new double[p.Count];
        double running = 0;
        foreach (var (k, i) in Ascending(p).Index())
            adjusted[i] = running = Math.Max(running, Math.Min(1, p[i] * (p.Count - k)));
        return [.. adjusted];
    }

    /// <summary>The share of false alarms among the alarms is kept: the k-th smallest p times m/k, made not to rise on the
    /// way down. Benjamini and Hochberg (1995), J. R. Stat. Soc. B 57, 289–300.</summary>
    /// <exception cref="ArgumentException">A p value outside 0..1.</exception>
    public static ImmutableArray<double> BenjaminiHochberg(IReadOnlyList<double> p)
    {
        Refuse(p);
        double[] adjusted = new double[p.Count];
        double running = 1;
        foreach (var (k, i) in Ascending(p).Index().Reverse())
            adjusted[i] = running = Math.Min(running, p[i] * p.Count / (k + 1));
        return [.. adjusted];
    }

    private static int[] Ascending(IReadOnlyList<double> p) => [.. Enumerable.Range(0, p.Count).OrderBy(i => p[i])];

    private static void Refuse(IReadOnlyList<double> p)
    {
        ArgumentNullException.ThrowIfNull(p);
        foreach (var (i, value) in p.Index())
        {
            if (!(value is >= 0 and <= 1))
                throw new ArgumentException($"P value {i} (counting from 0) is {value}; it must lie from 0 to 1.", nameof(p));
        }
    }
}
