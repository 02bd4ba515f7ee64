using System.Collections.Immutable;
using System.CommandLine;
using FlipAnalytics.Plots;

namespace FlipAnalytics.Cli;

/// <summary><c>flip wages</c>: what each flip paid by the hour.</summary>
internal sealed class WagesCommand
{
    private readonly Option<WageGroupBy?> by = Values.Word<WageGroupBy>("--by", "Show one grouping in full");
    private readonly Option<string?> period = Values.Text(
        "--period", "Flips sold in this span alone, such as 2026, 2026-Q1, 2026-03 or 2026-01-01..2026-02-14.", "PERIOD");
    private readonly Option<decimal?> wage = Values.Number(
        "--wage", "What you want for an hour; target_wage in workshop.toml unless given.", NumberRange.Money);
    private readonly Option<string?> explain = Values.Text(
        "--explain", "Every line of one piece's money and hours, with its place in the log; also of a piece not sold.", "ID");
    private readonly Option<string?> tables = Values.Place("--tables", "Write the tables as CSV files into this folder.", "FOLDER");
    private readonly Option<string?> plot = Values.Picture(
        "Draw what each flip paid by the hour, over time, into this file.");
    private readonly Option<bool> all = Values.All();
    private readonly ForceOption force;
    private readonly LogOptions log;

    private WagesCommand(Command command)
    {
        foreach (Option option in new Option[] { by, period, wage, explain, tables, plot, all })
            command.Options.Add(option);
        force = new(command, [plot, tables]);
        log = new(command);
        command.SetAction(Run);
    }

    public static Command Create()
    {
        var command = new Command("wages",
            "What each flip paid by the hour, which lost money and why, and what your target wage would have refused.");
        ExamplesHelp.AddTo(command,
            "flip wages --log my-log",
            "flip wages --log my-log --by color --period 2026-Q1",
            "flip wages --log my-log --explain P0012",
            "flip wages --log my-log --tables wages-tables",
            "flip wages --log my-log --plot wages.png");
        _ = new WagesCommand(command);
        return command;
    }

    private int Run(ParseResult parsed)
    {
        ReportPeriod? span = null;
        if (parsed.GetValue(period) is { } text && (span = ReportPeriod.Parse(text)) is null)
        {
            throw new CommandProblemException(
                $"--period needs a year, quarter, month or span, such as 2026, 2026-Q1, 2026-03 or 2026-01-01..2026-02-14, {ReportPeriod.Years}; found '{text}'.");
        }

        bool replaces = force.IsGiven(parsed);
        if (parsed.GetValue(plot) is not null && parsed.GetValue(explain) is not null)
            throw new CommandProblemException("--plot draws all flips: leave out --explain, or leave out --plot.");
        OpenedLog opened = log.Open(parsed);
        if (opened.Log is not { } sales)
            return opened.ExitCode;
        if (parsed.GetValue(wage) is { } target)
            sales = sales with { Workshop = sales.Workshop with { TargetWage = target } };
        if (parsed.GetValue(explain) is { } id)
            Explain(parsed, opened, sales, id);
        else
            Report(parsed, opened, sales, span, replaces);
        return opened.ExitCode;
    }

    private void Explain(ParseResult parsed, OpenedLog opened, SalesLog sales, string id)
    {
        if (WageTrail.Refusal(sales, id) is { } refusal)
            throw new CommandProblemException(refusal);
        var trail = WageTrail.Of(sales, id);
        log.Print(parsed, opened, () => WagesJson.Render(trail), () => WageTrailText.Render(trail, sales.Workshop));
    }

    private void Report(ParseResult parsed, OpenedLog opened, SalesLog sales, ReportPeriod? span, bool replaces)
    {
        // The estimates are made, and rows that are worth a look looked for, while the books are written.
        Task<ImmutableDictionary<string, decimal>> estimates = Task.Run(() => HoursFilledIn.ByPiece(sales));
        var rows = Task.Run(() => RowsWorthALook.In(sales));
        WagesReport report = WagesReport.Of(sales, span).WithWorthALook(sales, rows) with { SetAside = opened.SetAside };
        report = report.FillIn(estimates.GetAwaiter().GetResult());
        if (parsed.GetValue(tables) is { } folder)
        {
            foreach (string path in ReportTableFiles.Write(report.Tables(), folder, replaces))
                Console.Error.WriteLine(path);
        }

        if (parsed.GetValue(plot) is { } picture)
            PlotFile.Save(WagePlot.Of(report), picture, replaces);
        log.Print(parsed, opened, () => WagesJson.Render(report), () => WagesText.Render(report, parsed.GetValue(by), parsed.GetValue(all)));
    }
}
