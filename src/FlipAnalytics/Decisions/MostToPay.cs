using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The owner's question in the store aisle: what is the most to pay for this piece?</summary>
public sealed class MostToPay
{
    private const double MostKnownToTheCent = 1e11;
    private const double RangeLevel = 0.8;
    private const int ChancePoints = 60;
    private const double LeastChance = 0.02;

    private readonly FittedModels models;
    private readonly PurchaseTerms terms;
    private readonly SellingTerms selling;
    private readonly Workshop workshop;
    private readonly decimal wage;
    private readonly FirmVerdict firm;

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
        firm = new(models, selling, workshop, wage);
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
            Load = LoadText.Of(candidate, workshop),
        };
        if (CandidateLaws.TryOf(models, candidate) is not { } laws)
        {
            return plain with
            {
                Verdict = Verdict.CannotSayYet,
                Notes =
                [
                    $"No sale and no guess tells what a {candidate.Type} brings: log a sale, put [guess.{candidate.Type}] "
                    + "with a sale_price into workshop.toml, or state the sale price you expect.",
                ],
            };
        }

        var forecast = JointForecast.Of(candidate, laws, selling, JointForecast.Nodes, Wage);
        var affordable = new AffordablePrices(forecast, selling, workshop, laws.LogFootprint);
        double[] prices = affordable.At(Wage);
        decimal ceilingMoney = Ceiling(affordable, prices.Average());
        double[] ifKnown = CeilingIfKnown.Of(candidate, laws, forecast, selling, prices.Average(), Wage);
        var (low, high) = FirmVerdict.Range(ifKnown);
        Verdict? verdict = VerdictOf(candidate.StickerPrice, ceilingMoney, ifKnown, forecast.SalePrice.Average());
        decimal careful = Money(EquallyLikely.Quantile(prices, 1 - Crossing.Number(terms.CautiousChance)));
        ImmutableArray<InputNote> inputs = CandidateInputs.Notes(models, candidate, laws);
        var decision = plain with
        {
            Verdict = verdict,
            Ceiling = ceilingMoney,
            CeilingLow = Money(low),
            CeilingHigh = Money(high),
            WhatDecides = verdict == Verdict.CannotSayYet ? firm.Decides(candidate, laws) : null,
            WalkAway = OpeningOffer.WalkAway(ceilingMoney, workshop),
            CeilingCautious = careful,
            CeilingBreakEven = Money(affordable.At(0).Average()),
            ChanceOfTargetWage = candidate.StickerPrice is { } price
                ? Crossing.Rounded(ShareAtLeast(prices, Crossing.Number(price)), 4) : null,
            Chances = Chances(prices, candidate.StickerPrice, ceilingMoney, careful),
            WageAtSticker = candidate.StickerPrice is { } sticker
                && affordable.ExpectedWage(Crossing.Number(sticker)) is { } earned ? Money(earned) : null,
            HaggleTo = verdict == Verdict.Haggle ? ceilingMoney : null,
            SalePrice = MoneyRange(forecast.SalePrice),
            Hours = Range(forecast.Hours, h => Crossing.Rounded(h, 2)),
            Supplies = MoneyRange(forecast.Supplies),
            DaysOnMarket = Range(forecast.Days, d => Crossing.Rounded(d, 1)),
            Waterfall = Waterfall(affordable, ceilingMoney),
            Comparables = Comparables.Nearest(models, candidate),
            Leverages = Leverages(candidate, laws, forecast),
            GuessShare = GuessShare(forecast, laws.Guessed),
            Inputs = inputs,
            Notes =
            [
                .. inputs.Select(note => note.Text),
                .. PurchaseNotes.OfSkew(ceilingMoney, careful, terms.CautiousChance),
                .. PurchaseNotes.Of(candidate, models, terms, selling, forecast, laws),
            ],
        };
        return decision with { Offer = OpeningOffer.For(decision, selling, workshop) };
    }

    private ImmutableArray<PriceChance> Chances(double[] prices, decimal? sticker, params decimal[] limits)
    {
        double last = new[] { EquallyLikely.Quantile(prices, 1 - LeastChance), 1.2 * (Crossing.Number(sticker) ?? 0), 1 }.Max();
        return
        [
            .. Enumerable.Range(0, ChancePoints + 1).Select(i => Money(last * i / ChancePoints))
                .Concat(limits.Append(sticker ?? 0).Where(price => price >= 0)).Distinct().Order()
                .Select(price => new PriceChance(price, Crossing.Rounded(ShareAtLeast(prices, Crossing.Number(price)), 4))),
        ];
    }

    private Verdict? VerdictOf(decimal? sticker, decimal ceiling, double[] ifKnown, double salePrice)
    {
        // Without a sticker price all that can be open is whether the piece is worth taking at all.
        Verdict verdict = firm.At(sticker ?? 0, ceiling, ifKnown, salePrice);
        return sticker is not null || verdict == Verdict.CannotSayYet ? verdict : null;
    }

    // A double of more than fifteen digits does not know its cents: there the limit is what its parts add up to.
    private decimal Ceiling(AffordablePrices affordable, double mean) => Math.Abs(mean) < MostKnownToTheCent
        ? Money(mean)
        : workshop.Currency.Round(affordable.Parts(Wage).Sum(part => Crossing.Unrounded(part.Amount)));

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

    private ImmutableArray<Leverage> Leverages(Candidate candidate, CandidateLaws laws, JointForecast forecast)
    {
        var open = new List<(string Item, double[] Values, Func<decimal, Candidate> State)>();
        if (candidate.Hours is null)
            open.Add(("hours", [.. forecast.Hours], value => candidate with { Hours = NumberRange.Hours.Nearest(value) }));
        if (candidate.SalePrice is null)
            open.Add(("sale price", [.. forecast.SalePrice], value => candidate with { SalePrice = NumberRange.Money.Nearest(value) }));
        if (candidate.Supplies is null)
            open.Add(("supplies", [.. forecast.Supplies], value => candidate with { Supplies = NumberRange.Money.Nearest(value) }));
        return
        [
            .. open.Select(o =>
                {
                    decimal low = Crossing.Rounded(EquallyLikely.Quantile(o.Values, (1 - RangeLevel) / 2), 1);
                    decimal high = Crossing.Rounded(EquallyLikely.Quantile(o.Values, (1 + RangeLevel) / 2), 1);
                    return new Leverage(o.Item, low, CeilingOf(o.State(low), laws), high, CeilingOf(o.State(high), laws));
                })
                .OrderByDescending(l => Math.Abs(l.CeilingAtHigh - l.CeilingAtLow)),
        ];
    }

    private decimal CeilingOf(Candidate candidate, CandidateLaws laws)
    {
        var forecast = JointForecast.Of(candidate, laws, selling, JointForecast.CoarseNodes, Wage);
        return Money(new AffordablePrices(forecast, selling, workshop, laws.LogFootprint).At(Wage).Average());
    }

    // Guesses weigh in the answer by the money they stand for.
    private decimal GuessShare(JointForecast forecast, GuessShares guessed)
    {
        double price = forecast.SalePrice.Average();
        double hours = Wage * forecast.Hours.Average();
        double supplies = forecast.Supplies.Average();
        double money = price + hours + supplies;
        return money == 0 ? 0 : Crossing.Rounded(
            (price * guessed.Price + hours * guessed.Hours + supplies * guessed.Supplies) / money, 3);
    }

    private decimal Money(double amount) => Crossing.Money(amount, workshop.Currency);

    private ForecastRange MoneyRange(double[] values) => Range(values, Money);

    private static ForecastRange Range(double[] values, Func<double, decimal> round)
    {
        double[] ordered = [.. values];
        return new(
            round(values.Average()), round(EquallyLikely.Quantile(ordered, 0.5)), round(EquallyLikely.Quantile(ordered, (1 - RangeLevel) / 2)),
            round(EquallyLikely.Quantile(ordered, (1 + RangeLevel) / 2)), Crossing.Rounded(RangeLevel, 2));
    }

    private static double ShareAtLeast(double[] values, double value) =>
        (double)values.Count(v => v >= value) / values.Length;
}
