using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>One part of a line of the quarter, with where it comes from.</summary>
public sealed record QuarterTrailPart
{
    /// <summary>Heading under which it stands, such as a piece or an item; null where the parts stand in no groups.</summary>
    public string? Group { get; init; }

    /// <summary>A few words.</summary>
    public required string What { get; init; }

    /// <summary>The piece it belongs to; null for none.</summary>
    public string? Id { get; init; }

    /// <summary>
    /// What sort of amount it is among its neighbours, such as purchases or supplies; where that is the word of a line of the
    /// quarter, the word opens that line. Null where all are of one sort.
    /// </summary>
    public string? Sort { get; init; }

    /// <summary>The day; null where the log does not say, or where the part is of several days.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>File of the log; null for a part that is itself a line of the quarter.</summary>
    public string? File { get; init; }

    /// <summary>Line of the file; null where it rests on no single line.</summary>
    public int? Row { get; init; }

    /// <summary>How the amount follows from there: a sentence; null for a part that is itself a line of the quarter.</summary>
    public string? Rule { get; init; }

    /// <summary>Money, or hours, with the sign with which it enters the line.</summary>
    public required decimal Amount { get; init; }

    internal static QuarterTrailPart Of(CostOrigin origin, string what, DateOnly? date, decimal amount) =>
        new() { What = what, Date = date, File = origin.File, Row = origin.Row, Rule = origin.Rule, Amount = amount };
}

/// <summary>One line of the quarter opened: every part of it, down to file, row and rule. The parts add up to the line.</summary>
public sealed record QuarterTrail
{
    /// <summary>The date up to which facts are known.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>The span asked for.</summary>
    public required ReportPeriod Period { get; init; }

    /// <summary>The days of it that have gone by.</summary>
    public required ReportPeriod Reckoned { get; init; }

    /// <summary>The line, with the word that opens it and what it is.</summary>
    public required QuarterLine Line { get; init; }

    /// <summary>The line's figure, as the report has it: money, or hours.</summary>
    public required decimal Total { get; init; }

    /// <summary>Number of things it comes from.</summary>
    public required int Count { get; init; }

    /// <summary>What these are, in the singular, such as piece or trip.</summary>
    public required string Noun { get; init; }

    /// <summary>The parts; those of a group stand together.</summary>
    public required ImmutableArray<QuarterTrailPart> Parts { get; init; }

    /// <summary>What the log does not tell of this line, and what stands beside it: a sentence each.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];

    /// <summary>Rows of the log that could not be used and are in no part.</summary>
    public ImmutableArray<RowsSetAside> SetAside { get; init; } = [];

    /// <summary>All parts less the line's figure: always 0.</summary>
    public decimal Difference => Parts.Sum(part => part.Amount) - Total;

    /// <summary>The trail of a line.</summary>
    /// <param name="log">The log, as of its date.</param>
    /// <param name="period">The span, as <see cref="QuarterReport.Of(SalesLog, ReportPeriod)"/> takes it.</param>
    /// <param name="word">Word of the line, as <see cref="QuarterLine.All"/> has it.</param>
    /// <exception cref="ArgumentException">There is no such line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The span begins after the date of the log, or in the year 1.</exception>
    public static QuarterTrail Of(SalesLog log, ReportPeriod period, string word)
    {
        if (QuarterLine.Refusal(word) is { } refusal)
            throw new ArgumentException(refusal, nameof(word));
        QuarterReport report = QuarterReport.Of(log, period);
        return Of(new(log), report, QuarterLine.Find(word)!);
    }

    /// <summary>The trail of a line, from the books that the report was made of.</summary>
    internal static QuarterTrail Of(QuarterBooks books, QuarterReport report, QuarterLine line) => line.Word switch
    {
        QuarterLine.Profit => QuarterTrailResult.Profit(report),
        QuarterLine.GrossProfit => QuarterTrailResult.GrossProfit(report),
        QuarterLine.Tools => QuarterTrailUpkeep.Tools(books, report),
        QuarterLine.Overhead => QuarterTrailUpkeep.Overhead(books, report),
        QuarterLine.BookValue => QuarterTrailUpkeep.BookValue(books, report),
        QuarterLine.Cash => QuarterTrailCash.Cash(books, report),
        QuarterLine.Held => QuarterTrailCash.Held(books, report),
        QuarterLine.Driving => QuarterTrailCash.Driving(books, report),
        QuarterLine.Stock => QuarterTrailStock.Pieces(books, report),
        QuarterLine.SuppliesLost => QuarterTrailStock.Lost(books, report),
        QuarterLine.Cans => QuarterTrailStock.Cans(books, report),
        QuarterLine.Hours => QuarterTrailHours.Of(books, report),
        _ => QuarterTrailPieces.Of(books, report, line.Word),
    };

    internal static QuarterTrail Of(
        QuarterReport report, string word, decimal total, int count, string noun, IEnumerable<QuarterTrailPart> parts,
        IEnumerable<string>? notes = null) => new()
        {
            AsOf = report.AsOf,
            Period = report.Period,
            Reckoned = report.Reckoned,
            Line = QuarterLine.Find(word)!,
            Total = total,
            Count = count,
            Noun = noun,
            Parts = [.. parts],
            Notes = [.. (notes ?? []).Distinct()],
            SetAside = report.SetAside,
        };

    /// <summary>What belongs to a line but to no span, for want of a day: a sentence a kind.</summary>
    internal static IEnumerable<string> Undated(QuarterReport report, params string[] what) => report.Undated
        .Where(facts => what.Contains(facts.What))
        .Select(facts => Invariant(
            $"In no {report.Period.Noun}, since the day is not written down ({facts.Column}): {facts.Count} {facts.What}."));

    /// <summary>The same as a table, a row a part.</summary>
    public ReportTable Table() => ReportTable.Of(
        $"quarter-{Line.Word}",
        $"{Line.Word} of {Period.Name}, part by part",
        Parts,
        ("group", "heading under which it stands", part => part.Group),
        ("id", "the piece it belongs to", part => part.Id),
        ("what", "what it is", part => part.What),
        ("sort", "sort of amount", part => part.Sort),
        ("date", "the day; empty where unknown or of several days", part => part.Date),
        ("amount", Line.IsHours ? "hours" : "money, with the sign with which it enters the line", part => part.Amount),
        ("file", "file of the log", part => part.File),
        ("line", "line of the file", part => part.Row is > 0 ? part.Row : null),
        ("rule", "how the amount follows from there", part => part.Rule));
}
