using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace FlipAnalytics;

/// <summary>The answers as text of at most 100 columns: the verdict and the limit first.</summary>
public static class PurchaseText
{
    /// <summary>One candidate as a page, several as a table.</summary>
    /// <param name="report">The answers.</param>
    /// <param name="detail">What is told in full; else it fits on a screen.</param>
    public static string Render(PurchaseReport report, PurchaseDetail detail = PurchaseDetail.Screen)
    {
        ArgumentNullException.ThrowIfNull(report);
        string above = WordNotesText.Above([.. report.WordNotes, .. report.WorthALook is { } doubt ? [doubt] : ImmutableArray<string>.Empty]);
        string below = SetAside(report.SetAside);
        int room = TextLines.ScreenLines - TextLines.LineCount(above + below);
        return above + (report.Decisions.Length == 1
            ? new PurchasePage(report, report.Decisions[0]).Render(room, detail)
            : PurchaseListText.Render(report, detail.HasFlag(PurchaseDetail.Everything) ? int.MaxValue : room)) + below;
    }

    /// <summary>How many pieces of the file are missing above, and why the first is.</summary>
    private static string SetAside(ImmutableArray<LogProblem> problems)
    {
        int rows = problems.Select(problem => problem.Row).Distinct().Count();
        if (rows == 0)
            return "";
        string first = rows == 1 ? "" : "The first: ";
        return new StringBuilder("\n").AppendWrapped("", "", Invariant(
            $"{TextLines.Counted(rows, "piece")} of the file set aside and not answered. {first}{problems[0]}")).ToString();
    }

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
