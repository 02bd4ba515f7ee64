using System.Globalization;
using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>The four usual looks at what a model leaves over, each with its farthest piece named.</summary>
public static class ResidualPlot
{
    private const int FewestRows = 3;
    private const float PanelHeight = 185;
    private const float PanelGap = 18;

    // From here on a piece deserves a look: Cook and Weisberg, Residuals and Influence in Regression (1982), p. 118, take
    // 1 for large; half of it is the customary mark on plots of leverage.
    private const double WorthALook = 0.5;

    private static readonly Series Dot = new(Style.Standing, MarkerShape.OpenCircle);
    private static readonly Series Named = new(Style.TakenAway, MarkerShape.FilledTriangleUp);

    /// <summary>The plot.</summary>
    /// <param name="check">A model checked against the log.</param>
    public static Figure Of(ModelCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        if (check.Rows.Length < FewestRows)
        {
            return Sheet.Sentence(
                $"What the {check.Response} model leaves over",
                $"There are too few logged pieces to predict the {check.Response} of one from the others.");
        }

        CheckedAmount worst = check.Rows.MaxBy(row => row.RootSize)!;
        PieceInfluence? pull = check.MostInfluential;
        var sheet = new Sheet(Title(check, worst, pull), string.Create(CultureInfo.InvariantCulture,
            $"{check.Rows.Length} pieces, each predicted from the others; a residual is the log of actual over predicted, in standard deviations. Triangles: the farthest piece of each panel."));
        Scale predicted = Scale.Logarithmic(check.Rows.Select(row => row.Predicted));
        double[] residuals = [.. check.Rows.Select(row => row.Residual)];
        string amount = $"predicted {check.Response}, {check.Unit}";

        Panel against = Left(sheet, "Around zero at any prediction?", predicted, amount, Scale.Of(residuals.Append(0)), "residual");
        against.Line([(predicted.Low, 0), (predicted.High, 0)], LineLook.Reference);
        DrawRows(against, check, worst, row => (row.Predicted, row.Residual));

        Scale scores = Scale.Of([.. check.Rows.Select(row => row.NormalScore), -1, 1]);
        Panel normal = Right(sheet, "As spread out as a normal curve?", scores, "where a normal residual would stand", Scale.Of(residuals.Append(0)), "residual");
        normal.Line([(-9, -9), (9, 9)], LineLook.Reference);
        DrawRows(normal, check, worst, row => (row.NormalScore, row.Residual));
        sheet.Top += PanelGap;

        Panel size = Left(
            sheet, "As far off at any prediction?", predicted, amount,
            Scale.Of([.. check.Rows.Select(row => row.RootSize), 0]), "square root of the residual's size");
        DrawRows(size, check, worst, row => (row.Predicted, row.RootSize));
        DrawPull(sheet, check, pull);
        return sheet.Finish(string.Create(CultureInfo.InvariantCulture,
            $"Largest residual: {worst.PieceId}, {worst.Residual:0.0;\u22120.0} standard deviations.") + (pull is null ? "" :
            string.Create(CultureInfo.InvariantCulture, $" Strongest pull: {pull.PieceId}, Cook's distance {pull.CooksDistance:0.00}.")));
    }

    private static void DrawPull(Sheet sheet, ModelCheck check, PieceInfluence? pull)
    {
        if (pull is null)
            return;
        Panel panel = Right(
            sheet, "Does one piece decide the fit?", Scale.Of([.. check.Influence.Select(p => p.Leverage), 0], about: 4),
            "leverage in a least-squares fit", Scale.Of(check.Influence.Select(p => p.StandardizedResidual).Append(0)),
            "residual of that fit");
        panel.Line([(0, 0), (1, 0)], LineLook.Reference);
        panel.Marks(check.Influence.Where(p => p != pull).Select(p => (p.Leverage, p.StandardizedResidual)), Dot, 6);
        panel.Marks([(pull.Leverage, pull.StandardizedResidual)], Named, 10);
        panel.TryName(pull.PieceId, pull.Leverage, pull.StandardizedResidual);
    }

    private static void DrawRows(
        Panel panel, ModelCheck check, CheckedAmount worst, Func<CheckedAmount, (double X, double Y)> place)
    {
        panel.Marks(check.Rows.Where(row => row != worst).Select(place), Dot, 6);
        panel.Marks([place(worst)], Named, 10);
        var (x, y) = place(worst);
        panel.TryName(worst.PieceId, x, y);
    }

    private static Panel Left(Sheet sheet, string heading, Scale x, string xLabel, Scale y, string yLabel) =>
        sheet.AddPanel(new(x, xLabel, y, yLabel, PanelHeight)
        {
            Heading = heading,
            Right = (Style.Width - PanelGap) / 2f,
            Gutter = 6,
            KeepsTop = true,
        });

    private static Panel Right(Sheet sheet, string heading, Scale x, string xLabel, Scale y, string yLabel) =>
        sheet.AddPanel(new(x, xLabel, y, yLabel, PanelHeight)
        {
            Heading = heading,
            Left = (Style.Width + PanelGap) / 2f,
            Gutter = 6,
        });

    private static string Title(ModelCheck check, CheckedAmount worst, PieceInfluence? pull) => pull switch
    {
        null => $"{worst.PieceId} is farthest from its predicted {check.Response}",
        { CooksDistance: >= WorthALook } => $"{pull.PieceId} pulls hard on the {check.Response} model: check its row in the log",
        _ => $"No single piece decides the {check.Response} model; {worst.PieceId} is farthest from its prediction",
    };
}
