using System.Collections.Immutable;
using System.Text;

using static System.FormattableString;
using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>Whether a kept span holds, in sentences and lines for the page of the report.</summary>
public static class QuarterKeptText
{
    private const int CausesSaid = 2;
    private const int MostCausesSaid = 6;

    // Sums of other lines: on the page the lines themselves say enough.
    private static readonly string[] Sums = ["cost_of_pieces_sold", "gross_profit", "contribution", "other_costs"];

    private static readonly string[] Takings = ["sales", "delivery_charged"];

    private static readonly Dictionary<string, string> Names = new()
    {
        ["pieces"] = "pieces sold",
        ["purchases"] = "paid for the pieces sold",
        ["supplies"] = "supplies on them",
        ["outings"] = "outings for them",
        ["net"] = "net profit",
    };

    /// <summary>Whether it holds, in a sentence.</summary>
    /// <param name="since">What became of it.</param>
    public static string Headline(QuarterSinceKept since)
    {
        ArgumentNullException.ThrowIfNull(since);
        if (since.Trouble is { } trouble)
            return $"Kept, but: {trouble}";
        if (since.IsJustKept)
            return Invariant($"Kept as of {since.Kept:yyyy-MM-dd} in {since.File}: printed again, this page says whether it still holds.");
        string day = since.AsOf < since.Kept
            ? Invariant($"Kept as of {since.Kept:yyyy-MM-dd}, a later day than this page's: compared by what was known on {since.AsOf:yyyy-MM-dd}.")
            : Invariant($"Kept as of {since.Kept:yyyy-MM-dd}.");
        if (!since.Holds && since.HoldsAsKnownThen)
        {
            string figures = Counted(Shown(since).Count(), "figure");
            return since.LaterFacts > 0 ? $"{day} Nothing of that time has changed; what came later moved {figures}."
                : $"{day} No fact has changed; rows in another order moved {figures}.";
        }

        if (!since.Holds)
            return Invariant($"{day} It no longer holds: {Counted(Shown(since).Count(), "figure")} changed.");
        string facts = (since.ChangedFacts, since.LaterFacts) switch
        {
            (0, 0) => "nothing has changed",
            (0, var later) => Invariant($"every figure is the same ({Counted(later, "later fact")} moved none)"),
            (var changed, _) => Invariant($"every figure is the same ({Counted(changed, "changed fact")} moved none)"),
        };
        return $"{day} It still holds: {facts}.";
    }

    /// <summary>A line for each figure that differs, with why; sums of others are left out.</summary>
    /// <param name="since">What became of it.</param>
    /// <param name="workshop">The workshop, for its money.</param>
    /// <param name="all">Whether to tell more causes of a line than the largest two; the JSON has all.</param>
    public static ImmutableArray<string> Lines(QuarterSinceKept since, Workshop workshop, bool all = true)
    {
        ArgumentNullException.ThrowIfNull(since);
        ArgumentNullException.ThrowIfNull(workshop);
        HashSet<string> said = [];
        return [.. Shown(since).Select(line => $"{NameOf(line)}: {Amount(line.Kept, line.Unit, workshop)} kept, {Amount(line.Now, line.Unit, workshop)} now: {OfLines(since, line, workshop) ?? Why(line, workshop, said, all)}")];
    }

    /// <summary>A row for each cause of each figure that differs.</summary>
    internal static ReportTable Table(QuarterSinceKept since) => ReportTable.Of(
        "since-kept",
        "Figures that are not what was kept, and why",
        since.Lines.SelectMany(line => line.Causes, (line, cause) => (Line: line, Cause: cause)),
        ("part", "profit, hours, money or stock", row => row.Line.Part),
        ("line", "name of the line", row => row.Line.Line),
        ("kept", "as kept", row => row.Line.Kept),
        ("now", "as it is", row => row.Line.Now),
        ("amount", "what this cause makes of the difference", row => row.Cause.Amount),
        ("file", "file of the log", row => row.Cause.File),
        ("row", "line of the file", row => row.Cause.Line),
        ("why", "why", row => row.Cause.Text));

