using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>Writes the books of a log, one kind of cost after another.</summary>
/// <param name="log">The log.</param>
/// <param name="calendar">Its calendar of work.</param>
/// <param name="sharesUpkeep">Whether pieces carry tools and overheads; the sums of a span do without.</param>
/// <param name="itemizes">Whether each share of supplies is a line; the sums of a piece do without.</param>
internal sealed class CostBookWriter(SalesLog log, WorkCalendar calendar, bool sharesUpkeep = true, bool itemizes = true)
{
    private readonly CostSheet sheet = new(log, calendar) { SharesUpkeep = sharesUpkeep, Itemizes = itemizes };

    public CostBook Write()
    {
        ImmutableArray<PricePaid?> prices = LotPrices.Of(log);
        for (int i = 0; i < log.Pieces.Length; i++)
            Buy(i, log.Pieces[i], prices[i]);
        SuppliesLedger supplies = SuppliesLedger.Write(sheet);
        sheet.WriteSummed();
        decimal[] stated = [.. log.Pieces.Select((piece, i) => State(i, piece))];
        var (lost, settled) = supplies.Losses.SetOff(sheet, stated);
        ToolWear tools = ToolWear.Write(sheet);
        (decimal trips, decimal drives) = TripCosts.Write(sheet);
        Move();
        ImmutableArray<CostLine> unshared = OverheadSharing.Write(sheet);
        decimal fees = 0;
        decimal deliveries = drives;
        for (int i = 0; i < log.Pieces.Length; i++)
        {
            SaleCosts.Write(sheet, i, ref fees, ref deliveries);
            SaleCosts.WriteReturns(sheet, i, ref fees, ref deliveries);
        }

        ImmutableArray<decimal?> salePrices = [.. log.Pieces.Select(SalePrice)];
        var (held, returns) = MoneyOutsideProfit.Write(sheet, salePrices);
        ImmutableArray<PieceCost> pieces =
        [
            .. log.Pieces.Select((piece, i) => WithReturns(returns[i], new(
                piece,
                sheet.TakeInOrder(i),
                sheet.Calendar.Hours.TryGetValue(piece.Id, out decimal total) ? total : null)
            {
                Gaps = [.. sheet.Gaps[i]],
                SuppliesDifference = stated[i],
                SalePrice = salePrices[i],
                Undone = sheet.Undone[i],
            })),
        ];
        var onPieces = new decimal[Enum.GetValues<CostKind>().Length];
        foreach (CostLine line in pieces.SelectMany(piece => piece.Lines))
            onPieces[(int)line.Kind] += line.Amount;
        return new()
        {
            Date = log.Date,
            Currency = log.Workshop.Currency,
            Pieces = pieces,
            Overheads = [.. sheet.Overheads],
            OverheadsUnshared = unshared,
            ToolWear = tools.All,
            ToolsIdle = tools.Idle,
            SuppliesOnNoPiece = lost,
            StatedByCounts = settled,
            SuppliesLeft = supplies.Left,
            Shelf = supplies.Shelf,
            ToolsLeft = tools.Left,
            Cash = [.. sheet.Cash.OrderBy(movement => movement.Date ?? DateOnly.MaxValue)],
            Held = held,
            Notes = [.. sheet.Notes.Distinct()],
            Coverage = supplies.Coverage,
            Totals =
            [
                Total(CostKind.Purchase, log.Pieces.Sum(piece => piece.BoughtPrice ?? 0)),
                Total(
                    CostKind.Supplies,
                    supplies.Bought,
                    supplies.Left.Sum(stock => stock.Value),
                    lost.Sum(line => line.Amount),
                    stated.Sum() - settled.Sum(piece => piece.Amount)),
                Total(CostKind.Tools, tools.Bought, tools.Left.Sum(tool => tool.Value), tools.Idle.Sum(line => line.Amount)),
                Total(CostKind.Trip, trips),
                Total(
                    CostKind.Overhead,
                    sheet.Overheads.Sum(line => line.Amount),
                    unassigned: unshared.Sum(line => line.Amount)),
                Total(CostKind.Delivery, deliveries),
                Total(CostKind.Fees, fees),
            ],
        };

        CostTotal Total(CostKind kind, decimal spent, decimal left = 0, decimal unassigned = 0, decimal stated = 0) =>
            new(kind, spent, onPieces[(int)kind], left, unassigned, stated);
    }

