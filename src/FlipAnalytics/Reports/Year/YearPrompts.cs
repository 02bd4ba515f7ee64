using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// What to ask a tax professional at the end of a year, by the currency of the log, which is only a hint of the country: what
/// <see cref="QuarterPrompts"/> asks of a span, and what concerns a whole year. A source that was not looked up says so.
/// </summary>
internal static class YearPrompts
{
    private const string Secondary = "published, from secondary sources";
    private const string FromMemory = "from memory, check";
    private const string Practice = "common practice";

    // A threshold is worth a thought from three quarters of the way on.
    private const decimal Near = 0.75m;

    private sealed record YearRule(Func<YearReport, bool> Fits, Func<YearReport, Func<decimal, string>, string> Text, string Source, string Status);

    private static readonly ImmutableArray<YearRule> UnitedStates =
    [
        new(HasStock, (_, _) => "Ask how your return counts stock: as here, or as materials that count when they are sold; and keep to one way.",
            "IRC 471(c); Treas. Reg. 1.471-1(b)(4)", Secondary),
        new(HasKept, (r, money) => $"You kept pieces that had cost {money(Kept(r))}; this sheet takes them out of purchases and other costs, as line 36 of Schedule C does of purchases.",
            "Schedule C (Form 1040), Part III, line 36", QuarterPrompts.Published),
        new(HasDriven, (_, _) => "A record of driving needs the date, the distance, the place and the purpose of each outing: see that your trips.csv tells them, the place in its notes.",
            "Treas. Reg. 1.274-5T(b)(6); IRS Publication 463, chapter 5", Secondary),
        new(HasTools, (_, _) => "The wear of tools here is no depreciation for tax: ask about Form 4562.", "IRS Publication 946", FromMemory),
        new(HasSales, (_, _) => "Ask whether your state wants sales tax on used furniture, and who collects it where a marketplace sells for you.",
            "rules of the states", FromMemory),
        new(HasSales, (_, money) => $"If you work at home: ask about {money(5)} a square foot of space used for nothing else, up to 300 square feet.",
            "Rev. Proc. 2013-13", Secondary),
        new(IsGain, (_, _) => "Ask whether to pay tax in four parts during the year.", "Form 1040-ES", FromMemory),
    ];

    private static readonly ImmutableArray<YearRule> UnitedKingdom =
    [
        new(r => !Begins(r, 4, 6), (r, _) => $"The tax year runs from 6 April to 5 April: flip year {Example(r, 4, 6)} gives that.",
            "GOV.UK, Self Assessment", FromMemory),
        new(HasSales, (r, money) => $"Since 6 April 2024 the cash basis is the usual one, with no closing stock; this sheet counts cost when a piece is sold. Money in less money out was {money(r.Cash.Change)}, driving not in it: ask which basis fits you.",
            "ICAEW, Tax return tips for sole traders: the cash basis, Nov 2025", QuarterPrompts.Published),
        new(HasStock, (_, _) => "Stock stands here at cost: ask whether any piece would fetch less than that.",
            "HMRC, Business Income Manual, BIM33135 and BIM33140", QuarterPrompts.Published),
        new(HasKept, (r, money) => $"You kept pieces that had cost {money(Kept(r))}: ask at what value they leave the stock.",
            "HMRC, Business Income Manual, BIM33630 (own goods)", QuarterPrompts.Published),
        new(HasDriven, (_, _) => "A rate a mile counts instead of what a vehicle cost, and is kept for as long as you use that vehicle.",
            "simplified expenses; HMRC research summary, 28 May 2025", QuarterPrompts.Published),
        new(r => Takings(r) > 20_000 * Near, (_, money) => $"Digital records and quarterly updates: from April 2026 above {money(50_000)} of takings, 2027 {money(30_000)}, 2028 {money(20_000)}. Ask from when they hold for you.",
            "Making Tax Digital for Income Tax", Secondary),
        new(HasTools, (_, _) => "The wear of tools here is no capital allowance: ask how tools count.", "GOV.UK, capital allowances", FromMemory),
    ];

