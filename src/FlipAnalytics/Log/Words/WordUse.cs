using System.Collections.Frozen;

namespace FlipAnalytics;

/// <summary>What a word of the log is said of.</summary>
public enum WordKind
{
    /// <summary>Kind of furniture.</summary>
    Type,

    /// <summary>Color a piece was given.</summary>
    Color,

    /// <summary>Finish it was given.</summary>
    Finish,

    /// <summary>What it is made of.</summary>
    Material,

    /// <summary>Where it was sold.</summary>
    Channel,

    /// <summary>Where it was found.</summary>
    Source,

    /// <summary>A supply, such as white paint.</summary>
    Supply,

    /// <summary>Kind of supply, such as paint.</summary>
    SupplyKind,

    /// <summary>A tool.</summary>
    Tool,
}

/// <summary>The columns whose words group rows, so that two spellings of one word would part what belongs together.</summary>
internal static class GroupingWords
{
    private static readonly FrozenDictionary<string, WordKind> ByColumn = new Dictionary<string, WordKind>
    {
        ["type"] = WordKind.Type,
        ["color"] = WordKind.Color,
        ["finish"] = WordKind.Finish,
        ["material"] = WordKind.Material,
        ["channel"] = WordKind.Channel,
        ["source"] = WordKind.Source,
        ["kind"] = WordKind.SupplyKind,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>Whether the words of a column are such.</summary>
    public static bool Are(string column) => ByColumn.ContainsKey(column);

    /// <summary>The column of a kind of words; null where they are names.</summary>
    public static string? ColumnOf(WordKind kind) => ByColumn.FirstOrDefault(pair => pair.Value == kind).Key;
}

/// <summary>A word at a place of the log.</summary>
/// <param name="Word">The word, as it was first written.</param>
/// <param name="File">The file.</param>
/// <param name="Row">Its line; null in <c>workshop.toml</c>.</param>
internal readonly record struct WordUse(string Word, string File, int? Row)
{
    /// <summary>Every use of words of a kind, table by table.</summary>
    public static IEnumerable<WordUse> Of(SalesLog log, WordKind kind) => kind switch
    {
        WordKind.Type => [.. Pieces(log, p => p.Type), .. Settings(log.Workshop.Guesses.Keys)],
        WordKind.Color => [.. Pieces(log, p => p.Colour), .. log.Colours.Select(c => new WordUse(c.Word, Columns.Colors.File, c.Row))],
        WordKind.Finish => Pieces(log, p => p.Finish),
        WordKind.Material => Pieces(log, p => p.Material),
        WordKind.Channel =>
        [
            .. Pieces(log, p => p.Channel),
            .. log.Overheads.Where(o => o.Channel is not null).Select(o => new WordUse(o.Channel!, Columns.Overheads.File, o.Row)),
            .. Settings(log.Workshop.Fees.Keys),
        ],
        WordKind.Source => Pieces(log, p => p.Source),
        WordKind.Supply => log.Supplies.Select(s => new WordUse(s.Item, Columns.Supplies.File, s.Row)),
        WordKind.SupplyKind => log.Supplies.Where(s => s.Kind is not null)
            .Select(s => new WordUse(s.Kind!, Columns.Supplies.File, s.Row)),
        _ => log.Tools.Select(t => new WordUse(t.Item, Columns.Tools.File, t.Row)),
    };

    private static IEnumerable<WordUse> Pieces(SalesLog log, Func<Piece, string?> wordOf)
    {
        foreach (Piece piece in log.Pieces)
        {
            if (wordOf(piece) is { } word)
                yield return new(word, Columns.Pieces.File, piece.Row);
        }
    }

    private static IEnumerable<WordUse> Settings(IEnumerable<string> keys) =>
        keys.Order(StringComparer.Ordinal).Select(key => new WordUse(key, Columns.WorkshopFile, null));
}
