
namespace FlipAnalytics.Notebooks;

/// <summary>A log opened for a notebook.</summary>
/// <param name="Folder">Full path of the folder it was read from.</param>
/// <param name="Reading">What came of reading it, problems included.</param>
/// <param name="AsOf">The date up to which facts count, and why.</param>
/// <param name="Log">The log as it was known at that date.</param>
public sealed record NotebookLog(string Folder, LogReading Reading, AsOfDate AsOf, SalesLog Log)
{
    /// <summary>
    /// Opens a log. A relative folder is looked for in the current folder and then in those above it, because Jupyter
    /// starts in the notebook's folder and the command where the user stands.
    /// </summary>
    /// <param name="folder">Folder of the log.</param>
    /// <param name="today">Today.</param>
    /// <param name="asOf">Date up to which facts count; null for today, or the last entry of a log left alone.</param>
    /// <exception cref="NotebookException">There is no log to read; the message says what to do.</exception>
    public static NotebookLog Open(string folder, DateOnly today, DateOnly? asOf)
    {
        LogReading reading = Read(folder);
        if (reading.Log is not { } log)
            throw new NotebookException(string.Join('\n', reading.Problems));
        var date = AsOfDate.Choose(log, today, asOf);
        return new(Find(folder), reading, date, log.AsOf(date.Date));
    }

    /// <summary>Reads a log without asking that it can be used; the folder is looked for as in <see cref="Open"/>.</summary>
    /// <param name="folder">Folder of the log.</param>
    public static LogReading Read(string folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        return SalesLogReader.Read(Find(folder));
    }

    /// <summary>The span of days that a text names.</summary>
    /// <param name="span">Such as 2026-Q1, 2026-01, 2026 or 2026-01-01..2026-02-14; null for the last quarter that is over.</param>
    /// <exception cref="NotebookException">It names none, or one after the date of the log.</exception>
    public ReportPeriod Period(string? span)
    {
        ReportPeriod period = span is null ? QuarterReport.UsualPeriod(Log) : ReportPeriod.Parse(span)
            ?? throw new NotebookException($"The span must be such as {ReportPeriod.Examples}, {ReportPeriod.Years}; found '{span}'.");
        return QuarterReport.Refusal(Log, period, "name an earlier span, or a later day as asOf") is { } refusal
            ? throw new NotebookException(refusal)
            : period;
    }

    /// <summary>The span of days that a text names, or all time.</summary>
    /// <param name="span">As for <see cref="Period"/>; null for all time.</param>
    /// <exception cref="NotebookException">It names none, or one after the date of the log.</exception>
    public ReportPeriod? PeriodOrAll(string? span) => span is null ? null : Period(span);

    internal static HtmlPart Show(NotebookLog opened) => new Html()
        .Paragraph(opened.AsOf.Sentence ?? Html.Invariant($"As of {opened.AsOf.Date:yyyy-MM-dd}."))
        .Content();

    private static string Find(string folder)
    {
        if (Path.IsPathRooted(folder))
            return folder;
        for (DirectoryInfo? above = new(Directory.GetCurrentDirectory()); above is not null; above = above.Parent)
        {
            string path = Path.Combine(above.FullName, folder);
            if (Directory.Exists(path))
                return path;
        }

        return folder;
    }
}
