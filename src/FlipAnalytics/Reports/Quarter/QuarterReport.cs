using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Did a quarter pay? What was earned, what is tied up, what drove it and what to do next, for any span of days.</summary>
/// <remarks>
/// The report rests on one set of books: those of the whole log as of its date, not of the log as of the end of the span. So
/// what is learned later, such as a can that turns out to have served two more pieces, changes an earlier span a little; in
/// return every flow depends on its own day alone, rent and wear on the days of their month, a span is exactly the sum of its
/// parts wherever it is split, and one span closes with what the next opens with. Facts without a day belong to no span and
/// are listed.
/// </remarks>
public sealed record QuarterReport
{
    /// <summary>The span asked for.</summary>
    public required ReportPeriod Period { get; init; }

    /// <summary>The days of it that have gone by: the whole span, or up to the date of the log.</summary>
    public required ReportPeriod Reckoned { get; init; }

    /// <summary>The date up to which facts are known.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>The workshop's settings.</summary>
    public required Workshop Workshop { get; init; }

    /// <summary>Whether what was kept of the span still holds; null where nothing was kept.</summary>
    public QuarterSinceKept? SinceKept { get; init; }

    /// <summary>Profit and loss.</summary>
    public required QuarterProfit Profit { get; init; }

    /// <summary>Hours and the profit an hour.</summary>
    public required QuarterHours Hours { get; init; }

    /// <summary>Money in and out.</summary>
    public required QuarterCash Cash { get; init; }

    /// <summary>Stock on the evening before the span.</summary>
    public required QuarterStock Opening { get; init; }

    /// <summary>Stock on its last evening.</summary>
    public required QuarterStock Closing { get; init; }

    /// <summary>
    /// Every purchase of supplies made by the last evening, and what became of it: the values left add up to what the closing
    /// stock has in cans.
    /// </summary>
    public required ImmutableArray<SupplyCan> Cans { get; init; }

    /// <summary>How stock moved between the two.</summary>
    public required QuarterMovement Moved { get; init; }

    /// <summary>Ratios.</summary>
    public required QuarterRatios Ratios { get; init; }

    /// <summary>Pieces that came, went and moved on.</summary>
    public required QuarterCounts Counts { get; init; }

    /// <summary>The pieces sold, in the order of the log.</summary>
    public required ImmutableArray<QuarterSale> Sales { get; init; }

    /// <summary>Pieces that came back and money given back in the span, in the order of the log.</summary>
    public required ImmutableArray<QuarterReturn> Returns { get; init; }

    /// <summary>Against the span before; of as many days where this one is not over; null before the year 2.</summary>
    public required QuarterChange? AgainstBefore { get; init; }

    /// <summary>Against the same span a year earlier; null where that is the span before, or lies before the year 2.</summary>
    public required QuarterChange? AgainstYearEarlier { get; init; }

    /// <summary>What to do next, the most pressing first.</summary>
    public required ImmutableArray<QuarterStep> Steps { get; init; }

    /// <summary>Money outside profit: of the tax office, buyers, owners of pieces, and the owner's own; those without any left out.</summary>
    public required ImmutableArray<QuarterHeld> Held { get; init; }

    /// <summary>Questions for a tax professional.</summary>
    public required ImmutableArray<QuarterPrompt> Prompts { get; init; }

    /// <summary>Facts of the whole log that belong to no span, for want of a day.</summary>
    public required ImmutableArray<QuarterUndated> Undated { get; init; }

    /// <summary>What the log does not hold at all and the figures therefore leave out: a sentence each.</summary>
    public required ImmutableArray<string> Lacking { get; init; }

    /// <summary>The rules of thumb that the figures rest on, in the owner's words.</summary>
    public ImmutableArray<string> Rules { get; init; } = [];

    /// <summary>What is unknown, assumed or contradictory in the books of the whole log: a sentence each.</summary>
    public required ImmutableArray<string> Notes { get; init; }

    /// <summary>Rows of the log that could not be used and are in no figure.</summary>
    public ImmutableArray<RowsSetAside> SetAside { get; init; } = [];

    /// <summary>The line on a row that is worth a look and on which the answer hangs; null where there is none.</summary>
    public string? WorthALook { get; init; }

    /// <summary>
    /// Overheads and wear of the month that the log ends in that fall on its days to come, and so are in no figure of this
    /// span; 0 where the span is over at the date of the log.
    /// </summary>
    public decimal StillToArise { get; init; }

    /// <summary>Sums that must come out, each with its difference, which is always 0.</summary>
    public required ImmutableArray<QuarterSum> Sums { get; init; }

    /// <summary>Which span was taken where none was named, and why, in a sentence; null where it needs no word.</summary>
    public string? Chosen { get; init; }

    /// <summary>
    /// Whether the calendar has passed the span, though facts are known only up to a day in it: a log that was left alone.
    /// </summary>
    public bool IsOver { get; init; }

    /// <summary>Whether facts are known up to a day in the span, not up to its end.</summary>
    public bool IsPart => Reckoned.To < Period.To;

    /// <summary>Whether the span is still running.</summary>
    public bool IsSoFar => IsPart && !IsOver;

    /// <summary>The books it was made of.</summary>
    internal CostBook? Books { get; init; }

    /// <summary>
    /// The span that is meant where none is named: the last quarter that is over at the date of the log, or the current one
    /// where the log begins in it.
    /// </summary>
    /// <param name="log">The log, as of its date.</param>
    public static ReportPeriod UsualPeriod(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        var current = ReportPeriod.QuarterOf(log.Date);
        return current.To <= log.Date || current.Before is not { } before || !(log.FirstFact() <= before.To) ? current : before;
    }

