namespace FlipAnalytics.Statistics;

/// <summary>
/// The data do not determine what was asked for: the likelihood has no maximum at finite values, none could be found, or there is
/// nothing to compare. The message says why and what helps.
/// </summary>
public sealed class NoEstimateException : Exception
{
    /// <summary>Whether it is because the ended durations show no spread at all: the covariates reproduce each of them.</summary>
    public bool IsWithoutSpread { get; init; }

    /// <summary>No estimate, no reason given.</summary>
    public NoEstimateException()
        : base("The data do not determine an estimate.")
    {
    }

    /// <summary>No estimate, for this reason.</summary>
    public NoEstimateException(string message)
        : base(message)
    {
    }

    /// <summary>No estimate, for this reason, found by another failure.</summary>
    public NoEstimateException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
