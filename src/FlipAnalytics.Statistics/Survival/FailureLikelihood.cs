using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace FlipAnalytics.Statistics;

/// <summary>Log-likelihood of log T = x'β + Σ u + σ e with its gradient and observed information (minus the matrix of
/// second derivatives) in (β, u, log σ), in this order, the levels of each group together. A row adds
/// [ended] log f(stop) + [running] log S(stop) − log S(start), or the logarithm of the probability of its interval less
/// log S(start), since it is among those that lasted until they were seen (Klein and Moeschberger, Survival Analysis, 2003,
/// section 3.5; from memory); derivatives follow from those in z = (log t − location)/σ by ∂z/∂location = −1/σ and ∂z/∂log σ = −z.</summary>
internal sealed class FailureLikelihood
{
    private readonly DesignTiles design;
    private readonly FailureRows rows;
    private readonly FailureDistribution distribution;
    private readonly int[][] levels;
    private readonly double[] location = new double[DesignTiles.RowsPerTile];
    private readonly double[] score = new double[DesignTiles.RowsPerTile];
    private readonly double[] curvature = new double[DesignTiles.RowsPerTile];
    private readonly double[] cross = new double[DesignTiles.RowsPerTile];

    internal FailureLikelihood(
        DesignTiles design, FailureRows rows, FailureDistribution distribution, IReadOnlyList<GroupColumn> groups, bool inBlocks)
    {
        this.design = design;
        this.rows = rows;
        this.distribution = distribution;
        levels = [.. groups.Select(group => group.Level)];
        var starts = ImmutableArray.CreateBuilder<int>();
        int next = design.ColumnCount;
        foreach (GroupColumn group in groups)
        {
            starts.Add(next);
            next += group.Levels.Length;
        }

        starts.Add(next);
        GroupStarts = starts.ToImmutable();
        Layout = new CurvatureLayout(design.ColumnCount, groups, inBlocks
            ? CurvatureBorder.Blocks(design.ColumnCount, groups)
            : CurvatureBorder.AllInBorder(next - design.ColumnCount));
    }

    internal int CoefficientCount => design.ColumnCount;

    /// <summary>Where each group's levels begin among the parameters; one more entry for where the last ends.</summary>
    internal ImmutableArray<int> GroupStarts { get; }

    /// <summary>Place of log σ, the last parameter.</summary>
    internal int LogScaleIndex => GroupStarts[^1];

    internal int ParameterCount => LogScaleIndex + 1;

    /// <summary>Where the entries of the information lie.</summary>
    internal CurvatureLayout Layout { get; }

    /// <summary>Whether the scale is estimated rather than held at 1.</summary>
    internal bool ScaleIsFree => distribution != FailureDistribution.Exponential;

    /// <summary>Number of estimated parameters: <see cref="ParameterCount"/>, without log σ where it is held.</summary>
    internal int FreeSize => ScaleIsFree ? ParameterCount : ParameterCount - 1;

    /// <summary>The log-likelihood; fills the gradient and the information in its <see cref="Layout"/>.</summary>
    internal double Evaluate(ReadOnlySpan<double> parameters, Span<double> gradient, double[] information) =>
        distribution switch
        {
            FailureDistribution.Lognormal => Evaluate<NormalError>(parameters, gradient, information),
            FailureDistribution.LogLogistic => Evaluate<LogisticError>(parameters, gradient, information),
            _ => Evaluate<ExtremeValueError>(parameters, gradient, information),
        };

