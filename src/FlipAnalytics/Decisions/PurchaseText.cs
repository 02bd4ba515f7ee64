using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace FlipAnalytics;

/// <summary>The answers as text of at most 100 columns: the verdict and the limit first.</summary>
public static class PurchaseText
{
    /// <summary>One candidate as a page, several as a table.</summary>
    /// <param name="report">The answers.</param>
    public static string Render(PurchaseReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return WordNotesText.Above([.. report.WordNotes, .. report.WorthALook is { } doubt ? [doubt] : ImmutableArray<string>.Empty]) + (report.Decisions.Length == 1
            ? new PurchasePage(report, report.Decisions[0]).Render()
            : Table(report)) + SetAside(report.SetAside);
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

    private static string Table(PurchaseReport report)
    {
        var text = new StringBuilder();
        int buy = report.Decisions.Count(d => d.Verdict == Verdict.Buy);
        int haggle = report.Decisions.Count(d => d.Verdict == Verdict.Haggle);
        int unsure = report.Decisions.Count(d => d.Verdict == Verdict.CannotSayYet);
        string open = unsure == 0 ? "" : Invariant($", {unsure} it cannot say yet");
        text.AppendWrapped("", "", Invariant(
            $"Buy {buy} of {report.Decisions.Length}, haggle over {haggle}{open}; limits pay your {report.TargetWage:0.##} an hour."));
        text.Append('\n').Append("          sticker  most to pay  careful   chance  wage then  piece\n");
        foreach (PurchaseDecision d in report.Decisions)
        {
            string piece = $"{d.Candidate.Id} {d.Candidate.Type}"
                + (d.Candidate.Colour is { } colour ? $", {colour}" : "")
                + string.Concat(d.Candidate.Written.Where(cell => cell is { IsOwn: true, Text.Length: > 0 })
                    .Select(cell => $"; {LogProblems.OnOneLine(cell.Column)} {LogProblems.OnOneLine(cell.Text)}"));
            text.AppendWrapped("", new string(' ', 60), Invariant(
                $"{Word(d),-8}{Cell(d.Candidate.StickerPrice),9}{Cell(d.Ceiling),13}{Cell(d.CeilingCautious),9}{Percent(d.ChanceOfTargetWage),9}{Cell(d.WageAtSticker, 1),11}  {piece}"));
        }

        text.Append('\n').AppendWrapped("", "",
            "careful: holds in " + Invariant($"{report.Decisions.FirstOrDefault()?.CautiousChance * 100 ?? 75:0} of 100 such pieces. ")
            + "chance: of earning your wage at the sticker price. "
            + (unsure == 0 ? "" : "unsure: your sales and guesses leave open whether it pays. ")
            + "Give one piece by options to see what its limit consists of.");
        return text.ToString();
    }

    private static string Word(PurchaseDecision decision) => decision.Verdict switch
    {
        null => "",
        Verdict.CannotSayYet => "unsure",
        { } verdict => VerdictWords.Code(verdict).ToUpperInvariant(),
    };

    private static string Cell(decimal? amount, int digits = 0) =>
        amount is { } value ? value.ToString(digits == 0 ? "0" : "0.0", CultureInfo.InvariantCulture) : "-";

    private static string Percent(decimal? chance) => chance is { } value ? Invariant($"{100 * value:0} %") : "-";

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
