using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>
/// The report reconciles to the smallest unit for every log: both costing methods, currencies of 0, 2 and 3 digits, gaps and
/// contradictions everywhere, any span and any day to split it at. <c>reconcile</c> of the benchmarks checks 100,000.
/// </summary>
public sealed class QuarterLawsTests
{
    private const int Logs = 500;

    [Fact]
    public void ASpanIsTheSumOfItsPartsAndEverySumComesOut() => QuarterLaws.Cases.Sample(
        given => Assert.Empty(QuarterLaws.Breaches(given.Log, given.From, given.Split, given.To)),
        iter: Logs);

    [Fact]
    public void EveryLogCanBePrintedIn100Columns() => QuarterLaws.Cases.Sample(
        given =>
        {
            var report = QuarterReport.Of(given.Log, ReportPeriod.Of(given.From, given.To));
            Assert.All(QuarterText.Render(report).Split('\n'), line => Assert.InRange(line.Length, 0, 100));
            Assert.All(QuarterText.Render(report, all: true).Split('\n'), line => Assert.InRange(line.Length, 0, 100));
            Assert.StartsWith("{", QuarterJson.Render(report), StringComparison.Ordinal);
            Assert.All(QuarterTables.Of(report), table => Assert.All(table.Rows, row => Assert.Equal(table.Columns.Length, row.Length)));
        },
        iter: Logs);
}
