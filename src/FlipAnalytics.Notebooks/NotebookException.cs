namespace FlipAnalytics.Notebooks;

/// <summary>A notebook cannot be run as asked; the message says why and what to do.</summary>
public sealed class NotebookException : Exception
{
    /// <summary>A notebook that cannot be run, for no stated reason.</summary>
    public NotebookException()
        : this("The notebook cannot be run.")
    {
    }

    /// <summary>A notebook that cannot be run.</summary>
    /// <param name="message">Why, and what to do.</param>
    public NotebookException(string message)
        : base(message)
    {
    }

    /// <summary>A notebook that cannot be run, found while doing something else.</summary>
    /// <param name="message">Why, and what to do.</param>
    /// <param name="innerException">What went wrong.</param>
    public NotebookException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
