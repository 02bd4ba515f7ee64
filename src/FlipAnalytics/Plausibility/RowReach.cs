namespace FlipAnalytics;

/// <summary>
/// How far an answer about money can move where a row is left out, without working it out again: what the books carry on the
/// row and on its piece is all that comes and goes with it, and what passes to other pieces is a part of that.
/// </summary>
internal static class RowReach
{
    // What the row took from cans leaves others to those after it, at other prices, and its shares pass to others: a few times its
    // own money is beyond all that. Held by a test over generated logs.
    private const int Times = 4;

    /// <summary>The most that a profit can move, as a share of it.</summary>
    /// <param name="log">The log.</param>
    /// <param name="book">Its books.</param>
    /// <param name="finding">The row.</param>
    /// <param name="profit">The profit.</param>
    public static double OfProfit(SalesLog log, CostBook book, LogFinding finding, decimal profit)
    {
        // No asking price is in the books; what a count found missing is in no row of its own.
        if (finding.File == Columns.Asking.File)
            return 0;
        return profit == 0 || finding.File == Columns.Counts.File ? double.PositiveInfinity
            : Times * Crossing.Number(MoneyOn(log, book, finding) / Math.Abs(profit));
    }

    /// <summary>The most that a profit over hours can move, as a share of it.</summary>
    /// <param name="log">The log.</param>
    /// <param name="book">Its books.</param>
    /// <param name="ledger">Its hours.</param>
    /// <param name="finding">The row.</param>
    /// <param name="profit">The profit.</param>
    /// <param name="hours">The hours; above 0.</param>
    public static double OfWage(SalesLog log, CostBook book, HoursLedger ledger, LogFinding finding, decimal profit, decimal hours) =>
        OfProfit(log, book, finding, profit) + Times * Crossing.Number(HoursOn(log, ledger, finding) / hours);

    private static decimal MoneyOn(SalesLog log, CostBook book, LogFinding finding)
    {
        // A can may be the only one that says how far the item goes.
        if (finding.File == Columns.Supplies.File)
        {
            string? item = log.Supplies.FirstOrDefault(purchase => purchase.Row == finding.Row)?.Item;
            return log.Supplies.Where(purchase => string.Equals(purchase.Item, item, StringComparison.OrdinalIgnoreCase))
                .Sum(purchase => purchase.Price ?? 0);
        }

        if (finding.PlaceIn(log) is { } place)
        {
            PieceCost cost = book.Pieces[place];
            decimal ofLot = cost.Piece.Lot is null ? 0 : cost.Piece.BoughtPrice ?? 0;
            return cost.Lines.Sum(line => Math.Abs(line.Amount)) + (cost.Piece.SoldPrice ?? 0) + (cost.Piece.DeliveryCharged ?? 0) + ofLot
                + cost.Returns.Sum(back => back.Row.Refund + (back.Row.SoldPrice ?? 0) + (back.Row.DeliveryCharged ?? 0));
        }

        return book.Cash.Where(movement => IsOf(movement.Origin)).Sum(movement => Math.Abs(movement.Amount))
            + book.SuppliesOnNoPiece.Where(line => IsOf(line.Origin)).Sum(line => Math.Abs(line.Amount));

        bool IsOf(CostOrigin origin) => origin.Row == finding.Row && origin.File == finding.File;
    }

    private static decimal HoursOn(SalesLog log, HoursLedger ledger, LogFinding finding)
    {
        decimal own = log.Hours.Where(entry => finding.File == Columns.Hours.File && entry.Row == finding.Row).Sum(entry => entry.Hours)
            + log.Trips.Where(trip => finding.File == Columns.Trips.File && trip.Row == finding.Row).Sum(trip => trip.Hours ?? 0);
        return finding.PlaceIn(log) is not { } place ? own
            : own + (ledger.Pieces[place].Bench ?? 0) + ledger.Pieces[place].Outside;
    }
}