    private double Evaluate<TError>(ReadOnlySpan<double> parameters, Span<double> gradient, double[] information)
        where TError : struct, IErrorDistribution
    {
        gradient.Clear();
        Array.Clear(information);
        int stride = Layout.BorderCount, last = stride * (stride - 1);
        var total = default(RowTotals);
        for (int tile = 0; tile < design.TileCount; tile++)
        {
            int first = tile * DesignTiles.RowsPerTile, count = design.RowsIn(tile);
            design.Predict(tile, parameters, location);
            AddGroupEffects(first, count, parameters);
            RowTotals part = EvaluateRows<TError>(first, count, parameters[LogScaleIndex]);
            if (!double.IsFinite(part.LogLikelihood))
            {
                return double.NegativeInfinity;
            }

            total = total.Plus(part);
            design.AddWeightedSums(tile, score, gradient);
            design.AddWeightedSums(tile, cross, information.AsSpan(last));
            design.AddWeightedGram(tile, curvature, information, stride);
            if (levels.Length > 0)
            {
                design.TurnToRows(tile);
                AddGroupProducts(first, count, gradient, information);
            }
        }

        gradient[LogScaleIndex] = total.LogScaleScore;
        information[Layout.Diagonal[LogScaleIndex]] = total.LogScaleInformation;
        return total.LogLikelihood;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void AddGroupEffects(int first, int count, ReadOnlySpan<double> parameters)
    {
        for (int k = 0; k < levels.Length; k++)
        {
            int[] level = levels[k];
            int start = GroupStarts[k];
            for (int i = 0; i < count; i++)
            {
                int at = level[first + i];
                location[i] += at < 0 ? 0 : parameters[start + at];
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private RowTotals EvaluateRows<TError>(int first, int count, double logScale)
        where TError : struct, IErrorDistribution
    {
        double inverseScale = Math.Exp(-logScale);
        var total = default(RowTotals);
        score.AsSpan(count).Clear();
        curvature.AsSpan(count).Clear();
        cross.AsSpan(count).Clear();
        for (int i = 0; i < count; i++)
        {
            int row = first + i;
            double z = (rows.LogStop[row] - location[i]) * inverseScale;
            SpellKind kind = rows.Kind[row];
            RowTerm term = kind switch
            {
                SpellKind.Ended => RowTerm.From(TError.LogDensity(z), z).Density(logScale + rows.LogStop[row]),
                SpellKind.Running => RowTerm.From(TError.LogSurvival(z), z),
                SpellKind.EndedBefore => RowTerm.From(TError.LogDistribution(z), z),
                _ => RowTerm.From(TError.LogBetween((rows.LogLower![row] - location[i]) * inverseScale, z),
                    (rows.LogLower[row] - location[i]) * inverseScale, z),
            };

            if (rows.LogStart is not null && rows.LogStart[row] > double.NegativeInfinity)
            {
                double zStart = (rows.LogStart[row] - location[i]) * inverseScale;
                term = term.Minus(RowTerm.From(TError.LogSurvival(zStart), zStart));
            }

            double weight = rows.Weight is null ? 1 : rows.Weight[row];
            score[i] = -weight * inverseScale * term.First;
            curvature[i] = -weight * inverseScale * inverseScale * term.Second;
            cross[i] = -weight * inverseScale * (term.First + term.SecondTimesZ);
            total = total.Plus(weight, term);
        }

        return total;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void AddGroupProducts(int first, int count, Span<double> gradient, double[] information)
    {
        for (int k = 0; k < levels.Length; k++)
        {
            int[] level = levels[k];
            for (int i = 0; i < count; i++)
            {
                int at = level[first + i];
                if (at < 0)
                {
                    continue;
                }

                int parameter = GroupStarts[k] + at;
                gradient[parameter] += score[i];
                information[Layout.LogScale[parameter]] += cross[i];
                information[Layout.Diagonal[parameter]] += curvature[i];
                for (int other = 0; other < k; other++)
                {
                    int pair = Layout.Pairs(k, other)[first + i];
                    if (pair >= 0)
                    {
                        information[pair] += curvature[i];
                    }
                }
            }

            for (int i = 0; i < count; i++)
            {
                int at = level[first + i];
                if (at >= 0)
                {
                    VectorKernel.AddScaled(
                        information.AsSpan(Layout.FixedColumns[GroupStarts[k] + at], design.ColumnCount),
                        curvature[i], design.RowOf(i));
                }
            }
        }
    }

    /// <summary>A row's logarithm with its derivatives in a common shift of the limits z and with those of log σ.</summary>
    private readonly record struct RowTerm(
        double Value, double First, double Second, double FirstTimesZ, double SecondTimesZ, double SecondTimesZSquared)
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        internal static RowTerm From(ErrorTerm term, double z) =>
            new(term.Value, term.First, term.Second, z * term.First, z * term.Second, z * z * term.Second);

        internal static RowTerm From(IntervalTerm term, double lower, double upper) =>
            new(term.Value, term.Lower + term.Upper, term.LowerLower + 2 * term.LowerUpper + term.UpperUpper,
                lower * term.Lower + upper * term.Upper,
                lower * term.LowerLower + (lower + upper) * term.LowerUpper + upper * term.UpperUpper,
                lower * lower * term.LowerLower + 2 * lower * upper * term.LowerUpper + upper * upper * term.UpperUpper);

        // f(t) = f(z) / (σ t): one more −log σ − log t, whose derivative in log σ is −1.
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        internal RowTerm Density(double logScalePlusLogTime) =>
            this with { Value = Value - logScalePlusLogTime, FirstTimesZ = FirstTimesZ + 1, SecondTimesZSquared = SecondTimesZSquared - 1 };

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        internal RowTerm Minus(RowTerm other) =>
            new(Value - other.Value, First - other.First, Second - other.Second, FirstTimesZ - other.FirstTimesZ,
                SecondTimesZ - other.SecondTimesZ, SecondTimesZSquared - other.SecondTimesZSquared);
    }

    private readonly record struct RowTotals(double LogLikelihood, double LogScaleScore, double LogScaleInformation)
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        internal RowTotals Plus(double weight, RowTerm term) =>
            new(LogLikelihood + weight * term.Value,
                LogScaleScore - weight * term.FirstTimesZ,
                LogScaleInformation - weight * (term.FirstTimesZ + term.SecondTimesZSquared));

        internal RowTotals Plus(RowTotals other) =>
            new(LogLikelihood + other.LogLikelihood, LogScaleScore + other.LogScaleScore,
                LogScaleInformation + other.LogScaleInformation);
    }
}
