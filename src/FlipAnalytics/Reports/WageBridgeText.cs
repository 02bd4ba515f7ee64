using System.Collections.Immutable;
using System.Text;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>The two wages of a span in words, as text and as a table: the same on every page.</summary>
public static class WageBridgeText
{
    private const int Label = 66;

    /// <summary>The name of the wage of the pieces sold, with the shares that they carry.</summary>
    public const string FullWageName = "full wage";

    /// <summary>The name of the wage of a span, with the costs that fell into it.</summary>
    /// <param name="period">The span; null for the whole log.</param>
    public static string SpanWageName(ReportPeriod? period) => $"wage of the {Noun(period)}";

    /// <summary>What the span's own costs make of the full wage, in a sentence.</summary>
    /// <param name="bridge">The bridge.</param>
    /// <param name="period">The span; null for the whole log.</param>
    /// <param name="workshop">The workshop.</param>
    public static string Sentence(WageBridge bridge, ReportPeriod? period, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(bridge);
        string idle = IdleWords.Sentence(bridge, workshop, isInShort: false) is { Length: > 0 } words
            ? $"{words}; with their part of it these pieces paid {MoneyText.Exact(bridge.WageAfterIdleMonths, workshop)}. " : "";
        string part = bridge.Pieces == bridge.OfPieces ? ""
            : Invariant($" These pieces bear {bridge.Pieces} parts in {bridge.OfPieces} of such costs, by their number.");
        return $"{idle}With all costs that fell into the {Noun(period)} in place of those the pieces carry, it is {MoneyText.Exact(bridge.SpanWage, workshop)} an hour ({SpanWageName(period)}).{part}";
    }

    /// <summary>The same in short, for where the steps follow.</summary>
    /// <param name="bridge">The bridge.</param>
    /// <param name="period">The span; null for the whole log.</param>
    /// <param name="workshop">The workshop.</param>
    public static string InShort(WageBridge bridge, ReportPeriod? period, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(bridge);
        return $"With the costs of the {Noun(period)} in place of those they carry: {MoneyText.Exact(bridge.SpanWage, workshop)} an hour ({SpanWageName(period)}).";
    }

    /// <summary>How far costs of a month count in a span that is not over, in a sentence; null where nothing is to come.</summary>
    /// <param name="amount">What is still to arise of the month.</param>
    /// <param name="asOf">The day up to which it counts.</param>
    /// <param name="workshop">The workshop.</param>
    public static string? StillToArise(decimal amount, DateOnly asOf, Workshop workshop) => amount == 0 ? null
        : Invariant($"Rent and wear of tools count by days, up to {asOf:yyyy-MM-dd}: {MoneyText.Exact(amount, workshop)} for the rest of that month is still to come.");

    /// <summary>The way from the one wage to the other, a row a step; an hour only where it is a wage.</summary>
    /// <param name="bridge">The bridge; null for an empty table.</param>
    /// <param name="period">The span; null for the whole log.</param>
    /// <param name="workshop">The workshop.</param>
    public static ReportTable Table(WageBridge? bridge, ReportPeriod? period, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        return ReportTable.Of(
            "wage-bridge", $"From the {FullWageName} of the pieces sold to the {SpanWageName(period)}",
            bridge is null ? [] : Rows(bridge, period),
            ("step", "step", row => row.Name),
            ("what", "what it is", row => row.What),
            ("profit", "left over", row => row.Profit),
            ("hours", "hours", row => row.Hours),
            ("an_hour", "an hour", row => row.Wage is { } wage ? workshop.Currency.Round(wage) : null));
    }

    /// <summary>Where every hour of the log is, seen from the wage of the span, as an equation.</summary>
    /// <param name="hours">The hours.</param>
    /// <param name="period">The span; null for the whole log.</param>
    public static string? Sentence(WageHours hours, ReportPeriod? period)
    {
        ArgumentNullException.ThrowIfNull(hours);
        string outside = string.Concat(hours.Outside.Where(place => place.Hours != 0).Select(place => Invariant($" + {place.What} {place.Hours:0.00}")));
        return hours.Written == 0 ? null
            : Invariant($"Every hour in the files: {SpanWageName(period)} {hours.InSpanWage:0.00}{outside} = {hours.Written:0.00}; off by {hours.Difference:0.00}.");
    }

    /// <summary>The same, a row a place.</summary>
    /// <param name="hours">The hours.</param>
    /// <param name="period">The span; null for the whole log.</param>
    public static ReportTable Table(WageHours hours, ReportPeriod? period)
    {
        ArgumentNullException.ThrowIfNull(hours);
        return ReportTable.Of(
            "wage-hours", $"Every hour in the files, seen from the {SpanWageName(period)}",
            [
                new HoursPlace("span_wage", SpanWageName(period), hours.InSpanWage), .. hours.Outside,
                new("written", "all hours in the files", hours.Written),
            ],
            ("place", "place", row => row.Name),
            ("what", "what it is", row => row.What),
            ("hours", "hours", row => row.Hours));
    }

    internal static void Append(StringBuilder text, WageBridge? bridge, ReportPeriod? period, Workshop workshop)
    {
        if (bridge is null)
            return;
        text.Append(Invariant($"\n{"Two wages, and what lies between them",-Label}{"left over",13}{"hours",9}{"an hour",12}\n"));
        foreach (BridgeRow row in Rows(bridge, period))
        {
            string wage = row.Wage is { } hourly ? MoneyText.PlainExact(hourly, workshop) : "";
            text.Append(Invariant(
                $"{row.What,-Label}{MoneyText.PlainExact(row.Profit, workshop),13}{row.Hours,9:0.00}{wage,12}").TrimEnd()).Append('\n');
        }
    }

    private sealed record BridgeRow(string Name, string What, decimal Profit, decimal Hours, decimal? Wage);

    private static ImmutableArray<BridgeRow> Rows(WageBridge bridge, ReportPeriod? period)
    {
        string pieces = bridge.Pieces == bridge.OfPieces
            ? TextLines.Counted(bridge.Pieces, "piece")
            : Invariant($"{bridge.Pieces} of {TextLines.Counted(bridge.OfPieces, "piece")}");
        return
        [
            new("full_wage", $"  {pieces} sold, with what they carry ({FullWageName})", bridge.FullProfit, bridge.AllHours, bridge.FullWage),
            .. bridge.Lines.Where(line => line.Profit != 0 || line.Hours != 0).Select(line => new BridgeRow(
                line.Name, $"  {(line.Profit < 0 || (line.Profit == 0 && line.Hours > 0) ? "-" : "+")} {Shown(line, period)}", line.Profit, line.Hours,
                line == bridge.Lines[0] ? bridge.WageAfterIdleMonths : null)),
            new("span_wage", $"  = {SpanWageName(period)}", bridge.SpanProfit, bridge.SpanHours, bridge.SpanWage),
        ];
    }

    private static string Shown(WageBridgeLine line, ReportPeriod? period) => line.Name == "fell_into_the_span"
        ? $"wear, rent and general work that fell into the {Noun(period)}" : line.What;

    private static string Noun(ReportPeriod? period) => period?.Noun ?? "whole log";
}
