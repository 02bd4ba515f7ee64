namespace FlipAnalytics;

/// <summary>The moments at which a caution matters.</summary>
[Flags]
public enum CautionTime
{
    /// <summary>At none.</summary>
    None = 0,

    /// <summary>Before the piece is paid for and loaded.</summary>
    Buying = 1,

    /// <summary>While it is refinished.</summary>
    Working = 2,

    /// <summary>When it is offered and sold.</summary>
    Selling = 4,
}

/// <summary>How well a caution is backed by its source.</summary>
public enum SourceStatus
{
    /// <summary>The source was read.</summary>
    Published,

    /// <summary>What careful people in the trade do; no authority was found that says it.</summary>
    CommonPractice,

    /// <summary>The source, or a figure in it, was not read: look it up before relying on it.</summary>
    FromMemory,
}

/// <summary>
/// A usual caution: a prompt to look something up, not advice. The label, the local rule or the named authority wins.
/// </summary>
/// <param name="Topic">What it is about, in a word or two, such as lead or tip-over.</param>
/// <param name="Act">What to do about it, in a few words.</param>
/// <param name="When">When it matters.</param>
/// <param name="Text">One or two plain sentences.</param>
/// <param name="Source">The rule or publication behind it.</param>
/// <param name="Status">How well the source backs it.</param>
/// <param name="Jurisdiction">Where the rule holds: US, UK, EU, or all.</param>
public sealed record Caution(
    string Topic,
    string Act,
    CautionTime When,
    string Text,
    string Source,
    SourceStatus Status,
    string Jurisdiction)
{
    /// <summary>Whether life hangs on it: it is told in full even where others are told by name.</summary>
    public bool IsGrave { get; init; }
}
