using System.Globalization;

namespace FlipAnalytics.Plots;

/// <summary>A purchase decision as a waterfall from the sale price to the most to pay.</summary>
public static class DecisionPlot
{
    /// <summary>The plot of one answer.</summary>
    /// <param name="decision">The answer; it must have a limit.</param>
    /// <param name="workshop">The workshop, for its currency.</param>
    /// <exception cref="ArgumentException">The answer has no limit to draw.</exception>
    public static Figure Of(PurchaseDecision decision, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(decision);
        ArgumentNullException.ThrowIfNull(workshop);
        if (decision.Ceiling is not { } ceiling)
            throw new ArgumentException($"Nothing tells what a {decision.Candidate.Type} brings, so there is no limit to draw.");
        string title = string.Create(CultureInfo.InvariantCulture,
            $"Most to pay for this {decision.Candidate.Type}: {ceiling:0.##} {workshop.Currency.Code}");
        return WaterfallPlot.Of(
            title, [.. decision.Waterfall.Select(step => (step.Item, (double)step.Amount))], workshop.Currency.Code);
    }
}
