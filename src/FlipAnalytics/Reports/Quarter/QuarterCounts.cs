namespace FlipAnalytics;

/// <summary>How many pieces came, were finished, offered, sold and withdrawn on days of a span.</summary>
/// <param name="Bought">Bought.</param>
/// <param name="Finished">Ready.</param>
/// <param name="Listed">First offered.</param>
/// <param name="Sold">Sold, those that came back later included.</param>
/// <param name="CameBack">Came back from their buyers.</param>
/// <param name="Kept">Kept by the owner.</param>
/// <param name="Given">Given away.</param>
/// <param name="Scrapped">Thrown away.</param>
/// <param name="Broken">Broken beyond repair.</param>
/// <param name="Parts">Taken apart for other pieces.</param>
/// <param name="Stolen">Stolen.</param>
/// <param name="GoneSomehow">Gone without a sale, nobody knows how.</param>
public sealed record QuarterCounts(
    int Bought, int Finished, int Listed, int Sold, int CameBack, int Kept, int Given, int Scrapped, int Broken, int Parts, int Stolen,
    int GoneSomehow)
{
    /// <summary>Gone without a sale.</summary>
    public int Withdrawn => Kept + Given + Scrapped + Broken + Parts + Stolen + GoneSomehow;

    internal static QuarterCounts Of(SalesLog log, ReportPeriod period)
    {
        ILookup<LeftAs?, Piece> gone = log.Pieces.Where(piece => piece.IsGone && period.Contains(piece.LeftOn))
            .ToLookup(piece => piece.LeftAs);
        return new(
            log.Pieces.Count(piece => period.Contains(piece.BoughtOn)),
            log.Pieces.Count(piece => period.Contains(piece.ReadyOn)),
            log.Pieces.Count(piece => period.Contains(piece.ListedOn)),
            log.Pieces.Count(piece => piece.IsSold && period.Contains(piece.SoldOn))
                + log.Returns.Count(back => back.CameBack && period.Contains(back.SoldOn)),
            log.Returns.Count(back => back.CameBack && period.Contains(back.ReturnedOn)),
            gone[LeftAs.Kept].Count(),
            gone[LeftAs.Given].Count(),
            gone[LeftAs.Scrapped].Count(),
            gone[LeftAs.Broken].Count(),
            gone[LeftAs.Parts].Count(),
            gone[LeftAs.Stolen].Count(),
            gone[null].Count());
    }
}
