using System.Globalization;
using System.Text;

using static System.FormattableString;
using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>A report as text of at most 100 columns: the answer first, the sums last.</summary>
public static class QuarterText
{
    private const int Label = 53;
    private const int Column = 15;
    private const int StepsShown = 3;
    private const int ChangesShown = 8;
    private const int FewestChangesShown = 7;

    /// <summary>The report on one screen, or all of it.</summary>
    /// <param name="report">The report.</param>
    /// <param name="all">Whether to tell all: where the money went, measures, what differs, and the sums.</param>
    public static string Render(QuarterReport report, bool all = false)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (all)
            return Written(report, new(int.MaxValue, ChangesShown) { IsAll = true });
        string text = "";
        foreach (PageOfAQuarter shown in Pages())
        {
            text = Written(report, shown);
            if (LineCount(text) <= ScreenLines)
                break;
        }

        return text;
    }

    /// <summary>What is on the page. Why the money is not the profit gives way to hardly anything, for it is what nobody sees else.</summary>
    private sealed record PageOfAQuarter(int Steps, int Changes)
    {
        public bool IsAll { get; init; }

        public bool WithCansInDoubt { get; init; } = true;

        public bool WithAges { get; init; } = true;

        public bool WithRules { get; init; } = true;

        public bool WithBridge { get; init; } = true;
    }

    // From the fullest page to the barest: the first that fits a screen is taken.
    private static IEnumerable<PageOfAQuarter> Pages()
    {
        for (int steps = StepsShown; steps > 0; steps--)
            yield return new(steps, ChangesShown);
        PageOfAQuarter bare = new(1, ChangesShown);
        yield return bare = bare with { WithCansInDoubt = false };
        yield return bare = bare with { WithRules = false };
        yield return bare = bare with { WithAges = false };
        yield return bare = bare with { Steps = 0 };
        yield return bare = bare with { WithBridge = false };
        for (int changes = ChangesShown - 1; changes >= FewestChangesShown; changes--)
            yield return bare with { Changes = changes };
    }

    private static string Written(QuarterReport report, PageOfAQuarter shown)
    {
        bool all = shown.IsAll;
        StringBuilder text = new();
        text.AppendWrapped("", "", QuarterSentences.Headline(report));
        QuarterKeptText.Append(text, report.SinceKept, report.Workshop, all ? null : shown.Changes);
        if (report.Chosen is { } chosen)
            text.AppendWrapped("  ", "  ", chosen);
        if (SetAsideText.Sentence(report.SetAside, report.Workshop) is { } without)
            text.AppendWrapped("  ", "  ", without);
        if (report.WorthALook is { } doubt)
            text.AppendWrapped("  ", "  ", doubt);
        foreach (string sentence in QuarterSentences.Beneath(report, all).Concat(report.Lacking))
            text.AppendWrapped("  ", "  ", sentence);
        if (report.Profit.Pieces > 0 || report.Profit.OtherCosts != 0)
            AppendProfit(text, report, all);
        if (all)
            WageBridgeText.Append(text, report.Hours.Bridge, report.Period, report.Workshop);
        AppendCash(text, report, all, shown.WithBridge);
        if (all)
        {
            QuarterStockText.Append(text, report);
            AppendChanges(text, report);
        }
        else
        {
            QuarterStockText.AppendInShort(text, report, shown.WithAges, shown.WithCansInDoubt);
        }

        AppendList(text, "What to do next", report.Steps.Take(shown.Steps).Select(step => step.Text));
        if (!all)
        {
            decimal off = report.Sums.Sum(sum => decimal.Abs(sum.Difference));
            int later = report.Steps.Length - shown.Steps;
            string toDo = later <= 0 ? "" : Invariant($"{later}{(shown.Steps > 0 ? " more" : "")} to do, ");
            text.Append('\n').AppendWrapped("", "", Invariant(
                $"{report.Sums.Length} sums are off by {MoneyText.Exact(off, report.Workshop)}. --all: the rest, {toDo}{(report.Undated.IsEmpty ? "" : "what has no day, ")}tax questions. --explain fees: its parts."));
            AppendRules(text, report, shown);
            return text.ToString();
        }

        AppendList(text, "To ask a tax professional; these are no advice", report.Prompts
            .Select(prompt => $"If you are in {prompt.Place}: {prompt.Text} [{prompt.Source}{(prompt.Status == QuarterPrompts.Published ? "" : $"; {prompt.Status}")}]"));
        if (!report.Undated.IsEmpty)
        {
            text.Append('\n').AppendWrapped("", "  ",
                $"In no {report.Period.Noun}, since the day is not written down: {string.Join("; ", QuarterSentences.Undated(report))}.");
        }

        AppendSums(text, report);
        if (WageBridgeText.Sentence(report.Hours.Everywhere, report.Period) is { } everywhere)
            text.AppendWrapped("  ", "    ", everywhere);
        text.Append('\n');
        AppendRules(text, report, shown);
        return text.ToString();
    }

    private static void AppendRules(StringBuilder text, QuarterReport report, PageOfAQuarter shown)
    {
        if (QuarterRules.Sentence(report.Rules) is { } rules)
            text.AppendWrapped("", "  ", shown.WithRules ? rules : $"Rules of thumb used ({QuarterRules.Place}): {report.Rules.Length}, named by --all.");
    }

    private static void AppendProfit(StringBuilder text, QuarterReport report, bool all)
    {
        QuarterChange[] earlier =
            [.. new[] { report.AgainstBefore, report.AgainstYearEarlier }.OfType<QuarterChange>().Where(change => !change.IsBeforeTheLog)];
        (QuarterProfit Profit, QuarterHours Hours)[] spans =
            [(report.Profit, report.Hours), .. earlier.Select(change => (change.Profit, change.Hours))];
        string[] heads = [.. new[] { report.Period }.Concat(earlier.Select(change => change.With))
            .Select((period, i) => Head(period, i))];
        if (report.IsSoFar)
            heads[0] = "so far";
        else if (report.IsPart)
            heads[0] = "as known";
        text.Append('\n').Append(Row("Profit and loss", heads));
        Count("pieces sold", profit => profit.Pieces, isShown: true);
        Money("  sales", profit => profit.Sales, isShown: true);
        Money("+ delivery you charged", profit => profit.DeliveryCharged);
        Money("- given back to buyers (returns)", profit => profit.Returns);
        Money("- what the pieces you sold had cost you (COGS)", profit => profit.CostOfPiecesSold, isShown: true);
        if (all)
        {
            Money("      paid for them", profit => profit.Purchases);
            Money("      supplies used up on them", profit => profit.Supplies);
            Money("      outings that brought them home", profit => profit.Outings);
        }

        Money("= left after the pieces (gross profit)", profit => profit.GrossProfit, isShown: true);
        Money("- what selling channels kept (fees)", profit => profit.Fees);
        Money("- delivery", profit => profit.Delivery);
        Money("- given away, broken, stolen and the like (written off)", profit => profit.WrittenOff);
        Money("- wear of tools (depreciation)", profit => profit.ToolWear);
        Money("- rent and the like, fruitless outings (overhead)", profit => profit.Overheads);
        Money("- supplies wasted, or missing at a count", profit => profit.SuppliesLost);
        Money("= what you made (net profit)", profit => profit.Net, isShown: true);
        if (spans.Any(span => span.Hours.Wage is not null))
        {
            // Of this span the hours and both wages stand in the bridge below as well.
            if (all)
                Of("hours it took" + (spans.Any(span => span.Hours.Wage?.Pieces < span.Profit.Pieces) ? ", where known" : ""),
                    hours => hours.Wage is { } wage ? QuarterWords.Hours(wage.Hours) : null);
            Of($"an hour ({WageBridgeText.SpanWageName(report.Period)})",
                hours => hours.Wage is { } wage ? MoneyText.PlainExact(wage.PerHour, report.Workshop) : null);
            if (all)
                Of($"an hour of the pieces sold ({WageBridgeText.FullWageName})",
                    hours => hours.Bridge is { } bridge ? MoneyText.PlainExact(bridge.FullWage, report.Workshop) : null);
        }

        void Of(string label, Func<QuarterHours, string?> figure) =>
            text.Append(Row("  " + label, spans.Select(span => figure(span.Hours) ?? "-")));

        void Money(string label, Func<QuarterProfit, decimal> amount, bool isShown = false)
        {
            decimal[] amounts = [.. spans.Select(span => amount(span.Profit))];
            if (isShown || amounts.Any(value => value != 0))
                text.Append(Row(label, amounts.Select(value => MoneyText.PlainExact(value, report.Workshop))));
        }

        void Count(string label, Func<QuarterProfit, int> count, bool isShown) =>
            text.Append(Row("  " + label, spans.Select(span => count(span.Profit).ToString(CultureInfo.InvariantCulture))));
    }

    private static string Head(ReportPeriod period, int place) => period.Name.Length < Column ? period.Name
        : place == 0 ? "this span" : Invariant($"{period.From:yyyy-MM-dd}..");

    private static void AppendCash(StringBuilder text, QuarterReport report, bool all, bool withBridge)
    {
        QuarterCash cash = report.Cash;
        if (cash.Lines.IsEmpty && cash.DrivingReckoned == 0)
            return;
        string Line(QuarterCashLine line, decimal amount) => $"{line.What} {MoneyText.Exact(amount, report.Workshop)}";
        string money = $"Money: {MoneyText.Exact(cash.In, report.Workshop)} came in, {MoneyText.Exact(cash.Out, report.Workshop)} went out: {QuarterSentences.Signed(report, cash.Change)} in hand.";
        string? held = QuarterSentences.Held(report);
        if (!all)
        {
            string? why = withBridge ? QuarterSentences.ProfitToCash(report, isAfterTheMoney: true) : null;
            text.Append('\n').AppendWrapped("", "  ", why is null ? money : $"{money} {why}");
            if (held is not null)
                text.AppendWrapped("  ", "  ", held);
            return;
        }

        text.Append('\n').AppendWrapped("", "  ", money);
        if (held is not null)
            text.AppendWrapped("  ", "  ", held);
        string[] spent = [.. cash.Lines.Where(line => line.Out != 0).Select(line => Line(line, line.Out))];
        if (spent.Length > 0)
            text.AppendWrapped("  ", "  ", $"Out: {string.Join(", ", spent)}.");
        if (cash.DrivingReckoned != 0)
        {
            text.AppendWrapped("  ", "  ",
                $"Driving comes to {MoneyText.Exact(cash.DrivingReckoned, report.Workshop)} at the mileage rate; reckoned, not paid, so it stands apart.");
        }

        if (QuarterSentences.ProfitToCash(report) is { } bridge)
            text.AppendWrapped("  ", "  ", bridge);
    }

    private static void AppendChanges(StringBuilder text, QuarterReport report)
    {
        string[] changes =
        [
            .. new[] { report.AgainstBefore, report.AgainstYearEarlier }.Where(change => change is { IsBeforeTheLog: false })
                .Select(change => QuarterSentences.Change(report, change)).OfType<string>(),
        ];
        if (changes.Length == 0)
            return;
        text.Append("\nWhy it differs\n");
        if (report.IsPart)
            text.AppendWrapped("  ", "  ", Invariant($"Compared with as many days of the earlier {report.Period.Noun}s: {report.Reckoned.Days}."));
        foreach (string change in changes)
            text.AppendWrapped("  ", "    ", change);
        text.AppendWrapped("  ", "  ",
            "(number sold: at what a piece left on average then; mix: more of the types that leave more; price, cost: the same types for more or less.)");
    }

    private static void AppendList(StringBuilder text, string heading, IEnumerable<string> items)
    {
        string[] all = [.. items];
        if (all.Length == 0)
            return;
        text.Append('\n').Append(heading).Append('\n');
        foreach (string item in all)
            text.AppendWrapped("  - ", "    ", item);
    }

    private static void AppendSums(StringBuilder text, QuarterReport report)
    {
        text.Append("\nThe sums come out\n");
        foreach (QuarterSum sum in report.Sums.Where(sum => sum.Name == QuarterSums.PiecesName))
            text.AppendWrapped("  ", "    ", Equation(char.ToUpperInvariant(sum.Name[0]) + sum.Name[1..] + ":", sum, report.Workshop));
        decimal off = report.Sums.Sum(sum => decimal.Abs(sum.Difference));
        text.AppendWrapped("  ", "    ", Invariant(
            $"This and {report.Sums.Length - 1} more sums were checked and are off by {MoneyText.Exact(off, report.Workshop)}; --json has all."));
    }

    private static string Equation(string name, QuarterSum sum, Workshop workshop)
    {
        StringBuilder equation = new(name);
        foreach (var (term, i) in sum.Terms.Select((term, i) => (term, i)))
        {
            string sign = i == 0 ? " " : term.Amount < 0 ? " - " : " + ";
            decimal amount = i == 0 ? term.Amount : decimal.Abs(term.Amount);
            equation.Append(CultureInfo.InvariantCulture, $"{sign}{term.What} {MoneyText.Exact(amount, workshop)}");
        }

        return equation.Append(CultureInfo.InvariantCulture, $" = {sum.Result} {MoneyText.Exact(sum.Total, workshop)}").ToString();
    }

    internal static string Row(string label, IEnumerable<string> cells) =>
        label.PadRight(Label) + string.Concat(cells.Select(cell => cell.PadLeft(Column))) + "\n";
}
