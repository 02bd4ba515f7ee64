using System.Collections.Immutable;
using System.CommandLine;

namespace FlipAnalytics.Cli;

/// <summary><c>flip year</c>: the sheet of a year for whoever prepares the tax return.</summary>
internal sealed class YearCommand
{
    private readonly Argument<string?> year = new("YEAR")
    {
        Description = "A year (2025), or two days joined by two points, such as 2025-04-06..2026-04-05; the last year that is over unless given.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private readonly Option<string?> folder = Values.Place(
        "--out", "Write the whole sheet into this folder: year.txt, and a CSV file for each list.", "FOLDER");

    private readonly Option<string?> journal = Values.Place(
        "--journal", "Write the books of the year in double entry into this file, for hledger or ledger.", "FILE");

    private readonly Option<bool> force = Values.Flag(
        "--force", "With --out or --journal: replace files that flip year did not write, or that changed since. A file of a log is never replaced.");

    private readonly Option<bool> all = Values.All();

    private readonly LogOptions log;

    private YearCommand(Command command)
    {
        command.Arguments.Add(year);
        command.Options.Add(folder);
        command.Options.Add(journal);
        command.Options.Add(force);
        command.Options.Add(all);
        log = new(command);
        command.SetAction(Run);
    }

    public static Command Create()
    {
        var command = new Command("year",
            "The sheet for your tax preparer: receipts, cost of goods sold, costs, driving, tools and stock of a year, and what to ask.");
        ExamplesHelp.AddTo(command,
            "flip year --log my-log",
            "flip year 2025 --log my-log --all",
            "flip year 2025-04-06..2026-04-05 --log my-log",
            "flip year 2025 --log my-log --out tax-2025",
            "flip year 2025 --log my-log --journal 2025.journal",
            "flip year 2025 --log my-log --json");
        _ = new YearCommand(command);
        return command;
    }

    private int Run(ParseResult parsed)
    {
        ReportPeriod? period = null;
        if (parsed.GetValue(year) is { } text)
        {
            period = ReportPeriod.Parse(text) ?? throw new CommandProblemException(
                $"The year must be such as 2025, or two days such as 2025-04-06..2026-04-05, {ReportPeriod.Years}; found '{text}'.");
        }

        if (parsed.GetValue(force) && parsed.GetValue(folder) is null && parsed.GetValue(journal) is null)
            throw new CommandProblemException("--force replaces files, so it needs --out FOLDER or --journal FILE.");
        OpenedLog opened = log.Open(parsed);
        if (opened.Log is not { } sales)
            return opened.ExitCode;
        period ??= YearReport.UsualPeriod(sales);
        if (QuarterReport.Refusal(sales, period, "--as-of names another") is { } refusal)
            throw new CommandProblemException(refusal);
        // A log left alone is known up to its last entry; whether the year is over is for the calendar to say.
        bool isLeftAlone = opened.Sentence is not null;
        var rows = Task.Run(() => RowsWorthALook.In(sales));
        YearReport report = YearReport.Of(sales, period).WithWorthALook(sales, rows) with
        {
            Chosen = isLeftAlone && parsed.GetValue(year) is null ? YearSentences.Chosen(sales, period) : null,
            IsOver = isLeftAlone && Clock.Today > period.To,
            SetAside = opened.SetAside,
        };
        ImmutableArray<YearFile> written = Write(parsed, report);
        (WrittenJournal File, string Sentence)? books = WriteJournal(parsed, sales, period);
        log.Print(parsed, opened, () => YearJson.Render(report, written, books?.File), () =>
            YearText.Render(report, parsed.GetValue(all))
                + (written.IsEmpty ? "" : "\n" + YearText.Wrapped(YearFiles.Sentence(written, parsed.GetValue(folder)!)))
                + (books is null ? "" : "\n" + YearText.Wrapped(books.Value.Sentence)));
        return opened.ExitCode;
    }

    private ImmutableArray<YearFile> Write(ParseResult parsed, YearReport report)
    {
        if (parsed.GetValue(folder) is not { } into)
            return [];
        if (!parsed.GetValue(force) && YearFiles.Refusal(report, into) is { } refusal)
            throw new CommandProblemException(refusal);
        return YearFiles.Write(report, into);
    }

    private (WrittenJournal File, string Sentence)? WriteJournal(ParseResult parsed, SalesLog sales, ReportPeriod period)
    {
        if (parsed.GetValue(journal) is not { } file)
            return null;
        Journal books = Journal.Of(sales, period);
        if (!parsed.GetValue(force) && JournalFile.Refusal(books, file) is { } refusal)
            throw new CommandProblemException(refusal);
        return (JournalFile.Write(books, file), JournalFile.Sentence(books, file));
    }
}
