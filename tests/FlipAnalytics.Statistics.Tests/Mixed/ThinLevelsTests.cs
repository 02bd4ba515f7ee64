using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>
/// Levels that few rows have: colours with one piece each, pieces of which every word is new, many groups crossed. What
/// the blocks and the border of the equations give is held against the same model written out in full.
/// </summary>
public sealed class ThinLevelsTests
{
    /// <summary>Rows, levels of each group (as many as rows: one each), periods of a walk.</summary>
    public static TheoryData<int, int[], int> Logs => new()
    {
        { 60, [8, 14, 5], 12 },
        { 150, [9, 120, 7], 20 },
        { 160, [8, 160, 6], 16 },
        { 90, [90, 90, 90, 90], 15 },
        { 180, [70, 60, 50], 0 },
        { 80, [], 30 },
    };

    [Theory]
    [MemberData(nameof(Logs))]
    public void The_restricted_likelihood_agrees_with_the_model_written_out(int rows, int[] groups, int periods) =>
        new Written(rows, groups, periods).Hold(new() { RatioPriors = Priors(groups, periods) });

    [Theory]
    [MemberData(nameof(Logs))]
    public void The_ordinary_likelihood_agrees_with_the_model_written_out(int rows, int[] groups, int periods) =>
        new Written(rows, groups, periods).Hold(new()
        {
            Criterion = LikelihoodCriterion.Ml,
            RatioPriors = Priors(groups, periods),
            ResidualVariancePrior = new(5, 0.2),
        });

    /// <summary>With one row a level nothing but a residual variance that is known tells the two apart.</summary>
    [Theory]
    [MemberData(nameof(Logs))]
    public void Ratios_without_priors_are_where_the_likelihood_is_flat_or_zero(int rows, int[] groups, int periods) =>
        new Written(rows, groups, periods).Hold(new() { HeldResidualVariance = groups.Contains(rows) ? 0.2 : null });

    [Theory]
    [MemberData(nameof(Logs))]
    public void Held_ratios_one_of_them_zero_agree_with_the_model_written_out(int rows, int[] groups, int periods) =>
        new Written(rows, groups, periods).Hold(new()
        {
            HeldRatios = [.. Enumerable.Range(0, groups.Length + Math.Sign(periods)).Select(k => (double?)(k == 1 ? 0 : 0.3 + (0.2 * k)))],
            ResidualVariancePrior = new(3, 0.3),
        });

    [Theory]
    [InlineData(5000, 10, 5000, 10, 10)]
    [InlineData(5000, 2000, 10, 10, 10)]
    [InlineData(1000, 1000, 1000, 1000, 1000)]
    public void Thousands_of_thin_levels_take_little_memory_and_solve_Henderson_s_equations(
        int count, int first, int second, int third, int fourth)
    {
        int[] groups = [first, second, third, fourth];
        var log = new Log(count, groups, 60);
        long before = GC.GetAllocatedBytesForCurrentThread();
        MixedModelData data = log.Data();
        MixedModelFit fit = MixedModel.Fit(data, new()
        {
            RatioPriors = Priors(groups, 60),
            ResidualVariancePrior = new(5, 0.2),
        });
        var left = fit.LeaveOneOut();
        long taken = GC.GetAllocatedBytesForCurrentThread() - before;

        Assert.True(taken < 60_000_000, $"{taken / 1e6:0} MB");
        Assert.True(fit.Convergence.Converged, fit.Convergence.ToString());
        var residuals = fit.Residuals();
        for (int k = 0; k < groups.Length; k++)
        {
            double[] sums = new double[groups[k]];
            for (int i = 0; i < count; i++)
            {
                sums[log.Levels[k][i]] += residuals[i] * log.Weights[i];
            }

            for (int t = 0; t < sums.Length; t++)
            {
                Near.Absolute(fit.Terms[k].Levels[t].Effect / fit.Terms[k].VarianceRatio, sums[t], 1e-8, "Z'Wr");
            }
        }

        // A colour seen once has no effect without its only piece: the others predict it like an unseen one.
        LevelRef[] levels = log.Known(0);
        MixedPrediction seen = fit.Predict(log.X[0], levels);
        Near.Absolute(log.Y[0] - residuals[0], seen.Mean, 1e-10, "mean");
        Assert.True(left[0].VarianceOfMean > seen.VarianceOfMean);
    }

