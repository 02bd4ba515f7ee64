using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>
/// What a mixed model needs to know of its rows: weighted cross-products of fixed columns, level indicators and
/// response. A fit costs the same however many rows went in.
/// </summary>
public sealed class MixedModelData
{
    private readonly Lazy<ReducedCrossProducts> _reduced;

    internal MixedModelData(
        ImmutableArray<string> coefficientNames,
        ImmutableArray<RandomTerm> terms,
        int[] levelOffsets,
        RawCrossProducts sums,
        RowStore? rows)
    {
        CoefficientNames = coefficientNames;
        Terms = terms;
        LevelOffsets = levelOffsets;
        RowCount = sums.Rows;
        Rows = rows;
        _reduced = new(() => new ReducedCrossProducts(sums, terms, levelOffsets));
    }

    /// <summary>Names of the fixed columns.</summary>
    public ImmutableArray<string> CoefficientNames { get; }

    /// <summary>The random terms.</summary>
    public ImmutableArray<RandomTerm> Terms { get; }

    /// <summary>How many rows went in.</summary>
    public int RowCount { get; }

    internal int[] LevelOffsets { get; }

    internal RowStore? Rows { get; }

    internal ReducedCrossProducts Reduced => _reduced.Value;

    /// <summary>Collects rows held in arrays.</summary>
    /// <param name="coefficientNames">Names of the fixed columns, the intercept included if there is one.</param>
    /// <param name="x">x[i] holds row i's fixed columns.</param>
    /// <param name="terms">The random terms.</param>
    /// <param name="level">level[k][i] is row i's level in term k, or −1 where the term does not touch the row.</param>
    /// <param name="y">Responses.</param>
    /// <param name="weights">w in ε ~ N(0, σ²/w); null for 1 everywhere.</param>
    public static MixedModelData From(
        ImmutableArray<string> coefficientNames,
        double[][] x,
        RandomTerm[] terms,
        int[][] level,
        double[] y,
        double[]? weights = null)
    {
        ArgumentNullException.ThrowIfNull(x);
        ArgumentNullException.ThrowIfNull(terms);
        ArgumentNullException.ThrowIfNull(level);
        ArgumentNullException.ThrowIfNull(y);
        if (x.Length != y.Length || (weights ?? y).Length != y.Length || level.Length != terms.Length
            || level.Any(indices => indices.Length != y.Length))
        {
            throw new ArgumentException(
                $"{y.Length} responses need as many rows in x (have {x.Length}), weights "
                + $"({(weights is null ? "none" : weights.Length)}) and levels of each of the {terms.Length} terms "
                + $"({string.Join(", ", level.Select(indices => indices.Length))}).");
        }

        var builder = new MixedModelDataBuilder(coefficientNames, terms, keepRows: true, expectedRows: y.Length);
        int[] rowLevels = new int[terms.Length];
        for (int i = 0; i < y.Length; i++)
        {
            for (int k = 0; k < terms.Length; k++)
            {
                rowLevels[k] = level[k][i];
            }

            builder.Add(x[i], rowLevels, y[i], weights is null ? 1 : weights[i]);
        }

        return builder.Build();
    }
}
