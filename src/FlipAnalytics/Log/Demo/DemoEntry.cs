namespace FlipAnalytics;

/// <summary>A piece as the owner writes it down by the last day, gaps included.</summary>
/// <param name="Life">What truly happens to it.</param>
/// <param name="Piece">The row of the log.</param>
/// <param name="HoursByTask">Whether its hours are written down by day and task.</param>
/// <param name="SuppliesByUse">Whether its paint, primer and topcoat are written down use by use.</param>
internal sealed record DemoEntry(DemoLife Life, Piece Piece, bool HoursByTask, bool SuppliesByUse)
{
    public static DemoEntry Of(DemoLife life, DemoMarket market, DateOnly last, ulong seed)
    {
        DemoDraws draws = new(seed, DemoStream.WritingDown, life.Index);
        DemoHabits habits = market.Habits;
        DemoFacts facts = life.Facts;
        bool ready = life.ReadyOn <= last && !life.LeftUnready;
        bool listed = life.ListedOn <= last && !life.LeftUnready;

        Piece piece = Seen(life.Id, facts, habits, draws) with
        {
            Source = life.Find.Source,
            Trip = life.Find.Trip,
            BoughtOn = life.Find.Date,
            StickerPrice = life.StickerPrice,
            BoughtPrice = life.BoughtPrice,
            ExpectedPrice = Guess(life, market, draws),
            ReadyOn = Kept(ready && draws.Chance(0.9), life.ReadyOn),
            ListedOn = Kept(listed, life.ListedOn),
            AskingPrice = Kept(listed, life.AskingPrice),
            LeftOn = life.LeftOn <= last ? life.LeftOn : null,
            LeftAs = life.LeftOn <= last ? life.LeftAs : null,
            Notes = DemoWording.Note(facts.Condition, draws),
        };
        // Before the paint is on, the colour is a plan that is seldom written down.
        if (!ready && draws.Chance(0.6))
            piece = piece with { Colour = null, Finish = null };

        double hoursKind = draws.Uniform();
        bool hoursByTask = hoursKind < habits.HoursByTask;
        bool hoursInAll = hoursByTask ? hoursKind < habits.HoursByTask / 3 : hoursKind < 1 - habits.HoursUnrecorded;
        double suppliesKind = draws.Uniform();
        bool suppliesByUse = suppliesKind < habits.SuppliesByUse;
        bool suppliesInAll = !suppliesByUse && suppliesKind < 1 - habits.SuppliesUnrecorded;
        piece = piece with
        {
            Hours = Kept(listed && hoursInAll, DemoRounding.Quarters(life.Hours)),
            SuppliesCost = Kept(ready && suppliesInAll, DemoRounding.To(0.5m, life.Supplies)),
        };
        return new(life, Sold(piece, life, market, last, draws), hoursByTask, suppliesByUse);
    }

    /// <summary>What is written down of a piece's looks, gaps included.</summary>
    public static Piece Seen(string id, DemoFacts facts, DemoHabits habits, DemoDraws draws)
    {
        string title = DemoWording.Title(facts, draws);
        bool sizeUnrecorded = draws.Chance(habits.SizeUnrecorded);
        bool onlyWidth = draws.Chance(0.4);
        return new()
        {
            Id = id,
            Type = facts.Type,
            Title = title,
            Count = facts.Count,
            Width = Kept(!sizeUnrecorded || onlyWidth, (decimal)facts.Width),
            Depth = Kept(!sizeUnrecorded, (decimal)facts.Depth),
            Height = Kept(!sizeUnrecorded, (decimal)facts.Height),
            Material = draws.Chance(0.8) ? DemoWording.Material(draws) : null,
            Condition = Kept(!draws.Chance(habits.FinishUnrecorded), facts.Condition),
            Colour = draws.Chance(habits.ColourUnrecorded) ? null : facts.Colour,
            Finish = draws.Chance(habits.FinishUnrecorded) ? null : facts.Finish,
        };
    }

    private static Piece Sold(Piece piece, DemoLife life, DemoMarket market, DateOnly last, DemoDraws draws)
    {
        if (life.SoldOn is not { } soldOn || soldOn > last)
            return piece;
        DemoChannel channel = draws.OneOf(market.Channels, entry => entry.Share);
        decimal fees = Math.Round(life.SalePrice * channel.FeeRate + channel.FixedFee, 2, MidpointRounding.AwayFromZero);
        bool delivered = draws.Chance(market.DeliveryShare);
        decimal cost = draws.OneOf(market.DeliveryCosts);
        decimal charged = draws.OneOf(market.DeliveryCharges);
        return piece with
        {
            SoldOn = soldOn,
            SoldPrice = life.SalePrice,
            Channel = channel.Name,
            Fees = Kept(!draws.Chance(market.Habits.FeesUnrecorded), fees),
            DeliveryCost = Kept(delivered, cost),
            DeliveryCharged = Kept(delivered, charged),
        };
    }

    private static decimal? Guess(DemoLife life, DemoMarket market, DemoDraws draws)
    {
        double guess = market.MedianSalePrice(life.Facts, life.Find.Date) * Math.Exp(draws.Normal(0.05, 0.2));
        return Kept(draws.Chance(0.6), Math.Max(5, DemoRounding.To(guess < 80 ? 5 : 10, guess)));
    }

    private static T? Kept<T>(bool written, T value)
        where T : struct => written ? value : null;
}
