using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A part of the change of net profit.</summary>
/// <param name="Name">What drove it: number, mix, price, cost, and so on.</param>
/// <param name="Meaning">How it is reckoned, in a few words.</param>
/// <param name="Amount">Its part; the parts add up to the change.</param>
public sealed record QuarterEffect(string Name, string Meaning, decimal Amount);

/// <summary>A span against an earlier one of the same length.</summary>
/// <remarks>
/// Flexible-budget and sales-mix variances (Horngren, Datar and Rajan, Cost Accounting: A Managerial Emphasis, chapters 7 and
/// 14, from memory) by type of piece, with the earlier span as the budget. n is the number sold, p the average sale price, c the
/// average of all costs of its own less delivery charged, m = p − c, N = Σn; 0 the earlier span, 1 this one:
/// number (N₁ − N₀)·M₀/N₀ with M₀ = Σn₀m₀; mix Σn₁m₀ − N₁·M₀/N₀; price Σn₁(p₁ − p₀); cost −Σn₁(c₁ − c₀). A type sold in one span
/// only has no earlier price to compare, so all it differs from the average is mix. Pieces without both prices stand apart.
/// Rounded by largest remainder.
/// The hourly figure is profit a piece over hours a piece: profit effect (x₁ − x₀)/y₀, hours effect x₁/y₁ − x₁/y₀.
/// </remarks>
/// <param name="With">The earlier span.</param>
/// <param name="IsBeforeTheLog">Whether the log begins after it, so that there is nothing to compare with.</param>
/// <param name="Profit">Its profit and loss.</param>
/// <param name="Hours">Its hours and wage.</param>
/// <param name="Net">Net profit now less then.</param>
/// <param name="Effects">What drove it; the amounts add up to <paramref name="Net"/>.</param>
/// <param name="Wage">Wage now less then; null where one is unknown.</param>
/// <param name="WageByProfit">Part of it from another profit a piece.</param>
/// <param name="WageByHours">Part of it from other hours a piece.</param>
/// <param name="NewTypes">Types sold now and not then.</param>
/// <param name="GoneTypes">Types sold then and not now.</param>
public sealed record QuarterChange(
    ReportPeriod With,
    bool IsBeforeTheLog,
    QuarterProfit Profit,
    QuarterHours Hours,
    decimal Net,
    ImmutableArray<QuarterEffect> Effects,
    decimal? Wage,
    decimal? WageByProfit,
    decimal? WageByHours,
    ImmutableArray<string> NewTypes,
    ImmutableArray<string> GoneTypes)
{
    private sealed record TypeMeans(decimal Count, decimal Price, decimal Cost)
    {
        public decimal Margin => Price - Cost;
    }

    internal static QuarterChange Of(
        QuarterBooks books, ReportPeriod with, ImmutableArray<QuarterSale> now, QuarterProfit profit, QuarterHours hours)
    {
        ImmutableArray<QuarterSale> then = QuarterSale.In(books, with);
        QuarterProfit profitThen = QuarterProfit.Of(books, with, then);
        QuarterHours hoursThen = QuarterHours.Of(books, with, then, profitThen);
        string[] typesNow = Types(now);
        string[] typesThen = Types(then);
        decimal? wage = hours.Wage?.PerHour - hoursThen.Wage?.PerHour;
        decimal? byProfit = wage is null ? null : books.Currency.Round(
            (hours.Wage!.Profit / hours.Wage.Pieces - hoursThen.Wage!.Profit / hoursThen.Wage.Pieces)
            / (hoursThen.Wage.Hours / hoursThen.Wage.Pieces));
        return new(
            with,
            books.FirstFact is not { } first || first > with.To,
            profitThen,
            hoursThen,
            profit.Net - profitThen.Net,
            EffectsOf(then, now, profitThen, profit, books.Currency),
            wage,
            byProfit,
            wage - byProfit,
            [.. typesNow.Except(typesThen, StringComparer.OrdinalIgnoreCase)],
            [.. typesThen.Except(typesNow, StringComparer.OrdinalIgnoreCase)]);
    }

    /// <summary>The parts of a change; a pure function, so that it can be worked by hand.</summary>
    internal static ImmutableArray<QuarterEffect> EffectsOf(
        ImmutableArray<QuarterSale> then, ImmutableArray<QuarterSale> now, QuarterProfit profitThen, QuarterProfit profit,
        Currency currency)
    {
        var before = Means(then);
        var after = Means(now);
        decimal n0 = before.Values.Sum(type => type.Count);
        decimal n1 = after.Values.Sum(type => type.Count);
        decimal m0 = before.Values.Sum(type => type.Count * type.Margin);
        decimal m1 = after.Values.Sum(type => type.Count * type.Margin);
        decimal number = n0 == 0 ? m1 : (n1 - n0) * m0 / n0;
        decimal mix = 0, price = 0, cost = 0;
        foreach (var (type, means) in n0 == 0 ? [] : after)
        {
            TypeMeans old = before.GetValueOrDefault(type, means);
            mix += means.Count * (old.Margin - m0 / n0);
            price += means.Count * (means.Price - old.Price);
            cost -= means.Count * (means.Cost - old.Cost);
        }

        (string Name, string Meaning, decimal Amount)[] parts =
        [
            ("number sold", "more or fewer pieces, each at what one left on average then", number),
            ("mix", "more of the types that leave more, or less", mix),
            ("price", "the same types sold for more or less", price),
            ("cost", "the same types cost more or less, fees and delivery included", cost),
            ("pieces without a price", "pieces whose sale or purchase price is not written down",
                Unpriced(now) - Unpriced(then)),
            ("returns", "what returns left of the sales they undid", ByReturns(now, profit) - ByReturns(then, profitThen)),
            ("written off", "pieces given away, broken, stolen and the like", profitThen.WrittenOff - profit.WrittenOff),
            ("wear of tools", "wear of tools", profitThen.ToolWear - profit.ToolWear),
            ("overheads", "rent and the like, and outings that brought nothing home", profitThen.Overheads - profit.Overheads),
            ("supplies lost", "supplies wasted, or missing at a count", profitThen.SuppliesLost - profit.SuppliesLost),
        ];
        decimal total = profit.Net - profitThen.Net;
        int digits = Math.Max(currency.MinorDigits, total.Trimmed().Scale);
        ImmutableArray<decimal> rounded = Shares.Rounded([.. parts.Select(part => part.Amount)], total, digits);
        return [.. parts.Select((part, i) => new QuarterEffect(part.Name, part.Meaning, rounded[i]))];
    }

    private static decimal Unpriced(ImmutableArray<QuarterSale> sales) =>
        sales.Where(sale => !sale.HasPrices).Sum(sale => sale.Contribution);

    // What the profit holds beside the sales and the costs of no piece.
    private static decimal ByReturns(ImmutableArray<QuarterSale> sales, QuarterProfit profit) =>
        profit.Contribution - sales.Sum(sale => sale.Contribution);

    private static string[] Types(ImmutableArray<QuarterSale> sales) =>
        [.. sales.Select(sale => sale.Type).Distinct(StringComparer.OrdinalIgnoreCase)];

    private static Dictionary<string, TypeMeans> Means(ImmutableArray<QuarterSale> sales) => sales
        .Where(sale => sale.HasPrices)
        .GroupBy(sale => sale.Type, StringComparer.OrdinalIgnoreCase)
        .ToDictionary(
            type => type.Key,
            type => new TypeMeans(
                type.Count(),
                type.Average(sale => sale.SalePrice!.Value),
                type.Average(sale => sale.SalePrice!.Value - sale.Contribution)),
            StringComparer.OrdinalIgnoreCase);
}
