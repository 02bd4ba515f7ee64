using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The owner's question in the store aisle: what is the most to pay for this piece?</summary>
public sealed class MostToPay
{
    private const double RangeLevel = 0.8;
    private const decimal UsualHaggle = 0.2m;

    private readonly FittedModels models;
    private readonly PurchaseTerms terms;
    private readonly SellingTerms selling;
    private readonly Workshop workshop;
    private readonly decimal wage;

    /// <summary>Answers for a log under the owner's terms.</summary>
    /// <param name="models">The models fitted to the log as known at its date.</param>
    /// <param name="terms">What the owner asks of a purchase.</param>
    public MostToPay(FittedModels models, PurchaseTerms terms)
    {
        ArgumentNullException.ThrowIfNull(models);
        ArgumentNullException.ThrowIfNull(terms);
        this.models = models;
        this.terms = terms;
        workshop = models.Log.Workshop;
        selling = SellingTerms.Of(models.Log, terms.Channel);
        wage = terms.WageFor(workshop);
    }

    private double Wage => Crossing.Number(wage);

    /// <summary>The answers for many candidates, in their order.</summary>
    /// <param name="candidates">Pieces in the store.</param>
    public ImmutableArray<PurchaseDecision> Decide(IReadOnlyList<Candidate> candidates)
    {
        ArgumentNullException.ThrowIfNull(candidates);
        var decisions = new PurchaseDecision[candidates.Count];
        Parallel.For(0, candidates.Count, i => decisions[i] = Decide(candidates[i]));
        return [.. decisions];
    }

    /// <summary>The answer for one candidate.</summary>
    /// <param name="candidate">The piece in the store.</param>
    public PurchaseDecision Decide(Candidate candidate)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        var plain = new PurchaseDecision
        {
            Candidate = candidate,
            TargetWage = wage,
            CautiousChance = terms.CautiousChance,
            Basis = Comparables.Basis(models.Log, candidate),
            Cautions = Cautions.For(CautionQueries.Of(candidate, workshop.LengthUnit)),
        };
        if (JointForecast.TryOf(models, candidate, selling, JointForecast.Nodes) is not { } forecast)
        {
            return plain with
            {
                Notes =
                [
                    $"No sale and no guess tells what a {candidate.Type} brings: log a sale, put [guess.{candidate.Type}] "
                    + "with a sale_price into workshop.toml, or state the sale price you expect.",
                ],
            };
        }

