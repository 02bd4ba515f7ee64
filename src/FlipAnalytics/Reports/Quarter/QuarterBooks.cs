using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The books of a log, opened once for all the spans that a report looks at.</summary>
internal sealed class QuarterBooks
{
    public QuarterBooks(SalesLog log)
        : this(log, sharesUpkeep: true)
    {
    }

    private QuarterBooks(SalesLog log, bool sharesUpkeep)
    {
        Log = log;
        Calendar = new(log);
        Costs = new CostBookWriter(log, Calendar, sharesUpkeep).Write();
        FirstFact = log.FirstFact();
    }

    /// <summary>
    /// The books of a log for its profit alone: without hours, and without what pieces carry of tools and overheads, which
    /// count in the span they fall into.
    /// </summary>
    public static QuarterBooks OfProfitAlone(SalesLog log) => new(log, sharesUpkeep: false) { Hours = HoursLedger.Empty(log) };

    public SalesLog Log { get; }

    public CostBook Costs { get; }

    public HoursLedger Hours
    {
        get => field ??= HoursLedger.Of(Log, Calendar);
        private init;
    }

    public WorkCalendar Calendar { get; }

    /// <summary>What the pieces cost in the kinds that count as stock, each line on the day it arose.</summary>
    public ImmutableArray<StockLine> Lines => field.IsDefault ? field = StockLines() : field;

    /// <summary>Drives to buyers, each with the day of the sale, on which it counts.</summary>
    public ImmutableArray<(CostLine Line, DateOnly? Counted)> Drives => field.IsDefault
        ? field = [.. Costs.Pieces.SelectMany(cost => cost.Lines.Where(IsDrive).Select(line => (line, cost.Piece.SoldOn)))]
        : field;

    public DateOnly? FirstFact { get; }

    public Currency Currency => Costs.Currency;

    /// <summary>The overheads of a span, by days; up to the date of the books.</summary>
    public decimal OverheadsIn(ReportPeriod period) => CostsBySpan.Sum(Costs, Costs.Overheads, period);

    /// <summary>The wear of tools of a span, by days, on pieces and in idle months; up to the date of the books.</summary>
    public decimal WearIn(ReportPeriod period) => CostsBySpan.Sum(Costs, Costs.ToolWear, period);

    /// <summary>Supplies of a span that no piece carries: wasted, or missing at a count, less what was found again.</summary>
    public decimal SuppliesLostIn(ReportPeriod period) =>
        Costs.SuppliesOnNoPiece.Where(line => period.Contains(line.Date)).Sum(line => line.Amount);

    /// <summary>
    /// Day a sale or a leaving belongs to; null where the log does not say, though the piece did leave the stock.
    /// </summary>
    public static DateOnly? EndWrittenDown(Piece piece) =>
        piece.IsSold ? piece.SoldOn : piece.IsGone ? piece.LeftOn : null;

    private static bool IsDrive(CostLine line) => line.Kind == CostKind.Delivery && line.Origin.File == Columns.Trips.File;

    private ImmutableArray<StockLine> StockLines()
    {
        bool[] usual = [.. Enum.GetValues<CostKind>().Select(kind => StockMovement.UsualKinds.Contains(kind))];
        var lines = ImmutableArray.CreateBuilder<StockLine>(Costs.Pieces.Sum(cost => cost.Lines.Length));
        foreach (PieceCost cost in Costs.Pieces)
        {
            DateOnly? left = cost.LeftStockOn;
            foreach (CostLine line in cost.Lines)
            {
                if (usual[(int)line.Kind] && !IsDrive(line))
                    lines.Add(new(cost, line, cost.AroseOn(line, left), left));
            }
        }

        return lines.DrainToImmutable();
    }
}

/// <summary>A line of a piece's cost and the day from which the stock holds it.</summary>
/// <param name="Cost">The piece.</param>
/// <param name="Line">The line.</param>
/// <param name="Arose">The day.</param>
/// <param name="Left">Day the piece left the stock, as <see cref="PieceCost.LeftStockOn"/> has it.</param>
internal readonly record struct StockLine(PieceCost Cost, CostLine Line, DateOnly Arose, DateOnly? Left)
{
    /// <summary>Whether the stock holds it on the evening of a day.</summary>
    public bool IsHeldOn(DateOnly day) => Arose <= day && !(Left <= day);

    /// <summary>Whether <c>pieces.csv</c> states it beyond what was taken from cans: no purchase stands behind it.</summary>
    public bool IsStated => Line.Kind == CostKind.Supplies && Line.Origin.File == Columns.Pieces.File;
}
