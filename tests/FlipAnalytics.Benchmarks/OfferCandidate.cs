namespace FlipAnalytics.Benchmarks;

/// <summary>What a buyer sees of a generated offer.</summary>
internal static class OfferCandidate
{
    public static Candidate Of(Piece seen) => new()
    {
        Id = seen.Id,
        Type = seen.Type,
        Count = seen.Count,
        Width = seen.Width,
        Depth = seen.Depth,
        Height = seen.Height,
        Material = seen.Material,
        Condition = seen.Condition,
        Colour = seen.Colour,
        Finish = seen.Finish,
        StickerPrice = seen.StickerPrice,
    };
}
