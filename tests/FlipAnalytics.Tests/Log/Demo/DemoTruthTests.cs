namespace FlipAnalytics.Tests;

/// <summary>What the logs hold agrees with the truth they say they were drawn from.</summary>
public sealed class DemoTruthTests
{
    private static readonly DemoLogResult Big = DemoLog.Generate(20_000, 17);

    [Fact]
    public void Sale_prices_scatter_around_the_true_median_by_the_stated_noise()
    {
        double[] residuals = PriceResiduals(Big);

        Assert.InRange(residuals.Length, 5_000, 20_000);
        Assert.Equal(0, residuals.Average(), 0.01);
        Assert.Equal(0.2, StandardDeviation(residuals), 0.007);
        // 3 standard deviations: 0.27 % of a normal distribution lies beyond.
        Assert.InRange(Beyond(residuals, 0.6), 0.0005, 0.006);
    }

    [Fact]
    public void Heavy_tails_put_five_times_as_many_sales_beyond_three_standard_deviations()
    {
        double[] residuals = PriceResiduals(DemoLog.Generate(20_000, 17, new() { HeavyTails = true }));

        Assert.Equal(0, residuals.Average(), 0.01);
        Assert.Equal(0.2, StandardDeviation(residuals), 0.012);
        // P(|t| > 3√2) for Student's t with 4 degrees of freedom is 1.3 %.
        Assert.Equal(0.0132, Beyond(residuals, 0.6), 0.005);
    }

    [Fact]
    public void Hours_and_supplies_scatter_around_their_medians_by_the_stated_noise()
    {
        double[] hours = [.. Known(Big)
            .Where(known => known.Piece.Hours is not null)
            .Select(known => Math.Log((double)known.Piece.Hours! / Big.Truth.MedianHours(known.Facts)))];
        double[] supplies = [.. Known(Big)
            .Where(known => known.Piece.SuppliesCost is not null)
            .Select(known => Math.Log((double)known.Piece.SuppliesCost! / Big.Truth.MedianSupplies(known.Facts)))];

        Assert.Equal(0, hours.Average(), 0.01);
        Assert.Equal(0.2, StandardDeviation(hours), 0.01);
        Assert.Equal(0, supplies.Average(), 0.015);
        Assert.Equal(0.3, StandardDeviation(supplies), 0.012);
    }

    /// <summary>
    /// Martingale residuals: under the true hazard, sales and accumulated hazard agree, over all days and over the
    /// first fortnight alone, so that the shape is right too.
    /// </summary>
    [Theory]
    [InlineData(int.MaxValue)]
    [InlineData(14)]
    public void As_many_pieces_sell_as_the_true_hazard_says(int within)
    {
        ILookup<string, AskingPrice> cuts = Big.Log.AskingPrices.ToLookup(cut => cut.PieceId);
        double hazard = 0;
        int sold = 0;
        foreach (var (piece, facts) in Known(Big).Where(known => known.Piece is { Hours: not null, ListedOn: not null }))
        {
            DateOnly listed = piece.ListedOn!.Value;
            double median = Big.Truth.MedianSalePrice(facts, listed, (double)piece.Hours!);
            // A sale on day d lies in the half-day around it, as days are rounded; a piece still on sale has no such half.
            double end = (piece.SoldOn ?? piece.LeftOn ?? Big.Log.Date).DayNumber - listed.DayNumber
                + (piece.SoldOn is null && piece.LeftOn is null ? 0.5 : 0);
            double from = 0;
            decimal asking = piece.AskingPrice!.Value;
            foreach (AskingPrice cut in cuts[piece.Id].Append(new(piece.Id, DateOnly.MaxValue, 0)))
            {
                double to = Math.Min(Math.Min(end, within + 0.5), cut.Date.DayNumber - listed.DayNumber);
                double scale = Big.Truth.DaysScale(facts, Math.Log((double)asking / median));
                hazard += Math.Pow(to / scale, 1.3) - Math.Pow(from / scale, 1.3);
                (from, asking) = (to, cut.Price);
            }
            sold += piece.SoldOn is not null && end <= within ? 1 : 0;
        }

        Assert.InRange(sold, 1000, 20_000);
        Assert.Equal(1, sold / hazard, 3.5 / Math.Sqrt(sold));
    }

    [Fact]
    public void Fees_and_delivery_average_what_the_market_says()
    {
        Piece[] sold = [.. Big.Log.Pieces.Where(piece => piece.SoldOn is not null)];
        double delivery = sold.Average(piece => (double)((piece.DeliveryCost ?? 0) - (piece.DeliveryCharged ?? 0)));
        Piece[] withFees = [.. sold.Where(piece => piece.Fees is not null)];
        double feeShare = withFees.Sum(piece => (double)piece.Fees! - Big.Truth.MeanFixedFee)
            / withFees.Sum(piece => (double)piece.SoldPrice!);

        Assert.Equal(Big.Truth.MeanDelivery, delivery, 0.2);
        Assert.Equal(Big.Truth.MeanFeeRate, feeShare, 0.003);
    }

