using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The sentences of one answer, for a page that lays them out in its own way.</summary>
/// <param name="Headline">What to do and the most to pay.</param>
/// <param name="Sentences">What the sticker price pays and how sure the limit is; none where there is no limit.</param>
/// <param name="StepDetails">A few words on each step of the waterfall, such as the range of the sale price; may be empty.</param>
/// <param name="Basis">The sales the answer rests on; null where there is no limit.</param>
/// <param name="Leverage">What would change the answer most; null where nothing is open.</param>
public sealed record PurchaseSentences(
    string Headline,
    ImmutableArray<string> Sentences,
    ImmutableArray<string> StepDetails,
    string? Basis,
    string? Leverage)
{
    /// <summary>The sentences of an answer.</summary>
    /// <param name="report">The report.</param>
    /// <param name="decision">One of its answers.</param>
    public static PurchaseSentences Of(PurchaseReport report, PurchaseDecision decision)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(decision);
        var page = new PurchasePage(report, decision);
        return decision.Ceiling is null
            ? new(page.Headline(), [], [], null, null)
            : new(
                page.Headline(), [.. page.Sentences()], [.. decision.Waterfall.Select(step => page.Detail(step.Item))],
                page.Basis(), page.Leverage());
    }
}
