namespace FlipAnalytics;

/// <summary>What of an answer is told in full.</summary>
[Flags]
public enum PurchaseDetail
{
    /// <summary>What fits on a screen.</summary>
    Screen = 0,

    /// <summary>Each caution in full, with whom to ask.</summary>
    Cautions = 1,

    /// <summary>Every note and every piece of a list.</summary>
    Everything = 2,
}
