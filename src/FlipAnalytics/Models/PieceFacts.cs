namespace FlipAnalytics;

/// <summary>What a model sees of a piece or a candidate: words and logarithms; null is unknown.</summary>
internal sealed record PieceFacts
{
    public required string Type { get; init; }

    public string? Colour { get; init; }

    public string? Family { get; init; }

    public string? Finish { get; init; }

    public string? Material { get; init; }

    public string? Source { get; init; }

    public string? Channel { get; init; }

    public Condition? Condition { get; init; }

    /// <summary>Log of the number of items; a piece of unknown count is one item.</summary>
    public double LogCount { get; init; }

    /// <summary>Logs of width, depth and height.</summary>
    public required double?[] LogDimensions { get; init; }

    public double? LogHours { get; init; }

    public static PieceFacts Of(Piece piece, SalesLog log, decimal? hours) => new()
    {
        Type = piece.Type,
        Colour = piece.Colour,
        Family = Families(log, piece.Colour),
        Finish = piece.Finish,
        Material = piece.Material,
        Source = piece.Source,
        Channel = piece.Channel,
        Condition = piece.Condition,
        LogCount = Crossing.Log(piece.Count) ?? 0,
        LogDimensions = [Crossing.Log(piece.Width), Crossing.Log(piece.Depth), Crossing.Log(piece.Height)],
        LogHours = Crossing.Log(hours),
    };

    public static PieceFacts Of(Candidate candidate, SalesLog log) => new()
    {
        Type = candidate.Type,
        Colour = candidate.Colour,
        Family = Families(log, candidate.Colour),
        Finish = candidate.Finish,
        Material = candidate.Material,
        Condition = candidate.Condition,
        LogCount = Crossing.Log(candidate.Count) ?? 0,
        LogDimensions =
            [Crossing.Log(candidate.Width), Crossing.Log(candidate.Depth), Crossing.Log(candidate.Height)],
        LogHours = Crossing.Log(candidate.Hours),
    };

    private static string? Families(SalesLog log, string? colour) =>
        colour is null ? null : ColourFamily.Of(colour, log.Colours);
}
