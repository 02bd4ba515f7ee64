using System.Globalization;
using System.Text;

namespace FlipAnalytics;

/// <summary>The comparison as a page that fits a screen.</summary>
internal sealed class GroupComparisonPage(GroupComparisonReport report)
{
    private const int LevelWidth = 16;
    private const string Unknown = "-";

    private readonly GroupComparisonSentences sentences = new(report);

    public string Render()
    {
        var text = new StringBuilder();
        text.AppendWrapped("", "", sentences.Headline());
        foreach (string sentence in sentences.Evidence())
            text.AppendWrapped("  ", "  ", sentence);
        if (!report.Levels.IsEmpty)
        {
            text.Append('\n');
            AppendLevels(text);
        }

        if (sentences.Trends() is { } trends)
            text.Append('\n').AppendWrapped("  ", "  ", trends);
        AppendNext(text);
        if (!report.Notes.IsEmpty)
        {
            text.Append('\n');
            foreach (string note in report.Notes)
                text.AppendWrapped("  - ", "    ", note);
        }

        return text.ToString();
    }

    private void AppendLevels(StringBuilder text)
    {
        string name = report.By.Singular();
        text.Append(CultureInfo.InvariantCulture,
            $"  {"",-LevelWidth}{"",5}{"on",5}{"half sold",14}{"% days against",17}{"% price against",17}{"money",8}{"chance of",14}\n");
        text.Append(CultureInfo.InvariantCulture,
            $"  {name,-LevelWidth}{"sold",5}{"sale",5}{"in days",14}{"the average",17}{"the average",17}{"a week",8}{"fastest",8}{"top 3",6}\n");
        foreach (LevelRecord level in report.Levels)
        {
            string shown = level.Level;
            if (shown.Length > LevelWidth)
            {
                text.AppendWrapped("  ", "  ", shown);
                shown = "";
            }

            text.Append(Invariant(
                $"  {shown,-LevelWidth}{level.Sold,5}{level.OnSale,5}{Median(level),14}{Range(level.Days),17}{Range(level.Price),17}{Money(level),8}{Chance(level.ChanceFastest),8}{Chance(level.ChanceTopThree),6}")
                .TrimEnd()).Append('\n');
        }

        text.Append('\n');
        foreach (string sentence in sentences.HowToRead())
            text.AppendWrapped("  ", "  ", sentence);
    }

    private void AppendNext(StringBuilder text)
    {
        if (report.Next is not { } next)
            return;
        text.Append('\n').AppendWrapped("  ", "  ", sentences.Next(next));
        text.Append(Invariant($"    {"",-LevelWidth}{"left to buy it",16}{"likely days",14}{"chance it is best",20}\n"));
        foreach (NextChoice choice in next.Choices)
        {
            text.Append(Invariant(
                $"    {choice.Level,-LevelWidth}{Math.Round(choice.Money, MidpointRounding.AwayFromZero),16:0}{Math.Round(choice.Days, MidpointRounding.AwayFromZero),14:0}{Chance(choice.ChanceBest),20}\n"));
        }
    }

    private static string Median(LevelRecord level) => level.MedianDays is { } median ? GroupFigures.Median(median) : Unknown;

    private static string Range(RelativeDifference? difference) => difference is { } known ? GroupFigures.Range(known) : Unknown;

    private static string Money(LevelRecord level) => level.Money.PerWeek is { } money ? GroupFigures.Money(money) : Unknown;

    private static string Chance(double? chance) => chance is { } known ? GroupFigures.Chance(known) : Unknown;

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

/// <summary>The comparison as text of at most 100 columns: the answer on the first line.</summary>
public static class GroupComparisonText
{
    /// <summary>The page.</summary>
    /// <param name="report">The comparison.</param>
    public static string Render(GroupComparisonReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return WordNotesText.Above(report.WordNotes) + new GroupComparisonPage(report).Render();
    }
}
