using System.Globalization;
using System.Text;

namespace FlipAnalytics;

/// <summary>The comparison as a page: what fits a screen, or all there is.</summary>
internal sealed class GroupComparisonPage(GroupComparisonReport report, bool all)
{
    private const int LevelWidth = 16;
    private const int LevelsShown = 10;
    private const int ChoicesShown = 4;
    private const string Unknown = "-";

    private readonly GroupComparisonSentences sentences = new(report);
    private bool isCut;

    public string Render()
    {
        var text = new StringBuilder();
        text.AppendWrapped("", "", sentences.Headline());
        if (report.WorthALook is { } doubt)
            text.AppendWrapped("  ", "  ", doubt);
        foreach (string sentence in sentences.Evidence().Concat(all ? sentences.Pairs() : []))
            text.AppendWrapped("  ", "  ", sentence);
        if (!report.Levels.IsEmpty)
        {
            text.Append('\n');
            AppendLevels(text);
        }

        AppendNext(text);
        if (all && sentences.Trends() is { } trends)
            text.Append('\n').AppendWrapped("  ", "  ", trends);
        AppendNotes(text);
        return text.ToString();
    }

    private void AppendLevels(StringBuilder text)
    {
        string name = report.By.Singular();
        text.Append(Invariant(
            $"  {"",-LevelWidth}{"",5}{"on",5}{"% days against the average",34}{"half sold",14}{"% price against",17}{"money",7}\n"));
        text.Append(Invariant(
            $"  {name,-LevelWidth}{"sold",5}{"sale",5}{"last year",17}{"all years",17}{"in days",14}{"the average",17}{"a week",7}\n"));
        LevelRecord[] shown = all || report.Levels.Length <= LevelsShown + 1 ? [.. report.Levels] : [.. report.Levels.Take(LevelsShown)];
        foreach (LevelRecord level in shown)
            AppendLevel(text, level);
        if (shown.Length < report.Levels.Length)
        {
            isCut = true;
            text.Append(Invariant($"  and {report.Levels.Length - shown.Length} more {report.By.Plural()}\n"));
        }

        text.Append('\n');
        foreach (string sentence in sentences.HowToRead().Take(all ? int.MaxValue : 2))
            text.AppendWrapped("  ", "  ", sentence);
    }

    private static void AppendLevel(StringBuilder text, LevelRecord level)
    {
        string shown = level.Level;
        if (shown.Length > LevelWidth)
        {
            text.AppendWrapped("  ", "  ", shown);
            shown = "";
        }

        text.Append(Invariant(
            $"  {shown,-LevelWidth}{level.Sold,5}{level.OnSale,5}{Range(level.DaysLately),17}{Range(level.Days),17}{Median(level),14}{Range(level.Price),17}{Money(level),7}")
            .TrimEnd()).Append('\n');
    }

    private void AppendNext(StringBuilder text)
    {
        if (sentences.Next() is not { } next)
            return;
        text.Append('\n').AppendWrapped("  ", "  ", next);
        text.Append(Invariant($"    {"",-LevelWidth}{"left to buy it",16}{"likely days",14}{(all ? "chance it leaves most" : ""),24}").TrimEnd()).Append('\n');
        NextChoice[] choices = [.. report.Choices.Take(all ? int.MaxValue : ChoicesShown)];
        isCut |= choices.Length < report.Choices.Length;
        foreach (NextChoice choice in choices)
        {
            text.Append(Invariant(
                $"    {choice.Level,-LevelWidth}{MoneyText.PlainWhole(choice.Money),16}{Math.Round(choice.Days, MidpointRounding.AwayFromZero),14:0}{(all ? Chance(choice.ChanceBest) : ""),24}").TrimEnd()).Append('\n');
        }

        if (all && sentences.Surer() is { } surer)
            text.AppendWrapped("  ", "  ", surer);
    }

    private void AppendNotes(StringBuilder text)
    {
        if (!all && (isCut || !report.Notes.IsEmpty || !report.Levels.IsEmpty))
        {
            string notes = report.Notes.IsEmpty ? "" : $", and {TextLines.Counted(report.Notes.Length, "note")} on what was left out";
            text.Append('\n').AppendWrapped("  ", "  ", $"--all shows the rest: {(isCut ? $"every {report.By.Singular()}" : "the last year against before")}{notes}.");
        }

        if (!all || report.Notes.IsEmpty)
            return;
        text.Append('\n');
        foreach (string note in report.Notes)
            text.AppendWrapped("  - ", "    ", note);
    }

    private static string Median(LevelRecord level) => level.MedianDays is { } median ? GroupFigures.Median(median) : Unknown;

    private static string Range(RelativeDifference? difference) => difference is { } known ? GroupFigures.Range(known) : Unknown;

    private static string Money(LevelRecord level) => level.Money.PerWeek is { } money ? MoneyText.PlainWhole(money) : Unknown;

    private static string Chance(double? chance) => chance is { } known ? GroupFigures.Chance(known) : Unknown;

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>The comparison as text of at most 100 columns: the answer on the first line.</summary>
public static class GroupComparisonText
{
    /// <summary>The answer in a sentence.</summary>
    /// <param name="report">The comparison.</param>
    public static string Answer(GroupComparisonReport report) => new GroupComparisonSentences(report).Headline();

    /// <summary>The page.</summary>
    /// <param name="report">The comparison.</param>
    /// <param name="all">Whether all there is to say is said, not only what fits on a screen.</param>
    public static string Render(GroupComparisonReport report, bool all = false)
    {
        ArgumentNullException.ThrowIfNull(report);
        return WordNotesText.Above(report.WordNotes) + new GroupComparisonPage(report, all).Render();
    }
}
