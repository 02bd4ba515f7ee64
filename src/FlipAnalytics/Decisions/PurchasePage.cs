using System.Globalization;
using System.Text;

namespace FlipAnalytics;

/// <summary>One answer as a page that fits a screen.</summary>
internal sealed class PurchasePage
{
    private readonly PurchaseReport report;
    private readonly PurchaseDecision decision;
    private readonly bool isSmall;

    public PurchasePage(PurchaseReport report, PurchaseDecision decision)
    {
        this.report = report;
        this.decision = decision;
        isSmall = ShownSteps.IsSmall(decision);
    }

    /// <summary>The page: on a screen, as many notes as fit; in full, all notes and the cautions with whom to ask.</summary>
    /// <param name="lines">Lines that there is room for.</param>
    /// <param name="detail">What is told in full.</param>
    public string Render(int lines, PurchaseDetail detail)
    {
        string above = Above();
        string cautions = PurchaseCautions.Lines(decision, detail);
        if (detail.HasFlag(PurchaseDetail.Everything))
            return above + Notes(decision.Notes.Length) + cautions;
        int shown = decision.Notes.Length;
        while (shown > 0 && TextLines.LineCount(above) + TextLines.LineCount(Notes(shown)) + TextLines.LineCount(cautions) > lines)
            shown--;
        return above + Notes(shown) + cautions;
    }

    private string Above()
    {
        var text = new StringBuilder();
        text.AppendWrapped("", "", Headline());
        if (decision.Ceiling is null)
            return text.ToString();
        text.Append('\n');
        foreach (string sentence in Sentences())
            text.AppendWrapped("  ", "  ", sentence);
        text.Append('\n');
        AppendWaterfall(text);
        text.Append('\n').AppendWrapped("  ", "  ", Basis());
        if (Leverage() is { } leverage)
            text.AppendWrapped("  ", "  ", leverage);
        return text.ToString();
    }

    private string Notes(int shown)
    {
        var text = new StringBuilder();
        foreach (string note in decision.Notes.Take(shown))
            text.AppendWrapped("  ", "  ", note);
        int more = decision.Notes.Length - shown;
        return more == 0 ? text.ToString()
            : text.AppendWrapped("  ", "  ", $"{TextLines.Counted(more, "more note")} on what was assumed: --all.").ToString();
    }

    public string Headline()
    {
        if (decision.Verdict == Verdict.CannotSayYet || decision.Ceiling is not { } ceiling)
            return DoubtText.Headline(decision, report.Workshop);
        string wage = Wage(decision.TargetWage);
        if (ceiling <= 0)
        {
            return decision.Verdict is null
                ? $"Not worth taking even as a gift: it falls {Amount(-ceiling)} short of your {wage} an hour."
                : $"LEAVE it, even as a gift: it falls {Amount(-ceiling)} short of your {wage} an hour.";
        }

        string limit = $"Up to {Amount(ceiling)} you still earn your {wage} an hour.";
        return decision.Verdict switch
        {
            Verdict.Buy => $"BUY at {Amount(decision.Candidate.StickerPrice!.Value)}. {limit}",
            Verdict.Haggle => $"HAGGLE: {Amount(decision.Candidate.StickerPrice!.Value)} is too much. {limit}",
            Verdict.Leave => $"LEAVE it at {Amount(decision.Candidate.StickerPrice!.Value)}. {limit}",
            _ => $"Pay at most {Amount(ceiling)}: then you still earn your {wage} an hour.",
        };
    }

    public IEnumerable<string> Sentences()
    {
        if (OpeningOffer.Sentence(decision, report.Workshop) is { } offer)
            yield return offer;
        foreach (string sentence in DoubtText.Deciding(decision, report.Workshop))
            yield return sentence;
        if (decision is { Candidate.StickerPrice: { } sticker, WageAtSticker: { } wage, ChanceOfTargetWage: { } chance })
        {
            string earn = wage >= 0
                ? $"you would likely earn {Amount(wage)} an hour"
                : $"every hour would likely cost you {Amount(-wage)}";
            yield return $"At {Amount(sticker)} {earn}; {InTen(chance)} such pieces at least {Wage(decision.TargetWage)}.";
            if (AverageText.Of(decision) is { } average)
                yield return average;
        }

        string careful = decision.CeilingCautious > 0
            ? $"A careful limit is {Amount(decision.CeilingCautious.Value)}: it holds in "
                + $"{decision.CautiousChance * 100:0.##} of 100 such pieces."
            : Text($"To be {decision.CautiousChance * 100:0.##} % sure of your wage you could pay nothing at all.");
        string breakEven = decision.CeilingBreakEven > 0
            ? $"Hours unpaid, you break even at {Amount(decision.CeilingBreakEven.Value)}."
            : "It loses money even with the hours unpaid.";
        yield return $"{careful} {breakEven}";
    }

