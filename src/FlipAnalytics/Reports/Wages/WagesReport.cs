using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A cost that some flips lack.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Flips">Flips with a known profit that lack it.</param>
public sealed record MissingCost(CostKind Kind, int Flips);

/// <summary>Flips that the wages leave out, by id.</summary>
/// <param name="WithoutHours">Hours are not written down.</param>
/// <param name="WithoutSalePrice">The sale price is not written down.</param>
/// <param name="WithoutPurchasePrice">What was paid is not written down, though the sale price is.</param>
/// <param name="WithoutDay">Sold on a day that is not written down, where a period was asked for: not in the report.</param>
public sealed record FlipsLeftOut(
    ImmutableArray<string> WithoutHours,
    ImmutableArray<string> WithoutSalePrice,
    ImmutableArray<string> WithoutPurchasePrice,
    ImmutableArray<string> WithoutDay);

/// <summary>Pieces that left without a sale, other than for the owner's own use.</summary>
/// <param name="Ids">Their ids.</param>
/// <param name="Cost">What they cost.</param>
public sealed record PiecesWrittenOff(ImmutableArray<string> Ids, decimal Cost);

/// <summary>What each flip paid by the hour. It rests on the books alone; estimates enter only as hours filled in.</summary>
public sealed record WagesReport
{
    /// <summary>The date up to which facts are known.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>The workshop.</summary>
    public required Workshop Workshop { get; init; }

    /// <summary>The span in which the flips were sold; null for all.</summary>
    public ReportPeriod? Period { get; init; }

    /// <summary>Every flip, in the order of the log.</summary>
    public required ImmutableArray<FlipWage> Flips { get; init; }

    /// <summary>Pieces of the log that are not sold.</summary>
    public required int UnsoldPieces { get; init; }

    /// <summary>All flips together.</summary>
    public required WageSum Total { get; init; }

    /// <summary>By type, colour, source and quarter of sale.</summary>
    public required ImmutableArray<WageGrouping> Groupings { get; init; }

    /// <summary>From the full wage to that of the span, or of the whole log; null where there is no wage.</summary>
    public WageBridge? Bridge { get; init; }

    /// <summary>Every hour of the log, in the wage of the span or outside it.</summary>
    public required WageHours Everywhere { get; init; }

    /// <summary>How the wages of single flips lie; null where none has one.</summary>
    public WageSpread? Spread { get; init; }

    /// <summary>Whether wages rise or fall; null where the flips are too few to tell.</summary>
    public WageTrend? Trend { get; init; }

    /// <summary>Flips that lost money, the greatest loss first.</summary>
    public required ImmutableArray<LosingFlip> Losers { get; init; }

    /// <summary>Pieces that left without a sale, over the same span.</summary>
    public required PiecesWrittenOff WrittenOff { get; init; }

    /// <summary>What all hours of the log went into, whatever the period.</summary>
    public required HoursByTask Hours { get; init; }

    /// <summary>The total with hours filled in; null where none is missing or none is given.</summary>
    public WagesFilledIn? FilledIn { get; init; }

    /// <summary>What the target wage would have refused to buy; null without a target wage.</summary>
    public WagesHindsight? Hindsight { get; init; }

    /// <summary>Flips that the wages leave out.</summary>
    public required FlipsLeftOut LeftOut { get; init; }

    /// <summary>Costs that flips with a known profit lack.</summary>
    public required ImmutableArray<MissingCost> MissingCosts { get; init; }

    /// <summary>Kinds of cost of which the log has nothing at all, so that no flip carries any.</summary>
    public required ImmutableArray<CostKind> KindsWithoutRecord { get; init; }

    /// <summary>Notes of the books: what is unknown, assumed or contradictory.</summary>
    public required ImmutableArray<string> Notes { get; init; }

    /// <summary>Rows of the log that could not be used and are in no figure.</summary>
    public ImmutableArray<RowsSetAside> SetAside { get; init; } = [];

    /// <summary>The line on a row that is worth a look and on which the answer hangs; null where there is none.</summary>
    public string? WorthALook { get; init; }

    /// <summary>
    /// Overheads and wear of the month that the log ends in that fall on its days to come: flips carry their shares of them, but
    /// the wage of the span does not; 0 where the span is over at the date of the log.
    /// </summary>
    public decimal StillToArise { get; init; }

    /// <summary>Sums that must agree.</summary>
    public required WagesReconciliation Reconciliation { get; init; }

    /// <summary>The books it was made of.</summary>
    internal (CostBook Costs, HoursLedger Hours)? Books { get; init; }

    /// <summary>
    /// Whether cash wage or profit lack a cost: one that a gap tells of, or supplies where the log has none at all.
    /// </summary>
    public bool CashIsAtMost => Total.CashIsAtMost
        || (Total.Counted + Total.WithoutHours > 0 && KindsWithoutRecord.Contains(CostKind.Supplies))
        || (Total.Counted == 0 && Flips.Any(flip => flip is { FullProfit: not null, CashIsAtMost: true }));

    /// <summary>Whether the full wage lacks a cost.</summary>
    public bool FullIsAtMost => Total.FullIsAtMost || CashIsAtMost;

    /// <summary>The grouping by something.</summary>
    /// <param name="by">What by.</param>
    public WageGrouping By(WageGroupBy by) => Groupings[(int)by];

