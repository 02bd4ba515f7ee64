namespace FlipAnalytics;

/// <summary>
/// Whether a verdict stands whatever the log leaves open. It does where the most to pay, if the market were known, would
/// turn out on the other side of the sticker price by more than a fifth of itself in no more than seven cases in a
/// hundred; such verdicts are right at least nine times in ten from the first sale on (benchmark first-verdicts). Else it
/// cannot be said yet, and what would decide it is.
/// </summary>
internal sealed class FirmVerdict(FittedModels models, SellingTerms selling, Workshop workshop, decimal wage)
{
    private const double MostOftenWrong = 0.07;
    private const double Material = 0.2;

    // A few coins on the wrong side are no wrong answer, however little the piece leaves.
    private const double MaterialOfSalePrice = 0.02;

    // The same chance on either side, so that a verdict is open only where the price lies in the range.
    private const double RangeLevel = 1 - 2 * MostOftenWrong;
    private const int Halvings = 24;
    private const int StepsToSurety = 4;

    private readonly MoreSales more = new(models);

    private double Wage => Crossing.Number(wage);

    /// <summary>The range of the most to pay if the market were known: 86 in 100 between its ends.</summary>
    public static (double Low, double High) Range(double[] ceilings)
    {
        double[] values = [.. ceilings];
        return (EquallyLikely.Quantile(values, (1 - RangeLevel) / 2), EquallyLikely.Quantile(values, (1 + RangeLevel) / 2));
    }

    /// <summary>What to do at a price, or that it cannot be said yet.</summary>
    /// <param name="price">The sticker price.</param>
    /// <param name="ceiling">The most to pay.</param>
    /// <param name="ceilings">The most to pay if the market were known, at equally likely nodes.</param>
    /// <param name="salePrice">The expected sale price.</param>
    public Verdict At(decimal price, decimal ceiling, double[] ceilings, double salePrice)
    {
        Verdict verdict = price <= ceiling ? Verdict.Buy
            : price * (1 - OpeningOffer.UsualDiscount(selling)) <= ceiling ? Verdict.Haggle
            : Verdict.Leave;
        double sticker = Crossing.Number(price);
        double limit = Crossing.Number(ceiling);
        int wrong = ceilings.Count(c =>
        {
            double material = Math.Max(Material * Math.Abs(c), MaterialOfSalePrice * salePrice);
            return verdict switch
            {
                Verdict.Buy => sticker - c > material,
                Verdict.Leave => c - sticker > material,
                // The limit is what haggling is to reach: it must not be too high itself, nor the sticker price a bargain.
                _ => limit - c > material || c - sticker > material,
            };
        });
        return wrong <= MostOftenWrong * ceilings.Length ? verdict : Verdict.CannotSayYet;
    }

    /// <summary>
    /// What would decide over a piece; without a sticker price, whether to take it for nothing.
    /// </summary>
    public WhatDecides Decides(Candidate candidate, CandidateLaws laws)
    {
        decimal sticker = candidate.StickerPrice ?? 0;
        double price = Crossing.Number(sticker);
        bool Holds(Verdict verdict, Candidate stated, int nodes)
        {
            var (ceilings, sale) = Possible(stated, laws, nodes);
            return At(sticker, Crossing.Money(ceilings.Average(), workshop.Currency), ceilings, sale) == verdict;
        }

        double expected = Possible(candidate, laws, JointForecast.CoarseNodes).SalePrice;
        double usualHours = Math.Exp(laws.Hours.Mean);
        double WidthAfter(CandidateLaws then) => Width(Possible(candidate, then, JointForecast.CoarseNodes).Ceilings);
        return new(
            candidate.SalePrice is not null ? null
                : Edge(10 * expected + price, 0, (s, nodes) => Holds(Verdict.Buy, candidate with { SalePrice = NumberRange.Money.Nearest(s) }, nodes), up: true),
            candidate.SalePrice is not null ? null
                : Edge(0, 10 * expected + price, (s, nodes) => Holds(Verdict.Leave, candidate with { SalePrice = NumberRange.Money.Nearest(s) }, nodes), up: false),
            candidate.Hours is not null ? null
                : Edge(usualHours / 10, 2 * usualHours, (h, nodes) => Holds(Verdict.Buy, candidate with { Hours = NumberRange.Hours.Nearest(h) }, nodes), up: false),
            more.ToHalve(candidate, laws, ofAnything: false, WidthAfter),
            more.ToHalve(candidate, laws, ofAnything: true, WidthAfter));
    }

    /// <summary>The most to pay if the market were known, and the expected sale price.</summary>
    private (double[] Ceilings, double SalePrice) Possible(Candidate candidate, CandidateLaws laws, int nodes)
    {
        var forecast = JointForecast.Of(candidate, laws, selling, nodes, Wage);
        double ceiling = new AffordablePrices(forecast, selling, workshop, laws.LogFootprint).At(Wage).Average();
        return (CeilingIfKnown.Of(candidate, laws, forecast, selling, ceiling, Wage), forecast.SalePrice.Average());
    }

    // The last value, coming from one that holds, at which it still holds; null where there is none. It is looked for on
    // coarse nodes and made sure of on those of an answer.
    private static decimal? Edge(double holding, double failing, Func<decimal, int, bool> holds, bool up)
    {
        if (!holds(Crossing.Rounded(holding, 2), JointForecast.CoarseNodes))
            return null;
        for (int i = 0; i < Halvings; i++)
        {
            double middle = (holding + failing) / 2;
            if (holds(Crossing.Rounded(middle, 2), JointForecast.CoarseNodes))
                holding = middle;
            else
                failing = middle;
        }

        decimal step = Step(holding);
        decimal steps = Crossing.Unrounded(holding) / step;
        decimal edge = step * (up ? decimal.Ceiling(steps) : decimal.Floor(steps));
        for (int i = 0; i < StepsToSurety && edge > 0; i++, edge += up ? step : -step)
        {
            if (holds(edge, JointForecast.Nodes))
                return edge;
        }

        return null;
    }

    private static decimal Step(double value) => value switch { < 2 => 0.1m, < 20 => 0.5m, < 100 => 1, < 1000 => 5, _ => 50 };

    private static double Width(double[] ceilings) => Range(ceilings) is var (low, high) ? high - low : 0;
}
