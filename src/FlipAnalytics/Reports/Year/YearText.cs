using System.Text;

using static System.FormattableString;
using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>A year's sheet as text of at most 100 columns: the profit first, the sums last.</summary>
public static class YearText
{
    private const int Label = 66;
    private const int Column = 16;
    private const int OverheadsShown = 3;
    private const int ToolsShown = 2;

    // A page too long for a screen loses its overheads one by one, then the sentences that --all has as lists.
    private const int WithoutCash = OverheadsShown + 1;
    private const int WithoutTools = OverheadsShown + 2;
    private const int MostCut = OverheadsShown + 3;

    /// <summary>The sheet on one screen, or all of it.</summary>
    /// <param name="report">The report.</param>
    /// <param name="all">Whether to tell all: the parts of each line, every list, the questions and the sums.</param>
    public static string Render(YearReport report, bool all = false)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (all)
            return Written(report, true, 0);
        string text = Written(report, false, 0);
        for (int cut = 1; cut <= MostCut && LineCount(text) > ScreenLines; cut++)
            text = Written(report, false, cut);
        return text;
    }

    /// <summary>A sentence below the sheet, in lines of at most 100 columns.</summary>
    /// <param name="sentence">The sentence.</param>
    public static string Wrapped(string sentence) => new StringBuilder().AppendWrapped("", "  ", sentence).ToString();

    private static string Written(YearReport report, bool all, int cut)
    {
        StringBuilder text = new();
        text.AppendWrapped("", "", YearSentences.Headline(report));
        string?[] beneath =
        [
            report.Chosen, SetAsideText.Sentence(report.SetAside, report.Workshop), report.WorthALook, YearSentences.AtMost(report),
            WageBridgeText.StillToArise(report.StillToArise, report.AsOf, report.Workshop), .. report.Lacking,
        ];
        foreach (string sentence in beneath.OfType<string>())
            text.AppendWrapped("  ", "  ", sentence);
        AppendLines(text, report, all, all ? int.MaxValue : Math.Max(0, OverheadsShown - cut));
        text.Append('\n');
        string?[] below =
        [
            YearSentences.Driving(report),
            cut < WithoutTools ? YearSentences.ToolsBought(report, all ? int.MaxValue : ToolsShown) : null,
            YearSentences.ThereAtTheEnd(report),
            cut < WithoutCash ? YearSentences.Cash(report) : null,
            YearSentences.NotCounted(report),
            .. YearSentences.Limits(report).Take(cut < MostCut ? int.MaxValue : 1),
        ];
        foreach (string sentence in below.OfType<string>())
            text.AppendWrapped("", "  ", sentence);
        if (all)
            YearListsText.Append(text, report);
        decimal off = report.Sums.Sum(sum => decimal.Abs(sum.Difference));
        text.Append('\n').AppendWrapped("", "  ", Invariant(
            $"{report.Sums.Length} sums are off by {MoneyText.Exact(off, report.Workshop)}.{(all ? "" : Invariant($" --all: every list, and {Counted(report.Prompts.Length, "question")} for a tax professional. --out FOLDER: all of it as files."))}"));
        return text.ToString();
    }

    private static void AppendLines(StringBuilder text, YearReport report, bool all, int overheads)
    {
        string? section = null;
        bool isFirst = false;
        int items = 0;
        decimal left = 0;
        foreach (YearLine line in report.Lines.Where(line => (line.IsAlways || line.Amount != 0) && (all || line.Sign != ' ')))
        {
            if (line.Section != section)
            {
                text.Append(section is null ? "\n" : "").Append(line.Section is YearLine.Expenses ? "" : Capital(line.Section) + "\n");
                isFirst = true;
            }

            section = line.Section;
            if (line.Name == "overheads" && ++items > overheads)
            {
                left += line.Amount;
                continue;
            }

            if (line.Name != "overheads" && left != 0)
            {
                text.Append(Row('-', overheads == 0 ? "overheads" : "other overheads", left, report.Workshop));
                left = 0;
            }

            text.Append(Row(Shown(line, isFirst), line.What, line.Amount, report.Workshop));
            isFirst = false;
        }
    }

    // The cost of goods is built up from its first line; only its sum is taken away.
    private static char Shown(YearLine line, bool isFirst) =>
        line.Section == YearLine.Outside ? ' '
        : line.Sign is ' ' or '=' ? line.Sign
        : line.Section != YearLine.CostOfGoods ? isFirst ? ' ' : line.Sign
        : isFirst ? ' ' : line.Sign == '-' ? '+' : '-';

    private static string Row(char sign, string what, decimal amount, Workshop workshop)
    {
        string label = what.Length > Label - 3 ? what[..(Label - 6)] + "..." : what;
        return $"{sign} {label}".PadRight(Label) + MoneyText.PlainExact(amount, workshop).PadLeft(Column) + "\n";
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
