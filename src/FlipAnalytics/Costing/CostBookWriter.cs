using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>Writes the books of a log, one kind of cost after another.</summary>
internal sealed class CostBookWriter(SalesLog log, WorkCalendar calendar)
{
    private readonly CostSheet sheet = new(log, calendar);

    public CostBook Write()
    {
        ImmutableArray<PricePaid?> prices = LotPrices.Of(log);
        for (int i = 0; i < log.Pieces.Length; i++)
            Buy(i, log.Pieces[i], prices[i]);
        SuppliesLedger supplies = SuppliesLedger.Write(sheet);
        decimal[] stated = [.. log.Pieces.Select((piece, i) => State(i, piece))];
        ToolWear tools = ToolWear.Write(sheet);
        decimal trips = TripCosts.Write(sheet);
        ImmutableArray<CostLine> unshared = OverheadSharing.Write(sheet);
        decimal fees = 0;
        decimal deliveries = 0;
        for (int i = 0; i < log.Pieces.Length; i++)
            SaleCosts.Write(sheet, i, ref fees, ref deliveries);

        ImmutableArray<PieceCost> pieces =
        [
            .. log.Pieces.Select((piece, i) => new PieceCost(
                piece,
                [.. sheet.Lines[i].OrderBy(line => line.Kind).ThenBy(line => line.Date)],
                sheet.Calendar.Hours.TryGetValue(piece.Id, out decimal total) ? total : null)
            {
                Gaps = [.. sheet.Gaps[i]],
                SuppliesDifference = stated[i],
            }),
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
            SuppliesLeft = supplies.Left,
            ToolsLeft = tools.Left,
            Cash = [.. sheet.Cash.OrderBy(movement => movement.Date ?? DateOnly.MaxValue)],
            Notes = [.. sheet.Notes.Distinct()],
            Coverage = supplies.Coverage,
            Totals =
            [
                Total(CostKind.Purchase, log.Pieces.Sum(piece => piece.BoughtPrice ?? 0)),
                Total(CostKind.Supplies, supplies.Bought, supplies.Left.Sum(stock => stock.Value), stated: stated.Sum()),
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

    private void Buy(int i, Piece piece, PricePaid? paid)
    {
        if (paid is not { } own)
        {
            sheet.Gaps[i].Add(new(CostKind.Purchase, $"What was paid for {piece.Id} is not written down."));
            return;
        }

        CostOrigin origin = new(Columns.Pieces.File, piece.Row, own.Rule);
        sheet.Lines[i].Add(new(CostKind.Purchase, piece.BoughtOn, own.Amount, "bought", origin));
        sheet.Pay(piece.BoughtOn, -own.Amount, $"{piece.Id} bought", origin, CostKind.Purchase, piece.Id);
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
