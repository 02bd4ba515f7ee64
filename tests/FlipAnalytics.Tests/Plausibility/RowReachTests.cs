using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>What spares an answer from being worked out again without a row must hold for every row.</summary>
public class RowReachTests
{
    [Fact]
    public void No_row_of_a_usual_log_moves_a_profit_or_a_wage_further_than_it_reaches()
    {
        SalesLog log = WrittenAndRead(DemoLog.Generate(40, 4).Log);
        Assert.Empty(Beyond(log, Rows(log)));
    }

    [Fact]
    public void No_row_of_a_careless_log_moves_a_profit_or_a_wage_further_than_it_reaches() => MessyLogs.Any.Sample(
        log =>
        {
            SalesLog read = WrittenAndRead(log);
            Assert.Empty(Beyond(read, Rows(read)));
        },
        iter: 40, threads: 1);

    [Fact]
    public void A_row_that_carries_little_beside_the_profit_is_not_tried()
    {
        SalesLog log = WrittenAndRead(DemoLog.Generate(60, 4).Log);
        int tried = 0;
        LogFinding[] findings = [.. LogFindings.In(log).Where(finding => finding.Row > 0)];
        RowsWorthALook.Sentence(log, _ => ((double)++tried, ""), _ => RowsWorthALook.Material);
        Assert.Equal(0, tried);
        RowsWorthALook.Sentence(log, _ => ((double)++tried, ""), _ => 2 * RowsWorthALook.Material);
        Assert.Equal(Math.Min(5, findings.Length), tried);
        Assert.NotEqual(0, tried);
    }

    private static IEnumerable<string> Beyond(SalesLog log, IEnumerable<LogFinding> rows)
    {
        var period = ReportPeriod.Of(log.Date.AddDays(-400), log.Date);
        var book = CostBook.Of(log);
        var hours = HoursLedger.Of(log);
        decimal profit = QuarterProfit.NetOf(log, period);
        WageSum wage = WagesReport.Of(log).Total;
        foreach (LogFinding row in rows)
        {
            SalesLog without = RowsWorthALook.Without(log, row);
            double move = RowsWorthALook.Move(profit, QuarterProfit.NetOf(without, period));
            if (move > RowReach.OfProfit(log, book, row, profit))
                yield return $"{row.File} line {row.Row} moves the profit by {move}";
            if (wage.FullWage is not { } before || WagesReport.Of(without).Total.FullWage is not { } after)
                continue;
            move = RowsWorthALook.Move(before, after);
            // Only small reaches spare anything; a wage is a ratio, and great ones do not add up.
            if (RowReach.OfWage(log, book, hours, row, wage.FullProfit, wage.AllHours) is < 0.5 and var reach && move > reach)
                yield return $"{row.File} line {row.Row} moves the wage by {move}, not {reach}";
        }
    }

    private static IEnumerable<LogFinding> Rows(SalesLog log) =>
    [
        .. Of(Columns.Pieces, log.Pieces.Select(row => row.Row)), .. Of(Columns.Asking, log.AskingPrices.Select(row => row.Row)),
        .. Of(Columns.Hours, log.Hours.Select(row => row.Row)), .. Of(Columns.Supplies, log.Supplies.Select(row => row.Row)),
        .. Of(Columns.Uses, log.Uses.Select(row => row.Row)), .. Of(Columns.Trips, log.Trips.Select(row => row.Row)),
        .. Of(Columns.Tools, log.Tools.Select(row => row.Row)), .. Of(Columns.Overheads, log.Overheads.Select(row => row.Row)),
    ];

    private static IEnumerable<LogFinding> Of(LogTable table, IEnumerable<int> lines) =>
        lines.Select(line => new LogFinding(table.File, line, "", "", "", "", 0));

    // With the lines of its files.
    private static SalesLog WrittenAndRead(SalesLog log)
    {
        using var folder = new LogFolder();
        SalesLogWriter.Write(log, folder.Path);
        return folder.Read().Log!.AsOf(log.Date);
    }
}