    [Fact]
    public void Asking_prices_lie_above_what_most_pieces_bring()
    {
        Piece[] sold = [.. Big.Log.Pieces.Where(piece => piece.SoldOn is not null)];

        Assert.InRange(sold.Count(piece => piece.SoldPrice > piece.AskingPrice) / (double)sold.Length, 0, 0.02);
        Assert.InRange(sold.Average(piece => (double)(piece.SoldPrice! / piece.AskingPrice!)), 0.82, 0.92);
    }

    [Fact]
    public void The_level_is_a_random_walk_that_starts_at_zero()
    {
        double[] steps = [.. Enumerable.Range(0, 200).SelectMany(seed =>
        {
            var levels = DemoLog.Generate(1, (ulong)seed).Truth.MonthlyLevels;
            Assert.Equal(0, levels[0]);
            return levels.Skip(1).Zip(levels, (next, level) => next - level);
        })];

        Assert.Equal(0.02, StandardDeviation(steps), 0.0025);
    }

    [Fact]
    public void The_level_runs_straight_from_one_month_to_the_next()
    {
        DemoMarket market = new() { FirstMonth = new(2025, 4, 1), MonthlyLevels = [0, 0.03, 0.01] };

        Assert.Equal(0, market.Level(new(2024, 1, 1)));
        Assert.Equal(0.015, market.Level(new(2025, 4, 16)), 1e-12);
        Assert.Equal(0.03, market.Level(new(2025, 5, 1)), 1e-12);
        Assert.Equal(0.01, market.Level(new(2025, 9, 1)), 1e-12);
    }

    [Fact]
    public void A_sound_typical_dresser_is_worked_out_by_hand()
    {
        DemoMarket market = new() { SeasonOnPrice = 0, Base = 4.905 };
        DemoFacts dresser = new("dresser", 1, 58, 18, 33, Condition.Sound, "sage", "satin");
        DateOnly day = new(2026, 3, 31);

        // Median exp(4.905 + 0.51 + 0.10) = 248.39; the mean has half the variance on top, 0.2² and (0.25 · 0.2)².
        Assert.Equal(248.39, market.MedianSalePrice(dresser, day), 0.005);
        Assert.Equal(248.39 * Math.Exp((0.04 + 0.0025) / 2), market.ExpectedSalePrice(dresser, day), 0.01);
        Assert.Equal(9 * Math.Exp(0.02), market.ExpectedHours(dresser), 1e-9);
        Assert.Equal(30 * Math.Exp(0.045), market.ExpectedSupplies(dresser), 1e-9);
        // 253.72 · (1 − 0.0825) − 0.265 − 0.2 · (108/7 − 7.5) − 31.381 − 15 · 9.1818
        Assert.Equal(61.83, market.AffordablePrice(dresser, day), 0.01);
    }

    [Fact]
    public void An_unknown_word_is_refused_with_the_words_there_are()
    {
        DemoFacts facts = new("wardrobe", 1, 40, 20, 70, Condition.Sound, "sage", "satin");

        var error = Assert.Throws<ArgumentException>(() => DemoMarket.Standard.MedianHours(facts));
        Assert.Contains("dresser", error.Message, StringComparison.Ordinal);
    }

    private static double[] PriceResiduals(DemoLogResult result) =>
    [
        .. Known(result)
            .Where(known => known.Piece is { SoldPrice: not null, Hours: not null })
            .Select(known => Math.Log((double)known.Piece.SoldPrice! / result.Truth.MedianSalePrice(
                known.Facts, known.Piece.SoldOn!.Value, (double)known.Piece.Hours!))),
    ];

    /// <summary>The pieces whose facts are written down in full.</summary>
    private static IEnumerable<(Piece Piece, DemoFacts Facts)> Known(DemoLogResult result) =>
        from piece in result.Log.Pieces
        where piece is { Colour: not null, Finish: not null, Condition: not null, Width: not null, Height: not null }
        select (piece, new DemoFacts(
            piece.Type, piece.Count!.Value, (double)piece.Width!, (double)piece.Depth!, (double)piece.Height!,
            piece.Condition!.Value, piece.Colour!, piece.Finish!));

    private static double StandardDeviation(double[] values)
    {
        double mean = values.Average();
        return Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Length - 1));
    }

    private static double Beyond(double[] residuals, double limit) =>
        residuals.Count(residual => Math.Abs(residual) > limit) / (double)residuals.Length;
}
