using System.Text.Json;

using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>What holds of the wages of every log, however messy.</summary>
public sealed class WagesLawsTests
{
    private const int Logs = 400;

    private static readonly Gen<SalesLog> AnyLog = Gen.OneOf(MessyLogs.Any, CostingLogs.Any);

    private static readonly Gen<ReportPeriod?> AnyPeriod = Gen.Int[2022, 2026].Select(
        year => year == 2022 ? null : ReportPeriod.Parse(FormattableString.Invariant($"{year}")));

    [Fact]
    public void All_sums_agree_to_the_last_digit_over_any_period() => Gen.Select(AnyLog, AnyPeriod).Sample(
        (log, period) =>
        {
            var report = WagesReport.Of(log, period);
            Assert.Equal(0, report.Reconciliation.Profit.Difference);
            Assert.Equal(0, report.Reconciliation.Hours.Difference);
            Assert.All(report.Reconciliation.Groups, group => Assert.Equal(0, group.Difference));
            Assert.All(report.Reconciliation.Costs, cost => Assert.Equal(0, cost.Difference));
            Assert.All(report.Losers, loser => Assert.Equal(0, loser.Difference));
            Assert.Equal(
                report.Reconciliation.Profit.FullProfit, report.Total.FullProfit + report.Total.FullProfitWithoutHours);
            Assert.Equal(report.Reconciliation.Hours.CountedFlips, report.Total.AllHours);
            Assert.Equal(report.Reconciliation.Hours.Written - report.Reconciliation.Hours.WrittenTwice, report.Hours.All);
        },
        iter: Logs);

    [Fact]
    public void A_wage_is_sum_over_sum_and_no_flip_is_lost() => AnyLog.Sample(
        log =>
        {
            var report = WagesReport.Of(log);
            WageSum total = report.Total;
            FlipWage[] counted = [.. report.Flips.Where(flip => flip.FullProfit is not null && flip.BenchHours is not null)];
            decimal hours = counted.Sum(flip => flip.AllHours!.Value);
            Assert.Equal(
                counted.Sum(flip => flip.BenchHours) > 0 ? counted.Sum(flip => flip.FullProfit!.Value) / hours : null, total.FullWage);
            Assert.Equal(log.Pieces.Count(piece => piece.IsSold), report.Flips.Length);
            Assert.Equal(report.Flips.Length, total.Counted + total.WithoutHours + total.WithoutProfit);
            Assert.Equal(total.WithoutProfit, report.LeftOut.WithoutSalePrice.Length + report.LeftOut.WithoutPurchasePrice.Length);
            Assert.Equal(log.Pieces.Length, report.Flips.Length + report.UnsoldPieces);
        },
        iter: Logs);

    [Fact]
    public void Without_hours_there_is_never_a_number_for_them() => AnyLog.Sample(
        log =>
        {
            SalesLog bare = log with { Hours = [], Pieces = [.. log.Pieces.Select(piece => piece with { Hours = null })] };
            var report = WagesReport.Of(bare);
            Assert.All(report.Flips, flip => Assert.True(flip is { AllHours: null, CashWage: null, FullWage: null }));
            Assert.Null(report.Total.FullWage);
            Assert.Null(report.Spread);
            Assert.Empty(report.Hindsight?.Refused ?? []);
            Assert.Contains(" cannot be told: ", report.Flips.IsEmpty ? " cannot be told: " : WagesSentences.Answer(report), StringComparison.Ordinal);
        },
        iter: Logs);

    [Fact]
    public void Nobody_bought_too_dear_met_the_target_and_everyone_else_did() => AnyLog.Sample(
        log =>
        {
            SalesLog withTarget = log with { Workshop = log.Workshop with { TargetWage = 12 } };
            var report = WagesReport.Of(withTarget);
            var refused = report.Hindsight!.Refused.Select(refusal => refusal.Id).ToHashSet();
            Assert.All(report.Flips.Where(flip => flip.FullWage is not null), flip =>
            {
                Assert.Equal(flip.FullWage < 12, refused.Contains(flip.Id));
                Assert.Equal(flip.FullWage < 12, flip.Purchase > WagesHindsight.MostToHavePaid(flip, 12));
            });
            Assert.All(report.Hindsight.Refused, refusal => Assert.Equal(refusal.Paid - refusal.MostToHavePaid, refusal.Shortfall));
        },
        iter: Logs);

    [Fact]
    public void The_order_of_rows_in_side_tables_does_not_matter() => AnyLog.Sample(
        log =>
        {
            SalesLog turned = log with
            {
                Tools = [.. log.Tools.Reverse()],
                Overheads = [.. log.Overheads.Reverse()],
                AskingPrices = [.. log.AskingPrices.Reverse()],
            };
            var was = WagesReport.Of(log);
            var now = WagesReport.Of(turned);
            Assert.Equal(was.Total, now.Total);
            Assert.Equal(was.Flips.Select(flip => (flip.Id, flip.FullProfit, flip.AllHours)), now.Flips.Select(flip => (flip.Id, flip.FullProfit, flip.AllHours)));
        },
        iter: Logs);

    [Fact]
    public void The_trail_of_every_piece_adds_up_to_its_wage() => AnyLog.Sample(
        log =>
        {
            var flips = WagesReport.Of(log).Flips.ToDictionary(flip => flip.Id);
            foreach (Piece piece in log.Pieces)
            {
                var trail = WageTrail.Of(log, piece.Id);
                Assert.Equal(0, trail.MoneyDifference);
                Assert.Equal(0, trail.HoursDifference);
                if (flips.TryGetValue(piece.Id, out FlipWage? flip))
                    Assert.Equal((flip.FullProfit, flip.FullWage), (trail.FullProfit, trail.FullWage));
                Fits(WageTrailText.Render(trail, log.Workshop));
                JsonDocument.Parse(WagesJson.Render(trail)).Dispose();
            }
        },
        iter: Logs / 4);

    [Fact]
    public void Every_way_of_showing_it_works_for_every_log() => Gen.Select(AnyLog, AnyPeriod, Gen.Enum<WageGroupBy>().Nullable()).Sample(
        (log, period, by) =>
        {
            var report = WagesReport.Of(log, period).FillIn(HoursFilledIn.ByPiece(log));
            Fits(WagesText.Render(report, by));
            Assert.InRange(TextLines.LineCount(WagesText.Render(report)), 1, TextLines.ScreenLines);
            Fits(WagesText.Render(report, by, all: true));
            using JsonDocument json = JsonDocument.Parse(WagesJson.Render(report));
            Assert.Equal(report.Flips.Length, json.RootElement.GetProperty("flips").GetArrayLength());
            Assert.All(report.Tables(), table => Assert.All(table.Rows, row => Assert.Equal(table.Columns.Length, row.Length)));
        },
        iter: Logs / 4);

    private static void Fits(string text) =>
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 100, line));
}
