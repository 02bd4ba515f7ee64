using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A question to take to a tax professional; never advice.</summary>
/// <param name="Place">Where the rule holds; the currency alone does not say where you are.</param>
/// <param name="Text">The question, with the log's number.</param>
/// <param name="Source">The rule or publication behind it, with its date.</param>
/// <param name="Status">How well the source backs it: published, or from memory.</param>
public sealed record QuarterPrompt(string Place, string Text, string Source, string Status);

/// <summary>What the prompts look at: the tax year up to the end of the span, and the span itself.</summary>
/// <param name="YearStart">First day of the tax year.</param>
/// <param name="Day">Last day of the span.</param>
/// <param name="Takings">Sales and delivery charged in the tax year so far.</param>
/// <param name="Sales">Sales in the tax year so far.</param>
/// <param name="Net">Net profit of the tax year so far.</param>
/// <param name="Driving">Driving as reckoned in the span.</param>
/// <param name="DearestTool">Price of the dearest tool bought in the span.</param>
/// <param name="Stock">Stock at cost at the end.</param>
internal sealed record QuarterTaxFacts(
    DateOnly YearStart, DateOnly Day, decimal Takings, int Sales, decimal Net, decimal Driving, decimal DearestTool, decimal Stock);

/// <summary>
/// Rules that fit a span, by the currency of the log. Figures stand as they were read in the sources named and are not
/// followed further; a professional knows whether they still hold.
/// </summary>
internal static class QuarterPrompts
{
    public const string Published = "published";
    private const string FromMemory = "from memory, not looked up";

    // A threshold is worth a thought from three quarters of the way on.
    private const decimal Near = 0.75m;

    private sealed record QuarterRule(
        string Currency, string Place, Func<QuarterTaxFacts, bool> Fits, Func<QuarterTaxFacts, Func<decimal, string>, string> Text, string Source,
        string Status);

    private static readonly ImmutableArray<QuarterRule> Rules =
    [
        new("USD", "the US", f => f.Net >= 400,
            (f, money) => $"Net profit since {Day(f)} is {money(f.Net)}. Self-employment tax begins at net earnings of {money(400)}; ask what is due.",
            "IRC 1401 and 1402: 15.3 % on 92.35 % of net profit", Published),
        new("USD", "the US", f => f.Net < 0,
            (_, _) => "A loss so far this year: ask how a business is told from a hobby, whose costs do not count.",
            "IRC 183; Treas. Reg. 1.183-2, nine factors", Published),
        new("USD", "the US", f => f.Takings > 20_000 * Near || f.Sales > 200 * Near,
            (f, money) => $"Takings since {Day(f)} are {money(f.Takings)} in {f.Sales} sales. Payment services report above {money(20_000)} and 200 sales; income counts with or without the form.",
            "IRS Fact Sheet 2025-08, 23 Oct 2025 (Form 1099-K; P.L. 119-21, s. 70432)", Published),
        new("USD", "the US", f => f.DearestTool > 2_500 * Near,
            (f, money) => $"A tool cost {money(f.DearestTool)}: ask whether the safe harbour of {money(2_500)} an item lets you deduct it at once; it never covers stock.",
            "Treas. Reg. 1.263(a)-1(f); Notice 2015-82", Published),
        new("USD", "the US", f => f.Stock > 0,
            (_, _) => "Ask how stock and supplies at the year's end are to be counted; your own labour is in neither.",
            "IRS Publication 334, chapter 6; Schedule C, Part III", Published),
        new("USD", "the US", f => f.Driving > 0,
            (_, _) => "Driving counts here at a rate a mile. Ask whether that rate, to be chosen in a vehicle's first year, or actual costs fit you.",
            "Standard mileage rate, business use of a vehicle", Published),
        new("GBP", "the UK", f => f.Takings > 1_000 * Near,
            (f, money) => $"Takings since {Day(f)} are {money(f.Takings)}. The trading allowance is {money(1_000)} of gross income a tax year, instead of costs: ask which is better for you and whether to register.",
            "Trading allowance, in force since 6 Apr 2017", Published),
        new("GBP", "the UK", f => f.Sales >= 30 * Near || f.Takings > 1_700 * Near,
            (f, money) => $"{f.Sales} sales since {Day(f)}: platforms report sellers from 30 sales or about {money(1_700)} a year.",
            "Reporting rules for digital platforms", FromMemory),
        new("GBP", "the UK", f => f.Takings > 90_000 * Near,
            (f, money) => $"Takings since {Day(f)} are {money(f.Takings)}: ask about VAT registration, at {money(90_000)}, and the margin scheme for second-hand goods.",
            "VAT registration threshold from April 2024 (from memory); VAT margin schemes, GOV.UK", FromMemory),
        new("GBP", "the UK", f => f.Driving > 0 && f.Day >= new DateOnly(2026, 4, 6),
            (_, _) => "Driving counts here at a rate a mile; ask which rate holds for the self-employed since 6 April 2026.",
            "Simplified expenses: 45p to 5 Apr 2026; 55p from 6 Apr 2026 was read for employees only", Published),
        new("EUR", "the EU", f => f.Sales >= 30 * Near || f.Takings > 2_000 * Near,
            (f, money) => $"{f.Sales} sales since {Day(f)} for {money(f.Takings)}: platforms report sellers from 30 sales or {money(2_000)} a year.",
            "Reporting rules for digital platforms (DAC7)", FromMemory),
        new("CAD", "Canada", f => f.Driving > 0,
            (_, _) => "Driving counts here at a rate a kilometre, a limit for employers' allowances; ask about actual costs by the share of business use.",
            "Department of Finance Canada, limits on automobile allowances", Published),
    ];

    public static ImmutableArray<QuarterPrompt> For(QuarterBooks books, ReportPeriod period, QuarterStock closing, QuarterCash cash)
    {
        string country = MileageRates.CountryOf(books.Currency) ?? "";
        DateOnly start = MileageRates.YearStart(country, period.To);
        ReportPeriod year = ReportPeriod.Of(start, period.To);
        ImmutableArray<QuarterSale> sales = QuarterSale.In(books, year);
        QuarterProfit profit = QuarterProfit.Of(books, year, sales);
        QuarterTaxFacts facts = new(
            start, period.To, profit.Sales + profit.DeliveryCharged, sales.Length, profit.Net, cash.DrivingReckoned,
            books.Log.Tools.Where(tool => period.Contains(tool.BoughtOn)).Max(tool => tool.Price) ?? 0, closing.Cost);
        return For(books.Log.Workshop, facts);
    }

    internal static ImmutableArray<QuarterPrompt> For(Workshop workshop, QuarterTaxFacts facts) =>
    [
        .. Rules.Where(rule => rule.Currency == workshop.Currency.Code && rule.Fits(facts))
            .Select(rule => new QuarterPrompt(rule.Place, rule.Text(facts, amount => MoneyText.Whole(amount, workshop)), rule.Source, rule.Status)),
    ];

    private static string Day(QuarterTaxFacts facts) => FormattableString.Invariant($"{facts.YearStart:yyyy-MM-dd}");
}
