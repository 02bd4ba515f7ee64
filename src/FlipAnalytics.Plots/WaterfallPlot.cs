using System.Globalization;

namespace FlipAnalytics.Plots;

/// <summary>How an amount becomes another, step by step: a horizontal waterfall, read from top to bottom.</summary>
public static class WaterfallPlot
{
    private const float BarThickness = 22;
    private const float RowHeight = 42;
    private const float NameColumn = 190;

    /// <summary>
    /// Draws the steps. The first amount and the last stand on zero; those between are changes, below zero where
    /// something is taken away. The last is the sum of the others. Without steps the picture is a sentence.
    /// </summary>
    /// <param name="title">What the picture says.</param>
    /// <param name="steps">A start, changes and a result; names may be long.</param>
    /// <param name="moneyLabel">Text below the axis, such as the currency.</param>
    /// <param name="workshop">The workshop, for its symbol and currency.</param>
    /// <exception cref="ArgumentException">There is a single step, or they do not add up.</exception>
    public static Figure Of(string title, IReadOnlyList<WaterfallStep> steps, string moneyLabel, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(moneyLabel);
        ArgumentNullException.ThrowIfNull(workshop);
        if (steps.Count == 0)
            return Sheet.Sentence(title, "There are no amounts to show.");
        var sheet = new Sheet(title);
        return sheet.Finish(AddTo(sheet, steps, moneyLabel, workshop));
    }

    /// <summary>Adds the waterfall to a sheet.</summary>
    /// <returns>The amounts in words.</returns>
    internal static string AddTo(Sheet sheet, IReadOnlyList<WaterfallStep> steps, string moneyLabel, Workshop workshop)
    {
        Span[] spans = Spans(steps);
        string[] amounts = [.. Amounts(steps, spans, workshop)];
        Panel panel = sheet.AddPanel(new(
            Scale.Of(spans.SelectMany(span => new[] { span.From, span.To })), moneyLabel,
            Scale.Fixed(-steps.Count + 0.5, 0.5, []), "", steps.Count * RowHeight)
        {
            NameColumn = NameColumn,
            Gutter = amounts.Max(amount => new Lettering().Measure(amount).Width) + 12,
        });
        panel.Upright(0, new(Style.Ink));
        for (int i = 0; i + 1 < spans.Length; i++)
            panel.Line([(spans[i].To, -i), (spans[i].To, -i - 1)], new(Style.QuietInk));
        for (int i = 0; i < spans.Length; i++)
        {
            Span span = spans[i];
            panel.Bar(span.Left, span.Right, -i, BarThickness,
                span.StandsOnZero ? Style.Standing : span.To < span.From ? Style.TakenAway : Style.Added);
            panel.NameRow(steps[i].Item, -i, mostLines: 2);
            // Left of zero an amount would be crossed out by the axis.
            panel.Write(amounts[i], Math.Max(0, span.Right), -i, look: new());
        }

        return string.Join(", ", steps.Zip(amounts, (step, amount) => $"{step.Item} {amount}")) + $"; {moneyLabel}.";
    }

    // A change says its direction; the digits are the same in every row.
    private static IEnumerable<string> Amounts(IReadOnlyList<WaterfallStep> steps, Span[] spans, Workshop workshop)
    {
        bool isWhole = steps.All(step => decimal.IsInteger(step.Amount));
        return steps.Zip(spans, (step, span) => (!span.StandsOnZero && step.Amount > 0 ? "+" : "")
            + (isWhole ? MoneyText.Whole(step.Amount, workshop) : MoneyText.Exact(step.Amount, workshop)));
    }

    private static Span[] Spans(IReadOnlyList<WaterfallStep> steps)
    {
        if (steps.Count < 2)
        {
            throw new ArgumentException(
                $"A waterfall of {steps.Count} steps says nothing: give a start, changes and a result.", nameof(steps));
        }

        var spans = new Span[steps.Count];
        decimal level = 0;
        for (int i = 0; i < steps.Count - 1; i++)
        {
            spans[i] = new((double)level, (double)(level + steps[i].Amount), StandsOnZero: i == 0);
            level += steps[i].Amount;
        }

        WaterfallStep last = steps[^1];
        if (level != last.Amount)
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The steps add up to {level} but '{last.Item}' is {last.Amount}: the last must be the sum of the others."),
                nameof(steps));
        }

        spans[^1] = new(0, (double)last.Amount, StandsOnZero: true);
        return spans;
    }

    private readonly record struct Span(double From, double To, bool StandsOnZero)
    {
        public double Left => Math.Min(From, To);

        public double Right => Math.Max(From, To);
    }
}