    private static ImmutableArray<VarianceRatioPrior?> Priors(int[] groups, int periods) =>
        [.. Enumerable.Range(0, groups.Length + Math.Sign(periods)).Select(k => new VarianceRatioPrior(-1.5 + (0.3 * k), 0.8))];

    /// <summary>Generated rows with one level a row where there are as many levels as rows, and a walk by rows in order.</summary>
    private class Log
    {
        public Log(int rows, int[] groups, int periods)
        {
            var generated = new GeneratedRows(rows, groups, [.. groups.Select(_ => 0.4)]);
            (X, Weights, Columns) = (generated.X, generated.Weights, generated.Columns);
            Y = [.. generated.Y];
            Terms = [.. generated.Terms];
            Levels = [.. generated.Levels];
            for (int k = 0; k < groups.Length; k++)
            {
                for (int i = 0; groups[k] == rows && i < rows; i++)
                {
                    int drawn = Levels[k][i];
                    Levels[k][i] = i;
                    Y[i] += generated.Effects[k][i] - generated.Effects[k][drawn];
                }
            }

            if (periods > 0)
            {
                // Now and then a period is missing.
                Terms = [.. Terms, RandomTerm.RandomWalk(
                    "period", [.. Enumerable.Range(0, periods).Select(t => $"t{t}")],
                    [.. Enumerable.Range(0, periods).Select(t => t + (double)(t / 7))])];
                Levels = [.. Levels, [.. Enumerable.Range(0, rows).Select(i => i % 11 == 5 ? -1 : i * periods / rows)]];
                Y = [.. Y.Select((y, i) => y + Math.Sin(5.0 * i / rows))];
            }
        }

        public ImmutableArray<string> Columns { get; }

        public double[][] X { get; }

        public double[] Y { get; }

        public double[] Weights { get; }

        public RandomTerm[] Terms { get; }

        public int[][] Levels { get; }

        public MixedModelData Data() => MixedModelData.From(Columns, X, Terms, Levels, Y, Weights);

        public LevelRef[] Known(int row) => [.. Levels.Select((level, k) => level[row] < 0 ? LevelRef.None
            : Terms[k].Structure == RandomStructure.RandomWalk ? LevelRef.AtPosition(Terms[k].Positions[level[row]])
            : LevelRef.Known(level[row]))];
    }

    private sealed class Written(int rows, int[] groups, int periods) : Log(rows, groups, periods)
    {
        private const double Tolerance = 1e-9;

        public void Hold(MixedModelOptions options)
        {
            MixedModelFit fit = MixedModel.Fit(Data(), options);
            double[] ratios = [.. fit.Terms.Select(term => term.VarianceRatio)];
            var whole = new WholeCovarianceModel(X, Terms, Levels, Y, Weights, ratios, options);
            Near.Relative(whole.ResidualVariance, fit.ResidualVariance, Tolerance, "residual variance");
            Near.Relative(whole.MinusTwoLogLikelihood, fit.MinusTwoLogLikelihood, Tolerance, "log likelihood");
            for (int k = 0; k < Terms.Length; k++)
            {
                if (options.HeldRatios.IsDefaultOrEmpty && ratios[k] > 0)
                {
                    Near.Absolute(0, whole.Score(k), 1e-7, "slope");
                }

                for (int t = 0; t < Terms[k].Levels.Length; t++)
                {
                    RandomLevelEstimate level = fit.Terms[k].Levels[t];
                    int at = whole.Offsets[k] + t;
                    Close(whole.Effects[at], level.Effect, "effect");
                    Close(whole.Errors[at, at] * fit.ResidualVariance, level.PredictionErrorVariance, "error variance");
                    Close(whole.Conditional[at, at] * fit.ResidualVariance, level.ConditionalVariance, "conditional variance");
                }
            }

            for (int c = 0; c < Columns.Length; c++)
            {
                Close(whole.Coefficients[c], fit.Coefficients[c].Estimate, "coefficient");
            }

            HoldRows(fit, whole, ratios);
            HoldLeaveOneOut(fit, ratios, options);
        }

