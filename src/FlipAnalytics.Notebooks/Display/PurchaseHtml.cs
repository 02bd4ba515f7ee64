namespace FlipAnalytics.Notebooks;

/// <summary>Purchase decisions as sentences and tables of a notebook. A method shows all pieces of the report.</summary>
public static class PurchaseHtml
{
    /// <summary>Everything about one piece; several pieces as a table.</summary>
    /// <param name="report">The answers.</param>
    public static HtmlPart Whole(PurchaseReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.Decisions.Length != 1)
            return Summary(report);
        HtmlPart[] parts = [Answer(report), Steps(report), RestsOn(report), Cautions(report)];
        return new(string.Concat(parts.Select(part => part.Html)));
    }

    /// <summary>What to do, the most to pay and how sure it is, in words.</summary>
    /// <param name="report">The answers.</param>
    public static HtmlPart Answer(PurchaseReport report) => Each(report, (html, decision) =>
    {
        var sentences = PurchaseSentences.Of(report, decision);
        foreach (string note in report.WordNotes)
            html.Paragraph(note);
        html.Lead(sentences.Headline);
        if (report.WorthALook is { } doubt)
            html.Paragraph(doubt);
        foreach (string sentence in sentences.Sentences)
            html.Paragraph(sentence);
        if (sentences.Leverage is { } leverage)
            html.Paragraph(leverage);
        if (!decision.Notes.IsEmpty)
            html.Items(decision.Notes);
    });

    /// <summary>The steps from the sale price to the most to pay; they add up.</summary>
    /// <param name="report">The answers.</param>
    public static HtmlPart Steps(PurchaseReport report) => Each(report, (html, decision) =>
    {
        if (decision.Waterfall.IsEmpty)
        {
            html.Paragraph(NoLimit(decision));
            return;
        }

        var details = PurchaseSentences.Of(report, decision).StepDetails;
        html.Table(
            $"From the sale price to the most to pay for {Name(decision)}, in {report.Workshop.Currency.Code}",
            [Html.Words("step"), Html.Number("amount"), Html.Words("how sure")],
            decision.Waterfall.Zip(details, (step, detail) => new[] { step.Item, Money(report, step.Amount), detail }));
    });

    /// <summary>The past sales an answer rests on, the nearest first.</summary>
    /// <param name="report">The answers.</param>
    public static HtmlPart RestsOn(PurchaseReport report) => Each(report, (html, decision) =>
    {
        html.Paragraph(PurchaseSentences.Of(report, decision).Basis ?? NoLimit(decision));
        if (decision.Comparables.IsEmpty)
            return;
        string unit = report.Workshop.LengthUnit.Word();
        html.Table(
            $"Past sales most like {Name(decision)}, nearest first",
            [
                Html.Words("piece"), Html.Words("type"), Html.Words("color"), Html.Words("condition"),
                Html.Number($"width, {unit}"), Html.Words("sold on"), Html.Number($"sale price, {report.Workshop.Currency.Code}"),
                Html.Number("days on market"),
            ],
            decision.Comparables.Select(sale => new[]
            {
                sale.Id, sale.Type, sale.Colour ?? "", sale.Condition is { } condition ? Word(condition) : "",
                sale.Width is { } width ? Html.Invariant($"{width:0.##}") : "",
                sale.SoldOn is { } day ? Html.Invariant($"{day:yyyy-MM-dd}") : "", Money(report, sale.SalePrice),
                sale.DaysOnMarket is { } days ? Html.Invariant($"{days}") : "",
            }));
    });

    /// <summary>The cautions that fit the piece, each with its source.</summary>
    /// <param name="report">The answers.</param>
    public static HtmlPart Cautions(PurchaseReport report) => Each(report, (html, decision) =>
    {
        if (!decision.Load.IsEmpty)
            html.Items(decision.Load);
        if (decision.Cautions.IsEmpty)
        {
            html.Paragraph("No usual caution fits what is known of this piece.");
            return;
        }

        html.Items(decision.Cautions.Select(caution =>
            (caution.Topic, caution.Text, $"{caution.Source}; {Word(caution.Status)}; {caution.Jurisdiction}")));
    });

    private static HtmlPart Summary(PurchaseReport report) => new Html().Table(
        Html.Invariant($"The most to pay for {report.Decisions.Length} pieces, in {report.Workshop.Currency.Code}"),
        [
            Html.Words("piece"), Html.Words("type"), Html.Words("what to do"), Html.Number("sticker price"),
            Html.Number("most to pay"), Html.Number("careful limit"),
        ],
        report.Decisions.Select(decision => new[]
        {
            decision.Candidate.Id, decision.Candidate.Type, decision.Verdict is { } verdict ? VerdictWords.Words(verdict) : "",
            Money(report, decision.Candidate.StickerPrice), Money(report, decision.Ceiling),
            Money(report, decision.CeilingCautious),
        })).Content();

    private static HtmlPart Each(PurchaseReport report, Action<Html, PurchaseDecision> add)
    {
        ArgumentNullException.ThrowIfNull(report);
        var html = new Html();
        foreach (PurchaseDecision decision in report.Decisions)
        {
            if (report.Decisions.Length > 1)
                html.Heading(Name(decision));
            add(html, decision);
        }

        return html.Content();
    }

    private static string NoLimit(PurchaseDecision decision) =>
        $"Nothing tells yet what a {decision.Candidate.Type} brings, so there is no limit to explain.";

    private static string Name(PurchaseDecision decision) =>
        string.Join(", ", new[] { decision.Candidate.Id, decision.Candidate.Type, decision.Candidate.Colour }.OfType<string>());

    private static string Money(PurchaseReport report, decimal? amount) => amount is { } value
        ? MoneyText.PlainExact(value, report.Workshop)
        : "";

    private static string Word(Enum value) => value switch
    {
        SourceStatus.CommonPractice => "common practice",
        SourceStatus.FromMemory => "from memory, look it up",
        _ => value.ToString().ToLowerInvariant(),
    };
}
