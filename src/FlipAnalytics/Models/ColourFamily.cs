using System.Collections.Frozen;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// The family of a colour word: a basic colour term of Berlin and Kay, Basic Color Terms (1969): white, black, red,
/// green, yellow, blue, brown, purple, pink, orange, gray; besides these natural wood and two-tone.
/// </summary>
/// <remarks>
/// Where a shade lies between two families (teal, cream, beige, terracotta) the table makes a choice; a row of
/// <c>colors.csv</c> overrides it.
/// </remarks>
public static class ColourFamily
{
    private const string TwoTone = "two-tone";

    private static readonly FrozenDictionary<string, string> Families = Table(
    [
        ("white", "white, off-white, cream, ivory, eggshell, bone, chalk, linen, pearl, alabaster"),
        ("black", "black, ebony, onyx, jet, coal, ink"),
        ("gray", "gray, greige, charcoal, slate, graphite, silver, pewter, stone, dove"),
        ("red", "red, burgundy, maroon, crimson, scarlet, wine, brick, ruby"),
        ("green", "green, sage, olive, mint, emerald, moss, forest, lime, hunter, eucalyptus, pistachio, jade"),
        ("yellow", "yellow, mustard, gold, lemon, ochre, butter"),
        ("blue", "blue, navy, teal, turquoise, aqua, indigo, cobalt, denim, sky, duck egg, midnight, sapphire"),
        ("brown", "brown, beige, tan, taupe, chocolate, espresso, caramel, coffee, khaki, sand, bronze, copper"),
        ("purple", "purple, violet, lavender, lilac, plum, mauve, aubergine, eggplant"),
        ("pink", "pink, blush, rose, fuchsia, magenta, raspberry"),
        ("orange", "orange, terracotta, rust, coral, peach, apricot"),
        ("natural wood", "natural, natural wood, wood, bare, raw, unfinished, clear, walnut, oak, pine, mahogany, "
            + "cherry, maple, teak, birch, beech, cedar, elm, rosewood"),
        (TwoTone, "two-tone, multicolor, multicolour"),
    ]);

    /// <summary>
    /// The family of a colour word, or null where neither a word of it nor its look is known. Case, hyphens, spaces and grey or gray make
    /// no difference. A compound takes the family of its last known part ("dusty blue" is blue, "antique off-white" is
    /// white), except that a two-tone piece stays two-tone whatever its colours. A word that is not known, but has a hex
    /// value in <c>colors.csv</c>, takes its family from its look.
    /// </summary>
    /// <param name="word">The colour as the owner writes it.</param>
    /// <param name="ownersTable">The rows of <c>colors.csv</c>; they win over the table here.</param>
    public static string? Of(string word, IEnumerable<Colour> ownersTable)
    {
        ArgumentNullException.ThrowIfNull(word);
        ArgumentNullException.ThrowIfNull(ownersTable);
        var owners = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (Colour row in ownersTable)
        {
            if (!string.IsNullOrWhiteSpace(row.Family))
                owners.TryAdd(string.Concat(Parts(row.Word)), row.Family.Trim());
        }

        string[] parts = Parts(word);
        if (owners.GetValueOrDefault(string.Concat(parts)) is { } owned)
            return owned;
        if (string.Concat(parts).Contains("twotone", StringComparison.Ordinal))
            return TwoTone;

        // From the last part backwards, the longest run of parts that ends there: "off white" before "white".
        for (int end = parts.Length; end > 0; end--)
        {
            for (int start = 0; start < end; start++)
            {
                string run = string.Concat(parts[start..end]);
                if ((owners.GetValueOrDefault(run) ?? Families.GetValueOrDefault(run)) is { } family)
                    return family;
            }
        }

        return ownersTable.FirstOrDefault(row => row.Hex is not null && string.Concat(Parts(row.Word)) == string.Concat(parts)) is { } seen
            ? ColourLook.FamilyOf(LabColour.FromHex(seen.Hex!))
            : null;
    }

    private static FrozenDictionary<string, string> Table((string Family, string Words)[] rows) => rows
        .SelectMany(row => row.Words.Split(','), (row, word) => KeyValuePair.Create(string.Concat(Parts(word)), row.Family))
        .ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The letters and digits between other signs, in small letters, with grey spelt gray.</summary>
    private static string[] Parts(string word)
    {
        char[] letters = [.. word.ToLowerInvariant().Select(sign => char.IsLetterOrDigit(sign) ? sign : ' ')];
        return new string(letters)
            .Replace("grey", "gray", StringComparison.Ordinal)
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
    }
}
