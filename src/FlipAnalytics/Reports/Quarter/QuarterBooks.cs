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

    /// <summary>Fees and delivery of pieces, each with the day on which it counts.</summary>
    public ImmutableArray<SellingLine> Selling => field.IsDefault ? field = SellingLines() : field;

    /// <summary>The returns of a span, in the order of the log.</summary>
    public IEnumerable<(PieceCost Cost, PieceReturn Return)> ReturnsIn(ReportPeriod period) =>
        from cost in Costs.Pieces
        from back in cost.Returns
        where period.Contains(back.Row.ReturnedOn)
        select (cost, back);

    /// <summary>The cost of stock that left it in a span in some way.</summary>
    public IEnumerable<StockLine> LeftIn(ReportPeriod period, StockEnd end) =>
        Lines.Where(line => line.End == end && period.Contains(line.Left));

    public DateOnly? FirstFact { get; }

    public Currency Currency => Costs.Currency;

    /// <summary>The overheads of a span, by days; up to the date of the books.</summary>
    public decimal OverheadsIn(ReportPeriod period) => CostsBySpan.Sum(Costs, Costs.Overheads, period);

    /// <summary>The wear of tools of a span, by days, on pieces and in idle months; up to the date of the books.</summary>
    public decimal WearIn(ReportPeriod period) => CostsBySpan.Sum(Costs, Costs.ToolWear, period);

    /// <summary>Supplies of a span that no piece carries: wasted, or missing at a count, less what was found again.</summary>
    public decimal SuppliesLostIn(ReportPeriod period) =>
        Costs.SuppliesOnNoPiece.Where(line => period.Contains(line.Date)).Sum(line => line.Amount);

    private ImmutableArray<StockLine> StockLines()
    {
        bool[] usual = [.. Enum.GetValues<CostKind>().Select(kind => StockMovement.UsualKinds.Contains(kind))];
        var lines = ImmutableArray.CreateBuilder<StockLine>(Costs.Pieces.Sum(cost => cost.Lines.Length));
        foreach (PieceCost cost in Costs.Pieces)
        {
            StockStays stays = cost.Stays;
            foreach (CostLine line in cost.Lines)
            {
                if (usual[(int)line.Kind])
                    lines.AddRange(stays.Of(line.Date).Select(stay => new StockLine(cost, line, stay.From, stay.IsBack, stay.Left, stay.End)));
            }
        }

        return lines.DrainToImmutable();
    }

    private ImmutableArray<SellingLine> SellingLines() =>
    [
        .. from cost in Costs.Pieces
           from line in cost.Lines
           where line.Kind is CostKind.Fees or CostKind.Delivery
           select new SellingLine(cost, line, cost.CountedOn(line)),
    ];
}

/// <summary>Fees or delivery of a piece.</summary>
/// <param name="Cost">The piece.</param>
/// <param name="Line">The line.</param>
/// <param name="Counted">Day on which it counts, as <see cref="PieceCost.CountedOn"/> has it.</param>
internal readonly record struct SellingLine(PieceCost Cost, CostLine Line, DateOnly? Counted)
{
    /// <summary>Whether it is a drive to the buyer.</summary>
    public bool IsDrive => PieceCost.IsDrive(Line);
}

/// <summary>A line of a piece's cost for a time in which the stock holds it; a piece that came back has it more than once.</summary>
/// <param name="Cost">The piece.</param>
/// <param name="Line">The line.</param>
/// <param name="Arose">Day from which the stock holds it.</param>
/// <param name="IsBack">Whether the piece came back on that day, so that the cost is no new one.</param>
/// <param name="Left">Day the piece left the stock; null where it is here.</param>
/// <param name="End">How it left.</param>
internal readonly record struct StockLine(PieceCost Cost, CostLine Line, DateOnly Arose, bool IsBack, DateOnly? Left, StockEnd End)
{
    /// <summary>Whether the stock holds it on the evening of a day.</summary>
    public bool IsHeldOn(DateOnly day) => Arose <= day && !(Left <= day);

    /// <summary>Whether <c>pieces.csv</c> states it beyond what was taken from cans: no purchase stands behind it.</summary>
    public bool IsStated => Line.Kind == CostKind.Supplies && Line.Origin.File == Columns.Pieces.File;
}
