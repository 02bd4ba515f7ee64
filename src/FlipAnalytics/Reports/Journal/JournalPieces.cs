namespace FlipAnalytics;

/// <summary>The transactions of pieces: bought, brought home, worked on, sold or gone.</summary>
internal sealed class JournalPieces
{
    private readonly QuarterBooks books;
    private readonly ReportPeriod period;
    private readonly JournalSheet sheet;
    private readonly Dictionary<string, string> accounts = new(StringComparer.OrdinalIgnoreCase);
    private readonly StockLine[] arisen;

    public JournalPieces(QuarterBooks books, ReportPeriod period, JournalSheet sheet)
    {
        this.books = books;
        this.period = period;
        this.sheet = sheet;
        string[] ids = [.. books.Costs.Pieces.Select(cost => cost.Piece.Id).Distinct(StringComparer.OrdinalIgnoreCase)];
        foreach ((string id, string account) in ids.Zip(JournalAccounts.Distinct(JournalAccounts.Pieces, ids)))
            accounts.Add(id, account);
        arisen = [.. books.Lines.Where(line => !line.IsBack && period.Contains(line.Arose))];
    }

    /// <summary>The account of a piece.</summary>
    public string AccountOf(string id) => accounts[id];

    public void Write()
    {
        Bought();
        Outings();
        Moved();
        sheet.Add(JournalPlace.Supplies, Used(isStated: false), JournalAccounts.Supplies);
        sheet.Add(JournalPlace.Supplies, Used(isStated: true), JournalAccounts.StatedSupplies);
        Lost();
        Sold();
        OfNoPiece();
        CameBack();
        Left();
    }

    private void Bought() => sheet.Add(
        JournalPlace.Buying,
        [
            .. arisen.Where(line => line.Line.Kind == CostKind.Purchase && !IsMoved(line)).Select(line => new JournalSide(
                line.Arose, line.Cost.Piece.Id, $"bought {Name(line.Cost.Piece)}", line.Line.Origin, InStock(line))),
            .. Paid(CostKind.Purchase).Select(movement => new JournalSide(
                movement.Date!.Value, movement.PieceId!, $"bought {Name(movement)}", movement.Origin,
                new(JournalAccounts.Money, movement.Amount))),
        ],
        JournalAccounts.PaidOnAnotherDay);

    // A part goes from one piece to another at cost; where one of them had left before, its cost had left with it.
    private void Moved() => sheet.Add(
        JournalPlace.Supplies,
        arisen.Where(IsMoved).Select(line => new JournalSide(
            line.Arose, line.Line.Origin, line.Line.What, line.Line.Origin, InStock(line))),
        JournalAccounts.PaidOnAnotherDay);

    private static bool IsMoved(StockLine line) => line.Line.Origin.File == Columns.Moves.File;

    // An outing is driving, reckoned, and what else was paid; the pieces it brought home bear it, else it is overhead.
    private void Outings()
    {
        Dictionary<int, Trip> trips = [];
        foreach (Trip trip in books.Log.Trips.Where(trip => trip.Row > 0))
            trips.TryAdd(trip.Row, trip);
        sheet.Add(
            JournalPlace.Outings,
            [
                .. arisen.Where(line => line.Line.Kind == CostKind.Trip).Select(line => Side(line.Arose, line.Line.Origin, InStock(line))),
                .. books.Costs.Overheads
                    .Where(line => line.Origin.File == Columns.Trips.File && period.Contains(line.Date))
                    .Select(line => Side(line.Date!.Value, line.Origin, new(
                        JournalAccounts.OverheadOf(Of(line.Origin)?.Purpose ?? TripPurpose.Sourcing), line.Amount))),
                .. Paid(CostKind.Trip).Select(movement => Side(
                    movement.Date!.Value, movement.Origin,
                    new(movement.IsReckoned ? JournalAccounts.DrivingReckoned : JournalAccounts.Money, movement.Amount))),
            ],
            JournalAccounts.PaidOnAnotherDay);

        JournalSide Side(DateOnly day, CostOrigin origin, JournalPosting posting) => new(
            day,
            origin.Row ?? 0,
            Of(origin) is { } trip ? $"outing {trip.Name}" : "outing",
            origin,
            posting);

        Trip? Of(CostOrigin origin) => trips.GetValueOrDefault(origin.Row ?? 0);
    }

    private IEnumerable<JournalSide> Used(bool isStated) => arisen
        .Where(line => line.Line.Kind == CostKind.Supplies && line.IsStated == isStated)
        .Select(line => new JournalSide(
            line.Arose,
            line.Cost.Piece.Id,
            $"{(isStated ? "supplies stated for" : "supplies used on")} {Name(line.Cost.Piece)}",
            line.Line.Origin,
            InStock(line) with { Comment = line.Line.What }));

