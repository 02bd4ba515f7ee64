namespace FlipAnalytics.Statistics;

/// <summary>A test that the residual variance does not depend on the columns of the design.</summary>
/// <param name="Statistic">About χ² when the variance is constant.</param>
/// <param name="DegreesOfFreedom">The columns beside the intercept.</param>
/// <param name="P">The chance of a statistic at least as large.</param>
public sealed record BreuschPagan(double Statistic, int DegreesOfFreedom, double P)
{
    /// <summary>The studentised form, n R² of e² on the design, which does not need normal errors: Koenker (1981),
    /// J. Econometrics 17, 107–112.</summary>
    /// <exception cref="ArgumentException">The fit has weights, no intercept, or residuals all of one size.</exception>
    /// <exception cref="InvalidOperationException">The fit was made from totals.</exception>
    public static BreuschPagan Studentized(LinearFit fit)
    {
        LinearFit auxiliary = OfSquaredResiduals(fit);
        return From(auxiliary, auxiliary.RowCount * auxiliary.RSquared);
    }

    /// <summary>The original form, half the explained sum of squares of e²/(RSS/n), which needs normal errors: Breusch and
    /// Pagan (1979), Econometrica 47, 1287–1294.</summary>
    /// <inheritdoc cref="Studentized" path="/exception"/>
    public static BreuschPagan Original(LinearFit fit)
    {
        LinearFit auxiliary = OfSquaredResiduals(fit);
        double meanSquare = fit.ResidualSumOfSquares / fit.RowCount;
        double explained = auxiliary.ResidualSumOfSquares * auxiliary.RSquared / (1 - auxiliary.RSquared);
        return From(auxiliary, explained / (meanSquare * meanSquare) / 2);
    }

    private static BreuschPagan From(LinearFit auxiliary, double statistic)
    {
        int degrees = auxiliary.Coefficients.Length - 1;
        return new(statistic, degrees, Tails.UpperChiSquared(statistic, degrees));
    }

    private static LinearFit OfSquaredResiduals(LinearFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        if (fit.Rows.Weights.Length > 0 || !fit.HasIntercept || fit.Coefficients.Length < 2)
            throw new ArgumentException(
                "The Breusch–Pagan test is for an unweighted fit with an intercept and at least one more column.", nameof(fit));
        return LeastSquares.Fit(
            [.. fit.Coefficients.Select((coefficient, j) => new Regressor(coefficient.Name, fit.Rows.Columns[j]))],
            [.. fit.Rows.Residuals.Select(e => e * e)]);
    }
}
