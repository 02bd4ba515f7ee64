using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>What was left out of which number, and words that may mean the same.</summary>
internal static class GroupNotes
{
    public static IEnumerable<string> Of(SalesLog log, GroupedBy by, IReadOnlyCollection<LevelRecord> levels)
    {
        var offered = log.Pieces.Where(p => p.State is PieceState.Sold or PieceState.OnSale).ToArray();
        int without = offered.Count(p => by.LevelOf(p) == GroupWords.NotWrittenDown);
        if (without > 0)
        {
            yield return Invariant($"The {by.Singular()} of {Pieces(without)} sold or on sale is not written down: a row of their own above, ")
                + $"but not compared with any {by.Singular()}.";
        }

        if (by == GroupedBy.Channel)
            yield return "A channel is usually written down only once a piece is sold, so days by channel tell of sold pieces alone.";
        int noDates = offered.Count(p => p.ListedOn is null || (p.IsSold && (p.SoldOn is null || p.SoldOn < p.ListedOn)));
        if (noDates > 0)
            yield return Invariant($"{Pieces(noDates)} without usable dates of listing and sale: in no number of days.");
        int noPrice = offered.Count(p => p.IsSold && p.SoldPrice is not > 0);
        if (noPrice > 0)
            yield return Invariant($"{Pieces(noPrice)} sold without a price above zero: not in what they bring.");
        int leftOut = levels.Sum(l => l.Money.LeftOut);
        if (leftOut > 0)
        {
            yield return Invariant($"Money a week leaves out {Pieces(leftOut)} whose purchase price, fees, supplies, hours or dates are not all written down.");
        }

        foreach (string sentence in SimilarWords.In(log))
            yield return sentence;
    }

    private static string Pieces(int count) => TextLines.Counted(count, "piece");
}
