namespace FlipAnalytics.Tests;

/// <summary>The check of a log sees slips of the pen, and leaves good logs alone.</summary>
public class SlipTableTests
{
    // The day after the last of every generated log.
    private static readonly DateOnly Today = DemoLog.LastDay.AddDays(1);

    [Fact]
    public void The_table_has_sixty_slips_of_fifteen_kinds()
    {
        Assert.InRange(WrittenSlip.All.Count, 60, 1000);
        Assert.InRange(WrittenSlip.All.Select(slip => slip.Kind).Distinct().Count(), 15, 100);
    }

    [Fact]
    public void Nine_slips_in_ten_are_reported_in_the_right_cell()
    {
        string[] missed = [.. WrittenSlip.All.Where(slip => !IsReported(slip)).Select(slip => slip.ToString())];
        Assert.True(missed.Length <= WrittenSlip.All.Count / 10, string.Join('\n', missed));
    }

    [Theory]
    [InlineData(5, 10)]
    [InlineData(25, 8)]
    [InlineData(150, 3)]
    [InlineData(1_000, 1)]
    [InlineData(3_000, 1)]
    public void A_good_log_has_less_than_one_report_in_a_hundred_rows(int pieces, int logs)
    {
        foreach (bool heavyTails in new[] { false, true })
        {
            int rows = 0;
            int reports = 0;
            for (ulong seed = 501; seed < 501 + (ulong)logs; seed++)
            {
                SalesLog log = DemoLog.Generate(pieces, seed, DemoMarket.Standard with { HeavyTails = heavyTails }).Log;
                rows += log.Pieces.Length + log.AskingPrices.Length + log.Hours.Length + log.Supplies.Length
                    + log.Uses.Length + log.Trips.Length + log.Tools.Length + log.Overheads.Length;
                reports += LogFindings.In(log, Today).Length;
            }

            Assert.InRange(100.0 * reports / rows, 0, 1);
        }
    }

    private static bool IsReported(WrittenSlip slip)
    {
        using var folder = new LogFolder();
        SalesLog log = DemoLog.Generate(slip.Pieces, slip.Seed).Log;
        SalesLogWriter.Write(log, folder.Path);
        int row = slip.Make(log, folder.Path);
        return LogCheck.Of(SalesLogReader.Read(folder.Path), Today).Problems
            .Any(problem => (problem.File, problem.Row, problem.Column) == (slip.File, row, slip.Column));
    }
}