        AffordablePrices affordable = Affordable(forecast, candidate);
        double[] prices = affordable.At(Wage);
        double ceiling = prices.Average();
        decimal ceilingMoney = Money(ceiling);
        Array.Sort(prices);
        GuessShares guessed = GuessShares.Of(models, candidate);
        return plain with
        {
            Verdict = VerdictAt(candidate.StickerPrice, ceilingMoney),
            Ceiling = ceilingMoney,
            CeilingCautious = Money(Quantile(prices, 1 - Crossing.Number(terms.CautiousChance))),
            CeilingBreakEven = Money(affordable.At(0).Average()),
            ChanceOfTargetWage = candidate.StickerPrice is { } price
                ? Crossing.Rounded(ShareAtLeast(prices, Crossing.Number(price)), 4) : null,
            WageAtSticker = candidate.StickerPrice is { } sticker
                ? Money(affordable.ExpectedWage(Crossing.Number(sticker))) : null,
            HaggleTo = VerdictAt(candidate.StickerPrice, ceilingMoney) == Verdict.Haggle ? ceilingMoney : null,
            SalePrice = MoneyRange(forecast.SalePrice),
            Hours = Range(forecast.Hours, h => Crossing.Rounded(h, 2)),
            Supplies = MoneyRange(forecast.Supplies),
            DaysOnMarket = Range(forecast.Days, d => Crossing.Rounded(d, 1)),
            Waterfall = Waterfall(affordable, ceilingMoney),
            Comparables = Comparables.Nearest(models, candidate),
            Leverages = Leverages(candidate, forecast),
            GuessShare = GuessShare(forecast, guessed),
            Notes = [.. PurchaseNotes.Of(candidate, models, terms, selling, forecast, guessed)],
        };
    }

    private AffordablePrices Affordable(JointForecast forecast, Candidate candidate) =>
        new(forecast, selling, workshop, models.Rows.Size.LogFootprint(PieceFacts.Of(candidate, models.Log)));

    private Verdict? VerdictAt(decimal? sticker, decimal ceiling) =>
        sticker is not { } price ? null
        : price <= ceiling ? Verdict.Buy
        : price * (1 - (selling.UsualDiscount ?? UsualHaggle)) <= ceiling ? Verdict.Haggle
        : Verdict.Leave;

    private ImmutableArray<WaterfallStep> Waterfall(AffordablePrices affordable, decimal ceiling)
    {
        var parts = affordable.Parts(Wage).ToImmutableArray();
        // The rounded steps must add up to the rounded ceiling, so the cent that rounding leaves goes where it fits best.
        var amounts = Shares.Rounded([.. parts.Select(p => Crossing.Unrounded(p.Amount))], ceiling, workshop.Currency.MinorDigits);
        return
        [
            .. parts.Zip(amounts, (part, amount) => new WaterfallStep(part.Item, amount)),
            new("most to pay", ceiling),
        ];
    }

    private ImmutableArray<Leverage> Leverages(Candidate candidate, JointForecast forecast)
    {
        var open = new List<(string Item, double[] Values, Func<decimal, Candidate> State)>();
        if (candidate.Hours is null)
            open.Add(("hours", forecast.Hours, value => candidate with { Hours = value }));
        if (candidate.SalePrice is null)
            open.Add(("sale price", forecast.SalePrice, value => candidate with { SalePrice = value }));
        if (candidate.Supplies is null)
            open.Add(("supplies", forecast.Supplies, value => candidate with { Supplies = value }));
        return
        [
            .. open.Select(o =>
                {
                    double[] sorted = Sorted(o.Values);
                    decimal low = Crossing.Rounded(Quantile(sorted, (1 - RangeLevel) / 2), 1);
                    decimal high = Crossing.Rounded(Quantile(sorted, (1 + RangeLevel) / 2), 1);
                    return new Leverage(o.Item, low, CeilingOf(o.State(low)), high, CeilingOf(o.State(high)));
                })
                .OrderByDescending(l => Math.Abs(l.CeilingAtHigh - l.CeilingAtLow)),
        ];
    }

    private decimal CeilingOf(Candidate candidate) => Money(
        Affordable(JointForecast.TryOf(models, candidate, selling, JointForecast.CoarseNodes)!, candidate).At(Wage).Average());

    // Guesses weigh in the answer by the money they stand for.
    private decimal GuessShare(JointForecast forecast, GuessShares guessed)
    {
        double price = forecast.SalePrice.Average();
        double hours = Wage * forecast.Hours.Average();
        double supplies = forecast.Supplies.Average();
        return Crossing.Rounded(
            (price * guessed.Price + hours * guessed.Hours + supplies * guessed.Supplies)
                / (price + hours + supplies),
            3);
    }

    private decimal Money(double amount) => Crossing.Money(amount, workshop.Currency);

    private ForecastRange MoneyRange(double[] values) => Range(values, Money);

    private static ForecastRange Range(double[] values, Func<double, decimal> round)
    {
        double[] sorted = Sorted(values);
        return new(
            round(values.Average()), round(Quantile(sorted, 0.5)), round(Quantile(sorted, (1 - RangeLevel) / 2)),
            round(Quantile(sorted, (1 + RangeLevel) / 2)), Crossing.Rounded(RangeLevel, 2));
    }

    private static double[] Sorted(double[] values)
    {
        double[] sorted = [.. values];
        Array.Sort(sorted);
        return sorted;
    }

    // Equally likely nodes: the value at rank p·n, halfway between neighbours at the steps.
    private static double Quantile(double[] sorted, double p)
    {
        double place = Math.Clamp(p * sorted.Length - 0.5, 0, sorted.Length - 1);
        int below = (int)place;
        int above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
    }

    private static double ShareAtLeast(double[] sorted, double value)
    {
        int at = Array.BinarySearch(sorted, value);
        if (at < 0)
            at = ~at;
        while (at > 0 && sorted[at - 1] >= value)
            at--;
        return (double)(sorted.Length - at) / sorted.Length;
    }
}
