using System.CommandLine;
using FlipAnalytics.Plots;

namespace FlipAnalytics.Cli;

/// <summary><c>flip fit</c>: the terms of a fitted model, for those who want to look inside or refit it elsewhere.</summary>
internal sealed class FitCommand
{
    private readonly Option<ModelName?> model = Values.Word<ModelName>("--model", "What to model");
    private readonly Option<Estimator?> estimator = Values.Word<Estimator>(
        "--estimator", "Shrunk effects, or textbook least squares; mixed unless given");
    private readonly Option<bool> plain = Values.Flag(
        "--plain", "Leave out what other software cannot fit: drift, guesses and expectations; for days the shrunk groups too.");
    private readonly Option<string?> design = Values.Place(
        "--design", "Write the data as fitted to this file, to refit the model elsewhere; needs --plain or --estimator ols.", "FILE.csv");
    private readonly Option<string?> plot = Values.Picture(
        "Draw the model into this file: predicted against actual; with --estimator ols what it leaves over; for days how long each type stays on sale.");
    private readonly Option<bool> all = Values.All();
    private readonly ForceOption force;
    private readonly LogOptions log;

    private FitCommand(Command command)
    {
        command.Options.Add(model);
        command.Options.Add(estimator);
        command.Options.Add(plain);
        command.Options.Add(design);
        command.Options.Add(plot);
        force = new(command, [plot, design]);
        command.Options.Add(all);
        log = new(command);
        command.SetAction(Run);
    }

    public static Command Create()
    {
        var command = new Command("fit",
            "What sale price, days on market, hours or supplies depend on in your log.");
        ExamplesHelp.AddTo(command,
            "flip fit --log my-log --model price",
            "flip fit --log my-log --model price --all",
            "flip fit --log my-log --model days --json",
            "flip fit --log my-log --model price --plain --json --design data-as-fitted.csv",
            "flip fit --log my-log --model price --estimator ols --plot residuals.svg");
        _ = new FitCommand(command);
        return command;
    }

    private int Run(ParseResult parsed)
    {
        if (parsed.GetValue(model) is not { } name)
            throw new CommandProblemException("Say what to model: --model price, days, hours or supplies.");
        Estimator how = parsed.GetValue(estimator) ?? Estimator.Mixed;
        string? file = parsed.GetValue(design);
        if (file is not null && how == Estimator.Mixed && !parsed.GetValue(plain))
        {
            throw new CommandProblemException(
                "The full model holds drift, guesses and expectations that other software cannot refit from a table: add --plain.");
        }

        bool replaces = force.IsGiven(parsed);
        OpenedLog opened = log.Open(parsed);
        if (opened.Log is null)
            return opened.ExitCode;
        var models = FittedModels.Of(opened.Log);
        FitReport report = ModelFitting.Fit(models, name, how, parsed.GetValue(plain));
        if (file is not null)
            DesignFile.Write(report.Design!, file, replaces);
        if (parsed.GetValue(plot) is { } picture)
            PlotFile.Save(Draw(models, name, how), picture, replaces);
        Console.Out.Write(parsed.GetValue(log.Json) ? FitJson.Render(report) : FitText.Render(report, parsed.GetValue(all)));
        return opened.ExitCode;
    }

    private static Figure Draw(FittedModels models, ModelName model, Estimator how) => (model, how) switch
    {
        (ModelName.Days, _) => SurvivalPlot.Of(MarketCurves.Of(models.Log, GroupedBy.Type)),
        (_, Estimator.Ols) => ResidualPlot.Of(ModelCheck.Of(models, model)),
        _ => ActualPlot.Of(ModelCheck.Of(models, model)),
    };
}
