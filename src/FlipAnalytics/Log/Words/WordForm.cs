using System.Collections.Immutable;
using System.Text;

namespace FlipAnalytics;

/// <summary>
/// A word apart from what people write either way: case, spaces, hyphens and other signs, singular or plural, British or
/// American spelling. Side chairs, side-chair and SIDECHAIR have one form; gray and grey too.
/// </summary>
internal static class WordForm
{
    // British and American, as dictionaries give them; stems, so that coloured and multicolour are found too.
    private static readonly ImmutableArray<(string British, string American)> Spellings =
    [
        ("grey", "gray"), ("colour", "color"), ("parlour", "parlor"), ("armour", "armor"), ("harbour", "harbor"),
        ("labour", "labor"), ("centre", "center"), ("fibre", "fiber"), ("metre", "meter"), ("theatre", "theater"),
        ("ochre", "ocher"), ("kerb", "curb"), ("mould", "mold"), ("aluminium", "aluminum"), ("jewell", "jewel"),
        ("jewelery", "jewelry"), ("panell", "panel"), ("enamell", "enamel"), ("bevell", "bevel"),
        ("organis", "organiz"), ("galvanis", "galvaniz"), ("oxidis", "oxidiz"), ("catalogue", "catalog"),
        ("chequer", "checker"), ("matte", "matt"), ("cosy", "cozy"), ("licence", "license"), ("storey", "story"),
        ("sulphur", "sulfur"), ("waggon", "wagon"),
    ];

    private const string Ignored = "-_.'’";

    /// <summary>The form of a word; two words with one form differ in nothing that counts.</summary>
    public static string Of(string word) => Joined(Parts(word));

    /// <summary>
    /// The form by which words of the log are read as one, its signs other than spaces, hyphens, points and apostrophes
    /// included; null where the word has neither letter nor digit.
    /// </summary>
    public static string? ToMerge(string word) => Of(word) is { Length: > 0 } form
        ? form + string.Concat(word.Where(sign => !char.IsLetterOrDigit(sign) && !char.IsWhiteSpace(sign) && !Ignored.Contains(sign)))
        : null;

    // Two numbers side by side stay two: size 1.5 is not size 15.
    private static string Joined(string[] parts)
    {
        var form = new StringBuilder();
        foreach (string part in parts)
        {
            if (form.Length > 0 && char.IsDigit(form[^1]) && char.IsDigit(part[0]))
                form.Append(' ');
            form.Append(part);
        }

        return form.ToString();
    }

    /// <summary>The forms of its parts, between spaces, hyphens and other signs.</summary>
    public static string[] Parts(string word)
    {
        var letters = new StringBuilder(word.Length);
        foreach (char sign in word.ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(sign))
                letters.Append(sign);
            else if (sign == '&')
                letters.Append(" and ");
            else if (sign is not ('\'' or '’'))
                letters.Append(' ');
        }

        return [.. letters.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(American).Select(Singular)];
    }

    private static string American(string word)
    {
        foreach ((string british, string american) in Spellings)
            word = word.Replace(british, american, StringComparison.Ordinal);
        return word;
    }

    // What English plurals of furniture end in; words that end in -ss, -us or -is are no plurals.
    private static string Singular(string word) => word switch
    {
        { Length: <= 3 } => word,
        [.. var stem, 'i', 'e', 's'] => stem + "y",
        [.. var stem, 'l', 'v', 'e', 's'] => stem + "lf",
        [.. var stem, 'e', 'a', 'v', 'e', 's'] => stem + "eaf",
        [.. var stem, 'e', 'a', 'u', 'x'] => stem + "eau",
        [.. var stem, 'e', 's'] when EndsInHiss(stem) => stem,
        [.., 's' or 'u' or 'i', 's'] => word,
        [.. var stem, 's'] => stem,
        _ => word,
    };

    private static bool EndsInHiss(string stem) =>
        stem.EndsWith("ss", StringComparison.Ordinal) || stem.EndsWith("sh", StringComparison.Ordinal)
        || stem.EndsWith("ch", StringComparison.Ordinal) || stem[^1] is 'x' or 'z';
}
