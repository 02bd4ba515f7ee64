using System.Collections.Immutable;
using System.CommandLine;

namespace FlipAnalytics.Cli;

/// <summary>The options of every verb that reads a log, and the log they name.</summary>
internal sealed class LogOptions
{
    private const int ProblemsShown = 5;

    private readonly Option<string?> folder = Values.Place(
        "--log", "Folder of the log; the current folder unless given.", "FOLDER");

    private readonly Option<DateOnly?> asOf = Values.AsOf();

    public LogOptions(Command command)
    {
        command.Options.Add(folder);
        command.Options.Add(asOf);
        command.Options.Add(Json);
    }

    public Option<bool> Json { get; } = Values.Flag("--json", "Print one JSON document instead of text.");

    public string Folder(ParseResult parsed) => parsed.GetValue(folder) ?? ".";

    /// <summary>Reads the log, tells on standard error what could not be used, and looks at it as of the date.</summary>
    public OpenedLog Open(ParseResult parsed)
    {
        LogReading reading = SalesLogReader.Read(Folder(parsed));
        LogProblem[] errors = [.. reading.Problems.Where(p => p.Severity == Severity.Error)];
        foreach (LogProblem problem in errors.Take(ProblemsShown))
            Console.Error.WriteLine(problem);
        if (errors.Length > ProblemsShown)
            Console.Error.WriteLine($"... and {errors.Length - ProblemsShown} more: flip check lists them all.");
        if (reading.Log is null)
            return new(null, null, ExitCode.DataProblem, []);

        AsOfDate date = AsOfDate.Choose(reading.Log, Clock.Today, parsed.GetValue(asOf));
        return new(
            reading.Log.AsOf(date.Date),
            date.Lines,
            errors.Length > 0 ? ExitCode.DataProblem : ExitCode.Done,
            RowsSetAside.Of(reading))
        {
            TurnsOnToday = date.Date == Clock.Today && Clock.Matters(reading.Log),
        };
    }

    /// <summary>Prints an answer as one JSON document, or as text with the reason for its date below.</summary>
    public void Print(ParseResult parsed, OpenedLog opened, Func<string> json, Func<string> text)
    {
        bool isJson = parsed.GetValue(Json);
        Console.Out.Write(isJson ? json() : text());
        if (!isJson && opened.Sentence is { } sentence)
            Console.Out.Write($"\n{sentence}");
        else if (!isJson && opened.TurnsOnToday)
            Console.Out.Write($"\n{Clock.Sentence}");
    }
}

/// <summary>A log ready for a report.</summary>
/// <param name="Log">The log as of the date; null if it could not be read.</param>
/// <param name="Sentence">Why the date is not today, in lines that end in a line feed; null where it is what one would expect.</param>
/// <param name="ExitCode">What to end with after the report.</param>
/// <param name="SetAside">Rows of it that could not be used.</param>
internal sealed record OpenedLog(SalesLog? Log, string? Sentence, int ExitCode, ImmutableArray<RowsSetAside> SetAside)
{
    /// <summary>Whether something is dated today or tomorrow, so that in another time zone the answer would be another.</summary>
    public bool TurnsOnToday { get; init; }
}
