using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>Covariances of the coefficients that stay valid when some rows scatter more than others:
/// (XᵀWX)⁻¹ Xᵀ diag(w² a²) X (XᵀWX)⁻¹. MacKinnon and White (1985), J. Econometrics 29, 305–325. With √W X = QR it is C Cᵀ
/// with C = R⁻¹ Qᵀ diag(√w a), which loses as many digits as the condition number has; products of (XᵀWX)⁻¹ lose twice as
/// many.</summary>
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
        return Sandwich(fit, Factored(fit), [.. fit.Rows.Residuals.Select(e => e * factor)]);
    }

    /// <summary>HC3: a = e/(1 − h), the choice for small samples; Long and Ervin (2000), Am. Stat. 54, 217–224.</summary>
    /// <exception cref="InvalidOperationException">The fit was made from totals.</exception>
    /// <exception cref="ArgumentException">A row alone determines a coefficient, so that e/(1 − h) is 0/0.</exception>
    public static ImmutableArray<ImmutableArray<double>> Hc3(LinearFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        HouseholderQr qr = Factored(fit);
        double[][] q = qr.ThinQ();
        // h is the squared length of a row of Q.
        double[] leverage = [.. Enumerable.Range(0, fit.RowCount).Select(i => q.Sum(column => column[i] * column[i]))];
        int alone = Array.FindIndex(leverage, h => 1 - h < FullLeverage);
        if (alone >= 0)
            throw new ArgumentException(
                $"Row {alone} (counting from 0) alone determines a coefficient, so HC3 is not defined. Use HC1, or leave the row and its column out.",
                nameof(fit));
        return Sandwich(fit, qr, [.. fit.Rows.Residuals.Select((e, i) => e / (1 - leverage[i]))]);
    }

    private static HouseholderQr Factored(LinearFit fit)
    {
        FittedRows rows = fit.Rows;
        double[] rootWeights = [.. rows.Weights.Select(Math.Sqrt)];
        // No column is set aside a second time, however near the tolerance it came.
        return new HouseholderQr([.. rows.Columns.Select(column => LeastSquares.Scaled(column, rootWeights))], 0);
    }

    private static ImmutableArray<ImmutableArray<double>> Sandwich(LinearFit fit, HouseholderQr qr, double[] scores)
    {
        double[][] q = qr.ThinQ();
        int width = q.Length;
        double[][] covariance = [.. Enumerable.Range(0, width).Select(_ => new double[width])];
        double[] column = new double[width];
        for (int i = 0; i < scores.Length; i++)
        {
            double score = Math.Sqrt(fit.Rows.Weight(i)) * scores[i];
            for (int j = 0; j < width; j++)
                column[j] = score * q[j][i];
            TriangularSolve.Back(qr.Upper, column);
            for (int j = 0; j < width; j++)
            {
                for (int k = 0; k < width; k++)
                    covariance[j][k] += column[j] * column[k];
            }
        }
        return [.. covariance.Select(line => line.ToImmutableArray())];
    }
}
