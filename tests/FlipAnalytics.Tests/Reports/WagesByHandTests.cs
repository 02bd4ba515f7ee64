namespace FlipAnalytics.Tests;

/// <summary>Three flips of a workshop, worked by hand in the comments.</summary>
public sealed class WagesByHandTests
{
    private static readonly DateOnly March = new(2026, 3, 1);

    /// <summary>
    /// A and B came home on one outing of 3 hours and 10 of parking. In March 2 hours of messages served all three. The
    /// hours of C are not written down.
    /// </summary>
    private static readonly SalesLog Log = new()
    {
        Date = new(2026, 6, 30),
        Workshop = new() { TargetWage = 15, Symbol = "$" },
        Pieces =
        [
            new()
            {
                Id = "A", Row = 2, Type = "dresser", Colour = "sage", Trip = "T1", BoughtOn = March, BoughtPrice = 40,
                ReadyOn = new(2026, 3, 20), SoldOn = new(2026, 3, 28), SoldPrice = 200, Fees = 10, SuppliesCost = 20, Hours = 6,
            },
            new()
            {
                Id = "B", Row = 3, Type = "chair", Colour = "Sage", Trip = "T1", BoughtOn = March, BoughtPrice = 30,
                ReadyOn = new(2026, 3, 25), SoldOn = new(2026, 4, 2), SoldPrice = 60, Fees = 0, SuppliesCost = 12, Hours = 4,
            },
            new()
            {
                Id = "C", Row = 4, Type = "desk", BoughtOn = March, BoughtPrice = 50, ReadyOn = new(2026, 3, 27),
                SoldOn = new(2026, 4, 20), SoldPrice = 150, Fees = 5, SuppliesCost = 15,
            },
        ],
        Trips = [new("T1", March, 0, 3, 10, null, 2)],
        Hours = [new(null, new(2026, 3, 30), WorkTask.Selling, 2, 2)],
    };

    private static readonly WagesReport Report = WagesReport.Of(Log);

    [Fact]
    public void Each_flip_has_its_two_wages()
    {
        // A: 200 − 10 − 40 − 20 = 130 cash; less 10 / 2 of the outing 125. 2 h by 6 : 4 : 5 (the usual hours of C) are
        // 0.80, 0.53 and 0.67; so A took 6 + 1.5 + 0.8 = 8.3 h: 130 / 6 and 125 / 8.3.
        FlipWage a = Report.Flips[0];
        Assert.Equal((130m, 125m, 6m, 8.3m), (a.CashProfit, a.FullProfit, a.BenchHours, a.AllHours));
        Assert.Equal(130m / 6, a.CashWage);
        Assert.Equal(125m / 8.3m, a.FullWage);

        // B: 60 − 30 − 12 = 18, 13 after the outing, in 4 + 1.5 + 0.53 = 6.03 h.
        FlipWage b = Report.Flips[1];
        Assert.Equal((18m, 13m, 6.03m), (b.CashProfit, b.FullProfit, b.AllHours));
        Assert.Equal(13m / 6.03m, b.FullWage);

        // C: 150 − 5 − 50 − 15 = 80; no hours, no wage.
        FlipWage c = Report.Flips[2];
        Assert.Equal((80m, 80m), (c.CashProfit, c.FullProfit));
        Assert.True(c is { BenchHours: null, AllHours: null, CashWage: null, FullWage: null });
    }

    [Fact]
    public void The_total_is_sum_over_sum_and_keeps_the_flip_without_hours_apart()
    {
        // (130 + 18) / 10 = 14.80 and (125 + 13) / 14.33 = 9.63; the 80 of C are in neither.
        WageSum total = Report.Total;
        Assert.Equal(14.8m, total.CashWage);
        Assert.Equal(138m / 14.33m, total.FullWage);
        Assert.Equal((3, 2, 1, 80m), (total.Flips, total.Counted, total.WithoutHours, total.FullProfitWithoutHours));
        Assert.Equal<string>(["C"], Report.LeftOut.WithoutHours);
        Assert.Null(total.Range);
    }

    [Fact]
    public void Hours_filled_in_show_the_total_the_other_way()
    {
        // C with 5 h at the bench and 0.67 h of messages: (138 + 80) / (14.33 + 5.67) = 218 / 20.
        WagesFilledIn filled = WagesReport.Of(Log).FillIn(new Dictionary<string, decimal> { ["C"] = 5 }).FilledIn!;
        Assert.Equal(218m / 20, filled.Total.FullWage);
        Assert.Equal((1, 5m, 0), (filled.Filled, filled.Hours, filled.StillUnknown));
    }

    [Fact]
    public void With_hindsight_the_target_wage_allowed_40_50_for_A_and_not_even_a_gift_for_B()
    {
        // A: 40 + 125 − 15 · 8.3 = 40.50, and 40 were paid. B: 30 + 13 − 15 · 6.03 = −47.45; 90.45 − 13 = 77.45 short.
        Assert.Equal(40.5m, WagesHindsight.MostToHavePaid(Report.Flips[0], 15));
        WagesHindsight look = Report.Hindsight!;
        HindsightRefusal b = Assert.Single(look.Refused);
        Assert.Equal(("B", -47.45m, 77.45m), (b.Id, b.MostToHavePaid, b.Shortfall));
        Assert.Equal((2, 1, 90.45m, 13m / 6.03m), (look.Judged, look.NotEvenAsAGift, look.HoursWorth, look.Earned));
        Assert.Equal(125m / 8.3m, look.EarnedByOthers);
    }

