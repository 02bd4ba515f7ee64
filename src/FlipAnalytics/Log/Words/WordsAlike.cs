using System.Collections.Immutable;
using System.Globalization;

namespace FlipAnalytics;

/// <summary>A place of the log.</summary>
/// <param name="File">The file.</param>
/// <param name="Row">Its line; null in <c>workshop.toml</c>.</param>
public sealed record WordPlace(string File, int? Row);

/// <summary>A word of the log with its places.</summary>
/// <param name="Word">The word.</param>
/// <param name="Count">How often it is there.</param>
/// <param name="Places">Where; the first <see cref="MostPlaces"/>.</param>
public sealed record CountedWord(string Word, int Count, ImmutableArray<WordPlace> Places)
{
    /// <summary>So many places are listed.</summary>
    public const int MostPlaces = 20;

    internal static CountedWord Of(string word, IReadOnlyCollection<WordPlace> places) =>
        new(word, places.Count, [.. places.Take(MostPlaces)]);
}

/// <summary>Words of a log that are one word, or look like one that was written in several ways.</summary>
/// <param name="Kind">What they are said of.</param>
/// <param name="TakenAsOne">Whether they are read as one word; else each counts by itself.</param>
/// <param name="Words">The words, the most frequent first.</param>
public sealed record WordsAlike(WordKind Kind, bool TakenAsOne, ImmutableArray<CountedWord> Words)
{
    private const int PlacesShown = 3;

    /// <summary>The words with their counts and the lines of the rare ones, in a sentence.</summary>
    public string Sentence
    {
        get
        {
            string kind = Kind == WordKind.SupplyKind ? "kind of supply" : Kind.ToString().ToLowerInvariant();
            string words = string.Join(", ", Words.Select((word, place) => Shown(word, place > 0)));
            if (TakenAsOne)
                return $"Read as one {kind}: {words}.";
            string ways = Words.Length == 2 ? "two ways" : string.Create(CultureInfo.InvariantCulture, $"{Words.Length} ways");
            return $"{char.ToUpperInvariant(kind[0])}{kind[1..]} that looks like one word written {ways}: {words}. "
                + "Each counts by itself until they are written alike.";
        }
    }

    private static string Lines(IGrouping<string, WordPlace> places)
    {
        int[] rows = [.. places.Select(place => place.Row).OfType<int>()];
        string lines = string.Join(", ", rows.Select(row => row.ToString(CultureInfo.InvariantCulture)));
        return rows.Length == 0 ? places.Key : $"{places.Key} line{(rows.Length == 1 ? "" : "s")} {lines}";
    }

    private static string Shown(CountedWord counted, bool withPlaces)
    {
        string word = CleanText.OnOneLine(counted.Word);
        string lines = "";
        if (withPlaces)
        {
            string shown = string.Join(", ", counted.Places.Take(PlacesShown).GroupBy(place => place.File).Select(Lines));
            lines = counted.Count > PlacesShown ? $"; {shown} and so on" : $"; {shown}";
        }

        return string.Create(CultureInfo.InvariantCulture, $"{word} ({counted.Count}{lines})");
    }
}
