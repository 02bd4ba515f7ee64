using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>What each row of a model weighs.</summary>
/// <param name="Ordinary">How many observations it stands for, less what its gaps take off.</param>
/// <param name="Counts">How much of that counts: 1 but for wild rows.</param>
internal sealed record RowWeights(ImmutableArray<double> Ordinary, ImmutableArray<double> Counts)
{
    /// <summary>A row that is read as what it likely was meant to be counts in full as that.</summary>
    public IEnumerable<double> InFit(ImmutableArray<EffectsRow> rows) =>
        rows.Select((row, i) => row.Slip == 0 ? Ordinary[i] * Counts[i] : Ordinary[i]);

    /// <summary>Every row as it says of itself.</summary>
    public static RowWeights Of(ImmutableArray<EffectsRow> rows) => new([.. rows.Select(r => r.Weight)], [.. rows.Select(_ => 1.0)]);

    /// <summary>
    /// A row with gaps says less: its residual carries the spread of what was not recorded. The same object where no row
    /// has any.
    /// </summary>
    public RowWeights WithGaps(ImmutableArray<EffectsRow> rows, double residualVariance, Func<EffectsRow, double> gapVariance)
    {
        double[] gaps = [.. rows.Select(gapVariance)];
        return gaps.All(gap => gap == 0) ? this : this with
        {
            Ordinary =
                [.. rows.Zip(gaps, (row, gap) => row.Weight * residualVariance / (residualVariance + row.Weight * gap))],
        };
    }

    /// <summary>Rows counting by their standardised residuals. The same object where that changes nothing.</summary>
    public RowWeights WithCounts(Func<double, double> countOf, double[] standardized)
    {
        ImmutableArray<double> counts = [.. standardized.Select(countOf)];
        return counts.SequenceEqual(Counts) ? this : this with { Counts = counts };
    }

    /// <summary>
    /// A row's prediction from the others with its own spread as it would be if it counted in full: what counts less has
    /// missed by no fewer spreads for that.
    /// </summary>
    public LeaveOneOutPrediction AsIfCountedInFull(LeaveOneOutPrediction left, int row) => Counts[row] == 1 ? left : left with
    {
        StandardizedResidual = left.Residual / Math.Sqrt(left.VarianceOfMean + left.ResidualVariance / Ordinary[row]),
    };
}
