namespace FlipAnalytics.Statistics;

/// <summary>What is known about the end of a spell.</summary>
public enum SpellKind
{
    /// <summary>The end was seen at a known time.</summary>
    Ended,

    /// <summary>Still running when last seen: right-censored.</summary>
    Running,

    /// <summary>Ended at an unknown time no later than a known one: left-censored.</summary>
    EndedBefore,

    /// <summary>Ended at an unknown time between two known ones: interval-censored.</summary>
    EndedBetween,
}
