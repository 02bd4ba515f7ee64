using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A cell that is another now.</summary>
/// <param name="Column">Its column.</param>
/// <param name="Kept">As it was kept; null where it was empty.</param>
/// <param name="Now">As it is now; null where it is empty.</param>
public sealed record QuarterKeptCell(string Column, string? Kept, string? Now);

/// <summary>Why a figure differs from what was kept, and by how much.</summary>
/// <param name="Why">
/// added, removed, changed (a row), setting, several (rows taken together), reckoning (the same facts give another figure now),
/// later (the log is known up to a later day) or sharing (what is left when every fact has been followed).
/// </param>
/// <param name="File">File of the log; null where it rests on no single file.</param>
/// <param name="Line">Line of that file now, or where the row was removed its line then; null for no single row.</param>
/// <param name="What">The row or the setting, in a few words.</param>
/// <param name="Cells">Cells that differ.</param>
/// <param name="IsLater">Whether it became known only after the day on which the span was kept.</param>
/// <param name="Text">The whole in words.</param>
/// <param name="Amount">Its part of the difference; null where one of the figures is unknown.</param>
public sealed record QuarterKeptCause(
    string Why, string? File, int? Line, string What, ImmutableArray<QuarterKeptCell> Cells, bool IsLater, string Text, decimal? Amount);

/// <summary>A figure that is not what was kept.</summary>
/// <param name="Part">profit, hours, money or stock.</param>
/// <param name="Line">Name of the line.</param>
/// <param name="Unit">"money", "hours" or "pieces".</param>
/// <param name="Kept">As kept; null where it was unknown.</param>
/// <param name="Now">As it is; null where it is unknown.</param>
/// <param name="Difference">Now less kept; null where one is unknown.</param>
/// <param name="Causes">Why; the amounts add up to the difference.</param>
public sealed record QuarterLineSinceKept(
    string Part, string Line, string Unit, decimal? Kept, decimal? Now, decimal? Difference, ImmutableArray<QuarterKeptCause> Causes);

/// <summary>Whether a span that was kept still holds, and if not what has changed since and why.</summary>
/// <remarks>
/// The kept file holds the facts, so the figures are reckoned again from these, then with one changed fact after another in the
/// order of the files, up to the log of today; each step's change of a figure is that fact's part. The parts add up to the
/// difference whatever the order; where two changed facts act on the same share, the order decides which of them bears it.
/// </remarks>
/// <param name="File">The kept file, seen from the folder of the log.</param>
/// <param name="Kept">Date up to which facts were known when it was kept; null where the file cannot be used.</param>
/// <param name="AsOf">Date up to which facts are known on this page.</param>
/// <param name="Trouble">Why nothing is compared; null where it is.</param>
/// <param name="Lines">Figures that differ.</param>
/// <param name="ChangedFacts">Rows and settings up to the kept date that are others now.</param>
/// <param name="LaterFacts">Rows that became known after the kept date.</param>
/// <param name="IsJustKept">Whether it was kept by this very run.</param>
public sealed record QuarterSinceKept(
    string File, DateOnly? Kept, DateOnly AsOf, string? Trouble, ImmutableArray<QuarterLineSinceKept> Lines, int ChangedFacts,
    int LaterFacts, bool IsJustKept = false)
{
    /// <summary>Whether every figure is what it was; false where nothing could be compared.</summary>
    public bool Holds => Trouble is null && Lines.IsEmpty;

    /// <summary>Whether figures differ only because more is known than then: no fact of that time has changed.</summary>
    public bool HoldsAsKnownThen => Trouble is null && ChangedFacts == 0
        && Lines.All(line => line.Causes.All(cause => cause.IsLater || cause.Why == QuarterKeptWords.Sharing.Why));

    /// <summary>What is said of a span that has just been kept.</summary>
    /// <param name="kept">What was kept.</param>
    public static QuarterSinceKept JustKept(QuarterKept kept)
    {
        ArgumentNullException.ThrowIfNull(kept);
        return new(QuarterKeptFile.NameOf(kept.Period), kept.AsOf, kept.AsOf, null, [], 0, 0, IsJustKept: true);
    }

    /// <summary>What became of a kept span; null where none was kept.</summary>
    /// <param name="reading">What the folder of the log holds.</param>
    /// <param name="report">The report of the span now.</param>
    /// <param name="log">The log it was made of, as of its date.</param>
    public static QuarterSinceKept? Of(QuarterKeptReading reading, QuarterReport report, SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(log);
        string file = QuarterKeptFile.NameOf(report.Period);
        if (reading.Kept is not { } kept)
            return reading.Trouble is { } trouble ? new(file, null, report.AsOf, trouble, [], 0, 0) : null;
        if (kept.Currency != report.Workshop.Currency.Code)
        {
            return new(file, kept.AsOf, report.AsOf,
                $"{file} was kept in {kept.Currency}, and the log is in {report.Workshop.Currency.Code} now: amounts of two currencies are not compared.",
                [], 0, 0);
        }

        return QuarterKeptFacts.Read(kept.Facts, kept.AsOf, kept.Settings.Over(log.Workshop)) is { } facts
            ? new QuarterKeptComparison(kept, facts.Log, facts.LineOf, report, log).Compare(file)
            : new(file, kept.AsOf, report.AsOf,
                $"The facts in {file} cannot be read as rows of this log's tables, so nothing is compared.", [], 0, 0);
    }
}