    private static readonly ImmutableArray<YearRule> EuroArea =
    [
        new(HasSales, (_, _) => "Ask about the margin scheme for second-hand goods: VAT on the sale price less what was paid for the piece.",
            "Directive 2006/112/EC, Articles 313 to 315", QuarterPrompts.Published),
        new(HasSales, (r, money) => $"Takings were {money(Takings(r))}: ask whether you are below your country's limit for small businesses, at most {money(85_000)}, and free of VAT.",
            "Directive 2006/112/EC, Article 284, from 1 Jan 2025 (Directive (EU) 2020/285)", "published; the figure from memory, check"),
        new(_ => true, (_, _) => "Income tax is each country's own, and the euro does not say which: ask how stock, tools and driving count in yours.",
            "rules of the countries", Practice),
        new(HasKept, (r, money) => $"You kept pieces that had cost {money(Kept(r))}: ask at what value they leave the business.", "rules of the countries", Practice),
    ];

    private static readonly ImmutableArray<YearRule> Canada =
    [
        new(HasStock, (_, _) => "Form T2125 asks for opening stock (line 8300), purchases (8320) and closing stock (8500): ask where your supplies and outings go.",
            "CRA, Form T2125, Part 4; Guide T4002", QuarterPrompts.Published),
        new(HasStock, (_, _) => "Stock stands here at cost: ask whether any piece is worth less, and keep to one way of valuing.",
            "CRA, Form T2125, Part 4, lines 8300 and 8500", QuarterPrompts.Published),
        new(r => Takings(r) > 30_000 * Near, (r, money) => $"Takings were {money(Takings(r))}: above {money(30_000)} in four quarters you register for GST/HST.",
            "CRA, small supplier rule for GST/HST", Secondary),
        new(HasTools, (_, _) => "The wear of tools here is no capital cost allowance: ask for its class and rate.", "CRA, Guide T4002", FromMemory),
        new(HasKept, (r, money) => $"You kept pieces that had cost {money(Kept(r))}: ask at what value they leave the stock.", "CRA, Guide T4002", FromMemory),
    ];

    private static readonly ImmutableArray<YearRule> Australia =
    [
        new(r => !Begins(r, 7, 1), (r, _) => $"The income year runs from 1 July to 30 June: flip year {Example(r, 7, 1)} gives that.",
            "ATO, income years", QuarterPrompts.Published),
        new(HasStock, (r, money) => $"Stock changed by {money(r.CostOfGoods.Closing - r.CostOfGoods.Opening)}: a small business may leave out a change of {money(5_000)} or less.",
            "ATO, simplified trading stock rules", QuarterPrompts.Published),
        new(HasOutings, (_, _) => "Driving: a rate a kilometre (88 cents in 2024-25) holds for at most 5,000 km a car and year; set it under [mileage] in workshop.toml.",
            "ATO, Cents per kilometre method, 3 July 2024", QuarterPrompts.Published),
        new(r => Takings(r) > 75_000 * Near, (r, money) => $"Takings were {money(Takings(r))}: from {money(75_000)} a year you register for GST; ask about second-hand goods.",
            "ATO, registering for GST", QuarterPrompts.Published),
        new(HasTools, (_, _) => "Ask whether tools count at once or over years; the wear here is the books' own.", "ATO, simpler depreciation for small business", FromMemory),
        new(r => r.Profit.Net < 0, (_, _) => "A loss: ask how a business is told from a hobby.", "ATO, business or hobby", FromMemory),
    ];

    private static readonly ImmutableArray<YearRule> Japan =
    [
        new(r => Takings(r) > 10_000_000 * Near, (r, money) => $"Takings were {money(Takings(r))}: above {money(10_000_000)} two years before, consumption tax is due.",
            "Consumption Tax Act, Article 9(1); JETRO, Taxes in Japan, 3.6.1", QuarterPrompts.Published),
        new(HasSales, (_, _) => "Buying used furniture to sell needs a dealer's permit and a record of each purchase: ask the police station of your workshop.",
            "Secondhand Articles Dealer Act (Kobutsu Eigyo Ho)", Secondary),
        new(IsGain, (_, _) => "Ask about the blue return and its special deduction, which wants books by double entry.",
            "National Tax Agency, Tax Answer No. 2072", FromMemory),
        new(HasStock, (_, _) => "Ask how stock on 31 December is to be valued; another way than the usual one has to be notified.",
            "Income Tax Act, valuation of inventory", FromMemory),
        new(HasTools, (_, money) => $"Ask about tools below {money(100_000)}, which count at once; the wear here is the books' own.",
            "National Tax Agency, Tax Answer No. 2100", FromMemory),
    ];

