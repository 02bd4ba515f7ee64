namespace FlipAnalytics;

/// <summary>What the cautions need to know of a piece in the store.</summary>
internal static class CautionQueries
{
    public static CautionQuery Of(Candidate candidate, LengthUnit unit) => new()
    {
        Type = candidate.Type,
        Material = candidate.Material,
        Condition = candidate.Condition,
        Colour = candidate.Colour,
        Finish = candidate.Finish,
        Width = candidate.Width,
        Depth = candidate.Depth,
        Height = candidate.Height,
        LengthUnit = unit,
    };
}
