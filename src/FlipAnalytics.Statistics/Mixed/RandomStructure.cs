namespace FlipAnalytics.Statistics;

/// <summary>How the levels of a random term vary together.</summary>
public enum RandomStructure
{
    /// <summary>Levels are independent draws from N(0, σ²γ).</summary>
    Exchangeable,

    /// <summary>
    /// Levels are points in time of one walk that starts at 0: W(t₀) = 0, and increments over disjoint stretches
    /// are independent N(0, σ²γ · length).
    /// </summary>
    RandomWalk,
}
