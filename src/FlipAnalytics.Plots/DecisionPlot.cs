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
        var sheet = new Sheet(decision.Verdict == Verdict.CannotSayYet
            ? TextFitting.OneLine(DoubtText.Headline(decision, workshop).TrimEnd('.'))
            : ceiling > 0 ? $"Most to pay for this {type}: {Money(ceiling)}"
            : $"Even as a gift this {type} falls {Money(-ceiling)} short of your wage");
        string steps = WaterfallPlot.AddTo(
            sheet, ShownSteps.Of(decision, workshop), $"expected amounts, {workshop.Currency.Code}", workshop);
        sheet.Top += 10;
        return sheet.Finish($"{steps} {ChancePlot.AddTo(sheet, decision, workshop)}");

        string Money(decimal amount) => ShownSteps.Money(decision, amount, workshop);
    }
}