    private void AppendWaterfall(StringBuilder text)
    {
        var steps = ShownSteps.Of(decision, report.Workshop);
        int width = Math.Max(8, steps.SkipLast(1).Max(step => Plain(step.Amount).Length) + 2);
        for (int i = 0; i < steps.Length - 1; i++)
        {
            string sign = i == 0 ? "  " : steps[i].Amount <= 0 ? "- " : "+ ";
            string line = $"  {sign}{steps[i].Item,-16}{Plain(Math.Abs(steps[i].Amount)).PadLeft(width)}";
            text.Append($"{line,-36}  {Detail(steps[i].Item)}".TrimEnd()).Append('\n');
        }

        text.Append($"  = {steps[^1].Item,-16}{Plain(steps[^1].Amount).PadLeft(width)}".TrimEnd()).Append('\n');
    }

    public string Detail(string item) => item switch
    {
        "sale price" when decision.Candidate.SalePrice is null => EightInTen(decision.SalePrice!),
        "sale price" => "as you say; " + EightInTen(decision.SalePrice!),
        "supplies" when decision.Candidate.Supplies is null => EightInTen(decision.Supplies!),
        "hours" => Text($"{decision.Hours!.Mean:0.0} h at ") + Wage(decision.TargetWage)
            + (decision.Candidate.Hours is null ? ", " + EightInTen(decision.Hours, "F1") + " h" : ", as you say"),
        "storage" or "money tied up" => Text($"{decision.DaysOnMarket!.Mean:0} days, ")
            + EightInTen(decision.DaysOnMarket, "F0"),
        _ => "",
    };

    public string Basis()
    {
        SalesBasis basis = decision.Basis;
        string colour = basis.OfColour is { } count ? $", {count} in {decision.Candidate.Colour}" : "";
        string rests = Text($"Rests on {TextLines.Counted(basis.Sales, "sale")}, {basis.OfType} of type {decision.Candidate.Type}{colour}.");
        string days = decision.DaysOnMarket!.Median < 1.5m
            ? " Such pieces sell in a day or so."
            : Text($" Such pieces sell in {decision.DaysOnMarket.Median:0} days or so.");
        return rests + days + (decision.Comparables.IsEmpty ? "" : $" Nearest: {Nearest(decision.Comparables[0])}.");
    }

    private string Nearest(ComparableSale sale)
    {
        var words = new List<string> { sale.Id };
        if (!string.Equals(sale.Type, decision.Candidate.Type, StringComparison.OrdinalIgnoreCase))
            words.Add(sale.Type);
        if (sale.Width is { } width)
            words.Add(Text($"{width:0.#} {report.Workshop.LengthUnit.Word()} wide"));
        if (sale.Colour is { } colour)
            words.Add(colour);
        if (sale.Condition is { } condition)
            words.Add(condition.ToString().ToLowerInvariant());
        words.Add($"sold for {Amount(sale.SalePrice)}"
            + (sale.DaysOnMarket is { } days ? $" after {TextLines.Counted(days, "day")}" : "")
            + (sale.SoldOn is { } on ? Text($" on {on:yyyy-MM-dd}") : ""));
        return string.Join(", ", words);
    }

    public string? Leverage()
    {
        if (decision.Leverages.IsEmpty)
            return null;
        Leverage first = decision.Leverages[0];
        (string low, string high) = first.Item == "hours"
            ? (Text($"{first.Low:0.#} h"), Text($"{first.High:0.#} h"))
            : (Amount(first.Low), Amount(first.High));
        string subject = first.Item == "sale price" ? "The sale price matters" : $"{char.ToUpperInvariant(first.Item[0])}{first.Item[1..]} matter";
        return $"{subject} most: at {low} the limit is {Amount(first.CeilingAtLow)}, at {high} it is {Amount(first.CeilingAtHigh)}.";
    }

    private string EightInTen(ForecastRange money) => $"8 in 10 between {Plain(money.Low)} and {Plain(money.High)}";

    private static string EightInTen(ForecastRange number, string format) => string.Create(
        CultureInfo.InvariantCulture,
        $"8 in 10 between {number.Low.ToString(format, CultureInfo.InvariantCulture)} and {number.High.ToString(format, CultureInfo.InvariantCulture)}");

    private static string InTen(decimal chance) => chance switch
    {
        < 0.05m => "in hardly any",
        > 0.95m => "in nearly all",
        _ => Text($"in {chance * 10:0} of 10"),
    };

    private string Amount(decimal amount) => ShownSteps.Money(decision, amount, report.Workshop);

    private string Wage(decimal amount) => MoneyText.Exact(amount, report.Workshop);

    private string Plain(decimal amount) =>
        isSmall ? MoneyText.PlainExact(amount, report.Workshop) : MoneyText.PlainWhole(amount);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
