namespace FlipAnalytics.Statistics;

/// <summary>There are not more rows than coefficients, so no residual variance can be estimated.</summary>
public sealed class TooFewRowsException : MixedModelException
{
    internal TooFewRowsException(int rows, int coefficients)
        : base($"{rows} rows cannot estimate {coefficients} coefficients and a residual variance; at least "
            + $"{coefficients + 1} rows are needed, or fewer coefficients, or a ResidualVariancePrior.")
    {
        Rows = rows;
        Coefficients = coefficients;
    }

    /// <summary>Rows given.</summary>
    public int Rows { get; }

    /// <summary>Coefficients that are not aliased.</summary>
    public int Coefficients { get; }
}