    /// <summary>The same report with hours filled in where none are on record.</summary>
    /// <param name="hours">Estimated hands-on hours by piece id.</param>
    public WagesReport FillIn(IReadOnlyDictionary<string, decimal> hours) =>
        this with { FilledIn = WagesFilledIn.Of(Flips, hours, Workshop.Currency) };

    /// <summary>The same report, with the line on a row that is worth a look where the full wage hangs on one.</summary>
    /// <param name="log">The log it was made of.</param>
    /// <param name="rows">The rows that are worth a look, where they were looked for while the report was made.</param>
    public WagesReport WithWorthALook(SalesLog log, Task<ImmutableArray<LogFinding>>? rows = null) => this with
    {
        WorthALook = RowsWorthALook.Sentence(
            log, Total.FullWage, without => FullWageOf(without, Period), $"the {WageBridgeText.FullWageName}",
            wage => MoneyText.Exact(wage, Workshop),
            Books is var (costs, hours)
                ? finding => RowReach.OfWage(log, costs, hours, finding, Total.FullProfit, Total.AllHours) : null, rows),
    };

    /// <summary>The full wage alone, without the rest of a report.</summary>
    private static decimal? FullWageOf(SalesLog log, ReportPeriod? period)
    {
        WorkCalendar calendar = new(log);
        var sold = FlipResult.Sold(CostBook.Of(log, calendar), HoursLedger.Of(log, calendar)).Select(FlipWage.Of);
        return WageSum.Of(In([.. sold], period), log.Workshop.Currency).FullWage;
    }

    private static ImmutableArray<FlipWage> In(ImmutableArray<FlipWage> sold, ReportPeriod? period) =>
        period is null ? sold : [.. sold.Where(flip => period.Contains(flip.SoldOn))];

    /// <summary>The wages of a log.</summary>
    /// <param name="log">The log, as of its date.</param>
    /// <param name="period">The span in which the flips were sold; null for all.</param>
    public static WagesReport Of(SalesLog log, ReportPeriod? period = null)
    {
        ArgumentNullException.ThrowIfNull(log);
        WorkCalendar calendar = new(log);
        CostBook book = CostBook.Of(log, calendar);
        HoursLedger hours = HoursLedger.Of(log, calendar);
        Currency currency = log.Workshop.Currency;
        ImmutableArray<FlipWage> sold = [.. FlipResult.Sold(book, hours).Select(FlipWage.Of)];
        ImmutableArray<FlipWage> flips = In(sold, period);
        WageSum total = WageSum.Of(flips, currency);
        ImmutableArray<WageGrouping> groupings =
            [.. Enum.GetValues<WageGroupBy>().Select(by => WageGrouping.Of(flips, by, currency))];
        PieceCost[] writtenOff =
        [
            .. book.Pieces.Where(piece => piece.Piece.IsWrittenOff
                && (period is null || period.Contains(piece.EndedOn))),
        ];
        var bridge = WageBridge.Of(book, hours, period);
        return new()
        {
            AsOf = log.Date,
            Books = (book, hours),
            Workshop = log.Workshop,
            Period = period,
            Flips = flips,
            UnsoldPieces = log.Pieces.Length - sold.Length,
            Total = total,
            Groupings = groupings,
            Bridge = bridge,
            Everywhere = WageHours.Of(log, hours, period, bridge),
            Spread = WageSpread.Of(flips, log.Workshop.TargetWage),
            Trend = WageTrend.Of(flips, currency),
            Losers = LosingFlips.Of(flips, log.Workshop),
            WrittenOff = new([.. writtenOff.Select(piece => piece.Piece.Id)], writtenOff.Sum(piece => piece.Total)),
            Hours = HoursByTask.Of(log, hours),
            Hindsight = WagesHindsight.Of(flips, log.Workshop.TargetWage),
            LeftOut = new(
                [.. flips.Where(flip => flip is { FullProfit: not null, BenchHours: null }).Select(flip => flip.Id)],
                [.. flips.Where(flip => flip.Takings is null).Select(flip => flip.Id)],
                [.. flips.Where(flip => flip is { Takings: not null, Purchase: null }).Select(flip => flip.Id)],
                period is null ? [] : [.. sold.Where(flip => flip.SoldOn is null).Select(flip => flip.Id)]),
            MissingCosts =
            [
                .. flips.Where(flip => flip.FullProfit is not null).SelectMany(flip => flip.Missing).GroupBy(kind => kind)
                    .OrderByDescending(kind => kind.Count()).ThenBy(kind => kind.Key)
                    .Select(kind => new MissingCost(kind.Key, kind.Count())),
            ],
            KindsWithoutRecord = [.. Enum.GetValues<CostKind>().Where(kind => !CostRecord.Has(log, kind))],
            Notes = book.Notes,
            StillToArise = period is null || (period.From <= log.Date && log.Date < period.To) ? book.StillToArise : 0,
            Reconciliation = new(
                ProfitReconciliation.Of(flips),
                HoursReconciliation.Of(log, hours, flips),
                [.. groupings.Select(grouping => GroupReconciliation.Of(grouping, total))],
                CostReconciliation.Of(book, flips),
                FileReconciliation.Of(log, book)),
        };
    }
}
