using System.CommandLine;
using FlipAnalytics.Plots;

namespace FlipAnalytics.Cli;

/// <summary><c>flip quarter</c>: did a quarter, a month, a year or any span of days pay?</summary>
internal sealed class QuarterCommand
{
    private readonly Argument<string?> span = new("SPAN")
    {
        Description = $"{ReportPeriod.Examples}; the last quarter that is over unless given.",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private readonly Option<string?> explain = new("--explain")
    {
        Description = "The parts of one line, down to file and row: overhead, fees, cash or another; without a word: which there are.",
        HelpName = "LINE",
        Arity = ArgumentArity.ZeroOrOne,
    };

    private readonly Option<string?> tables = Values.Place(
        "--tables", "Write the figures as CSV files into this folder, for a spreadsheet.", "FOLDER");

    private readonly Option<string?> plot = Values.Picture(
        "Draw profit, the spans before and the stock by age into this file.");

    private readonly Option<bool> keep = Values.Flag(
        "--keep", "Keep the figures with what they rest on beside the log; printed again, the page says what changed since.");

    private readonly Option<bool> all = Values.All();

    private readonly ForceOption force;

    private readonly LogOptions log;

    private QuarterCommand(Command command)
    {
        command.Arguments.Add(span);
        command.Options.Add(explain);
        command.Options.Add(tables);
        command.Options.Add(plot);
        command.Options.Add(keep);
        force = new(command, [keep, plot, tables], "With --keep, replace what was kept of the span before. ");
        command.Options.Add(all);
        log = new(command);
        command.SetAction(Run);
    }

    public static Command Create()
    {
        var command = new Command("quarter",
            "Did the quarter pay? Profit and loss, money in and out, what is tied up, what drove it and what to do next.");
        ExamplesHelp.AddTo(command,
            "flip quarter --log my-log",
            "flip quarter 2026-Q1 --log my-log",
            "flip quarter 2026-01-01..2026-02-14 --log my-log --json",
            "flip quarter 2026-Q1 --log my-log --explain overhead",
            "flip quarter 2026 --log my-log --tables figures",
            "flip quarter --log my-log --plot quarter.png",
            "flip quarter 2026-Q1 --log my-log --keep");
        _ = new QuarterCommand(command);
        return command;
    }

    private QuarterSinceKept? SinceKept(ParseResult parsed, QuarterReport report, SalesLog sales)
    {
        string folder = log.Folder(parsed);
        if (!parsed.GetValue(keep))
            return QuarterSinceKept.Of(QuarterKeptFile.Read(folder, report.Period), report, sales);
        if (QuarterKeptFile.Refusal(report, folder, force.IsGiven(parsed)) is { } refusal)
            throw new CommandProblemException(refusal);
        var kept = QuarterKept.Of(report, sales);
        QuarterKeptFile.Write(kept, folder);
        return QuarterSinceKept.JustKept(kept);
    }

    private int Run(ParseResult parsed)
    {
        bool replaces = force.IsGiven(parsed);
        ReportPeriod? period = null;
        if (parsed.GetValue(span) is { } text)
        {
            period = ReportPeriod.Parse(text) ?? throw new CommandProblemException(
                $"The span must be such as {ReportPeriod.Examples}, {ReportPeriod.Years}; found '{text}'.");
        }

        bool isTrail = parsed.GetResult(explain) is not null;
        string? word = parsed.GetValue(explain);
        if (isTrail && QuarterLine.Refusal(word) is { } unknown)
            throw new CommandProblemException(unknown);
        if (isTrail && parsed.GetValue(keep))
            throw new CommandProblemException("--keep keeps the whole quarter: leave out --explain, or leave out --keep.");
        if (isTrail && parsed.GetValue(plot) is not null)
            throw new CommandProblemException("--plot draws the whole quarter: leave out --explain, or leave out --plot.");
        OpenedLog opened = log.Open(parsed);
        if (opened.Log is not { } sales)
            return opened.ExitCode;
        period ??= QuarterReport.UsualPeriod(sales);
        if (QuarterReport.Refusal(sales, period, "--as-of names another") is { } refusal)
            throw new CommandProblemException(refusal);
        if (isTrail)
            Explain(parsed, opened, QuarterTrail.Of(sales, period, word!) with { SetAside = opened.SetAside }, sales.Workshop);
        else
            Report(parsed, opened, sales, period, replaces);
        return opened.ExitCode;
    }

    private void Explain(ParseResult parsed, OpenedLog opened, QuarterTrail trail, Workshop workshop)
    {
        if (parsed.GetValue(tables) is { } folder)
            ReportTableFiles.Write([trail.Table()], folder, force.IsGiven(parsed));
        log.Print(parsed, opened,
            () => QuarterTrailJson.Render(trail, workshop), () => QuarterTrailText.Render(trail, workshop, parsed.GetValue(all)));
    }

    private void Report(ParseResult parsed, OpenedLog opened, SalesLog sales, ReportPeriod period, bool replaces)
    {
        // A log left alone is known up to its last entry; whether the span is over is for the calendar to say.
        bool isLeftAlone = opened.Sentence is not null;
        var rows = Task.Run(() => RowsWorthALook.In(sales));
        QuarterReport report = QuarterReport.Of(sales, period).WithWorthALook(sales, rows) with
        {
            Chosen = isLeftAlone && parsed.GetValue(span) is null ? QuarterSentences.Chosen(sales, period) : null,
            IsOver = isLeftAlone && Clock.Today > period.To,
            SetAside = opened.SetAside,
        };
        report = report with { SinceKept = SinceKept(parsed, report, sales) };
        if (parsed.GetValue(tables) is { } folder)
            ReportTableFiles.Write(QuarterTables.Of(report), folder, replaces);
        if (parsed.GetValue(plot) is { } picture)
            PlotFile.Save(QuarterPlot.Of(report), picture, replaces);
        log.Print(parsed, opened, () => QuarterJson.Render(report), () => QuarterText.Render(report, parsed.GetValue(all)));
    }
}
