namespace FlipAnalytics;

/// <summary>What the demo market's truth knows of a piece; the log may record less.</summary>
/// <param name="Type">Name of one of the market's types.</param>
/// <param name="Count">How many items are sold as one, 1 or more.</param>
/// <param name="Width">Width of one item in inches.</param>
/// <param name="Depth">Depth of one item in inches.</param>
/// <param name="Height">Height of one item in inches.</param>
/// <param name="Condition">How sound it was when bought.</param>
/// <param name="Colour">Word of one of the market's colours.</param>
/// <param name="Finish">Name of one of the market's finishes.</param>
internal sealed record DemoFacts(
    string Type,
    int Count,
    double Width,
    double Depth,
    double Height,
    Condition Condition,
    string Colour,
    string Finish);
