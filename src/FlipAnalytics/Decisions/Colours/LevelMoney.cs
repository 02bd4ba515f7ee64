namespace FlipAnalytics;

/// <summary>Money for each week on sale, by level.</summary>
internal sealed class LevelMoney
{
    private readonly SalesLog log;
    private readonly ILookup<string, PieceCost> offered;
    private readonly decimal wage;

    public LevelMoney(SalesLog log, GroupedBy by, decimal wage)
    {
        this.log = log;
        this.wage = wage;
        // What pieces carry of tools and overheads is no part of it.
        offered = new CostBookWriter(log, new(log), sharesUpkeep: false, itemizes: false).Write().Pieces
            .Where(c => c.Piece.State != PieceState.InTheWorkshop).ToLookup(c => by.LevelOf(c.Piece));
    }

    /// <summary>Money of a level's sold pieces over the weeks of all of its pieces that are or were on sale.</summary>
    public MoneyPerWeek Of(string level)
    {
        decimal money = 0, weeks = 0;
        int sold = 0, unsold = 0, leftOut = 0;
        foreach (PieceCost cost in offered[level])
        {
            if (Weeks(cost.Piece) is not { } own || (cost.Piece.IsSold && Money(cost) is null))
            {
                // What left from the workshop was never on sale.
                leftOut += cost.Piece.State == PieceState.Gone && cost.Piece.ListedOn is null ? 0 : 1;
                continue;
            }

            weeks += own;
            money += Money(cost) ?? 0;
            sold += cost.Piece.IsSold ? 1 : 0;
            unsold += cost.Piece.IsSold ? 0 : 1;
        }

        return new(
            sold > 0 ? log.Workshop.Currency.Round(money / weeks) : null,
            log.Workshop.Currency.Round(money), decimal.Round(weeks, 2, MidpointRounding.AwayFromZero), sold, unsold, leftOut);
    }

    private decimal? Money(PieceCost cost) => cost.Piece.IsSold
        ? cost.NetProceeds - cost.Known(CostKind.Purchase) - cost.Known(CostKind.Supplies) - wage * cost.Hours
        : null;

    private decimal? Weeks(Piece piece)
    {
        DateOnly? end = piece.LastDayOnMarket(log.Date);
        return piece.ListedOn is { } listed && end >= listed
            ? Crossing.Unrounded(Crossing.DaysOnMarket(listed, end.Value)) / 7
            : null;
    }
}