    // Supplies that no piece carries leave the cans; what pieces stated and a count found missing has its can now. What a piece bears
    // from before its can was bought leaves the can when that is there.
    private void Lost()
    {
        sheet.Add(
            JournalPlace.Supplies,
            books.Costs.SuppliesOnNoPiece.Where(line => period.Contains(line.Date)).Select(line => new JournalSide(
                line.Date!.Value, (line.Origin.File, line.Origin.Row, line.What), $"supplies, {line.What}", line.Origin,
                new(JournalAccounts.SuppliesLost, line.Amount))),
            JournalAccounts.Supplies);
        sheet.Add(
            JournalPlace.Supplies,
            books.Costs.StatedByCounts.Where(piece => period.Contains(piece.Date)).Select(piece => new JournalSide(
                piece.Date, (piece.Origin.Row, piece.Item), $"supplies, {piece.Item} missing at the count, as stated", piece.Origin,
                new(JournalAccounts.StatedSupplies, piece.Amount, piece.PieceId))),
            JournalAccounts.Supplies);
        sheet.Add(
            JournalPlace.Supplies,
            books.Costs.Shelf.UsedTooEarly().SelectMany(used => new[] { (Day: used.Borne, Sign: -1), (Day: used.Left, Sign: 1) }
                .Where(part => period.Contains(part.Day))
                .Select(part => new JournalSide(
                    part.Day, (used.Can.Place, part.Sign), $"supplies, {used.Can.Purchase.Item} of a piece that had left before it was bought",
                    new(Columns.Supplies.File, used.Can.Purchase.Row, "The piece bears it from the day it left, the can from the day it was bought."),
                    new(JournalAccounts.PaidOnAnotherDay, part.Sign * used.Cost)))),
            JournalAccounts.Supplies);
    }

    // The sale, its fees and its delivery are one fact: what the buyer and the channel settled.
    private void Sold() => sheet.Add(
        JournalPlace.Sale,
        [
            .. Paid(null).Concat(Paid(CostKind.Fees)).Concat(Paid(CostKind.Delivery))
                .Concat(HeldPaid(movement => movement.PieceId is not null))
                .Select(movement => Settled(
                    movement.PieceId!, movement.Date!.Value, movement.What, movement.Origin, new(JournalAccounts.Money, movement.Amount))),
            .. Held(line => line.PieceId is not null).Select(line => Settled(
                line.PieceId!, line.Date!.Value, line.What, line.Origin, new(JournalAccounts.Of(line.Of), -line.Amount))),
            .. books.Costs.Pieces.SelectMany(Proceeds).Where(side => period.Contains(side.Day)),
            .. books.Selling.Where(line => period.Contains(line.Counted)).Select(line => Settled(
                line.Cost.Piece.Id, line.Counted!.Value, line.Line.What, line.Line.Origin,
                new(line.Line.Kind == CostKind.Fees ? JournalAccounts.Fees : JournalAccounts.Delivery, line.Line.Amount))),
        ],
        JournalAccounts.PaidOnAnotherDay);

    // A deposit, or a payment after the sale, is not yet or no longer the sale.
    private JournalSide Settled(string pieceId, DateOnly day, string what, CostOrigin origin, JournalPosting posting)
    {
        PieceCost cost = books.Costs[pieceId];
        string words = day == cost.Piece.SoldOn || cost.Undone.Any(back => back.SoldOn == day) ? $"sold {Name(cost.Piece)}"
            : cost.Returns.Any(back => back.Row.ReturnedOn == day) ? $"returned {Name(cost.Piece)}"
            : $"money, {what}";
        return new(day, cost.Piece.Id, words, origin, posting);
    }

    // Sales tax paid over, what the owner puts in and takes out.
    private void OfNoPiece() => sheet.Add(
        JournalPlace.Running,
        [
            .. Held(line => line.PieceId is null).Select(line => new JournalSide(
                line.Date!.Value, line.Origin, line.What, line.Origin, new(JournalAccounts.Of(line.Of), -line.Amount))),
            .. HeldPaid(movement => movement.PieceId is null).Select(movement => new JournalSide(
                movement.Date!.Value, movement.Origin, movement.What, movement.Origin, new(JournalAccounts.Money, movement.Amount))),
        ],
        JournalAccounts.PaidOnAnotherDay);

    private IEnumerable<MoneyOfOthers> Held(Func<MoneyOfOthers, bool> which) =>
        books.Costs.Held.Where(line => which(line) && period.Contains(line.Date));

    private IEnumerable<CashMovement> HeldPaid(Func<CashMovement, bool> which) =>
        books.Costs.Cash.Where(movement => movement.Of is not null && which(movement) && period.Contains(movement.Date));

