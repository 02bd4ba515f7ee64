using System.Globalization;
using System.Text;

namespace FlipAnalytics;

/// <summary>A fitted model as text of at most 100 columns: sentences for the owner, then the statistician's table.</summary>
public static class FitText
{
    private const int LevelsShown = 12;

    /// <summary>What the log says in sentences, and with all of it each term with its standard error.</summary>
    /// <param name="report">The fitted model.</param>
    /// <param name="all">Whether to print the terms too.</param>
    public static string Render(FitReport report, bool all = false)
    {
        ArgumentNullException.ThrowIfNull(report);
        var text = new StringBuilder();
        text.AppendWrapped("", "", Headline(report));
        foreach (string sentence in FitSentences.Of(report))
            text.AppendWrapped("  ", "    ", sentence);
        if (!all)
            return text.Append('\n').AppendWrapped("", "", "--all prints the table for a statistician: every term, every group and how they were fitted.").ToString();
        AppendTerms(text, report);
        return text.ToString();
    }

    private static void AppendTerms(StringBuilder text, FitReport report)
    {
        text.Append('\n').Append("  term                            change of the log, with standard error       in words\n");
        foreach (FitTerm term in report.Terms)
        {
            text.Append(Line($"  {term.Name,-32}{term.Estimate,9:0.000}   ({term.StandardError:0.000})").PadRight(74))
                .Append("  ").Append(InWords(term)).Append('\n');
        }

        foreach (FitGroup group in report.Random)
            AppendGroup(text, group);
        if (report.Diagnostics is { } diagnostics)
            AppendDiagnostics(text, diagnostics);
        if (report.Scale is { } scale)
            text.Append('\n').AppendWrapped("  ", "  ", Line($"Weibull with scale {scale:0.00}; its logarithm has standard error {report.LogScaleStandardError:0.000}."));
        text.Append('\n').AppendWrapped("  ", "  ", Likelihood(report));
        if (!report.DroppedTerms.IsEmpty)
        {
            text.AppendWrapped("  ", "  ",
                $"Left out, since the others already tell them: {string.Join(", ", report.DroppedTerms)}.");
        }
    }

    /// <summary>What was fitted to what, and how closely, in a sentence; where the search did not settle, that it did not.</summary>
    /// <param name="report">The fitted model.</param>
    public static string Headline(FitReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Converged ? Closeness(report)
            : $"{Closeness(report)} The search for the best values had not settled when it stopped: they are near, not final.";
    }

    private static string Closeness(FitReport report)
    {
        string what = char.ToUpperInvariant(ModelFitting.Words(report.Model)[0]) + ModelFitting.Words(report.Model)[1..];
        string rests = Line($"{what}, from {report.N} {(report.Model == ModelName.Days ? "stretches at one asking price" : "pieces")} as of {report.AsOf:yyyy-MM-dd}");
        return report.ResidualVariance is { } variance
            ? Line($"{rests}: 2 in 3 came within {100 * (Math.Exp(Math.Sqrt(variance)) - 1):0} % of what the rest of the log leads one to expect.")
            : OfTheMiddleOne(1.0 / 6) > 0.9 ? $"{rests}: pieces alike sell in as good as the same days."
            : Line($"{rests}: of pieces alike, 2 in 3 sell in {OfTheMiddleOne(1.0 / 6):0.0} to {OfTheMiddleOne(5.0 / 6):0.0} times the days of the middle one.");

        // The quantile of Weibull days over their median: (ln(1 - p)/ln(1/2)) to the power of the scale.
        double OfTheMiddleOne(double p) => Math.Pow(Math.Log(1 - p) / Math.Log(0.5), report.Scale ?? 1);
    }

    /// <summary>What a term says, in per cent wherever that says it better than a logarithm.</summary>
    /// <param name="term">A term of the fitted model.</param>
    public static string InWords(FitTerm term) => term.Name switch
    {
        TermNames.Intercept => "where the rest starts from",
        TermNames.SeasonSine or TermNames.SeasonCosine => "yearly wave",
        _ when term.Name.StartsWith("log ", StringComparison.Ordinal) =>
            Line($"10 % more: {Percent(term.Estimate * Math.Log(1.1))}"),
        _ => Percent(term.Estimate),
    };

    private static void AppendGroup(StringBuilder text, FitGroup group)
    {
        text.Append(Line($"\n  {group.Group}, effects spread by {100 * (Math.Exp(Math.Sqrt(group.Variance)) - 1):0} %\n"));
        var levels = group.Group == TermNames.Month
            ? group.Levels.TakeLast(LevelsShown)
            : group.Levels.OrderByDescending(l => l.Effect);
        text.AppendWrapped("    ", "    ", string.Join(", ", levels.Select(l => $"{l.Level} {Percent(l.Effect)}")));
    }

    private static void AppendDiagnostics(StringBuilder text, FitDiagnostics d)
    {
        text.Append('\n').AppendWrapped("  ", "  ", Line(
            $"R² {d.RSquared:0.000} (adjusted {d.AdjustedRSquared:0.000}), {(d.F is null ? "nothing but the amounts varies" : Line($"F {d.F:0.0} with p {d.PValue:0.0000}"))}, σ {d.Sigma:0.000}, AIC {d.Aic:0.0}, BIC {d.Bic:0.0}, condition number {d.ConditionNumber:0.0}, Duan's smearing factor {d.SmearingFactor:0.000}{(d.BreuschPaganPValue is null ? "" : Line($", Breusch–Pagan p {d.BreuschPaganPValue:0.000}"))}."));
        text.AppendWrapped("  ", "  ", "Pieces that pull hardest (Cook's distance): "
            + string.Join(", ", d.MostInfluential.Select(p => Line($"{p.Id} {p.CooksDistance:0.00}"))) + ".");
    }

    /// <summary>The log-likelihood and the model in words.</summary>
    /// <param name="report">The fitted model.</param>
    public static string Likelihood(FitReport report) =>
        Line($"Log-likelihood {report.LogLikelihood:0.000} ({report.Criterion}). {report.Formula}.");

    /// <summary>A change of the log as a change in per cent, with its sign.</summary>
    /// <param name="log">Change of the log.</param>
    public static string Percent(double log) => log > FitSentences.Furthest ? Line($"over {100 * Math.Exp(FitSentences.Furthest):+0} %")
        : Line($"{100 * (Math.Exp(log) - 1):+0.0;-0.0;0.0} %");

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
