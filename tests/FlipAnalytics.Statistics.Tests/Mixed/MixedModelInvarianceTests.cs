using System.Collections.Immutable;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>What must not matter to a fit does not.</summary>
public sealed class MixedModelInvarianceTests
{
    private static readonly GeneratedRows Rows = new(120, [6, 9], [0.4, 0.3]);

    [Fact]
    public void The_order_of_the_rows_changes_nothing()
    {
        MixedModelFit fit = MixedModel.Fit(Rows.Data(weighted: true));
        MixedModelFit shuffled = MixedModel.Fit(
            Rows.DataOf(Enumerable.Range(0, 120).Select(i => i * 37 % 120), weighted: true));

        AssertSame(fit, shuffled);
    }

    [Fact]
    public void The_order_of_a_factors_levels_changes_nothing()
    {
        RandomTerm[] terms = [.. Rows.Terms.Select(term =>
            RandomTerm.Exchangeable(term.Name, [.. term.Levels.Reverse()]))];
        int[][] levels = [.. Rows.Levels.Select((level, k) =>
            level.Select(t => terms[k].Levels.Length - 1 - t).ToArray())];

        AssertSame(
            MixedModel.Fit(Rows.Data()),
            MixedModel.Fit(MixedModelData.From(Rows.Columns, Rows.X, terms, levels, Rows.Y)));
    }

    [Fact]
    public void The_order_of_the_terms_changes_nothing()
    {
        RandomTerm[] terms = [.. Rows.Terms.Reverse()];
        int[][] levels = [.. Rows.Levels.Reverse()];
        MixedModelFit fit = MixedModel.Fit(Rows.Data());
        MixedModelFit turned = MixedModel.Fit(MixedModelData.From(Rows.Columns, Rows.X, terms, levels, Rows.Y));

        Near.Absolute(fit.MinusTwoLogLikelihood, turned.MinusTwoLogLikelihood, 1e-9, "criterion");
        Near.Relative(fit.Terms[0].Variance, turned.Terms[1].Variance, 1e-7, "variance");
    }

    [Fact]
    public void Columns_far_from_zero_lose_no_digits()
    {
        double[][] shifted = [.. Rows.X.Select(row => new[] { row[0], row[1] + 1e6, row[2] - 2e5 })];
        double[] prices = [.. Rows.Y.Select(y => y + 1e5)];
        MixedModelFit fit = MixedModel.Fit(Rows.Data());
        MixedModelFit far = MixedModel.Fit(MixedModelData.From(Rows.Columns, shifted, Rows.Terms, Rows.Levels, prices));

        Near.Absolute(fit.MinusTwoLogLikelihood, far.MinusTwoLogLikelihood, 1e-6, "criterion");
        Near.Relative(fit.Coefficients[1].Estimate, far.Coefficients[1].Estimate, 1e-7, "slope");
        Near.Relative(fit.Terms[0].Variance, far.Terms[0].Variance, 1e-7, "variance");
    }

    [Fact]
    public void Another_unit_of_price_scales_every_variance()
    {
        MixedModelFit fit = MixedModel.Fit(Rows.Data());
        MixedModelFit cents = MixedModel.Fit(MixedModelData.From(
            Rows.Columns, Rows.X, Rows.Terms, Rows.Levels, [.. Rows.Y.Select(y => 100 * y)]));

        Near.Relative(1e4 * fit.ResidualVariance, cents.ResidualVariance, 1e-9, "residual variance");
        Near.Relative(1e4 * fit.Terms[1].Variance, cents.Terms[1].Variance, 1e-7, "variance");
        Near.Relative(100 * fit.Coefficients[2].StandardError, cents.Coefficients[2].StandardError, 1e-9, "error");
    }

    [Fact]
    public void A_row_of_weight_two_counts_as_two_rows_with_the_same_price()
    {
        int[] doubled = [.. Enumerable.Range(0, 120).SelectMany(i => i % 3 == 0 ? new[] { i, i } : [i])];
        double[] weights = [.. Enumerable.Range(0, 120).Select(i => i % 3 == 0 ? 2.0 : 1)];
        double[] held = [0.5, 0.25];
        var options = new MixedModelOptions { HeldRatios = [held[0], held[1]] };
        MixedModelFit copies = MixedModel.Fit(Rows.DataOf(doubled), options);
        MixedModelFit weighted = MixedModel.Fit(
            MixedModelData.From(Rows.Columns, Rows.X, Rows.Terms, Rows.Levels, Rows.Y, weights), options);

        // Only the degrees of freedom differ: 40 rows fewer.
        Near.Relative(
            copies.ResidualVariance * (160 - 3), weighted.ResidualVariance * (120 - 3), 1e-10, "residual sum of squares");
        for (int j = 0; j < 3; j++)
        {
            Near.Relative(copies.Coefficients[j].Estimate, weighted.Coefficients[j].Estimate, 1e-10, "coefficient");
        }

        Near.Absolute(copies.Terms[1].Levels[4].Effect, weighted.Terms[1].Levels[4].Effect, 1e-10, "effect");
    }

    private static void AssertSame(MixedModelFit expected, MixedModelFit actual)
    {
        Near.Absolute(expected.MinusTwoLogLikelihood, actual.MinusTwoLogLikelihood, 1e-9, "criterion");
        for (int j = 0; j < expected.Coefficients.Length; j++)
        {
            Near.Relative(expected.Coefficients[j].Estimate, actual.Coefficients[j].Estimate, 1e-8, "coefficient");
        }

        for (int k = 0; k < expected.Terms.Length; k++)
        {
            Near.Relative(expected.Terms[k].Variance, actual.Terms[k].Variance, 1e-7, "variance");
            ImmutableDictionary<string, double> effects =
                actual.Terms[k].Levels.ToImmutableDictionary(level => level.Level, level => level.Effect);
            foreach (RandomLevelEstimate level in expected.Terms[k].Levels)
            {
                Near.Absolute(level.Effect, effects[level.Level], 1e-8, level.Level);
            }
        }
    }
}
