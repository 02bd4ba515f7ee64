using System.Globalization;
using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>Logged amounts against what all the other rows predict of them.</summary>
public static class ActualPlot
{
    private const int MostNamed = 4;
    private const int FewestRows = 3;

    /// <summary>The plot.</summary>
    /// <param name="check">A model checked against the log.</param>
    public static Figure Of(ModelCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        if (check.Rows.Length < FewestRows)
        {
            return Sheet.Sentence(
                $"Predicted and actual {check.Response}",
                $"There are too few logged pieces to predict the {check.Response} of one from the others.");
        }

        string held = string.Create(CultureInfo.InvariantCulture,
            $"{Scale.Percent(check.Level)} ranges held {check.Held} of {check.Rows.Length} times");
        var sheet = new Sheet(
            $"{Capital(check.Response)} predicted without the piece itself: {held}",
            "A mark a piece, its range as an upright line; on the slanted line the prediction was right. Circle: inside its range. Triangle: outside, the farthest named.");
        Scale predicted = Scale.Logarithmic(check.Rows.Select(row => row.Predicted));
        Scale actual = Scale.Logarithmic(check.Rows.SelectMany(row => new[] { row.Actual, row.Low, row.High }));
        Panel panel = sheet.AddPanel(new(
            predicted, $"predicted {check.Response}, {check.Unit}", actual, $"actual {check.Response}, {check.Unit}", 430)
        {
            Gutter = 20,
            LinesUp = true,
        });
        foreach (CheckedAmount row in check.Rows)
            panel.Line([(row.Predicted, row.Low), (row.Predicted, row.High)], new(Style.Standing.WithAlpha(0.22), 3));
        panel.Line([(predicted.Low, predicted.Low), (predicted.High, predicted.High)], LineLook.Reference);
        CheckedAmount[] outside = [.. check.Rows.Where(row => row.Actual < row.Low || row.Actual > row.High)];
        panel.Marks(
            check.Rows.Except(outside).Select(row => (row.Predicted, row.Actual)),
            new(Style.Standing, MarkerShape.OpenCircle), 8);
        panel.Marks(
            outside.Select(row => (row.Predicted, row.Actual)),
            new(Style.TakenAway, MarkerShape.FilledTriangleUp), 9);
        CheckedAmount[] farthest = [.. outside.OrderByDescending(row => row.RootSize).Take(MostNamed)];
        foreach (CheckedAmount row in farthest)
            panel.TryName(row.PieceId, row.Predicted, row.Actual);
        return sheet.Finish(farthest.Length == 0 ? "" : "Farthest outside: " + string.Join("; ", farthest.Select(row =>
            string.Create(CultureInfo.InvariantCulture,
                $"{row.PieceId} {Amount(row.Actual)} where {Amount(row.Low)} to {Amount(row.High)} was predicted"))) + ".");

        string Amount(double amount) => check.Workshop is { } workshop
            ? MoneyText.Whole(decimal.CreateSaturating(amount), workshop)
            : string.Create(CultureInfo.InvariantCulture, $"{amount:0.#} {check.Unit}");
    }

    private static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
