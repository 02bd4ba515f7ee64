using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace FlipAnalytics;

/// <summary>What was made of the words of a question, above its answer: it is the answer to what was understood.</summary>
internal static class WordNotesText
{
    private const int Shown = 6;

    /// <summary>The first notes and an empty line; nothing where there is none.</summary>
    public static string Above(ImmutableArray<string> notes)
    {
        if (notes.IsEmpty)
            return "";
        int more = notes.Length - Shown;
        string rest = more > 0 ? string.Create(CultureInfo.InvariantCulture, $" And {more} more: see --json.") : "";
        return new StringBuilder().AppendWrapped("", "", string.Join(' ', notes.Take(Shown)) + rest).Append('\n').ToString();
    }
}