        private void HoldRows(MixedModelFit fit, WholeCovarianceModel whole, double[] ratios)
        {
            Vector<double> solution = Vector<double>.Build.DenseOfEnumerable(whole.Effects.Concat(whole.Coefficients));
            foreach (int i in new[] { 0, 7, Y.Length / 2, Y.Length - 1 })
            {
                Vector<double> row = whole.Rows.Row(i);
                Vector<double> spread = whole.Errors * row;
                MixedPrediction known = fit.Predict(X[i], Known(i));
                Close(row * solution, known.Mean, "mean");
                Close(row * spread * fit.ResidualVariance, known.VarianceOfMean, "variance of the mean");
                double[] weights = fit.RowWeights(X[i], Known(i));
                for (int j = 0; j < Y.Length; j++)
                {
                    Close(spread * whole.Rows.Row(j) * Weights[j], weights[j], "row weight");
                    if (j % 5 == 0)
                    {
                        Close(
                            spread * whole.Rows.Row(j) * fit.ResidualVariance,
                            fit.CovarianceOfMeans(X[i], Known(i), X[j], Known(j)), "covariance of means");
                    }
                }

                // A first level never seen before, and three units beyond the walk's end.
                LevelRef[] levels = Known(i);
                double extra = 0;
                for (int k = 0; k < Terms.Length; k++)
                {
                    bool walk = Terms[k].Structure == RandomStructure.RandomWalk;
                    if (k != 0 && !walk)
                    {
                        continue;
                    }

                    levels[k] = walk ? LevelRef.AtPosition(Terms[k].Positions[^1] + 3) : LevelRef.Unseen;
                    extra += ratios[k] * (walk ? 3 : 1);
                    row.SetSubVector(whole.Offsets[k], Terms[k].Levels.Length, Vector<double>.Build.Dense(Terms[k].Levels.Length));
                    row[whole.Offsets[k + 1] - 1] = walk ? 1 : 0;
                }

                MixedPrediction unseen = fit.Predict(X[i], levels);
                Close(row * solution, unseen.Mean, "mean of what is unseen");
                Close(
                    ((row * whole.Errors * row) + extra) * fit.ResidualVariance, unseen.VarianceOfMean, "variance of what is unseen");
            }
        }

        private void HoldLeaveOneOut(MixedModelFit fit, double[] ratios, MixedModelOptions options)
        {
            var left = fit.LeaveOneOut();
            foreach (int i in new[] { 3, Y.Length - 4 })
            {
                int[] others = [.. Enumerable.Range(0, Y.Length).Where(j => j != i)];
                T[] Pick<T>(T[] values) => [.. others.Select(j => values[j])];
                var without = new WholeCovarianceModel(
                    Pick(X), Terms, [.. Levels.Select(Pick)], Pick(Y), Pick(Weights), ratios, options);
                Vector<double> row = Vector<double>.Build.Dense(without.Rows.ColumnCount);
                for (int k = 0; k < Terms.Length; k++)
                {
                    if (Levels[k][i] >= 0)
                    {
                        row[without.Offsets[k] + Levels[k][i]] = 1;
                    }
                }

                row.SetSubVector(without.Offsets[^1], X[i].Length, Vector<double>.Build.Dense(X[i]));
                Close(
                    row * Vector<double>.Build.DenseOfEnumerable(without.Effects.Concat(without.Coefficients)),
                    left[i].Mean, "mean from the others");
                Close(row * without.Errors * row * without.ResidualVariance, left[i].VarianceOfMean, "its variance");
                Close(without.ResidualVariance, left[i].ResidualVariance, "residual variance of the others");
            }
        }

        private static void Close(double expected, double actual, string what) =>
            Near.Absolute(expected, actual, 1e-12 + (Tolerance * Math.Abs(expected)), what);
    }
}
