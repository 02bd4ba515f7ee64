namespace FlipAnalytics.Tests;

/// <summary>On the first days it is said what cannot be said yet, and what would decide it.</summary>
public class FirstVerdictsTests
{
    private static readonly SalesLog OneSale = new()
    {
        Date = new(2026, 3, 31),
        Workshop = new() { TargetWage = 15 },
        Pieces = [new() { Id = "P1", Type = "nightstand", BoughtPrice = 10, SoldPrice = 80 }],
    };

    [Theory]
    [InlineData("nightstand", null)]
    [InlineData("nightstand", 10)]
    [InlineData("dresser", null)]
    [InlineData("dresser", 40)]
    [InlineData("desk", 25)]
    public void One_sale_of_80_condemns_nothing(string type, int? sticker)
    {
        PurchaseDecision decision = Workbench.Decide(OneSale, new Candidate { Id = "C", Type = type, StickerPrice = sticker });
        Assert.Equal(Verdict.CannotSayYet, decision.Verdict);
        Assert.NotNull(decision.WhatDecides!.BuyFromSalePrice);
        Assert.NotNull(decision.WhatDecides.SalesOfType);
    }

    [Fact]
    public void A_price_far_beyond_all_that_is_possible_is_left_even_then()
    {
        Assert.Equal(
            Verdict.Leave, Workbench.Decide(OneSale, new Candidate { Id = "C", Type = "nightstand", StickerPrice = 300 }).Verdict);
    }

    [Fact]
    public void What_would_decide_it_decides_it()
    {
        int told = 0;
        foreach (var (log, piece, decision) in Undecided())
        {
            Verdict? With(Candidate stated) => Workbench.Decide(log, stated).Verdict;
            if (decision.WhatDecides!.BuyFromSalePrice is { } price)
            {
                Assert.Equal(Verdict.Buy, With(piece with { SalePrice = price }));
                told++;
            }

            if (decision.WhatDecides.LeaveToSalePrice is > 0 and var least)
            {
                Assert.Equal(Verdict.Leave, With(piece with { SalePrice = least }));
                told++;
            }

            if (decision.WhatDecides.BuyToHours is { } hours)
            {
                Assert.Equal(Verdict.Buy, With(piece with { Hours = hours }));
                told++;
            }
        }

        Assert.InRange(told, 40, int.MaxValue);
    }

    [Fact]
    public void The_range_of_the_most_to_pay_holds_the_most_to_pay_and_narrows_with_sales()
    {
        decimal[] widths =
        [
            .. new[] { 1, 5, 20 }.Select(sales =>
            {
                var (log, offers) = FirstSales.Of(sales, guesses: false, 3);
                var decisions = Workbench.Decide(log, [.. offers.Select(offer => Candidate.Of(offer.Seen))]);
                Assert.All(decisions, d => Assert.InRange(d.Ceiling!.Value, d.CeilingLow!.Value, d.CeilingHigh!.Value));
                return decisions.Average(d => (d.CeilingHigh!.Value - d.CeilingLow!.Value) / d.SalePrice!.Mean);
            }),
        ];
        Assert.Equal(widths.OrderDescending(), widths);
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(5, false)]
    [InlineData(0, true)]
    public void Verdicts_of_the_first_sales_are_right_nine_times_in_ten(int sales, bool guesses)
    {
        FirstSales.Judged[] firm =
        [
            .. Enumerable.Range(1, 20).SelectMany(seed => FirstSales.Judge(sales, guesses, (ulong)seed)).Where(judged => judged.IsFirm),
        ];
        Assert.InRange(firm.Length, 50, 400);
        Assert.InRange(firm.Count(judged => judged.IsWrong), 0, firm.Length / 10);
    }

    [Fact]
    public void A_log_of_300_flips_leaves_it_open_less_than_once_in_ten_times()
    {
        DemoLogResult demo = DemoLog.Generate(300, 2);
        var decisions = Workbench.Decide(demo.Log, [.. demo.Truth.Offers(300, 2).Select(offer => Candidate.Of(offer.Seen))]);
        Assert.InRange(decisions.Count(d => d.Verdict == Verdict.CannotSayYet), 0, 29);
    }

    [Fact]
    public void An_open_answer_says_so_first_and_is_no_verdict_in_any_view()
    {
        var report = PurchaseReport.Of(OneSale, [new Candidate { Id = "C", Type = "nightstand", StickerPrice = 10 }], new());
        Assert.StartsWith("CANNOT SAY YET", PurchaseText.Render(report), StringComparison.Ordinal);
        Assert.Contains("\"verdict\": \"cannot_say_yet\"", PurchaseJson.Render(report), StringComparison.Ordinal);
        Assert.Equal("cannot_say_yet", PurchaseTables.Of(report).Rows[0][2]);
        var two = PurchaseReport.Of(OneSale, [new Candidate { Id = "A", Type = "nightstand" }, new Candidate { Id = "B", Type = "nightstand" }], new());
        Assert.Contains("2 it cannot say yet", PurchaseText.Render(two), StringComparison.Ordinal);
    }

    private static IEnumerable<(SalesLog Log, Candidate Piece, PurchaseDecision Decision)> Undecided() =>
        from setting in new (int Sales, bool Guesses)[] { (1, false), (4, false), (0, true), (8, true) }
        let market = FirstSales.Of(setting.Sales, setting.Guesses, 7)
        from offer in market.Offers.Take(8)
        let piece = Candidate.Of(offer.Seen)
        let decision = Workbench.Decide(market.Log, piece)
        where decision.Verdict == Verdict.CannotSayYet
        select (market.Log, piece, decision);
}
