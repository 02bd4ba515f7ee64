using System.Globalization;
using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>What was asked for pieces since they were listed: a row a piece, with its cuts and its sale.</summary>
public static class AskingPlot
{
    private const int MostRows = 16;

    // A row is two units high; its line keeps off the neighbours'.
    private const double Foot = -0.7;
    private const double Head = 0.5;

    private static readonly Series Asked = new(Style.Standing, MarkerShape.FilledCircle);
    private static readonly Series Cut = new(Style.TakenAway, MarkerShape.FilledTriangleDown);
    private static readonly Series Sold = new(Style.Added, MarkerShape.FilledDiamond);
    private static readonly Series Waiting = new(Style.Standing, MarkerShape.OpenCircle);
    private static readonly Series Gone = new(Style.Ink, MarkerShape.Eks);

    /// <summary>The plot; of many pieces the first are drawn.</summary>
    /// <param name="pieces">The pieces, in the order they are to be read.</param>
    /// <param name="workshop">The workshop, for its currency.</param>
    public static Figure Of(IReadOnlyList<AskingHistory> pieces, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(pieces);
        ArgumentNullException.ThrowIfNull(workshop);
        if (pieces.Count == 0)
            return Sheet.Sentence("Asking prices since the listing", "No piece has both a listing date and an asking price.");
        AskingHistory[] shown = [.. pieces.Take(MostRows)];
        var sheet = new Sheet(
            Title(shown, workshop),
            $"Asking prices in {workshop.Currency.Code}. Dot: listed. Triangle: price changed. Diamond: sold. Ring: still on sale. Cross: left unsold.");
        float rowHeight = shown.Length switch { 1 => 150, <= 4 => 90, _ => 52 };
        Panel panel = sheet.AddPanel(new(
            Scale.Of(shown.Select(piece => (double)piece.LastDay).Append(0)), "days since first listed",
            Scale.Fixed(-2 * shown.Length + 1, 1, []), "", shown.Length * rowHeight)
        {
            NameColumn = 175,
            Gutter = 145,
            LinesUp = true,
        });
        for (int i = 0; i < shown.Length; i++)
            Draw(panel, shown[i], -2 * i, workshop, withPrices: shown.Length <= 4);
        if (pieces.Count > shown.Length)
            sheet.AddLines(string.Create(CultureInfo.InvariantCulture, $"and {pieces.Count - shown.Length} more"), Lettering.Quiet, 1);
        return sheet.Finish(string.Join("; ", shown.Select(piece => $"{piece.PieceId}, {piece.Name}: {Story(piece, workshop)}")) + ".");
    }

    private static void Draw(Panel panel, AskingHistory piece, double row, Workshop workshop, bool withPrices)
    {
        decimal[] amounts = [.. piece.Asked.Select(asked => asked.Price).Append(piece.SalePrice ?? piece.Asked[^1].Price)];
        Scale own = Scale.Fixed((double)amounts.Min(), (double)amounts.Max(), []);
        double At(decimal price) => amounts.Max() == amounts.Min() ? row : row + Foot + own.Share((double)price) * (Head - Foot);

        panel.Steps(
            [.. piece.Asked.Select(asked => ((double)asked.Day, At(asked.Price))), (piece.LastDay, At(piece.Asked[^1].Price))],
            new(Style.Standing, 2));
        panel.Marks([(0, At(piece.Asked[0].Price))], Asked, 9);
        panel.Marks(piece.Asked.Skip(1).Select(asked => ((double)asked.Day, At(asked.Price))), Cut, 10);
        double end = At(piece.SalePrice ?? piece.Asked[^1].Price);
        panel.Line([(piece.LastDay, At(piece.Asked[^1].Price)), (piece.LastDay, end)], new(Style.QuietInk) { Dashes = [2, 3] });
        panel.Marks([(piece.LastDay, end)], piece.State switch
        {
            PieceState.Sold => Sold,
            PieceState.Gone => Gone,
            _ => Waiting,
        }, 11);
        foreach (AskedPrice asked in piece.Asked.Where(_ => withPrices))
            panel.TryNameAbove(MoneyText.Spoken(asked.Price, workshop), asked.Day, At(asked.Price));
        panel.NameRow($"{piece.PieceId} {piece.Name}", row, mostLines: 2);
        panel.Write(Story(piece, workshop), panel.X.High, row, gap: 10, wrapTo: 3);
    }

    private static string Story(AskingHistory piece, Workshop workshop)
    {
        string asked = string.Join(" → ", piece.Asked.Length > 3
            ? [Money(piece.Asked[0].Price), "…", Money(piece.Asked[^1].Price)]
            : piece.Asked.Select(a => Money(a.Price)));
        string end = piece.State switch
        {
            PieceState.Sold => piece.SalePrice is { } price ? $"sold {Money(price)} on day" : "sold on day",
            PieceState.Gone => "left unsold on day",
            _ => "on sale, day",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{asked}, {end} {piece.LastDay}");

        string Money(decimal amount) => MoneyText.Spoken(amount, workshop);
    }

    private static string Title(AskingHistory[] pieces, Workshop workshop)
    {
        if (pieces is [var only])
            return $"{only.PieceId}, {only.Name}: {Story(only, workshop)}";
        AskingHistory longest = pieces.MaxBy(piece => piece.LastDay)!;
        int waiting = pieces.Count(piece => piece.State == PieceState.OnSale);
        string state = waiting == 0
            ? $"{Style.Count(pieces.Length, "piece")}, none waiting for a buyer"
            : string.Create(CultureInfo.InvariantCulture, $"{waiting} of {pieces.Length} pieces wait for a buyer");
        return string.Create(CultureInfo.InvariantCulture,
            $"{state}; {longest.PieceId}, {longest.Name}, took longest: {longest.LastDay} days");
    }
}
