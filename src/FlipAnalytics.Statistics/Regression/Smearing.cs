namespace FlipAnalytics.Statistics;

/// <summary>Back from logarithms to the mean: exp(ŷ) is a median; its product with the smearing factor is a mean whatever
/// the shape of the errors. Duan (1983), J. Am. Stat. Assoc. 78, 605–610.</summary>
public static class Smearing
{
    /// <summary>mean(exp(e)) over the residuals of a fit to natural logarithms; above 1 for an unweighted fit with an intercept.
    /// </summary>
    /// <exception cref="InvalidOperationException">The fit was made from totals.</exception>
    public static double Factor(LinearFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return Factor(fit.Rows.Residuals);
    }

    /// <summary>mean(exp(e)).</summary>
    /// <exception cref="ArgumentException">No residuals, or one that is not finite.</exception>
    public static double Factor(ReadOnlySpan<double> residuals)
    {
        if (residuals.IsEmpty)
            throw new ArgumentException("A smearing factor needs at least one residual.", nameof(residuals));
        GivenNumbers.RefuseNotFinite("Residual", residuals, nameof(residuals));
        double sum = 0;
        foreach (double residual in residuals)
            sum += Math.Exp(residual);
        return sum / residuals.Length;
    }
}
