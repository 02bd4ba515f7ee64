using CsCheck;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>What holds for every least squares fit, on generated data.</summary>
public class LeastSquaresLawsTests
{
    private static readonly Gen<(double[][] Columns, double[] Response)> Data =
        from rows in Gen.Int[6, 40]
        from width in Gen.Int[1, 4]
        from columns in Gen.Double[-10, 10].Array[rows].Array[width]
        from response in Gen.Double[-100, 100].Array[rows]
        select (columns, response);

    [Fact]
    public void Residuals_are_orthogonal_to_every_column() => Data.Sample(data =>
    {
        LinearFit fit = Fit(data.Columns, data.Response);
        Assert.Equal(0, fit.ByRow.Residuals.Sum(), 1e-10);
        foreach (double[] column in data.Columns)
            Assert.Equal(0, column.Zip(fit.ByRow.Residuals, (x, e) => x * e).Sum(), 1e-9);
    }, iter: 300);

    [Fact]
    public void Rows_in_another_order_give_the_same_fit() => Data.Sample(data =>
    {
        LinearFit fit = Fit(data.Columns, data.Response);
        LinearFit reversed = Fit(
            [.. data.Columns.Select(column => column.Reverse().ToArray())], [.. data.Response.Reverse()]);
        AssertSame(fit, reversed, 1);
    }, iter: 300);

    [Fact]
    public void Measuring_a_column_in_another_unit_only_rescales_its_coefficient() => Data.Sample(data =>
    {
        LinearFit inches = Fit(data.Columns, data.Response);
        LinearFit centimetres = Fit(
            [[.. data.Columns[0].Select(x => 2.54 * x)], .. data.Columns[1..]], data.Response);
        AssertSame(inches, centimetres, 2.54);
    }, iter: 300);

    [Fact]
    public void Leaving_a_row_out_gives_the_residual_its_leverage_foretold() => Data.Sample(data =>
    {
        LinearFit fit = Fit(data.Columns, data.Response);
        // A row that alone carries a coefficient leaves nothing to refit.
        if (data.Response.Length <= data.Columns.Length + 2 || fit.ByRow.Leverage[0] > 0.99)
            return;
        double[][] without = [.. data.Columns.Select(column => column[1..])];
        double[] row = [1, .. data.Columns.Select(column => column[0])];
        double refitted = data.Response[0] - LinearPrediction.Of(Fit(without, data.Response[1..]), row).Fit;
        ReferenceCase.AssertClose(refitted, fit.ByRow.LeaveOneOutResiduals[0], 1e-8, 1e-8);
    }, iter: 300);

    private static LinearFit Fit(double[][] columns, double[] response) => LeastSquares.Fit(
        [Regressor.Intercept(response.Length), .. columns.Select((column, j) => new Regressor($"x{j}", column))], response);

    private static void AssertSame(LinearFit expected, LinearFit actual, double unit)
    {
        Assert.Equal(expected.RSquared, actual.RSquared, 1e-11);
        ReferenceCase.AssertClose(expected.Sigma, actual.Sigma, 1e-11);
        for (int j = 0; j < expected.Coefficients.Length; j++)
        {
            double scale = j == 1 ? unit : 1;
            ReferenceCase.AssertClose(
                expected.Coefficients[j].Estimate, actual.Coefficients[j].Estimate * scale, 1e-9, 1e-11);
        }
    }
}
