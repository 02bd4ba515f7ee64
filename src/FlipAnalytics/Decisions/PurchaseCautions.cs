using System.Collections.Immutable;
using System.Text;

namespace FlipAnalytics;

/// <summary>How a piece gets home and the usual cautions that fit it: by name with what to do, the grave ones in full.</summary>
internal static class PurchaseCautions
{
    private const string Title = "Before you lift it (usual cautions, no advice; the label, local rules and licensed people decide):";

    public static string Lines(PurchaseDecision decision, PurchaseDetail detail)
    {
        if (decision.Cautions.IsEmpty && decision.Load.IsEmpty)
            return "";
        var text = new StringBuilder($"\n  {Title}\n");
        foreach (string sentence in decision.Load)
            text.AppendWrapped("  - ", "    ", sentence);
        if (detail.HasFlag(PurchaseDetail.Cautions))
        {
            foreach (Caution caution in decision.Cautions)
                text.AppendWrapped("  - ", "    ", $"{caution.Topic}: {caution.Text} ({caution.Source})");
            return text.ToString();
        }

        foreach (Caution caution in decision.Cautions.Where(caution => caution.IsGrave))
            text.AppendWrapped("  - ", "    ", $"{caution.Topic}: {caution.Text}");
        ImmutableArray<Caution> named = [.. decision.Cautions.Where(caution => !caution.IsGrave)];
        foreach (var topic in named.GroupBy(caution => caution.Topic))
            text.AppendWrapped("  - ", "    ", $"{topic.Key}: {topic.First().Act}");
        if (!named.IsEmpty)
            text.AppendWrapped("  ", "  ", "In full, with whom to ask: --cautions.");
        return text.ToString();
    }
}
