namespace FlipAnalytics.Statistics.Tests;

/// <summary>Totals must say what the rows themselves say.</summary>
public class CrossProductsTests
{
    [Theory]
    [InlineData("01_mtcars")]
    [InlineData("04_diamonds_price")]
    [InlineData("05_aliased_columns")]
    public void Totals_give_the_fit_of_the_rows(string name)
    {
        ReferenceCase reference = new($"ols/{name}");
        Regressor[] design = ReferenceDesign.OfInput(reference);
        double[] y = reference.Numbers(name == "01_mtcars" ? "mpg" : "price");
        LinearFit rows = LeastSquares.Fit(design, y);
        LinearFit totals = InBlocks(design[1..], y, true, 37).Fit();
        AssertSame(rows, totals, 1e-10);
        Assert.Equal(rows.ConditionNumber, totals.ConditionNumber, rows.ConditionNumber * 1e-9);
        foreach (var (expected, actual) in rows.VarianceInflation.Zip(totals.VarianceInflation))
            ReferenceCase.AssertClose(expected.Factor, actual.Factor, 1e-10);
        double[] row = [.. design.Select(column => column.Values.Span[3])];
        ReferenceCase.AssertClose(
            LinearPrediction.Of(rows, row).Range.High, LinearPrediction.Of(totals, row).Range.High, 1e-10);
    }

    [Fact]
    public void Without_an_intercept_totals_are_taken_about_nothing()
    {
        ReferenceCase reference = new("ols/01_mtcars");
        Regressor[] design = [new("wt", reference.Numbers("wt")), new("hp", reference.Numbers("hp"))];
        double[] y = reference.Numbers("mpg");
        AssertSame(LeastSquares.Fit(design, y), InBlocks(design, y, false, 32).Fit(), 1e-10);
    }

    [Fact]
    public void A_column_far_from_zero_keeps_its_digits()
    {
        // Days counted from long ago: a plain sum of squares would lose twelve of sixteen digits.
        double[] day = [.. Enumerable.Range(0, 1000).Select(i => 7e6 + i)];
        double[] y = [.. day.Select((value, i) => 3 + 0.25 * (value - 7e6) + Math.Sin(i))];
        Regressor[] design = [Regressor.Intercept(1000), new("day", day)];
        LinearFit rows = LeastSquares.Fit(design, y, options: new LeastSquaresOptions { RankTolerance = 1e-12 });
        AssertSame(rows, InBlocks(design[1..], y, true, 300).Fit(), 1e-11);
    }

    [Fact]
    public void The_size_of_the_blocks_does_not_change_what_is_found()
    {
        double[] x = [.. Enumerable.Range(0, 5000).Select(i => Math.Sin(i * 0.7))];
        double[] y = [.. x.Select((value, i) => value + Math.Cos(i * 1.3))];
        AssertSame(InBlocks([new("x", x)], y, true, 5000).Fit(), InBlocks([new("x", x)], y, true, 7).Fit(), 1e-12);
    }

    [Fact]
    public void Totals_know_no_rows_and_say_so()
    {
        LinearFit fit = InBlocks([new("x", new double[] { 0, 1, 2 })], [1, 2, 4], true, 3).Fit();
        Assert.False(fit.HasRows);
        var error = Assert.Throws<InvalidOperationException>(() => fit.ByRow);
        Assert.Contains("made from totals", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gap_adds_nothing_and_is_named()
    {
        CrossProducts totals = new(["x"]);
        var error = Assert.Throws<ArgumentException>(
            () => totals.Add([new double[] { 1, double.NaN }], new double[] { 1, 2 }));
        Assert.Contains("Column 'x' is NaN in row 1", error.Message, StringComparison.Ordinal);
        Assert.Equal(0, totals.RowCount);
    }

    private static CrossProducts InBlocks(Regressor[] columns, double[] y, bool intercept, int rows)
    {
        CrossProducts totals = new([.. columns.Select(column => column.Name)], intercept);
        for (int from = 0; from < y.Length; from += rows)
        {
            int count = Math.Min(rows, y.Length - from);
            totals.Add([.. columns.Select(column => column.Values.Slice(from, count))], y.AsMemory(from, count));
        }
        return totals;
    }

    private static void AssertSame(LinearFit expected, LinearFit actual, double relative)
    {
        Assert.Equal(expected.DroppedColumns.AsEnumerable(), actual.DroppedColumns);
        Assert.Equal(expected.RowCount, actual.RowCount);
        foreach (var (wanted, found) in expected.Coefficients.Zip(actual.Coefficients, (a, b) => (a, b)))
        {
            Assert.Equal(wanted.Name, found.Name);
            ReferenceCase.AssertClose(wanted.Estimate, found.Estimate, relative, what: wanted.Name);
            ReferenceCase.AssertClose(wanted.StandardError, found.StandardError, relative, what: wanted.Name);
        }
        ReferenceCase.AssertClose(expected.RSquared, actual.RSquared, relative, what: "R²");
        ReferenceCase.AssertClose(expected.Overall.F, actual.Overall.F, relative, what: "F");
        ReferenceCase.AssertClose(expected.LogLikelihood, actual.LogLikelihood, relative, what: "log-likelihood");
    }
}
