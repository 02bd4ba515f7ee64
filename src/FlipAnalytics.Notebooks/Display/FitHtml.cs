
namespace FlipAnalytics.Notebooks;

/// <summary>A fitted model as tables of a notebook.</summary>
public static class FitHtml
{
    /// <summary>How closely the model fits, each term, each group of effects and, for least squares, its diagnostics.</summary>
    /// <param name="report">The fitted model.</param>
    public static HtmlPart Whole(FitReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        var html = new Html().Lead(FitText.Headline(report)).Table(
            "Terms",
            [Html.Words("term"), Html.Number("change of the log"), Html.Number("standard error"), Html.Words("in words")],
            report.Terms.Select(term => new[]
            {
                term.Name, Digits(term.Estimate), Digits(term.StandardError), FitText.InWords(term),
            }));
        foreach (FitGroup group in report.Random)
        {
            html.Table(
                Html.Invariant($"Effects of {group.Group}, variance {group.Variance:0.0000}"),
                [Html.Words(group.Group), Html.Number("change of the log"), Html.Number("standard error"), Html.Number("in words")],
                group.Levels.Select(level => new[]
                {
                    level.Level, Digits(level.Effect), Digits(level.StandardError), FitText.Percent(level.Effect),
                }));
        }

        if (report.Diagnostics is { } diagnostics)
            AddDiagnostics(html, diagnostics);
        html.Paragraph(FitText.Likelihood(report));
        if (!report.DroppedTerms.IsEmpty)
            html.Paragraph($"Left out, since the others already tell them: {string.Join(", ", report.DroppedTerms)}.");
        return html.Content();
    }

    private static void AddDiagnostics(Html html, FitDiagnostics diagnostics) => html
        .Table(
            "How well least squares fits",
            [Html.Words("measure"), Html.Number("value")],
            [
                ["R²", Digits(diagnostics.RSquared)],
                ["adjusted R²", Digits(diagnostics.AdjustedRSquared)],
                ["residual standard deviation", Digits(diagnostics.Sigma)],
                ["F of all terms", Digits(diagnostics.F)],
                ["p-value of F", Digits(diagnostics.PValue)],
                ["Akaike's criterion", Digits(diagnostics.Aic)],
                ["Schwarz's criterion", Digits(diagnostics.Bic)],
                ["p-value of equal variance (Breusch and Pagan)", Digits(diagnostics.BreuschPaganPValue)],
                ["condition number", Digits(diagnostics.ConditionNumber)],
                ["Duan's smearing factor", Digits(diagnostics.SmearingFactor)],
            ])
        .Table(
            "Pieces that pull hardest",
            [Html.Words("piece"), Html.Number("Cook's distance"), Html.Number("studentized residual")],
            diagnostics.MostInfluential.Select(piece => new[]
            {
                piece.Id, Digits(piece.CooksDistance), Digits(piece.StudentizedResidual),
            }));

    // A figure that does not exist is an empty cell.
    private static string Digits(double? value) => Html.Invariant($"{value:0.000}");
}