    private static readonly ImmutableArray<YearRule> AnyCountry =
    [
        new(HasStock, (_, _) => "Stock stands here at cost: ask whether what would fetch less is to be valued lower.",
            "IAS 2, paragraph 9 (lower of cost and net realisable value)", FromMemory),
        new(HasTools, (_, _) => "Ask which tools count at once and which over years; the wear here is the books' own.", "rules of each country", Practice),
        new(HasOutings, (_, _) => "Ask whether driving may count at a rate, at which, and what the record must hold.", "rules of each country", Practice),
        new(HasSales, (r, money) => $"Takings were {money(Takings(r))}: ask whether to register for VAT or sales tax, and about a margin scheme for second-hand goods.",
            "rules of each country", Practice),
        new(HasKept, (r, money) => $"You kept pieces that had cost {money(Kept(r))}: ask at what value they leave the business.", "rules of each country", Practice),
        new(_ => true, (_, _) => "Ask when your tax year begins; two days joined by two points give any year.", "rules of each country", Practice),
    ];

    private static readonly ImmutableDictionary<string, (string Place, ImmutableArray<YearRule> Rules)> ByCurrency =
        new Dictionary<string, (string, ImmutableArray<YearRule>)>
        {
            ["USD"] = ("the US", UnitedStates),
            ["GBP"] = ("the UK", UnitedKingdom),
            ["EUR"] = ("the euro area", EuroArea),
            ["CAD"] = ("Canada", Canada),
            ["AUD"] = ("Australia", Australia),
            ["JPY"] = ("Japan", Japan),
        }.ToImmutableDictionary();

    /// <summary>The questions that fit a year.</summary>
    public static ImmutableArray<QuarterPrompt> For(YearReport report)
    {
        (string place, ImmutableArray<YearRule> rules) = ByCurrency.GetValueOrDefault(report.Workshop.Currency.Code, ("any country", AnyCountry));
        return
        [
            .. rules.Where(rule => rule.Fits(report)).Select(rule => new QuarterPrompt(
                place, rule.Text(report, amount => MoneyText.Whole(amount, report.Workshop)), rule.Source, rule.Status)),
        ];
    }

    /// <summary>Whose questions these are, and that the currency is only a hint.</summary>
    public static string Whose(Workshop workshop) => ByCurrency.TryGetValue(workshop.Currency.Code, out var known)
        ? $"Questions for {known.Place}, since workshop.toml counts in {workshop.Currency.Code}; the currency is only a hint of where you are."
        : $"No country's own questions are kept here for {workshop.Currency.Code}; these hold almost anywhere.";

    private static bool HasStock(YearReport report) => report.CostOfGoods is not { Opening: 0, Closing: 0 };

    private static bool HasSales(YearReport report) => report.Profit.Pieces > 0;

    private static bool HasTools(YearReport report) => !report.Tools.IsEmpty;

    private static bool HasOutings(YearReport report) => !report.Driving.Outings.IsEmpty;

    private static bool HasDriven(YearReport report) => report.Driving.Amount > 0;

    private static bool HasKept(YearReport report) => Kept(report) > 0;

    private static bool IsGain(YearReport report) => report.Profit.Net > 0;

    private static decimal Kept(YearReport report) => report.Left.Where(left => !left.IsWrittenOff).Sum(left => left.Cost);

    private static decimal Takings(YearReport report) => report.Profit.Sales + report.Profit.DeliveryCharged;

    private static bool Begins(YearReport report, int month, int day) => report.Period.From is var from && from.Month == month && from.Day == day;

    // The tax year that begins in the year asked for.
    private static string Example(YearReport report, int month, int day)
    {
        DateOnly from = new(report.Period.From.Year, month, day);
        return FormattableString.Invariant($"{from:yyyy-MM-dd}..{from.AddYears(1).AddDays(-1):yyyy-MM-dd}");
    }
}
