using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Writes the journal of a span: balances before, what was bought and paid for no single piece, the pieces, balances after.</summary>
internal sealed class JournalWriter(QuarterBooks books, ReportPeriod period)
{
    private const string NoItem = "overhead";

    private readonly JournalSheet sheet = new();

    public ImmutableArray<JournalTransaction> Write()
    {
        JournalPieces pieces = new(books, period, sheet);
        BalancesBefore(pieces);
        Bought(CostKind.Supplies, "supplies bought", JournalAccounts.Supplies);
        Bought(CostKind.Tools, "tool bought", JournalAccounts.Tools);
        pieces.Write();
        Overheads();
        Wear();
        BalancesAfter(pieces);
        return sheet.InOrder();
    }

    private void BalancesBefore(JournalPieces pieces)
    {
        var before = QuarterStock.At(books, period.From.AddDays(-1));
        sheet.Add(
            JournalPlace.Opening,
            new[] { (JournalAccounts.Supplies, before.InCans), (JournalAccounts.Tools, before.Tools) }
                .Concat(before.Pieces.Select(piece => (pieces.AccountOf(piece.Id), piece.Cost)))
                .Concat(Held(period.From.AddDays(-1)))
                .Where(balance => balance.Item2 != 0)
                .Select(balance => new JournalSide(
                    period.From, "", "opening balances", null, new(balance.Item1, balance.Item2, null, balance.Item2))),
            JournalAccounts.Opening);
    }

    // What the stock and the cash of the quarter hold, found there from the whole log and not from the postings here.
    private void BalancesAfter(JournalPieces pieces)
    {
        var after = QuarterStock.At(books, period.To);
        sheet.Add(
            JournalPlace.Closing,
            new[]
            {
                (JournalAccounts.Money, QuarterCash.Of(books, period).Change),
                (JournalAccounts.Supplies, after.InCans),
                (JournalAccounts.Tools, after.Tools),
            }
                .Concat(after.Pieces.Where(piece => piece.Cost != 0).Select(piece => (pieces.AccountOf(piece.Id), piece.Cost)))
                .Concat(Held(period.To))
                .Select(balance => new JournalSide(
                    period.To, "", "closing balances", null, new(balance.Item1, 0, null, balance.Item2))),
            JournalAccounts.Opening);
    }

    // What is held for others on an evening; the owner's own is equity and begins anew, as money does.
    private IEnumerable<(string, decimal)> Held(DateOnly day) =>
        from line in books.Costs.Held
        where line.Of != MoneyOf.Owner && line.Date <= day
        group line.Amount by line.Of into held
        where held.Sum() != 0
        select (JournalAccounts.Of(held.Key), -held.Sum());

    private void Bought(CostKind kind, string what, string account) => sheet.Add(
        JournalPlace.Buying,
        books.Costs.Cash.Where(movement => movement.Kind == kind && period.Contains(movement.Date)).Select(movement => new JournalSide(
            movement.Date!.Value, movement, $"{what}, {movement.What}", movement.Origin, new(JournalAccounts.Money, movement.Amount))),
        account);

    // Rent and the like are a cost of the days of their month, and count as paid on its first.
    private void Overheads()
    {
        CostLine[] all = [.. books.Costs.Overheads.Where(line => line.Origin.File == Columns.Overheads.File)];
        Dictionary<string, string> accounts = new(StringComparer.OrdinalIgnoreCase);
        string[] items = [.. all.Select(line => line.What).Distinct(StringComparer.OrdinalIgnoreCase)];
        // A row without an item is "overhead" in the books, which says nothing below an account of that name.
        foreach ((string item, string account) in items.Zip(JournalAccounts.Distinct(
            JournalAccounts.Overhead, items.Select(item => item == NoItem ? "other" : item))))
            accounts.Add(item, account);
        sheet.Add(
            JournalPlace.Running,
            [
                .. all.Select(line => (Line: line, Amount: Arisen(line))).Where(cost => cost.Amount != 0).Select(cost => new JournalSide(
                    cost.Line.Date > period.From ? cost.Line.Date.Value : period.From,
                    Row(cost.Line.Origin, cost.Line.What), Named(cost.Line.What), cost.Line.Origin,
                    new(accounts[cost.Line.What], cost.Amount))),
                .. books.Costs.Cash.Where(movement => movement.Kind == CostKind.Overhead && period.Contains(movement.Date))
                    .Select(movement => new JournalSide(
                        movement.Date!.Value, Row(movement.Origin, movement.What), Named(movement.What), movement.Origin,
                        new(JournalAccounts.Money, movement.Amount))),
            ],
            JournalAccounts.PaidOnAnotherDay);

        static string Named(string what) => what == NoItem ? what : $"overhead, {what}";
    }

    // Wear of a month is written on its last day, as is usual for depreciation.
    private void Wear()
    {
        sheet.Add(
            JournalPlace.Running,
            books.Costs.ToolWear.Select(line => (Line: line, Amount: Arisen(line)))
                .Where(wear => wear.Amount != 0)
                .GroupBy(wear => (Row(wear.Line.Origin, wear.Line.What), EndOfMonth(wear.Line.Date!.Value)))
                .OrderBy(wear => wear.Key.Item2)
                .Select(wear => new JournalSide(
                    wear.Key.Item2, wear.Key.Item1, wear.First().Line.What, wear.First().Line.Origin,
                    new(JournalAccounts.ToolWear, wear.Sum(part => part.Amount)))),
            JournalAccounts.Tools);

        DateOnly EndOfMonth(DateOnly day) => day.LastOfMonth() < period.To ? day.LastOfMonth() : period.To;
    }

    private decimal Arisen(CostLine line) => line.Within(period.From, period.To, books.Currency);

    private static (int?, string) Row(CostOrigin origin, string what) => (origin.Row, what);
}
