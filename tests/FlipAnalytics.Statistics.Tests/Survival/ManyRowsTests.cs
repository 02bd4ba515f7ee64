namespace FlipAnalytics.Statistics.Tests;

/// <summary>With a great many rows the search starts from a thinned fit; where it ends must not depend on that.</summary>
public class ManyRowsTests
{
    [Fact]
    public void Rows_repeated_sixteen_times_are_rows_of_weight_sixteen()
    {
        const int Rows = 15_000;
        const int Repeats = 16;
        var numbers = new RandomNumbers(7, 0);
        double[][] x = [.. Enumerable.Range(0, Rows).Select(_ => new[] { 1, numbers.NextUniform() - 0.5 })];
        Spell[] spells =
        [
            .. x.Select(row =>
            {
                double days = Math.Exp(3 + row[1]) * Math.Pow(-Math.Log(1 - numbers.NextUniform()), 0.8);
                return days < 60 ? Spell.Ended(days) : Spell.Running(60);
            }),
        ];
        int[] place = [.. Enumerable.Range(0, Repeats * Rows).Select(i => i % Rows)];

        AcceleratedFailureFit weighted = AcceleratedFailure.Fit(
            new(["(Intercept)", "x"], x, [.. spells], [], [.. Enumerable.Repeat((double)Repeats, Rows)]), new());
        AcceleratedFailureFit repeated = AcceleratedFailure.Fit(
            new(["(Intercept)", "x"], [.. place.Select(i => x[i])], [.. place.Select(i => spells[i])], [], null), new());

        Assert.Equal(weighted.LogLikelihood, repeated.LogLikelihood, 1e-9 * Math.Abs(weighted.LogLikelihood));
        Assert.Equal(weighted.LogScale, repeated.LogScale, 1e-9);
        foreach (var (one, other) in weighted.Coefficients.Zip(repeated.Coefficients))
        {
            Assert.Equal(one.Estimate, other.Estimate, 1e-9);
            Assert.Equal(one.StandardError, other.StandardError, 1e-9);
        }
    }

    [Fact]
    public void Day_numbers_of_many_rows_are_fitted_as_the_days_from_their_origin()
    {
        AcceleratedFailureData days = new SyntheticSpells(11).Draw(210_000, [0], 0.7, 70) with { Groups = [] };
        AcceleratedFailureFit plain = AcceleratedFailure.Fit(days, new AcceleratedFailureOptions());
        AcceleratedFailureFit numbers = AcceleratedFailure.Fit(
            days with { X = [.. days.X.Select(row => new[] { 1, 738000 + row[1] })] }, new AcceleratedFailureOptions());
        Assert.Equal(plain.Coefficients[1].Estimate, numbers.Coefficients[1].Estimate, 1e-9);
        Assert.Equal(plain.LogLikelihood, numbers.LogLikelihood, 1e-6);
        Assert.Equal(plain.Predict([1, 2]).Location, numbers.Predict([1, 738002]).Location, 1e-9);
        Assert.Equal(plain.Convergence.NewtonIterations, numbers.Convergence.NewtonIterations);
    }
}
