using System.Globalization;

using ScottPlot;
using ScottPlot.TickGenerators;

namespace FlipAnalytics.Plots;

/// <summary>How an amount becomes another, step by step: a horizontal waterfall, read from top to bottom.</summary>
public static class WaterfallPlot
{
    private const double BarThickness = 0.6;
    private const int NameLetters = 24;
    private const int LineHeight = 19;
    private const int RowGap = 16;
    private const int LabelGap = 6;

    /// <summary>Share of the bars' span kept free on the right for the amount beside the longest bar.</summary>
    private const double RoomForAmounts = 0.3;

    /// <summary>
    /// Draws the steps. The first amount and the last stand on zero; those between are changes, below zero where
    /// something is taken away. The last is the sum of the others.
    /// </summary>
    /// <param name="title">What the picture says.</param>
    /// <param name="steps">At least a start and a result; names may be long.</param>
    /// <param name="moneyLabel">Text below the axis, such as the currency.</param>
    /// <exception cref="ArgumentException">There are fewer than two steps, or they do not add up.</exception>
    public static Figure Of(string title, IReadOnlyList<(string Item, double Amount)> steps, string moneyLabel)
    {
        ArgumentNullException.ThrowIfNull(title);
        ArgumentNullException.ThrowIfNull(steps);
        ArgumentNullException.ThrowIfNull(moneyLabel);
        Span[] spans = Spans(steps);
        string[] names = [.. steps.Select(step => Style.Wrap(step.Item, NameLetters))];

        var plot = new Plot();
        Style.Apply(plot, title);
        plot.XLabel(moneyLabel, Style.TextSize);
        plot.Axes.Bottom.Label.Bold = false;
        plot.Axes.Bottom.MinorTickStyle.Length = 0;
        plot.Axes.Bottom.TickGenerator = new NumericAutomatic
        {
            TargetTickCount = 6,
            LabelFormatter = amount => amount.ToString("#,0.####;\u2212#,0.####", CultureInfo.InvariantCulture),
        };
        plot.Grid.YAxisStyle.IsVisible = false;
        plot.Axes.Left.MajorTickStyle.Length = 0;
        plot.Axes.Left.TickGenerator = new NumericManual([.. spans.Select(span => span.Row)], names);
        plot.Add.VerticalLine(0, 1, Style.Ink);
        AddConnectors(plot, spans);
        AddBars(plot, spans);
        AddAmounts(plot, steps, spans);

        double left = spans.Min(span => span.Left);
        double right = spans.Max(span => span.Right);
        double width = right > left ? right - left : 1;
        plot.Axes.SetLimits(
            left < 0 ? left - (0.05 * width) : 0, right + (RoomForAmounts * width), spans[^1].Row - 0.6, 0.6);

        int titleLines = Lines(Style.Wrap(title, Style.TitleLetters));
        int rowHeight = (names.Max(Lines) * LineHeight) + RowGap;
        return new(plot, Style.Width, (steps.Count * rowHeight) + (titleLines * (LineHeight + 5)) + 90);
    }

    private static void AddBars(Plot plot, Span[] spans) => plot.Add.Bars(spans.Select(span => new Bar
    {
        Position = span.Row,
        ValueBase = span.From,
        Value = span.To,
        Size = BarThickness,
        Orientation = Orientation.Horizontal,
        LineWidth = 0,
        FillColor = span.StandsOnZero ? Style.Standing : span.To < span.From ? Style.TakenAway : Style.Added,
    }).ToArray());

    private static void AddConnectors(Plot plot, Span[] spans)
    {
        foreach ((Span upper, Span lower) in spans.Zip(spans.Skip(1)))
        {
            var line = plot.Add.Line(upper.To, upper.Row - (BarThickness / 2), upper.To, lower.Row + (BarThickness / 2));
            line.LineColor = Style.Ink;
            line.LineWidth = 1;
        }
    }

    private static void AddAmounts(Plot plot, IReadOnlyList<(string Item, double Amount)> steps, Span[] spans)
    {
        string digits = steps.All(step => double.IsInteger(step.Amount)) ? "#,0" : "#,0.00";
        foreach (((_, double amount), Span span) in steps.Zip(spans))
        {
            string format = span.StandsOnZero ? $"{digits};\u2212{digits}" : $"+{digits};\u2212{digits};{digits}";
            var label = plot.Add.Text(amount.ToString(format, CultureInfo.InvariantCulture), span.Right, span.Row);
            label.LabelStyle.Alignment = Alignment.MiddleLeft;
            label.LabelStyle.FontName = Style.Font;
            label.LabelStyle.FontSize = Style.TextSize;
            label.LabelStyle.ForeColor = Style.Ink;
            label.OffsetX = LabelGap;
        }
    }

    private static Span[] Spans(IReadOnlyList<(string Item, double Amount)> steps)
    {
        if (steps.Count < 2)
        {
            throw new ArgumentException(
                $"A waterfall of {steps.Count} steps says nothing: give a start, changes and a result.", nameof(steps));
        }

        var spans = new Span[steps.Count];
        double level = 0;
        for (int i = 0; i < steps.Count - 1; i++)
        {
            spans[i] = new(-i, level, level + steps[i].Amount, StandsOnZero: i == 0);
            level = spans[i].To;
        }

        (string item, double result) = steps[^1];
        double roundingOfAllSteps = 0.01 * steps.Count;
        if (!(Math.Abs(level - result) <= roundingOfAllSteps))
        {
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The steps add up to {level} but '{item}' is {result}: the last must be the sum of the others."),
                nameof(steps));
        }

        spans[^1] = new(1 - steps.Count, 0, result, StandsOnZero: true);
        return spans;
    }

    private static int Lines(string text) => text.Count(letter => letter == '\n') + 1;

    private readonly record struct Span(double Row, double From, double To, bool StandsOnZero)
    {
        public double Left => Math.Min(From, To);

        public double Right => Math.Max(From, To);
    }
}
