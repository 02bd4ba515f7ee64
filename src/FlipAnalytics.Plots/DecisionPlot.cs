using System.Globalization;

namespace FlipAnalytics.Plots;

/// <summary>
/// A purchase decision: what the most to pay consists of, and the chance of earning the target wage by purchase price.
/// </summary>
public static class DecisionPlot
{
    /// <summary>The plot of one answer; a sentence where nothing tells a sale price.</summary>
    /// <param name="decision">The answer.</param>
    /// <param name="workshop">The workshop, for its currency.</param>
    public static Figure Of(PurchaseDecision decision, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(decision);
        ArgumentNullException.ThrowIfNull(workshop);
        string type = TextFitting.OneLine(decision.Candidate.Type);
        if (decision.Ceiling is not { } ceiling)
            return Sheet.Sentence($"The most to pay for a {type}", string.Join(" ", decision.Notes.Take(1)));
        string currency = workshop.Currency.Code;
        var sheet = new Sheet(ceiling > 0
            ? string.Create(CultureInfo.InvariantCulture, $"Most to pay for this {type}: {ceiling:#,0.##} {currency}")
            : string.Create(CultureInfo.InvariantCulture, $"Even as a gift this {type} falls {-ceiling:#,0.##} {currency} short of your wage"));
        string steps = WaterfallPlot.AddTo(
            sheet, [.. decision.Waterfall.Select(step => (step.Item, (double)step.Amount))], $"expected amounts, {currency}");
        sheet.Top += 10;
        return sheet.Finish($"{steps} {ChancePlot.AddTo(sheet, decision, workshop)}");
    }
}
