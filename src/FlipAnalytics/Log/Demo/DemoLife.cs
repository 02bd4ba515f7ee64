using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What truly happens to a piece of the demo log, whether written down or not, also after the last day.</summary>
internal sealed record DemoLife
{
    public required int Index { get; init; }

    public required DemoFind Find { get; init; }

    public required DemoFacts Facts { get; init; }

    public required double Hours { get; init; }

    public required double Supplies { get; init; }

    public required decimal? StickerPrice { get; init; }

    public required decimal BoughtPrice { get; init; }

    public required DateOnly ReadyOn { get; init; }

    public required DateOnly ListedOn { get; init; }

    public decimal AskingPrice { get; init; }

    public ImmutableArray<AskingPrice> Cuts { get; init; } = [];

    public DateOnly? SoldOn { get; init; }

    public decimal SalePrice { get; init; }

    public DateOnly? LeftOn { get; init; }

    public LeftAs? LeftAs { get; init; }

    public string Id => FormattableString.Invariant($"P{Index + 1:0000}");

    /// <summary>Day of the first coat; primer, paint and topcoat take a day each.</summary>
    public DateOnly PaintedOn => ReadyOn.AddDays(-3);

    /// <summary>Whether it left before it was ready.</summary>
    public bool LeftUnready => LeftOn < ReadyOn;

    public static DemoLife Of(DemoMarket market, ulong seed, int index, DemoFind find)
    {
        DemoDraws draws = new(seed, DemoStream.Piece, index);
        DemoFacts facts = FactsOf(market, draws);
        double hours = market.MedianHours(facts) * Math.Exp(market.HoursNoise * draws.Normal());
        double supplies = market.MedianSupplies(facts) * Math.Exp(market.SuppliesNoise * draws.Normal());
        double priceNoise = market.PriceNoise * DemoNoise.Quantile(draws.Uniform(), market.HeavyTails);
        decimal? sticker = Sticker(market, facts, find, draws);
        int workshopDays = (int)Math.Clamp(Math.Exp(draws.Normal(Math.Log(16), 0.5)), 5, 90);
        DateOnly readyOn = find.Date.AddDays(workshopDays);
        DemoLife life = new()
        {
            Index = index,
            Find = find,
            Facts = facts,
            Hours = hours,
            Supplies = supplies,
            StickerPrice = sticker,
            BoughtPrice = sticker is { } asked ? Haggled(asked, market.Habits, draws) : 0,
            ReadyOn = readyOn,
            ListedOn = readyOn.AddDays(draws.OneOf([0, 0, 1, 1, 2, 4])),
        };
        return draws.Chance(market.Habits.LeavesWorkshop)
            ? life with
            {
                LeftOn = find.Date.AddDays(1 + draws.Below(workshopDays - 1)),
                LeftAs = draws.OneOf([FlipAnalytics.LeftAs.Broken, FlipAnalytics.LeftAs.Parts, FlipAnalytics.LeftAs.Scrapped]),
            }
            : OnSale(life, market, priceNoise, draws);
    }

    public static DemoFacts FactsOf(DemoMarket market, DemoDraws draws)
    {
        DemoType type = draws.OneOf(market.Types, entry => entry.Share);
        return new(
            type.Name,
            draws.OneOf(type.Counts, entry => entry.Share).Count,
            Inches(type.Width, market.WidthSpread, draws),
            Inches(type.Depth, market.DepthSpread, draws),
            Inches(type.Height, market.HeightSpread, draws),
            draws.OneOf(market.Conditions, entry => entry.Share).Condition,
            draws.OneOf(market.Colours, entry => entry.Share).Word,
            draws.OneOf(market.Finishes, entry => entry.Share).Name);
    }

    private static double Inches(double typical, double spread, DemoDraws draws) =>
        Math.Max(4, Math.Round(typical * Math.Exp(spread * draws.Normal())));

    private static decimal? Sticker(DemoMarket market, DemoFacts facts, DemoFind find, DemoDraws draws)
    {
        double share = market.Habits.StickerMedian * Math.Exp(market.Habits.StickerSpread * draws.Normal());
        return find.Source == DemoOutings.Roadside
            ? null
            : DemoRounding.Sticker(share * market.MedianSalePrice(facts, find.Date));
    }

    private static decimal Haggled(decimal sticker, DemoHabits habits, DemoDraws draws) =>
        draws.Chance(habits.PaysSticker)
            ? sticker
            : Math.Min(sticker, Math.Max(1, DemoRounding.To(1, (double)sticker * draws.Uniform(0.8, 1))));

    /// <summary>
    /// From listing to the sale or to the day it is taken home. Days: the integrated hazard up to the sale is
    /// exponential with mean 1; it grows by (t₁/λ)^k − (t₀/λ)^k over a stretch at one price.
    /// </summary>
    private static DemoLife OnSale(DemoLife life, DemoMarket market, double priceNoise, DemoDraws draws)
    {
        double median = market.MedianSalePrice(life.Facts, life.ListedOn, life.Hours);
        double bring = median * Math.Exp(priceNoise);
        double habit = median * Math.Exp(draws.Normal(market.Habits.AskingMean, market.Habits.AskingSpread));
        decimal asking = DemoRounding.Price(Math.Clamp(habit, 1.04 * bring, 1.35 * bring));
        life = life with { AskingPrice = asking };

        double hazardLeft = draws.Exponential();
        int patience = market.Habits.Patience + draws.Below(market.Habits.Patience);
        List<AskingPrice> cuts = [];
        for (int from = 0; ;)
        {
            double scale = market.DaysScale(life.Facts, Math.Log((double)asking / median));
            decimal lower = DemoRounding.Price((double)asking * (1 - market.Habits.Cut));
            bool cutsNext = lower < asking && (double)lower >= 1.04 * bring;
            int to = Math.Min(patience, cutsNext ? from + draws.OneOf([21, 28]) + draws.Below(3) : patience);
            double already = Math.Pow(from / scale, market.DaysShape);
            double soldAfter = scale * Math.Pow(already + hazardLeft, 1 / market.DaysShape);
            if (soldAfter <= to)
            {
                // A piece is never written down as sold on the day it was listed.
                DateOnly soldOn = life.ListedOn.AddDays(Math.Max(1, (int)Math.Round(soldAfter)));
                double price = market.MedianSalePrice(life.Facts, soldOn, life.Hours) * Math.Exp(priceNoise);
                return life with { Cuts = [.. cuts], SoldOn = soldOn, SalePrice = DemoRounding.Price(price) };
            }
            if (to == patience)
            {
                return life with
                {
                    Cuts = [.. cuts],
                    LeftOn = life.ListedOn.AddDays(patience),
                    LeftAs = draws.OneOf([FlipAnalytics.LeftAs.Kept, FlipAnalytics.LeftAs.Given]),
                };
            }
            hazardLeft -= Math.Pow(to / scale, market.DaysShape) - already;
            asking = lower;
            cuts.Add(new(life.Id, life.ListedOn.AddDays(to), asking));
            from = to;
        }
    }
}