    private IEnumerable<JournalSide> Proceeds(PieceCost cost)
    {
        if (cost.Piece is { IsSold: true, SoldOn: { } soldOn } && period.Contains(soldOn))
        {
            CostOrigin written = new(Columns.Pieces.File, cost.Piece.Row, "As written down.");
            yield return Side(soldOn, written, JournalAccounts.Sales, -(cost.SalePrice ?? 0));
            yield return Side(soldOn, written, JournalAccounts.DeliveryCharged, -(cost.Piece.DeliveryCharged ?? 0));
        }

        foreach (PieceReturn back in cost.Returns)
        {
            CostOrigin written = new(Columns.Returns.File, back.Row.Row, "As written down.");
            yield return Side(back.Row.SoldOn ?? back.Row.ReturnedOn, written, JournalAccounts.Sales, -back.SalePrice);
            yield return Side(back.Row.SoldOn ?? back.Row.ReturnedOn, written, JournalAccounts.DeliveryCharged, -back.DeliveryCharged);
            yield return Side(back.Row.ReturnedOn, written, JournalAccounts.Returns, back.GivenBack);
        }

        JournalSide Side(DateOnly day, CostOrigin origin, string account, decimal amount) =>
            Settled(cost.Piece.Id, day, "", origin, new(account, amount));
    }

    // The cost of a piece leaves with it, and when it has left for good its account is empty.
    private void Left() => sheet.Add(
        JournalPlace.Leaving,
        books.Lines.Where(line => line.Line.Amount != 0 && period.Contains(line.Left)).GroupBy(line => (line.Cost, line.Left, line.End)).SelectMany(left =>
        {
            Piece piece = left.Key.Cost.Piece;
            (string what, Func<StockLine, string> account) = WhereTo(left.Key.End);
            string how = left.Key.End is StockEnd.Sold or StockEnd.SoldUndated || piece.LeftAs is not { } leftAs ? "" : $", {Columns.WordOf(leftAs)}";
            CostOrigin origin = new(Columns.Pieces.File, piece.Row, $"All that the piece had cost{how}.");
            return Sides(left.Key.Left!.Value, $"{what} {Name(piece)}", origin, left, account, sign: 1, isEmptied: left.Key.Left == left.Key.Cost.Stays.Left);
        }),
        JournalAccounts.LeftOnUnknownDay);

    // What a piece that comes back had cost comes back with it (IFRS 15, paragraph B21, from memory).
    private void CameBack() => sheet.Add(
        JournalPlace.Back,
        books.Lines.Where(line => line.IsBack && line.Line.Amount != 0 && period.Contains(line.Arose)).GroupBy(line => (line.Cost, line.Arose))
            .SelectMany(back => Sides(
                back.Key.Arose,
                $"came back, {Name(back.Key.Cost.Piece)}",
                new(Columns.Returns.File, back.Key.Cost.Undone.First(row => row.ReturnedOn == back.Key.Arose).Row, "All that the piece had cost."),
                back, line => JournalAccounts.SoldOf(line.Line.Kind), sign: -1)),
        JournalAccounts.LeftOnUnknownDay);

    private IEnumerable<JournalSide> Sides(
        DateOnly day, string what, CostOrigin origin, IEnumerable<StockLine> lines, Func<StockLine, string> account, int sign, bool isEmptied = false)
    {
        StockLine[] all = [.. lines];
        string own = AccountOf(all[0].Cost.Piece.Id);
        JournalPosting ofPiece = new(own, -sign * all.Sum(line => line.Line.Amount), null, isEmptied ? 0 : null);
        return all.GroupBy(account)
            .Select(part => new JournalPosting(part.Key, sign * part.Sum(line => line.Line.Amount)))
            .Append(ofPiece)
            .Select(posting => new JournalSide(day, all[0].Cost.Piece.Id, what, origin, posting));
    }

    private static (string What, Func<StockLine, string> Account) WhereTo(StockEnd end) => end switch
    {
        StockEnd.Sold => ("cost of", line => JournalAccounts.SoldOf(line.Line.Kind)),
        StockEnd.Kept => ("kept by the owner,", _ => JournalAccounts.Owner),
        StockEnd.WrittenOff => ("written off", _ => JournalAccounts.WrittenOff),
        _ => ("left on an unknown day,", _ => JournalAccounts.LeftOnUnknownDay),
    };

    private IEnumerable<CashMovement> Paid(CostKind? kind) =>
        books.Costs.Cash.Where(movement => movement.Kind == kind && movement.Of is null && period.Contains(movement.Date));

    private JournalPosting InStock(StockLine line) => new(AccountOf(line.Cost.Piece.Id), line.Line.Amount);

    private string Name(CashMovement movement) => Name(books.Costs[movement.PieceId!].Piece);

    private static string Name(Piece piece) =>
        piece.Title is { } title ? $"{piece.Id}, {piece.Type}, {title}" : $"{piece.Id}, {piece.Type}";
}