    [Fact]
    public void Money_and_hours_add_up()
    {
        // 410 − 120 bought − 47 supplies − 15 fees − 10 outing = 218 = 125 + 13 + 80.
        Assert.Equal(new(3, 410, 120, 47, 15, 0, 10, 0, 0, 218), Report.Reconciliation.Profit);

        // 10 h at the bench, 3 h out, 2 h of messages: 14.33 on A and B, 0.67 on C.
        Assert.Equal(new(14.33m, 0.67m, 0, 0, 0, 15), Report.Reconciliation.Hours);
        Assert.Equal(0, Report.Reconciliation.Difference);
    }

    [Fact]
    public void Five_of_fifteen_hours_are_outside_the_bench()
    {
        Assert.Equal((15m, 10m, 10m), (Report.Hours.All, Report.Hours.AtTheBench, Report.Hours.OnPiecesWithoutTask));
        Assert.Equal(5m / 15, Report.Hours.ShareOutside);
    }

    [Fact]
    public void Colours_that_differ_in_case_are_one_and_quarters_are_those_of_the_sale()
    {
        Assert.Equal([("sage", 2), (null, 1)], Report.By(WageGroupBy.Color).Groups.Select(g => (g.Name, g.Sum.Flips)));
        Assert.Equal(
            [("2026-Q1", 1), ("2026-Q2", 2)], Report.By(WageGroupBy.Quarter).Groups.Select(g => (g.Name, g.Sum.Flips)));
    }

    [Fact]
    public void A_period_holds_the_flips_sold_in_it()
    {
        WagesReport spring = WagesReport.Of(Log, ReportPeriod.Parse("2026-Q2"));
        Assert.Equal(["B", "C"], spring.Flips.Select(flip => flip.Id));
        Assert.Equal(13m / 6.03m, spring.Total.FullWage);
        Assert.Equal(new(6.03m, 8.97m, 0, 0, 0, 15), spring.Reconciliation.Hours);
        Assert.Equal(0, spring.Reconciliation.Difference);
    }

    [Fact]
    public void Other_hours_of_one_piece_change_that_piece_its_groups_and_the_totals_alone()
    {
        // Without the messages nothing is shared by hours.
        SalesLog before = Log with { Hours = [] };
        SalesLog after = before with { Pieces = before.Pieces.SetItem(1, before.Pieces[1] with { Hours = 9 }) };
        WagesReport was = WagesReport.Of(before);
        WagesReport now = WagesReport.Of(after);
        Assert.Equal(["B"], was.Flips.Zip(now.Flips).Where(pair => !Same(pair.First, pair.Second)).Select(pair => pair.First.Id));
        Assert.Equal(9m + 1.5m, now.Flips[1].AllHours);
        Assert.Equal(["chair"], Changed(WageGroupBy.Type));
        Assert.Equal(["sage"], Changed(WageGroupBy.Color));
        Assert.Equal(["2026-Q2"], Changed(WageGroupBy.Quarter));
        Assert.NotEqual(was.Total, now.Total);

        bool Same(FlipWage one, FlipWage other) => one with { Missing = other.Missing } == other;

        IEnumerable<string?> Changed(WageGroupBy by) => was.By(by).Groups
            .Where(group => now.By(by).Groups.Single(other => other.Name == group.Name).Sum != group.Sum)
            .Select(group => group.Name);
    }

    [Fact]
    public void The_trail_of_a_flip_names_every_row()
    {
        var trail = WageTrail.Of(Log, "a");
        Assert.Equal(
            [("sold", 200m, "pieces.csv", 2), ("bought", -40m, "pieces.csv", 2), ("supplies as stated", -20m, "pieces.csv", 2),
                ("trip T1", -5m, "trips.csv", 2), ("selling fees", -10m, "pieces.csv", 2)],
            trail.Money.Select(line => (line.What, line.Amount, line.File, line.Row!.Value)));
        Assert.Equal(
            [("at the bench", 6m, "pieces.csv", 2), ("outing T1", 1.5m, "trips.csv", 2), ("selling", 0.8m, "hours.csv", 2)],
            trail.Hours.Select(line => (line.What, line.Amount, line.File, line.Row!.Value)));
        Assert.Equal((125m, 8.3m, 0m, 0m), (trail.FullProfit, trail.AllHours, trail.MoneyDifference, trail.HoursDifference));
    }

    [Fact]
    public void The_text_begins_with_the_answer() => Assert.StartsWith(
        "The 2 of your 3 flips with price and hours on record paid $9.63 an hour (full wage: all that they\ncarry of costs and work counted).",
        WagesText.Render(Report), StringComparison.Ordinal);
}
