using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The sheet of a year for whoever prepares the tax return; any span of days will do, such as 6 April to 5 April.</summary>
/// <remarks>
/// It rests on the same books as the report of a quarter, so its profit is the one that <c>flip quarter</c> gives for the same
/// span, and four quarters add up to it. It is the books' view, not a tax return: what a rule of tax makes of it is for a
/// professional to say.
/// </remarks>
public sealed record YearReport
{
    /// <summary>The span asked for.</summary>
    public required ReportPeriod Period { get; init; }

    /// <summary>The days of it that have gone by: the whole span, or up to the date of the log.</summary>
    public required ReportPeriod Reckoned { get; init; }

    /// <summary>The date up to which facts are known.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>The workshop's settings.</summary>
    public required Workshop Workshop { get; init; }

    /// <summary>Profit and loss, as the report of a quarter has it.</summary>
    public required QuarterProfit Profit { get; init; }

    /// <summary>Every line of the sheet, in its order.</summary>
    public required ImmutableArray<YearLine> Lines { get; init; }

    /// <summary>Cost of goods sold in five lines.</summary>
    public required YearCostOfGoods CostOfGoods { get; init; }

    /// <summary>The pieces sold, in the order of the log.</summary>
    public required ImmutableArray<QuarterSale> Sales { get; init; }

    /// <summary>Pieces that left unsold, by day.</summary>
    public required ImmutableArray<YearLeft> Left { get; init; }

    /// <summary>Driving, which is in other lines already.</summary>
    public required YearDriving Driving { get; init; }

    /// <summary>Overheads by item, the dearest first, then outings that brought nothing home.</summary>
    public required ImmutableArray<YearOverhead> Overheads { get; init; }

    /// <summary>Tools there on the last day, in the order of the log.</summary>
    public required ImmutableArray<YearTool> Tools { get; init; }

    /// <summary>Pieces in stock on the last evening, in the order of the log.</summary>
    public required ImmutableArray<YearStockPiece> Stock { get; init; }

    /// <summary>Supplies in cans on the last evening, by name.</summary>
    public required ImmutableArray<YearSupply> Supplies { get; init; }

    /// <summary>Money in and out.</summary>
    public required QuarterCash Cash { get; init; }

    /// <summary>All money in the files by kind: what counts in this year, and what does not.</summary>
    public required ImmutableArray<YearTally> Tally { get; init; }

    /// <summary>Questions for a tax professional.</summary>
    public required ImmutableArray<QuarterPrompt> Prompts { get; init; }

    /// <summary>What the log does not hold at all and the figures therefore leave out: a sentence each.</summary>
    public required ImmutableArray<string> Lacking { get; init; }

    /// <summary>What is unknown, assumed or contradictory in the books of the whole log: a sentence each.</summary>
    public required ImmutableArray<string> Notes { get; init; }

    /// <summary>Rows of the log that could not be used and are in no figure.</summary>
    public ImmutableArray<RowsSetAside> SetAside { get; init; } = [];

    /// <summary>The line on a row that is worth a look and on which the profit hangs; null where there is none.</summary>
    public string? WorthALook { get; init; }

    /// <summary>
    /// Overheads and wear of the month that the log ends in that fall on its days to come, and so are in no figure of this year;
    /// 0 where the year is over at the date of the log.
    /// </summary>
    public decimal StillToArise { get; init; }

    /// <summary>Sums that must come out, each with its difference, which is always 0.</summary>
    public required ImmutableArray<QuarterSum> Sums { get; init; }

    /// <summary>Which year was taken where none was named, and why, in a sentence; null where it needs no word.</summary>
    public string? Chosen { get; init; }

    /// <summary>Whether the calendar has passed the span, though facts are known only up to a day in it.</summary>
    public bool IsOver { get; init; }

    /// <summary>Whether facts are known up to a day in the span, not up to its end.</summary>
    public bool IsPart => Reckoned.To < Period.To;

