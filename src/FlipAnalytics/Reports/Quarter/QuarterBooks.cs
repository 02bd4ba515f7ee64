using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The books of a log, opened once for all the spans that a report looks at.</summary>
internal sealed class QuarterBooks
{
    public QuarterBooks(SalesLog log)
    {
        Log = log;
        Costs = CostBook.Of(log);
        Hours = HoursLedger.Of(log);
        Calendar = new(log);
        Lines = [.. Costs.Pieces.SelectMany(cost => cost.Lines
            .Where(line => StockMovement.UsualKinds.Contains(line.Kind))
            .Select(line => new StockLine(cost, line, AroseOn(cost, line))))];
        FirstFact = log.FirstFact();
    }

    public SalesLog Log { get; }

    public CostBook Costs { get; }

    public HoursLedger Hours { get; }

    public WorkCalendar Calendar { get; }

    /// <summary>What the pieces cost in the kinds that count as stock, each line on the day it arose.</summary>
    public ImmutableArray<StockLine> Lines { get; }

    public DateOnly? FirstFact { get; }

    public Currency Currency => Costs.Currency;

    /// <summary>Day a piece left the stock; null while it is here, the first of all days where the log tells none.</summary>
    public static DateOnly? LeftOn(PieceCost cost) =>
        cost.Piece.IsSold || cost.Piece.IsGone ? cost.EndedOn ?? DateOnly.MinValue : null;

    /// <summary>
    /// Day a sale or a leaving belongs to; null where the log does not say, though the piece did leave the stock.
    /// </summary>
    public static DateOnly? EndWrittenDown(Piece piece) =>
        piece.IsSold ? piece.SoldOn : piece.IsGone ? piece.LeftOn : null;

    // The rule of StockMovement: at the latest the day the piece left; without a day, when it was bought.
    private static DateOnly AroseOn(PieceCost cost, CostLine line)
    {
        DateOnly? left = LeftOn(cost);
        DateOnly arose = line.Date ?? cost.Piece.BoughtOn ?? left ?? DateOnly.MinValue;
        return arose > left ? left.Value : arose;
    }
}

/// <summary>A line of a piece's cost and the day from which the stock holds it.</summary>
/// <param name="Cost">The piece.</param>
/// <param name="Line">The line.</param>
/// <param name="Arose">The day.</param>
internal sealed record StockLine(PieceCost Cost, CostLine Line, DateOnly Arose)
{
    /// <summary>Whether <c>pieces.csv</c> states it beyond what was taken from cans: no purchase stands behind it.</summary>
    public bool IsStated => Line.Kind == CostKind.Supplies && Line.Origin.File == Columns.Pieces.File;
}
