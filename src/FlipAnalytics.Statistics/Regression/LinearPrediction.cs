using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>What a fit expects of a new row.</summary>
/// <param name="Fit">xᵀb.</param>
/// <param name="StandardError">Of the expected value: √(xᵀ Cov x).</param>
/// <param name="Confidence">Where the expected value lies, at the level asked for.</param>
/// <param name="Range">Where one new value of weight 1 lies: the half-width is t √(σ² + standard error²).</param>
public sealed record LinearPrediction(double Fit, double StandardError, Limits Confidence, Limits Range)
{
    /// <summary>Predicts one row.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="row">A value for each of the fit's <see cref="LinearFit.DesignColumns"/>, in their order; values of
    /// dropped columns are ignored.</param>
    /// <param name="level">Between 0 and 1.</param>
    /// <exception cref="ArgumentException">The row has another number of values than the design has columns, or a value that
    /// is not finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static LinearPrediction Of(LinearFit fit, ReadOnlySpan<double> row, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(fit);
        Limits.RefuseLevel(level);
        return At(fit, row, Tails.StudentForLevel(level, fit.ResidualDegreesOfFreedom));
    }

    /// <summary>Predicts several rows, given by columns that are found by their names.</summary>
    /// <exception cref="ArgumentException">A column of the fit is missing or shorter than the others, or a value is not
    /// finite.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static ImmutableArray<LinearPrediction> Of(
        LinearFit fit, IReadOnlyList<Regressor> columns, double level = 0.95)
    {
        ArgumentNullException.ThrowIfNull(fit);
        Limits.RefuseLevel(level);
        ReadOnlyMemory<double>[] ordered =
        [
            .. fit.DesignColumns.Select(name => columns.FirstOrDefault(column => column.Name == name)?.Values
                ?? throw new ArgumentException(
                    $"The new rows have no column '{name}'; they have {string.Join(", ", columns.Select(c => $"'{c.Name}'"))}.",
                    nameof(columns))),
        ];
        foreach (var (j, column) in ordered.Index())
            LeastSquaresChecks.RefuseLength($"Column '{fit.DesignColumns[j]}'", column.Length, ordered[0].Length);
        double t = Tails.StudentForLevel(level, fit.ResidualDegreesOfFreedom);
        return
        [
            .. Enumerable.Range(0, ordered[0].Length)
                .Select(i => At(fit, [.. ordered.Select(column => column.Span[i])], t)),
        ];
    }

    private static LinearPrediction At(LinearFit fit, ReadOnlySpan<double> row, double studentQuantile)
    {
        if (row.Length != fit.DesignColumns.Length)
            throw new ArgumentException(
                $"The row has {row.Length} values where the design has {fit.DesignColumns.Length} columns: {string.Join(", ", fit.DesignColumns)}.",
                nameof(row));
        double mean = 0, variance = 0;
        for (int j = 0; j < fit.Coefficients.Length; j++)
        {
            double x = row[fit.KeptColumns[j]];
            if (!double.IsFinite(x))
                throw new ArgumentException(
                    $"'{fit.Coefficients[j].Name}' is {x} in a row to predict; give a finite value.", nameof(row));
            mean += x * fit.Coefficients[j].Estimate;
            for (int k = 0; k < fit.Coefficients.Length; k++)
                variance += x * fit.Covariance[j][k] * row[fit.KeptColumns[k]];
        }
        double error = Math.Sqrt(Math.Max(0, variance));
        double confidence = studentQuantile * error;
        double range = studentQuantile * Math.Sqrt(fit.Sigma * fit.Sigma + error * error);
        return new(mean, error, new(mean - confidence, mean + confidence), new(mean - range, mean + range));
    }
}
