using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>The sentences of a wages report, for text, page and notebook alike.</summary>
public static class WagesSentences
{
    private const int NamesShown = 4;
    private const int ExtremesShown = 2;

    /// <summary>What the flips paid by the hour, in a sentence; or why that cannot be told.</summary>
    /// <param name="report">The report.</param>
    public static string Answer(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        WageSum total = report.Total;
        string span = report.Period is { } period ? $" of {period.Name}" : "";
        if (total.Flips == 0)
        {
            return report.Period is null
                ? "Nothing is sold yet, so there is no wage to tell."
                : $"No sale is written down for {report.Period.Name}, so there is no wage to tell.";
        }

        if (total.FullWage is not { } wage)
        {
            string why = total.WithoutHours > 0 ? "none has its hours written down. Note the hours of a piece in hours.csv, or in the column hours of pieces.csv"
                : total.Counted > 0 ? "no hands-on hours are written down for them"
                : "sale price or price paid is missing for each";
            string left = total.WithoutHours == 0 ? ""
                : $" Together they left {AtMost(report.FullIsAtMost)}{Money(total.FullProfitWithoutHours + total.FullProfit, report)}.";
            return $"What {Yours(total.Flips)}{span} paid by the hour cannot be told: {why}.{left}";
        }

        string which = total.Counted == total.Flips ? Capital($"{Yours(total.Flips)}{span}")
            : Invariant($"The {total.Counted} of your {Flips(total.Flips)}{span} with price and hours on record");
        string bench = total.CashWage is { } cash && (total.OutsideHours != 0 || total.CashProfit != total.FullProfit)
            ? $" At the bench alone, before shared costs: {AtMost(report.CashIsAtMost)}{Money(cash, report)}."
            : "";
        return $"{which} paid {AtMost(report.FullIsAtMost)}{Money(wage, report)} an hour ({WageBridgeText.FullWageName}: all that they carry of costs and work counted).{bench}";
    }

