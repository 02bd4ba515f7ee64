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
}
