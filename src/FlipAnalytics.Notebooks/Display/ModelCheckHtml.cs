using System.Globalization;

namespace FlipAnalytics.Notebooks;

/// <summary>A model held against the owner's own log, as tables of a notebook.</summary>
public static class ModelCheckHtml
{
    /// <summary>Pieces shown of those farthest off.</summary>
    public const int RowsShown = 8;

    /// <summary>How often ranges held that were made without the piece they are about.</summary>
    /// <param name="check">The check.</param>
    public static HtmlPart Answer(ModelCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return new Html().Lead(check.Rows.IsEmpty
            ? $"The log does not hold enough pieces with their {check.Response} to check its estimates."
            : Html.Invariant(
                $"Of {check.Rows.Length} pieces, {check.Held} had a {check.Response} inside the range that was made without them; {100 * check.Level:0} in 100 should.")).Content();
    }

    /// <summary>The pieces whose amounts were estimated worst.</summary>
    /// <param name="check">The check.</param>
    public static HtmlPart FarthestOff(ModelCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return check.Rows.IsEmpty
            ? new Html().Paragraph("There is nothing to list yet.").Content()
            : new Html().Table(
                Html.Invariant($"Farthest off ({check.Unit})"),
                [Html.Words("piece"), Html.Number("real"), Html.Number("estimated without it"), Html.Number("range from"), Html.Number("to")],
                check.Rows.OrderByDescending(row => row.RootSize).Take(RowsShown).Select(row => new[]
                {
                    row.PieceId, Digits(row.Actual), Digits(row.Predicted), Digits(row.Low), Digits(row.High),
                })).Content();
    }

    /// <summary>How often ranges of each width held.</summary>
    /// <param name="check">The check.</param>
    public static HtmlPart Coverage(ModelCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return check.Coverage.IsEmpty
            ? new Html().Paragraph("There are no ranges to count yet.").Content()
            : new Html().Table(
                "Ranges of every width",
                [
                    Html.Number("should hold, %"), Html.Number("held, %"), Html.Number("of pieces"),
                    Html.Number("luck alone: from, %"), Html.Number("to, %"),
                ],
                check.Coverage.Select(level => new[]
                {
                    Percent(level.Level), Percent(level.Share), level.Count.ToString(CultureInfo.InvariantCulture),
                    Percent(level.Uncertainty.Low), Percent(level.Uncertainty.High),
                })).Content();
    }

    /// <summary>The terms of the full model, or why there are none.</summary>
    /// <param name="models">The models of the log.</param>
    /// <param name="model">Which model.</param>
    public static HtmlPart Terms(FittedModels models, ModelName model) => Fitted(models, model, Estimator.Mixed);

    /// <summary>The terms of the textbook model with its diagnostics, or why there are none.</summary>
    /// <param name="models">The models of the log.</param>
    /// <param name="model">Which model.</param>
    public static HtmlPart LeastSquaresTerms(FittedModels models, ModelName model) => Fitted(models, model, Estimator.Ols);

    private static HtmlPart Fitted(FittedModels models, ModelName model, Estimator estimator)
    {
        try
        {
            return FitHtml.Whole(ModelFitting.Fit(models, model, estimator, plain: false));
        }
        catch (NotEnoughDataException e)
        {
            return new Html().Paragraph(e.Message).Content();
        }
    }

    private static string Digits(double amount) => Html.Invariant($"{amount:0.##}");

    private static string Percent(double share) => Html.Invariant($"{100 * share:0}");
}
