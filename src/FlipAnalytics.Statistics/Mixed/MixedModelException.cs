namespace FlipAnalytics.Statistics;

/// <summary>A mixed model cannot be fitted to these rows.</summary>
public abstract class MixedModelException : Exception
{
    private protected MixedModelException(string message)
        : base(message)
    {
    }
}
