namespace FlipAnalytics;

/// <summary>What was made of something stated about a candidate.</summary>
public enum InputTreatment
{
    /// <summary>Taken as stated, though far from what the log shows of such pieces.</summary>
    Unusual,

    /// <summary>Held within what the log can tell.</summary>
    Held,

    /// <summary>Of no effect, since the log cannot tell its effect yet.</summary>
    Ignored,
}

/// <summary>What the owner should know of something they stated.</summary>
/// <param name="Input">Which, such as width.</param>
/// <param name="Treatment">What was made of it.</param>
/// <param name="Text">The same in a sentence, with what to look at.</param>
public sealed record InputNote(string Input, InputTreatment Treatment, string Text);