    /// <summary>A sale that was undone took the cost so far with it, and bears its own fees and delivery.</summary>
    private static PieceCost WithReturns(ImmutableArray<PieceReturn> returns, PieceCost cost)
    {
        if (returns.IsEmpty)
            return cost;
        StockStays stays = cost.Stays;
        return cost with { Returns = [.. returns.Select(Complete)] };

        PieceReturn Complete(PieceReturn back) => !back.Row.CameBack ? back with { TakingBack = back.Row.Cost ?? 0 } : back with
        {
            Purchase = Until(back, CostKind.Purchase),
            Supplies = Until(back, CostKind.Supplies),
            Outing = Until(back, CostKind.Trip),
            Fees = back.Row.Fees ?? 0,
            Delivery = (back.Row.DeliveryCost ?? 0) + Drives(back, isTakingBack: false),
            TakingBack = (back.Row.Cost ?? 0) + Drives(back, isTakingBack: true),
        };

        decimal Until(PieceReturn back, CostKind kind) => cost.Lines
            .Where(line => line.Kind == kind && stays.AroseOn(line.Date) <= back.Row.SoldOn).Sum(line => line.Amount);

        decimal Drives(PieceReturn back, bool isTakingBack) => cost.Lines
            .Where(line => PieceCost.IsDrive(line) && stays.DriveOf(line.Date) == (cost.Undone.IndexOf(back.Row), isTakingBack))
            .Sum(line => line.Amount);
    }

    private decimal? SalePrice(Piece piece) =>
        piece.SoldPrice is { } price ? piece.YoursOf(price, log.Workshop.Currency) : null;

    private void Buy(int i, Piece piece, PricePaid? paid)
    {
        // What belongs to somebody else is sold for them: nothing is paid for it before.
        if (piece.IsOnCommission && paid is null)
            return;
        if (paid is not { } own)
        {
            sheet.Gaps[i].Add(new(CostKind.Purchase, $"What was paid for {piece.Id} is not written down."));
            return;
        }

        CostOrigin origin = new(Columns.Pieces.File, piece.Row, own.Rule);
        sheet.Lines[i].Add(new(CostKind.Purchase, piece.BoughtOn, own.Amount, "bought", origin));
        sheet.Pay(piece.BoughtOn, -own.Amount, $"{piece.Id} bought", origin, CostKind.Purchase, piece.Id);
    }

    /// <summary>
    /// A part that is moved takes its cost along (IAS 2, paragraph 10: cost stays with the goods, from memory). Both
    /// pieces carry the line on the same day, so nothing is added and nothing lost.
    /// </summary>
    private void Move()
    {
        foreach (CostMove move in log.Moves)
        {
            if (sheet.PlaceOf(move.From) is not { } from || sheet.PlaceOf(move.To) is not { } to || move.Cost == 0)
                continue;
            decimal there = sheet.Lines[from].Where(line => !(line.Date > move.Date) && StockMovement.UsualKinds.Contains(line.Kind))
                .Sum(line => line.Amount);
            if (move.Cost > there)
            {
                sheet.Notes.Add(Invariant(
                    $"moves.csv, line {move.Row}, takes {move.Cost} from {move.From}, which had cost {there} by then: correct the cost or the day."));
            }

            CostOrigin origin = new(Columns.Moves.File, move.Row, Invariant($"{move.Cost} went from {move.From} to {move.To}, as written down."));
            sheet.Lines[from].Add(new(CostKind.Purchase, move.Date, -move.Cost, $"part moved to {move.To}", origin));
            sheet.Lines[to].Add(new(CostKind.Purchase, move.Date, move.Cost, $"part moved from {move.From}", origin));
        }
    }

    /// <summary>What is stated for supplies replaces the ledger by a line of the difference, which is returned.</summary>
    private decimal State(int i, Piece piece)
    {
        if (piece.SuppliesCost is not { } stated)
            return 0;
        sheet.Gaps[i].RemoveAll(gap => gap.Kind == CostKind.Supplies);
        decimal assigned = sheet.Lines[i].Where(line => line.Kind == CostKind.Supplies).Sum(line => line.Amount);
        decimal difference = stated - assigned;
        if (difference == 0)
            return 0;
        string rule = assigned == 0
            ? "The cost of supplies, as written down; no can on record was charged for it."
            : Invariant($"pieces.csv states {stated} for supplies, the ledger comes to {assigned}; what is stated counts.");
        sheet.Lines[i].Add(new(
            CostKind.Supplies,
            sheet.Calendar.WorkDay(i),
            difference,
            assigned == 0 ? "supplies as stated" : "stated less ledger",
            new(Columns.Pieces.File, piece.Row, rule)));
        return difference;
    }
}
