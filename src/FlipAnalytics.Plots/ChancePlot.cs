using System.Globalization;

namespace FlipAnalytics.Plots;

/// <summary>The chance of earning the target wage by purchase price, with the limits marked.</summary>
public static class ChancePlot
{
    /// <summary>The plot; a sentence where nothing tells a sale price.</summary>
    /// <param name="decision">The answer.</param>
    /// <param name="workshop">The workshop, for its currency.</param>
    public static Figure Of(PurchaseDecision decision, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(decision);
        ArgumentNullException.ThrowIfNull(workshop);
        if (decision.Chances.IsEmpty)
        {
            return Sheet.Sentence(
                $"The chance of your wage on a {decision.Candidate.Type}", string.Join(" ", decision.Notes.Take(1)));
        }

        var sheet = new Sheet(Title(decision, workshop));
        return sheet.Finish(AddTo(sheet, decision, workshop));
    }

    /// <summary>Adds the curve to a sheet.</summary>
    /// <returns>The marked points in words.</returns>
    internal static string AddTo(Sheet sheet, PurchaseDecision decision, Workshop workshop)
    {
        string wage = $"{MoneyText.Exact(decision.TargetWage, workshop)} an hour";
        Panel panel = sheet.AddPanel(new(
            Scale.Of(decision.Chances.Select(c => (double)c.Price).Append(0)), $"purchase price, {workshop.Currency.Code}",
            Scale.Fixed(0, 1.12, [0, 0.25, 0.5, 0.75, 1], Scale.Percent), $"chance of earning at least {wage}", 250)
        {
            Gutter = 30,
        });
        panel.Line(decision.Chances.Select(c => ((double)c.Price, (double)c.Chance)), new(Style.Standing, 2.5f));
        var points = new (string Name, decimal? Price, Series Look)[]
        {
            ("careful limit", decision.CeilingCautious, Style.Several[2]),
            ("most to pay", decision.Ceiling, Style.Several[0]),
            ("sticker price", decision.Candidate.StickerPrice, Style.Several[1]),
        };
        var marked =
            (from point in points
             join chance in decision.Chances on point.Price equals chance.Price
             orderby chance.Price
             select (point.Name, point.Look, X: (double)chance.Price, Y: (double)chance.Chance,
                 Text: string.Create(CultureInfo.InvariantCulture, $"{point.Name} {(chance.Price < 20 ? MoneyText.Exact(chance.Price, workshop) : MoneyText.Whole(chance.Price, workshop))}: {100 * chance.Chance:0} %"))).ToArray();
        foreach (var point in marked)
        {
            panel.Line([(point.X, 0), (point.X, point.Y)], point.Look.Line(1.5f));
            panel.Marks([(point.X, point.Y)], point.Look, 11);
        }

        panel.WriteBeside([.. marked.Select(point => (point.Text, point.X, point.Y))], gap: 20, lift: 14);
        return marked.Length == 0
            ? "Even as a gift the piece does not pay that wage on average."
            : $"Chance of earning {wage}: {string.Join("; ", marked.Select(point => point.Text))}.";
    }

    private static string Title(PurchaseDecision decision, Workshop workshop) => decision switch
    {
        { Verdict: Verdict.CannotSayYet } =>
            $"Whether this {decision.Candidate.Type} pays cannot be said yet: what its chances look like by the little that is known",
        { ChanceOfTargetWage: { } chance, Candidate.StickerPrice: { } sticker } => string.Create(CultureInfo.InvariantCulture,
            $"At the sticker price of {MoneyText.Spoken(sticker, workshop)}, {100 * chance:0} in 100 such purchases pay your wage{AverageText.Ending(decision)}"),
        _ => $"Most to pay for this {decision.Candidate.Type}: {MoneyText.Whole(decision.Ceiling ?? 0, workshop)}",
    };
}
