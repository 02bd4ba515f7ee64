namespace FlipAnalytics;

/// <summary>The words of a log, by what they are said of: the one place that knows them.</summary>
public sealed class LogWords
{
    private readonly SalesLog log;
    private readonly Dictionary<WordKind, KnownWords> byKind = [];

    private LogWords(SalesLog log) => this.log = log;

    /// <summary>The words of a log as of its date.</summary>
    /// <param name="log">The log.</param>
    public static LogWords Of(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        return new(log);
    }

    /// <summary>The words of a kind, the most frequent first.</summary>
    /// <param name="kind">What they are said of.</param>
    public KnownWords this[WordKind kind]
    {
        get
        {
            if (!byKind.TryGetValue(kind, out KnownWords? known))
            {
                byKind[kind] = known = new(WordUse.Of(log, kind).CountBy(use => use.Word, StringComparer.OrdinalIgnoreCase)
                    .OrderByDescending(count => count.Value).Select(count => count.Key));
            }

            return known;
        }
    }
}