    /// <summary>Adds the sentence and the lines to a page.</summary>
    /// <param name="text">The page.</param>
    /// <param name="since">What became of the kept span; null where none was kept.</param>
    /// <param name="workshop">The workshop.</param>
    /// <param name="most">Lines of the page that the changes may take; null for all.</param>
    internal static void Append(StringBuilder text, QuarterSinceKept? since, Workshop workshop, int? most)
    {
        if (since is null)
            return;
        text.AppendWrapped("  ", "  ", Headline(since));
        ImmutableArray<string> lines = Lines(since, workshop, all: most is null);
        int left = most ?? int.MaxValue;
        for (int i = 0; i < lines.Length; i++)
        {
            StringBuilder one = new StringBuilder().AppendWrapped("    ", "      ", lines[i]);
            int height = LineCount(one.ToString());
            // The last line is for how many are left.
            if (height + (i < lines.Length - 1 ? 1 : 0) > left)
            {
                text.AppendWrapped("    ", "      ", Invariant($"and {Counted(lines.Length - i, "more figure")}: --all"));
                return;
            }

            text.Append(one);
            left -= height;
        }
    }

    // The net profit is never left out for want of room.
    private static IEnumerable<QuarterLineSinceKept> Shown(QuarterSinceKept since)
    {
        QuarterLineSinceKept[] lines = [.. since.Lines.Where(line => !(line.Part == "profit" && Sums.Contains(line.Line)))];
        return lines.OrderByDescending(line => line is { Part: "profit", Line: "net" } && lines.Length > 6);
    }

    private static string NameOf(QuarterLineSinceKept line) => line.Part switch
    {
        "profit" => Names.GetValueOrDefault(line.Line) ?? line.Line.Replace('_', ' '),
        "money" => $"money {line.Line}",
        "stock" => $"tied up, {line.Line}",
        _ => line.Line,
    };

    // The net profit is told by the lines that make it, whose causes stand beside them.
    private static string? OfLines(QuarterSinceKept since, QuarterLineSinceKept net, Workshop workshop)
    {
        if (net is not { Part: "profit", Line: "net" })
            return null;
        (string Name, decimal Part)[] parts =
        [
            .. since.Lines.Where(line => line is { Part: "profit", Line: not "net", Unit: QuarterKeptFigures.Money } && !Sums.Contains(line.Line))
                .Select(line => (NameOf(line), (Takings.Contains(line.Line) ? 1 : -1) * (line.Difference ?? 0))),
        ];
        return parts.Length == 0 || parts.Sum(part => part.Part) != net.Difference ? null
            : string.Join(", ", parts.Select(part => $"{part.Name} {Signed(part.Part, net.Unit, workshop)}"));
    }

    private static string Why(QuarterLineSinceKept line, Workshop workshop, HashSet<string> said, bool all)
    {
        QuarterKeptCause[] causes = [.. line.Causes.OrderByDescending(cause => decimal.Abs(cause.Amount ?? decimal.MaxValue))];
        if (causes.Length == 0)
            return "no fact explains it";
        int most = all ? MostCausesSaid : CausesSaid;
        QuarterKeptCause[] told = [.. causes.Take(causes.Length == most + 1 ? causes.Length : most)];
        string text = string.Join("; ", told.Select(cause =>
            $"{(causes.Length > 1 ? Signed(cause.Amount, line.Unit, workshop) + " " : "")}{Told(cause)}"));
        QuarterKeptCause[] rest = [.. causes.Skip(told.Length)];
        return rest.Length == 0 ? text
            : Invariant($"{text}; {Signed(rest.Sum(cause => cause.Amount), line.Unit, workshop)} by {rest.Length} more");

        // What has been told once on the page is named by its row alone.
        string Told(QuarterKeptCause cause) => said.Add(cause.Text) || cause.File is null ? cause.Text : $"{cause.What}, as above";
    }

    private static string Signed(decimal? amount, string unit, Workshop workshop) =>
        amount is null ? "" : $"{(amount > 0 ? "+" : "")}{Amount(amount, unit, workshop)}";

    private static string Amount(decimal? amount, string unit, Workshop workshop) => amount is not { } known ? "unknown"
        : unit == QuarterKeptFigures.Money ? MoneyText.Exact(known, workshop)
        : unit == QuarterKeptFigures.Hours ? $"{QuarterWords.Hours(known)} h"
        : Invariant($"{known:0}");
}