    /// <summary>The same report, with the line on a row that is worth a look where the profit hangs on one.</summary>
    /// <param name="log">The log it was made of.</param>
    /// <param name="rows">The rows that are worth a look, where they were looked for while the report was made.</param>
    public QuarterReport WithWorthALook(SalesLog log, Task<ImmutableArray<LogFinding>>? rows = null) => this with
    {
        WorthALook = RowsWorthALook.Sentence(
            log, Profit.Net, without => QuarterProfit.NetOf(without, Reckoned), "the profit", profit => MoneyText.Whole(profit, Workshop),
            Books is { } books ? finding => RowReach.OfProfit(log, books, finding, Profit.Net) : null, rows),
    };

    /// <summary>Why there is no report of a span, in a sentence; null where there is one.</summary>
    /// <param name="log">The log, as of its date.</param>
    /// <param name="period">The span.</param>
    /// <param name="remedy">What to do about a span that begins after the date of the log.</param>
    public static string? Refusal(SalesLog log, ReportPeriod period, string remedy)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(period);
        return period.From > log.Date
            ? FormattableString.Invariant(
                $"{period.Name} begins after {log.Date:yyyy-MM-dd}, the day up to which the log is known; {remedy}.")
            : period.From.Year < 2 ? $"{period.Name} begins before the year 2; name a later span." : null;
    }

    /// <summary>The report of a span.</summary>
    /// <param name="log">The log, as of its date.</param>
    /// <param name="period">The span; it may reach beyond the date of the log, but not begin after it.</param>
    /// <exception cref="ArgumentOutOfRangeException">The span begins after the date of the log, or in the year 1.</exception>
    public static QuarterReport Of(SalesLog log, ReportPeriod period)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(period);
        if (Refusal(log, period, "name an earlier span") is not null)
        {
            throw new ArgumentOutOfRangeException(nameof(period), period.Name, FormattableString.Invariant(
                $"The span must begin in the year 2 or later and not after {log.Date:yyyy-MM-dd}, the day up to which the log is known."));
        }

        QuarterBooks books = new(log);
        ReportPeriod reckoned = period.UpTo(log.Date);
        var sales = QuarterSale.In(books, reckoned);
        var profit = QuarterProfit.Of(books, reckoned, sales);
        var hours = QuarterHours.Of(books, reckoned, sales, profit);
        var cash = QuarterCash.Of(books, reckoned);
        var opening = QuarterStock.At(books, reckoned.From.AddDays(-1));
        ImmutableArray<SupplyCan> cans = books.Costs.CansOn(reckoned.To);
        var closing = QuarterStock.At(books, reckoned.To, cans);
        var moved = QuarterMovement.Of(books, reckoned);
        var held = QuarterHeld.In(books, reckoned);
        return new()
        {
            Period = period,
            Reckoned = reckoned,
            AsOf = log.Date,
            Books = books.Costs,
            Workshop = log.Workshop,
            Profit = profit,
            Hours = hours,
            Cash = cash,
            Opening = opening,
            Closing = closing,
            Cans = cans,
            Moved = moved,
            Held = held,
            Ratios = QuarterRatios.Of(books, reckoned, profit),
            Counts = QuarterCounts.Of(log, reckoned),
            Sales = sales,
            Returns = QuarterReturn.In(books, reckoned),
            AgainstBefore = Against(period.Before),
            AgainstYearEarlier = period.YearEarlier == period.Before ? null : Against(period.YearEarlier),
            Steps = new QuarterSteps(books, reckoned, closing, sales).Find(),
            Prompts = QuarterPrompts.For(books, reckoned, closing, cash),
            Undated = QuarterUndated.Of(books),
            StillToArise = reckoned == period ? 0 : books.Costs.StillToArise,
            Lacking = WhatIsLacking(log),
            Rules = QuarterRules.Of(books, reckoned),
            Notes = books.Costs.Notes,
            Sums = QuarterSums.Of(books, reckoned, opening, closing, moved, held, profit, cash, sales),
        };

        // A quarter that has just begun is compared with as many days of the one before.
        QuarterChange? Against(ReportPeriod? earlier) => earlier is null || earlier.From.Year < 2 ? null
            : QuarterChange.Of(
                books,
                reckoned == period || reckoned.Days >= earlier.Days ? earlier
                    : ReportPeriod.Of(earlier.From, earlier.From.AddDays(reckoned.Days - 1)),
                sales, profit, hours);
    }

    /// <summary>What a log does not hold at all, a sentence each.</summary>
    internal static ImmutableArray<string> WhatIsLacking(SalesLog log, bool withHours = true)
    {
        string[] costs =
        [
            .. new (LogTable Table, CostKind Kind)[]
            {
                (Columns.Supplies, CostKind.Supplies),
                (Columns.Trips, CostKind.Trip),
                (Columns.Tools, CostKind.Tools),
                (Columns.Overheads, CostKind.Overhead),
            }.Where(cost => !CostRecord.Has(log, cost.Kind)).Select(cost => cost.Table.File),
        ];
        return
        [
            .. costs.Length == 0 ? Array.Empty<string>()
                : [$"Not in the log, so not in the costs: {string.Join(", ", costs)}. The true profit is lower by what they would hold."],
            .. withHours && log.Hours.IsEmpty && log.Pieces.All(piece => piece.Hours is null)
                ? ["No hours are written down anywhere, so nothing can be said about an hour."] : Array.Empty<string>(),
        ];
    }
}
