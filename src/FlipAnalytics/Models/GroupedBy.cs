namespace FlipAnalytics;

/// <summary>By which word of theirs pieces are compared.</summary>
public enum GroupedBy
{
    /// <summary>The color a piece was given.</summary>
    Color,

    /// <summary>Kind of furniture.</summary>
    Type,

    /// <summary>Kind of finish.</summary>
    Finish,

    /// <summary>Where it was found.</summary>
    Source,

    /// <summary>Where it was sold.</summary>
    Channel,
}

/// <summary>What belongs to each way of grouping.</summary>
internal static class GroupWords
{
    /// <summary>The level of pieces whose word is not in the log.</summary>
    public const string NotWrittenDown = "not written down";

    public static string Singular(this GroupedBy by) => by.ToString().ToLowerInvariant();

    public static string Plural(this GroupedBy by) => by == GroupedBy.Finish ? "finishes" : by.Singular() + "s";

    /// <summary>A piece's word; null where it is not written down.</summary>
    public static string? WordOf(this GroupedBy by, Piece piece) => by switch
    {
        GroupedBy.Color => piece.Colour,
        GroupedBy.Type => piece.Type,
        GroupedBy.Finish => piece.Finish,
        GroupedBy.Source => piece.Source,
        _ => piece.Channel,
    };

    public static string LevelOf(this GroupedBy by, Piece piece) => by.WordOf(piece) ?? NotWrittenDown;

    /// <summary>The level as the models name it.</summary>
    public static string LevelOf(this GroupedBy by, PieceFacts facts) => by switch
    {
        GroupedBy.Color => facts.Colour,
        GroupedBy.Type => facts.Type,
        GroupedBy.Finish => facts.Finish,
        GroupedBy.Source => facts.Source,
        _ => facts.Channel,
    } ?? TermNames.NotRecorded;
}
