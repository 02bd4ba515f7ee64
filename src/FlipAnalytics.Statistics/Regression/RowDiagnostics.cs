using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>What a fit says of each of its rows, a value a row. With weights, residuals are y − ŷ and the scaled ones use
/// √w (y − ŷ), as R's methods for <c>lm</c> do. A row that its own coefficient fits exactly (leverage 1) has NaN where the
/// quantity is 0/0.</summary>
/// <param name="Fitted">ŷ.</param>
/// <param name="Residuals">e = y − ŷ.</param>
/// <param name="Leverage">h, the diagonal of the hat matrix; 0 to 1, sums to the number of coefficients.</param>
/// <param name="StandardizedResiduals">√w e / (σ √(1 − h)).</param>
/// <param name="StudentizedResiduals">The same with σ estimated without the row; Student's t with one degree of freedom
/// less.</param>
/// <param name="CooksDistance">Cook (1977), Technometrics 19, 15–18.</param>
/// <param name="LeaveOneOutResiduals">e / (1 − h): the row less its prediction by a fit without it.</param>
public sealed record RowDiagnostics(
    ImmutableArray<double> Fitted,
    ImmutableArray<double> Residuals,
    ImmutableArray<double> Leverage,
    ImmutableArray<double> StandardizedResiduals,
    ImmutableArray<double> StudentizedResiduals,
    ImmutableArray<double> CooksDistance,
    ImmutableArray<double> LeaveOneOutResiduals)
{
    /// <summary>Σ of the squared leave-one-out residuals.</summary>
    public double Press => LeaveOneOutResiduals.Sum(residual => residual * residual);

    internal static RowDiagnostics Of(LinearFit fit)
    {
        FittedRows rows = fit.Rows;
        int n = fit.RowCount, width = fit.Coefficients.Length;
        double[] leverage = LeverageOf(fit);
        double[] weighted = [.. rows.Residuals.Select((e, i) => e * Math.Sqrt(rows.Weight(i)))];
        double[] standardized = new double[n], studentized = new double[n], cook = new double[n], leaveOneOut = new double[n];
        for (int i = 0; i < n; i++)
        {
            double rest = 1 - leverage[i];
            double sigmaWithout = Math.Sqrt(
                (fit.ResidualSumOfSquares - weighted[i] * weighted[i] / rest) / (fit.ResidualDegreesOfFreedom - 1));
            standardized[i] = weighted[i] / (fit.Sigma * Math.Sqrt(rest));
            studentized[i] = weighted[i] / (sigmaWithout * Math.Sqrt(rest));
            cook[i] = standardized[i] * standardized[i] * leverage[i] / (rest * width);
            leaveOneOut[i] = rows.Residuals[i] / rest;
        }
        return new(
            [.. rows.Response.Select((y, i) => y - rows.Residuals[i])], [.. rows.Residuals], [.. leverage],
            [.. standardized], [.. studentized], [.. cook], [.. leaveOneOut]);
    }

    /// <summary>hᵢ = wᵢ ‖R⁻ᵀxᵢ‖².</summary>
    internal static double[] LeverageOf(LinearFit fit)
    {
        FittedRows rows = fit.Rows;
        double[] leverage = new double[fit.RowCount], x = new double[fit.Coefficients.Length];
        for (int i = 0; i < leverage.Length; i++)
        {
            for (int j = 0; j < x.Length; j++)
                x[j] = rows.Columns[j][i];
            TriangularSolve.Forward(fit.Upper, x);
            double sum = 0;
            foreach (double value in x)
                sum += value * value;
            leverage[i] = Math.Min(1, rows.Weight(i) * sum);
        }
        return leverage;
    }
}
