using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace FlipAnalytics;

/// <summary>The answers for a list of pieces, a line each.</summary>
internal static class PurchaseListText
{
    private const string Heading = "         sticker  offer  most to pay  careful chance wage then  piece\n";

    // Heading, the line above it, and what the columns mean below.
    private const int LinesAround = 8;

    /// <summary>
    /// The list in its own order. Where it does not fit, what is worth a second look stays: what to buy before what to haggle
    /// over, then what is open, then the rest.
    /// </summary>
    /// <param name="report">The answers.</param>
    /// <param name="room">Lines that there is room for.</param>
    public static string Render(PurchaseReport report, int room)
    {
        ImmutableArray<PurchaseDecision> all = report.Decisions;
        string[] lines = [.. all.Select(decision => Line(decision, report.Workshop))];
        int left = Math.Max(1, room - LinesAround);
        HashSet<int> shown = [];
        foreach (int i in Enumerable.Range(0, all.Length).OrderBy(i => Rank(all[i])))
        {
            left -= TextLines.LineCount(lines[i]);
            if (left < 0)
                break;
            shown.Add(i);
        }

        var text = new StringBuilder();
        text.AppendWrapped("", "", Lead(report)).Append('\n').Append(Heading);
        for (int i = 0; i < all.Length; i++)
        {
            if (shown.Contains(i))
                text.Append(lines[i]);
        }

        int more = all.Length - shown.Count;
        if (more > 0)
        {
            bool isBuyAmong = Enumerable.Range(0, all.Length).Any(i => !shown.Contains(i) && all[i].Verdict == Verdict.Buy);
            text.AppendWrapped("", "", Invariant($"{TextLines.Counted(more, "more piece")}{(isBuyAmong ? "" : ", none of them to buy")}: --all."));
        }

        return text.Append('\n').AppendWrapped("", "", Meaning(report)).ToString();
    }

    private static string Lead(PurchaseReport report)
    {
        int Of(Verdict verdict) => report.Decisions.Count(decision => decision.Verdict == verdict);
        string open = Of(Verdict.CannotSayYet) is > 0 and var unsure ? Invariant($", {unsure} it cannot say yet") : "";
        return Invariant($"Buy {Of(Verdict.Buy)} of {report.Decisions.Length}, haggle over {Of(Verdict.Haggle)}{open}; ")
            + $"limits pay your {MoneyText.Exact(report.TargetWage, report.Workshop)} an hour.";
    }

    private static string Line(PurchaseDecision decision, Workshop workshop)
    {
        Candidate asked = decision.Candidate;
        string piece = $"{asked.Id} {asked.Type}" + (asked.Colour is { } colour ? $", {colour}" : "")
            + string.Concat(asked.Written.Where(cell => cell is { IsOwn: true, Text.Length: > 0 })
                .Select(cell => $"; {CleanText.Shown(cell.Column)} {CleanText.Shown(cell.Text)}"));
        string wage = decision.WageAtSticker is { } earned ? MoneyText.PlainExact(earned, workshop) : "-";
        return new StringBuilder().AppendWrapped("", new string(' ', 64), Invariant(
            $"{Word(decision),-8}{Cell(asked.StickerPrice),8}{Cell(decision.Offer?.Offer),7}{Cell(decision.Ceiling),13}{Cell(decision.CeilingCautious),9}")
            + Invariant($"{Percent(decision.ChanceOfTargetWage),7}{wage,10}  {piece}")).ToString();
    }

    private static string Meaning(PurchaseReport report) =>
        Invariant($"careful: holds in {report.Decisions.FirstOrDefault()?.CautiousChance * 100 ?? 75:0} of 100 such pieces. ")
        + "chance: of earning your wage at the sticker price. "
        + (report.Decisions.Any(decision => decision.Verdict == Verdict.CannotSayYet)
            ? "unsure: your sales and guesses leave open whether it pays. " : "")
        + "Give one piece by options to see what its limit consists of.";

    private static string Word(PurchaseDecision decision) => decision.Verdict switch
    {
        null => "",
        Verdict.CannotSayYet => "unsure",
        { } verdict => VerdictWords.Code(verdict).ToUpperInvariant(),
    };

    private static int Rank(PurchaseDecision decision) => decision.Verdict switch
    {
        Verdict.Buy => 0,
        Verdict.Haggle => 1,
        Verdict.CannotSayYet => 2,
        null => 3,
        _ => 4,
    };

    private static string Cell(decimal? amount) => amount is { } value ? MoneyText.PlainWhole(value) : "-";

    private static string Percent(decimal? chance) => chance is { } value ? Invariant($"{100 * value:0} %") : "-";

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
