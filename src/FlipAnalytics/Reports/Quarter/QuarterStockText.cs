using System.Text;

using static System.FormattableString;
using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>What is tied up in pieces, supplies and tools, as text.</summary>
internal static class QuarterStockText
{
    /// <summary>What is tied up at the end, and for how long, in a paragraph.</summary>
    public static void AppendInShort(StringBuilder text, QuarterReport report, bool withAges, bool withCansInDoubt)
    {
        string?[] sentences = [TiedUp(report), withAges ? Ages(report) : null, withCansInDoubt ? QuarterSentences.CansInDoubt(report, isInShort: true) : null];
        text.AppendWrapped("", "  ", string.Join(' ', sentences.OfType<string>()));
    }

    /// <summary>What was tied up at the start and at the end, what came and went, and the measures.</summary>
    public static void Append(StringBuilder text, QuarterReport report)
    {
        QuarterStock[] ends = [report.Opening, report.Closing];
        text.Append('\n').Append(QuarterText.Row("Tied up, at cost", ends.Select(stock => Invariant($"{stock.Day:yyyy-MM-dd}"))));
        for (int i = 0; i < report.Closing.ByState.Length; i++)
        {
            text.Append(QuarterText.Row(
                Invariant($"  pieces {report.Closing.ByState[i].Name} ({report.Opening.ByState[i].Pieces}, now {report.Closing.ByState[i].Pieces})"),
                ends.Select(stock => MoneyText.PlainExact(stock.ByState[i].Cost, report.Workshop))));
        }

        if (ends.Any(stock => stock.InCans != 0))
            text.Append(QuarterText.Row("  supplies in cans", ends.Select(stock => MoneyText.PlainExact(stock.InCans, report.Workshop))));

        if (ends.Any(stock => stock.Tools != 0))
            text.Append(QuarterText.Row("  tools, at what is left of them (book value)", ends.Select(stock => MoneyText.PlainExact(stock.Tools, report.Workshop))));
        if (Ages(report) is { } ages)
        {
            decimal floor = report.Closing.ByState.Sum(group => group.Floor);
            int unknown = report.Closing.ByState.Sum(group => group.FloorUnknown);
            string unit = report.Workshop.LengthUnit == LengthUnit.Inch ? "ft²" : "m²";
            string missing = unknown > 0 ? Invariant($", {Counted(unknown, "piece")} without a size not counted") : "";
            string space = unknown == report.Closing.Pieces.Length ? "Floor unknown, for want of sizes"
                : Invariant($"Floor: {floor:0.#} {unit}{missing}");
            text.AppendWrapped("  ", "  ", $"{ages} {space}.");
        }

        if (QuarterSentences.CansInDoubt(report) is { } doubt)
            text.AppendWrapped("  ", "  ", doubt);

        QuarterCounts counts = report.Counts;
        string gone = counts.Withdrawn == 0 ? ""
            : Invariant($" (kept {counts.Kept}, given away {counts.Given}, scrapped {counts.Scrapped}, broken {counts.Broken}, for parts {counts.Parts}, stolen {counts.Stolen}{(counts.GoneSomehow > 0 ? Invariant($", unknown {counts.GoneSomehow}") : "")})");
        text.AppendWrapped("  ", "  ", Invariant(
            $"Bought {counts.Bought}, finished {counts.Finished}, listed {counts.Listed}, sold {counts.Sold}, withdrawn {counts.Withdrawn}{gone}."));
        foreach (string ratio in QuarterSentences.Ratios(report))
            text.AppendWrapped("  ", "    ", ratio);
        SuppliesByCanText.Append(text, report);
    }

    private static string TiedUp(QuarterReport report)
    {
        QuarterStock now = report.Closing;
        string pieces = string.Join(", ", now.ByState.Select(group =>
            Invariant($"{MoneyText.Exact(group.Cost, report.Workshop)} in {Counted(group.Pieces, "piece")} {group.Name}")));
        string cans = now.InCans == 0 ? "" : $", {MoneyText.Exact(now.InCans, report.Workshop)} in supplies";
        string tools = now.Tools == 0 ? "" : $", {MoneyText.Exact(now.Tools, report.Workshop)} in tools";
        return Invariant($"Tied up on {now.Day:yyyy-MM-dd}, at cost: {pieces}{cans}{tools}.");
    }

    private static string? Ages(QuarterReport report)
    {
        string[] ages =
        [
            .. report.Closing.ByAge.Where(age => age.Pieces > 0)
                .Select(age => Invariant($"{age.Name} {age.Pieces} ({MoneyText.Exact(age.Cost, report.Workshop)})")),
        ];
        return ages.Length == 0 ? null : $"Since bought: {string.Join(", ", ages)}.";
    }
}