    /// <summary>The books it was made of.</summary>
    internal CostBook? Books { get; init; }

    /// <summary>
    /// The year that is meant where none is named: the last calendar year that is over at the date of the log, or the running
    /// one where the log begins in it.
    /// </summary>
    /// <param name="log">The log, as of its date.</param>
    public static ReportPeriod UsualPeriod(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        ReportPeriod running = ReportPeriod.Of(new(log.Date.Year, 1, 1), new(log.Date.Year, 12, 31));
        return running.To <= log.Date || running.Before is not { } before || !(log.FirstFact() <= before.To) ? running : before;
    }

    /// <summary>The same sheet, with the line on a row that is worth a look where the profit hangs on one.</summary>
    /// <param name="log">The log it was made of.</param>
    /// <param name="rows">The rows that are worth a look, where they were looked for while the report was made.</param>
    public YearReport WithWorthALook(SalesLog log, Task<ImmutableArray<LogFinding>>? rows = null) => this with
    {
        WorthALook = RowsWorthALook.Sentence(
            log, Profit.Net, without => QuarterProfit.NetOf(without, Reckoned), "the profit", profit => MoneyText.Whole(profit, Workshop),
            Books is { } books ? finding => RowReach.OfProfit(log, books, finding, Profit.Net) : null, rows),
    };

    /// <summary>The sheet of a span.</summary>
    /// <param name="log">The log, as of its date.</param>
    /// <param name="period">The span; it may reach beyond the date of the log, but not begin after it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The span begins after the date of the log, or in the year 1.</exception>
    public static YearReport Of(SalesLog log, ReportPeriod period)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(period);
        if (QuarterReport.Refusal(log, period, "name an earlier span") is { } refusal)
            throw new ArgumentOutOfRangeException(nameof(period), period.Name, refusal);
        QuarterBooks books = new(log);
        ReportPeriod reckoned = period.UpTo(log.Date);
        var sales = QuarterSale.In(books, reckoned);
        var profit = QuarterProfit.Of(books, reckoned, sales);
        var cash = QuarterCash.Of(books, reckoned);
        var opening = QuarterStock.At(books, reckoned.From.AddDays(-1));
        ImmutableArray<SupplyCan> cans = books.Costs.CansOn(reckoned.To);
        var closing = QuarterStock.At(books, reckoned.To, cans);
        var moved = QuarterMovement.Of(books, reckoned);
        var goods = YearCostOfGoods.Of(books, reckoned, opening, closing, moved);
        var overheads = YearOverhead.In(books, reckoned);
        var tally = YearTally.Of(books, reckoned);
        decimal byRule = tally.Where(row => row.Line == "fees" && row.Column.EndsWith(Columns.WorkshopFile, StringComparison.Ordinal))
            .Sum(row => row.InYear);
        YearReport report = new()
        {
            Period = period,
            Reckoned = reckoned,
            AsOf = log.Date,
            Books = books.Costs,
            Workshop = log.Workshop,
            Profit = profit,
            Lines = YearLine.Of(profit, goods, overheads, QuarterHeld.In(books, reckoned), reckoned, byRule),
            CostOfGoods = goods,
            Sales = sales,
            Left = YearLeft.In(books, reckoned),
            Driving = YearDriving.Of(books, reckoned),
            Overheads = overheads,
            Tools = YearTool.At(books, reckoned),
            Stock = YearStockPiece.At(books, closing),
            Supplies = YearSupply.At(cans),
            Cash = cash,
            Tally = tally,
            StillToArise = reckoned == period ? 0 : books.Costs.StillToArise,
            Prompts = QuarterPrompts.For(books, reckoned, closing, cash),
            Lacking = QuarterReport.WhatIsLacking(log, withHours: false),
            Notes = books.Costs.Notes,
            Sums = [],
        };
        return report with
        {
            Prompts = [.. report.Prompts, .. YearPrompts.For(report)],
            Sums = YearSums.Of(books, report, opening, closing, moved),
        };
    }
}
