using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>Covariances of the coefficients that stay valid when some rows scatter more than others:
/// (XᵀWX)⁻¹ Xᵀ diag(w² a²) X (XᵀWX)⁻¹. MacKinnon and White (1985), J. Econometrics 29, 305–325.</summary>
public static class RobustCovariance
{
    // A leverage this close to 1 leaves no residual to learn from.
    private const double FullLeverage = 1e-10;

    /// <summary>HC1: a² = e² n/(n − p).</summary>
    /// <exception cref="InvalidOperationException">The fit was made from totals.</exception>
    public static ImmutableArray<ImmutableArray<double>> Hc1(LinearFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        double factor = Math.Sqrt((double)fit.RowCount / fit.ResidualDegreesOfFreedom);
        return Sandwich(fit, [.. fit.Rows.Residuals.Select(e => e * factor)]);
    }

    /// <summary>HC3: a = e/(1 − h), the choice for small samples; Long and Ervin (2000), Am. Stat. 54, 217–224.</summary>
    /// <exception cref="InvalidOperationException">The fit was made from totals.</exception>
    /// <exception cref="ArgumentException">A row alone determines a coefficient, so that e/(1 − h) is 0/0.</exception>
    public static ImmutableArray<ImmutableArray<double>> Hc3(LinearFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        double[] leverage = RowDiagnostics.LeverageOf(fit);
        int alone = Array.FindIndex(leverage, h => 1 - h < FullLeverage);
        if (alone >= 0)
            throw new ArgumentException(
                $"Row {alone} (counting from 0) alone determines a coefficient, so HC3 is not defined. Use HC1, or leave the row and its column out.",
                nameof(fit));
        return Sandwich(fit, [.. fit.Rows.Residuals.Select((e, i) => e / (1 - leverage[i]))]);
    }

    private static ImmutableArray<ImmutableArray<double>> Sandwich(LinearFit fit, double[] scores)
    {
        FittedRows rows = fit.Rows;
        int width = fit.Coefficients.Length;
        double[][] meat = [.. Enumerable.Range(0, width).Select(_ => new double[width])];
        for (int i = 0; i < scores.Length; i++)
        {
            double score = rows.Weight(i) * scores[i];
            for (int j = 0; j < width; j++)
            {
                for (int k = 0; k < width; k++)
                    meat[j][k] += rows.Columns[j][i] * rows.Columns[k][i] * score * score;
            }
        }
        double[][] half = Product(fit.Inverse, meat);
        return [.. Product(half, fit.Inverse).Select(line => line.ToImmutableArray())];
    }

    private static double[][] Product(double[][] left, double[][] right) =>
        [.. left.Select(line => right[0].Select((_, k) => line.Select((value, j) => value * right[j][k]).Sum()).ToArray())];
}
