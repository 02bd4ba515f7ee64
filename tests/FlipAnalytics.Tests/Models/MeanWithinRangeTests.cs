using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>A mean shown beside a range lies in it, whatever stands in the log.</summary>
public class MeanWithinRangeTests
{
    [Fact]
    public void A_mean_that_few_far_amounts_carry_out_of_the_range_is_drawn_in()
    {
        double[] amounts = [.. Enumerable.Range(1, 95).Select(i => (double)i), .. Enumerable.Repeat(1e6, 5)];
        HeldMean.WithinRange(amounts);
        double[] ordered = [.. amounts.Order()];
        Assert.InRange(amounts.Average(), ordered[10], ordered[89]);
        Assert.Equal(50, amounts[49]);
    }

    [Fact]
    public void Amounts_whose_mean_lies_in_the_range_stay_as_they_are()
    {
        double[] amounts = [.. Enumerable.Range(1, 100).Select(i => (double)i)];
        HeldMean.WithinRange(amounts);
        Assert.Equal(Enumerable.Range(1, 100).Select(i => (double)i), amounts);
    }

    [Fact]
    public void Every_mean_of_an_answer_lies_in_its_range_with_up_to_three_slips_in_a_small_log() => (
        from flips in Gen.Int[2, 40]
        from seed in Gen.ULong[1, 30]
        from slips in Gen.Int[0, Slips.All.Length - 1].Array[0, 3]
        select (flips, seed, slips)).Sample(
            given =>
            {
                SalesLog log = Workbench.Demo(given.flips, given.seed);
                foreach (int slip in given.slips)
                {
                    log = log.Pieces.Where(p => p.SoldPrice > 0).Select(p => Slips.All[slip].Make(log, p))
                        .FirstOrDefault(slipped => slipped is not null) ?? log;
                }

                foreach (PurchaseDecision answer in Workbench.Decide(log, Workbench.Various).Where(a => a.Ceiling is not null))
                {
                    foreach (ForecastRange range in new[] { answer.SalePrice!, answer.Hours!, answer.Supplies!, answer.DaysOnMarket! })
                        Assert.InRange(range.Mean, range.Low, range.High);
                }
            },
            iter: 60, threads: 1);
}