    /// <summary>How sure it is, how single flips lie, and where it is going.</summary>
    /// <param name="report">The report.</param>
    /// <param name="all">Whether to say all; else in short, for where the bridge of the wages follows.</param>
    public static ImmutableArray<string> Around(WagesReport report, bool all = true)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report is not { Spread: { } spread, Total.FullWage: not null })
            return [];
        List<string> sentences = [];
        if (report.Bridge is { } bridge)
        {
            sentences.Add(all
                ? WageBridgeText.Sentence(bridge, report.Period, report.Workshop)
                : WageBridgeText.InShort(bridge, report.Period, report.Workshop));
        }

        if (report.Total.Range is { } range)
        {
            sentences.Add(
                $"Some of that is luck: in the long run such flips likely pay between {Money(range.Low, report)} and {Money(range.High, report)} (19 times in 20).");
        }

        string target = spread.AtTarget is { } met
            ? Invariant($"{met} of {spread.Flips} met your {Money(report.Workshop.TargetWage!.Value, report)} an hour. ")
            : "";
        if (spread.Flips >= WageSum.FewestForARange)
        {
            sentences.Add(
                $"{target}The middle flip paid {Money(spread.Median, report)}, half of them between {Money(spread.LowerQuartile, report)} and {Money(spread.UpperQuartile, report)}.");
            sentences.Add(Extremes(report));
        }
        else if (target.Length > 0)
        {
            sentences.Add(target.TrimEnd());
        }

        sentences.Add(report.Trend switch
        {
            null when report.Total.Range is null => "Too few flips to say how much of that is luck, or whether pay rises or falls.",
            null => Invariant($"Too few to tell whether pay rises or falls: that takes {WageTrend.FewestFlips} dated flips over half a year."),
            { IsClear: true } trend =>
                $"Pay {(trend.ChangePerYear > 0 ? "rises" : "falls")} by about {Money(Math.Abs(trend.ChangePerYear), report)} an hour each year (likely {Signed(trend.Low, report)} to {Signed(trend.High, report)}).",
            { } trend =>
                $"Whether pay rises or falls cannot be told from luck: anything from {Signed(trend.Low, report)} to {Signed(trend.High, report)} an hour each year fits.",
        });
        return [.. sentences];
    }

    /// <summary>What is not in the figures: flips left out, costs and tables missing. A sentence each.</summary>
    /// <param name="report">The report.</param>
    /// <param name="all">Whether to say too what it would be with hours estimated.</param>
    public static ImmutableArray<string> Missing(WagesReport report, bool all = true)
    {
        ArgumentNullException.ThrowIfNull(report);
        List<string> sentences = [];
        WageSum total = report.Total;
        bool hasProfit = total.Counted + total.WithoutHours > 0;
        bool hasNoSupplies = report.KindsWithoutRecord.Contains(CostKind.Supplies);
        string[] kinds =
        [
            .. report.MissingCosts.Where(missing => !(hasNoSupplies && missing.Kind == CostKind.Supplies))
                .Select(missing => Invariant($"{Name(missing.Kind)} of {Flips(missing.Flips)}")),
        ];
        if (kinds.Length > 0)
            sentences.Add($"The log does not tell all costs ({string.Join(", ", kinds)}), hence \"at most\".");
        if (hasProfit && hasNoSupplies)
            sentences.Add("No supplies are written down anywhere, so none are taken off: the truth is lower. Add supplies.csv, or supplies_cost in pieces.csv.");
        string[] others = [.. report.KindsWithoutRecord.Where(kind => kind != CostKind.Supplies).Select(Table)];
        if (hasProfit && others.Length > 0)
            sentences.Add($"The log has no {string.Join(", no ", others)}: whatever those cost is not taken off.");
        if (total.WithoutHours > 0 && total.FullWage is not null)
        {
            sentences.Add(
                $"No hours are written down for {WageFigures.Names(report.LeftOut.WithoutHours, NamesShown)}: what was left on them, {Money(total.FullProfitWithoutHours, report)}, is in no wage.");
        }

        if (all && report.FilledIn is { Total.FullWage: { } filled } estimate)
        {
            string still = estimate.StillUnknown > 0 ? Invariant($"; {estimate.StillUnknown} stay unknown") : "";
            sentences.Add(
                $"With hours estimated for {(estimate.Filled == 1 ? "that one" : Invariant($"those {estimate.Filled}"))} ({WageFigures.Hours(estimate.Hours)} h, as such pieces usually take), all of them paid {AtMost(report.FullIsAtMost || estimate.Total.FullIsAtMost)}{Money(filled, report)} an hour{still}.");
        }

        if (!report.LeftOut.WithoutSalePrice.IsEmpty)
            sentences.Add($"Sold without a price on record, so left out: {WageFigures.Names(report.LeftOut.WithoutSalePrice, NamesShown)}.");
        if (!report.LeftOut.WithoutPurchasePrice.IsEmpty)
            sentences.Add($"What was paid is not on record, so left out: {WageFigures.Names(report.LeftOut.WithoutPurchasePrice, NamesShown)}.");
        if (!report.LeftOut.WithoutDay.IsEmpty)
            sentences.Add($"Sold on a day not written down, so not in {report.Period!.Name}: {WageFigures.Names(report.LeftOut.WithoutDay, NamesShown)}.");
        // Unasked only where a span was named: in the wage of a whole log the rest of a month is next to nothing.
        if ((all || report.Period is not null) && report.Bridge is not null
            && WageBridgeText.StillToArise(report.StillToArise, report.AsOf, report.Workshop) is { } rest)
            sentences.Add(rest);
        return [.. sentences];
    }

    /// <summary>How much of all work is outside the bench; null where no hours are on record.</summary>
    /// <param name="report">The report.</param>
    public static string? Hours(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        HoursByTask hours = report.Hours;
        if (hours.All == 0)
            return null;
        string log = report.Period is null ? "" : " (the whole log)";
        string outside = string.Join(", ", hours.Tasks.Where(task => !task.IsBench)
            .Select(task => (Name: Work(task), task.Hours)).GroupBy(task => task.Name)
            .Select(task => $"{task.Key} {WageFigures.Hours(task.Sum(t => t.Hours))}"));
        string without = hours.OnPiecesWithoutTask > 0
            ? $" {WageFigures.Hours(hours.OnPiecesWithoutTask)} h on pieces have no task written down and count as bench work."
            : "";
        return hours.Outside == 0
            ? $"All {WageFigures.Hours(hours.All)} hours on record{log} are at the bench: looking, photos, listing and selling are not written down, so the wage looks better than it is."
            : $"Of {WageFigures.Hours(hours.All)} hours{log}, {WageFigures.Hours(hours.Outside)} ({WageFigures.Percent(hours.Outside, hours.All)}) went outside the bench: {outside}.{without}";
    }

    /// <summary>What the target wage would have refused; null without a target or a flip to judge.</summary>
    /// <param name="report">The report.</param>
    public static string? Hindsight(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.Hindsight is not { Judged: > 0 } look)
            return null;
        string wage = Money(look.TargetWage, report);
        if (look.Refused.IsEmpty)
            return $"With hindsight, none of the {Flips(look.Judged)} was bought too dear for your {wage} an hour.";
        string gift = look.NotEvenAsAGift > 0
            ? Invariant($" {look.NotEvenAsAGift} would not have been worth it even as a gift.") : "";
        string others = look.EarnedByOthers is { } earned
            ? $" The others paid {Money(earned, report)} an hour." : "";
        return Invariant($"With hindsight, {look.Refused.Length} of {look.Judged} cost more than your {wage} an hour allowed: {WageFigures.Hours(look.Hours)} h brought {Money(look.FullProfit, report)} ({(look.Earned is { } paid ? Money(paid, report) : "0")} an hour) and were worth {Money(look.HoursWorth, report)}, {Money(look.Shortfall, report)} short.{gift}{others}{(look.Refused.Length > 1 ? " Furthest off:" : "")}");
    }

    /// <summary>Pieces that left without a sale; null where there is none.</summary>
    /// <param name="report">The report.</param>
    public static string? WrittenOff(WagesReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        int count = report.WrittenOff.Ids.Length;
        // The sentence follows the list of losers, where there is one.
        string which = report.Losers.IsEmpty ? TextLines.Counted(count, "piece") : Invariant($"{count} more");
        return count == 0 ? null
            : Invariant($"{which} left without a sale and cost {Money(report.WrittenOff.Cost, report)}: {WageFigures.Names(report.WrittenOff.Ids, NamesShown)}.");
    }

    private static string Extremes(WagesReport report)
    {
        FlipWage[] ordered = [.. report.Flips.Where(flip => flip.FullWage is not null).OrderByDescending(flip => flip.FullWage)];
        return $"Best: {Named(ordered.Take(ExtremesShown))}. Worst: {Named(ordered.Reverse().Take(ExtremesShown))}.";

        string Named(IEnumerable<FlipWage> flips) =>
            string.Join(", ", flips.Select(flip => $"{flip.Id} {flip.Type} {Money(flip.FullWage!.Value, report)}"));
    }

    internal static string Money(decimal amount, WagesReport report) => MoneyText.Exact(amount, report.Workshop);

    private static string AtMost(bool isAtMost) => isAtMost ? "at most " : "";

    private static string Signed(decimal amount, WagesReport report) =>
        (amount > 0 ? "+" : "") + Money(amount, report);

    private static string Yours(int flips) => flips == 1 ? "your one flip" : $"your {Flips(flips)}";

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Flips(int count) => TextLines.Counted(count, "flip");

    private static string Name(CostKind kind) => kind switch
    {
        CostKind.Trip => "driving",
        CostKind.Tools => "tool wear",
        _ => kind.ToString().ToLowerInvariant(),
    };

    private static string Table(CostKind kind) => kind switch
    {
        CostKind.Tools => "tools (tools.csv)",
        CostKind.Trip => "outings (trips.csv)",
        _ => "rent and the like (overheads.csv)",
    };

    private static string Work(TaskHours task) => task.Task switch
    {
        null => "no task written down",
        WorkTask.Sourcing => "looking for pieces",
        WorkTask.Other => "other",
        { } work => work.ToString().ToLowerInvariant(),
    };
}
