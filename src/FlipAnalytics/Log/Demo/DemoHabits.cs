namespace FlipAnalytics;

/// <summary>How the owner of a demo log buys, asks, gives up and forgets to write things down. Shares are 0 to 1.</summary>
internal sealed record DemoHabits
{
    /// <summary>
    /// Mean of log(asking price / median sale price) when listing. The asking price is then kept between 1.04 and 1.35
    /// times what this piece will bring, as an owner who looks at the finished piece would.
    /// </summary>
    public double AskingMean { get; init; } = 0.12;

    /// <summary>Standard deviation of the same.</summary>
    public double AskingSpread { get; init; } = 0.08;

    /// <summary>
    /// Share taken off at a cut, every three or four weeks while unsold and above 1.04 times what the piece will bring.
    /// </summary>
    public double Cut { get; init; } = 0.1;

    /// <summary>Median of sticker price over median sale price.</summary>
    public double StickerMedian { get; init; } = 0.18;

    /// <summary>Standard deviation of the log of the same: bargains and poor deals alike are bought.</summary>
    public double StickerSpread { get; init; } = 0.5;

    /// <summary>Share of pieces bought at the sticker price; for the others up to 20 % is haggled off.</summary>
    public double PaysSticker { get; init; } = 0.35;

    /// <summary>Share of pieces that break, are kept or go for parts before they are ready.</summary>
    public double LeavesWorkshop { get; init; } = 0.025;

    /// <summary>Fewest days on sale after which an unsold piece is taken home; up to twice as many.</summary>
    public int Patience { get; init; } = 75;

    /// <summary>Share of pieces with no colour written down.</summary>
    public double ColourUnrecorded { get; init; } = 0.12;

    /// <summary>Share of pieces with no size written down, or in 4 of 10 such cases only the width.</summary>
    public double SizeUnrecorded { get; init; } = 0.15;

    /// <summary>Share of pieces with no hours written down.</summary>
    public double HoursUnrecorded { get; init; } = 0.2;

    /// <summary>Share of pieces with dated hours by task; a third of these have the total too.</summary>
    public double HoursByTask { get; init; } = 0.33;

    /// <summary>Share of pieces with no supplies written down.</summary>
    public double SuppliesUnrecorded { get; init; } = 0.15;

    /// <summary>Share of pieces whose paint, primer and topcoat are in the uses instead of one amount.</summary>
    public double SuppliesByUse { get; init; } = 0.3;

    /// <summary>Share of sales with no fees written down.</summary>
    public double FeesUnrecorded { get; init; } = 0.12;

    /// <summary>Share of pieces with no finish, and share with no condition, written down.</summary>
    public double FinishUnrecorded { get; init; } = 0.04;
}
