using System.Globalization;
using System.Text;

using static System.FormattableString;
using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>A line of the quarter with its parts as text of at most 100 columns, on one screen or in full.</summary>
public static class QuarterTrailText
{
    private const int AmountWidth = 10;
    private const int NotesShown = 3;

    /// <summary>
    /// The line's figure first, then its parts in groups. Where they do not fit a screen the largest of each group are shown,
    /// or the groups alone, and the last line says how many more there are.
    /// </summary>
    /// <param name="trail">The trail.</param>
    /// <param name="workshop">The workshop.</param>
    /// <param name="all">Whether to show every part.</param>
    public static string Render(QuarterTrail trail, Workshop workshop, bool all = false)
    {
        ArgumentNullException.ThrowIfNull(trail);
        ArgumentNullException.ThrowIfNull(workshop);
        Page page = new(trail, workshop);
        string text = page.Written(int.MaxValue, int.MaxValue, isShort: false);
        if (all || LineCount(text) <= ScreenLines)
            return text;
        // Sorts of amount are summed up in the headings and tell more than a few parts of each group.
        for (int parts = page.HasSorts ? 0 : ScreenLines; parts >= page.FewestParts; parts--)
        {
            text = page.Written(int.MaxValue, parts, isShort: true);
            if (LineCount(text) <= ScreenLines)
                return text;
        }

        for (int groups = ScreenLines; groups > 0 && LineCount(text) > ScreenLines; groups--)
            text = page.Written(groups, page.FewestParts, isShort: true);
        return text;
    }

    /// <summary>The line's figure and what it comes from, in a sentence.</summary>
    /// <param name="trail">The trail.</param>
    /// <param name="workshop">The workshop.</param>
    public static string Answer(QuarterTrail trail, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(trail);
        ArgumentNullException.ThrowIfNull(workshop);
        bool isPart = trail.Reckoned.To < trail.Period.To;
        string when = trail.Line.IsOnAnEvening
            ? Invariant($"on {trail.Reckoned.To:yyyy-MM-dd}")
            : $"in {trail.Period.Name}{(isPart ? Invariant($", up to {trail.Reckoned.To:yyyy-MM-dd}") : "")}";
        string amount = trail.Line.IsHours ? $"{HoursOf(trail.Total)} hours" : MoneyText.Exact(trail.Total, workshop);
        return trail.Parts.IsEmpty
            ? $"{trail.Line.Word}: {amount} {when}; nothing is on record."
            : $"{trail.Line.Word}: {amount} {when}, from {Counted(trail.Count, trail.Noun)}.";
    }

    private static string HoursOf(decimal hours) => hours.ToString("#,0.00", CultureInfo.InvariantCulture);

    private sealed class Page(QuarterTrail trail, Workshop workshop)
    {
        private readonly QuarterTrailPart[][] groups =
            [.. trail.Parts.GroupBy(part => part.Group).Select(group => group.ToArray())];

        public bool HasSorts => trail.Parts.Any(part => part.Group is not null && part.Sort is not null);

        /// <summary>Without a heading there is nothing to show of a group but parts.</summary>
        public int FewestParts => trail.Parts.Any(part => part.Group is null) ? 1 : 0;

        public string Written(int mostGroups, int mostParts, bool isShort)
        {
            StringBuilder text = new();
            text.AppendWrapped("", "", QuarterTrailText.Answer(trail, workshop));
            text.AppendWrapped("  ", "  ", $"{char.ToUpperInvariant(trail.Line.Meaning[0])}{trail.Line.Meaning[1..]}.");
            if (SetAsideText.Sentence(trail.SetAside, workshop) is { } without)
                text.AppendWrapped("  ", "  ", without);
            foreach (string note in trail.Notes.Take(isShort ? NotesShown : int.MaxValue))
                text.AppendWrapped("  ", "  ", note);
            if (groups.Length > 0)
                text.Append('\n');
            int shown = groups.Take(mostGroups).Sum(group => Append(text, group, mostParts));
            if (groups.Length > mostGroups)
            {
                QuarterTrailPart[][] rest = groups[mostGroups..];
                text.AppendWrapped(
                    Amount(rest.Sum(group => group.Sum(part => part.Amount))), Indent, Invariant($"{rest.Length} more"));
            }

            int left = trail.Parts.Length - shown;
            int notesLeft = trail.Notes.Length - NotesShown;
            string more = !isShort ? ""
                : (left, notesLeft) switch
                {
                    ( > 0, > 0) => Invariant($" --all shows the other {left} and {Counted(notesLeft, "more note")}."),
                    ( > 0, _) => Invariant($" --all shows the other {left}."),
                    (_, > 0) => Invariant($" --all shows {Counted(notesLeft, "more note")}."),
                    _ => "",
                };
            string off = trail.Line.IsHours ? $"{HoursOf(trail.Difference)} hours" : MoneyText.Exact(trail.Difference, workshop);
            return text.Append('\n').AppendWrapped("", "", Invariant(
                $"{Counted(trail.Parts.Length, "part")}; off by {off} from the line of the report.{more}")).ToString();
        }

        private static string Indent => new(' ', AmountWidth + 4);

        // Returns how many parts can be seen.
        private int Append(StringBuilder text, QuarterTrailPart[] group, int most)
        {
            string? heading = group[0].Group;
            if (heading is not null && group.Length == 1)
            {
                text.AppendWrapped(Amount(group[0].Amount), Indent,
                    Told(group[0] with { What = heading == group[0].What ? heading : $"{heading}: {group[0].What}" }));
                return 1;
            }

            string indent = "";
            if (heading is not null)
            {
                string sorts = most > 0 ? "" : Sorts(group);
                text.AppendWrapped(Amount(group.Sum(part => part.Amount)), Indent, heading + sorts);
                indent = Indent;
            }

            if (most == 0)
                return 0;
            // The largest, in the order of all.
            HashSet<QuarterTrailPart> largest = new(
                group.OrderByDescending(part => Math.Abs(part.Amount)).Take(most),
                ReferenceEqualityComparer.Instance);
            foreach (QuarterTrailPart part in group.Where(largest.Contains))
                text.AppendWrapped(indent + Amount(part.Amount), indent + Indent, Told(part));
            if (largest.Count < group.Length)
            {
                text.AppendWrapped(
                    indent + Amount(group.Where(part => !largest.Contains(part)).Sum(part => part.Amount)), indent + Indent,
                    Invariant($"{group.Length - largest.Count} more"));
            }

            return largest.Count;
        }

        private string Sorts(QuarterTrailPart[] group)
        {
            string[] sorts =
            [
                .. group.Where(part => part.Sort is not null).GroupBy(part => part.Sort!)
                    .Select(sort => $"{sort.Key} {Plain(sort.Sum(part => part.Amount))}"),
            ];
            return sorts.Length > 0 ? $": {string.Join(", ", sorts)}" : Invariant($" ({Counted(group.Length, "part")})");
        }

        private static string Told(QuarterTrailPart part)
        {
            string day = part.Date is { } date ? Invariant($", {date:yyyy-MM-dd}") : "";
            string place = part.File is null ? $"--explain {part.Sort}"
                : part.Row is > 0 and { } row ? Invariant($"{part.File}, line {row}") : part.File;
            return $"{part.What}{day} [{place}] {part.Rule}".TrimEnd();
        }

        private string Plain(decimal amount) => trail.Line.IsHours ? HoursOf(amount) : MoneyText.PlainExact(amount, workshop);

        private string Amount(decimal amount) => Plain(amount).PadLeft(AmountWidth) + "  ";
    }
}
