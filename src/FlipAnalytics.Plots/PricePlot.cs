using System.Globalization;
using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>What pieces of a type bring by their width: past sales and the forecast with its range.</summary>
public static class PricePlot
{
    /// <summary>The plot.</summary>
    /// <param name="prices">Sales and forecast.</param>
    public static Figure Of(PriceBySize prices)
    {
        ArgumentNullException.ThrowIfNull(prices);
        string piece = prices.Count == 1 ? prices.Type : string.Create(CultureInfo.InvariantCulture, $"{prices.Type}, {prices.Count} sold as one");
        if (prices.Sales.IsEmpty)
        {
            return Sheet.Sentence(
                $"What a {piece} brings by its width",
                $"No sold {prices.Type} has a width yet. Fill in width in pieces.csv for those you sold.");
        }

        string unit = prices.Workshop.LengthUnit.Word();
        string currency = prices.Workshop.Currency.Code;
        var sheet = new Sheet(Title(prices, piece, unit), Explanation(prices));
        double[] widths = [.. prices.Sales.Select(sale => (double)sale.Width)];
        double[] amounts =
        [
            .. prices.Sales.Select(sale => (double)sale.SalePrice),
            .. prices.Curve.SelectMany(at => new[] { (double)at.Low, (double)at.High }),
        ];
        Panel panel = sheet.AddPanel(new(
            Scale.Of(widths), $"width of the {prices.Type}, {unit}", Scale.Of(amounts.Append(0)), $"sale price, {currency}", 330)
        {
            Gutter = 120,
        });
        panel.Band(prices.Curve.Select(at => ((double)at.Width, (double)at.Low, (double)at.High)), Style.Standing);
        var edge = new LineLook(Style.Standing) { Dashes = [6, 4] };
        panel.Line(prices.Curve.Select(at => ((double)at.Width, (double)at.Low)), edge);
        panel.Line(prices.Curve.Select(at => ((double)at.Width, (double)at.High)), edge);
        panel.Line(prices.Curve.Select(at => ((double)at.Width, (double)at.Median)), new(Style.Standing, 2.5f));
        panel.Marks(
            prices.Sales.Select(sale => ((double)sale.Width, (double)sale.SalePrice)),
            new(Style.Ink, MarkerShape.OpenCircle), 8);
        if (prices.Curve.Length > 1)
        {
            PriceAtWidth last = prices.Curve[^1];
            panel.WriteBeside(
            [
                ("1 in 10 above", (double)last.Width, (double)last.High),
                ("forecast", (double)last.Width, (double)last.Median),
                ("1 in 10 below", (double)last.Width, (double)last.Low),
            ]);
        }

        return sheet.Finish(Explanation(prices) + (prices.Curve.IsEmpty ? "" : string.Create(CultureInfo.InvariantCulture,
            $" At {prices.Curve[0].Width:0.#} {unit} from {Money(prices.Curve[0].Low, prices)} to {Money(prices.Curve[0].High, prices)}, at {prices.Curve[^1].Width:0.#} {unit} from {Money(prices.Curve[^1].Low, prices)} to {Money(prices.Curve[^1].High, prices)}.")));
    }

    private static string Title(PriceBySize prices, string piece, string unit) => prices.Curve switch
    {
        [] => $"What a {piece} brought by its width",
        [var only] => string.Create(CultureInfo.InvariantCulture,
            $"A {piece} of {only.Width:0.#} {unit} likely brings {Money(only.Median, prices)}"),
        [var first, .., var last] => string.Create(CultureInfo.InvariantCulture,
            $"A {piece} of {first.Width:0.#} {unit} likely brings {Money(first.Median, prices)}, one of {last.Width:0.#} {unit} {Money(last.Median, prices)}"),
    };

    private static string Money(decimal amount, PriceBySize prices) => MoneyText.Whole(amount, prices.Workshop);

    private static string Explanation(PriceBySize prices) => string.Create(CultureInfo.InvariantCulture,
        $"Circles: {Style.Count(prices.Sales.Length, "past sale")}. Band: where 8 in 10 sales of a piece bought now would fall, if nothing but its width is known.{(prices.OtherSales > 0 ? $" {Style.Count(prices.OtherSales, "more sale")} of this type had no width or another count." : "")}");
}
