using FlipAnalytics.Plots;
using Microsoft.Data.Analysis;
using Microsoft.DotNet.Interactive.Formatting;

namespace FlipAnalytics.Notebooks;

/// <summary>Makes a notebook show what the library answers.</summary>
public static class FlipNotebook
{
    private const string Page = "text/html";
    private const string Picture = "image/png";
    private const string Plain = "text/plain";

    /// <summary>
    /// Teaches the notebook to show reports as accessible tables and figures as pictures with alternative text. A
    /// notebook calls it once, whatever runs it; calling it again does no harm.
    /// </summary>
    public static void Register()
    {
        NativeLibraries.FindBesideTheLibrary();
        Show<HtmlPart>(part => part);
        Show<LogCheck>(LogCheckHtml.Problems);
        Show<PurchaseReport>(PurchaseHtml.Whole);
        Show<GroupComparisonReport>(ColorsHtml.Answer);
        Show<WagesReport>(WagesHtml.Answer);
        Show<QuarterReport>(QuarterHtml.Answer);
        Show<ReportTable>(ReportFrame.Table);
        Show<FitReport>(FitHtml.Whole);
        Show<DataFrame>(FrameHtml.FirstRows);
        Show<NotebookLog>(NotebookLog.Show);
        Formatter.Register<Figure>((figure, writer) => writer.Write(FigureText.Png(figure)), Picture);
        Formatter.Register<Figure>((figure, writer) => writer.Write(FigureText.Alternative(figure)), Plain);
        Formatter.SetPreferredMimeTypesFor(typeof(Figure), Picture, Plain);
    }

    /// <summary>The waterfall of the first piece, or the reason why there is none.</summary>
    /// <param name="report">The answers.</param>
    public static object Waterfall(PurchaseReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return report.Decisions[0].Ceiling is null
            ? PurchaseHtml.Steps(report)
            : DecisionPlot.Of(report.Decisions[0], report.Workshop);
    }

    private static void Show<T>(Func<T, HtmlPart> html)
    {
        Formatter.Register<T>((value, writer) => writer.Write(html(value).Html), Page);
        Formatter.SetPreferredMimeTypesFor(typeof(T), Page);
    }
}
