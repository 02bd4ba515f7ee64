using FlipAnalytics.Notebooks;

namespace FlipAnalytics.Tests;

public sealed class ReportTableTests
{
    private static readonly ReportTable Table = ReportTable.Of(
        "some-flips",
        "Some flips",
        [("P1", (decimal?)12.50m, (DateOnly?)new(2026, 3, 1)), ("=1+1", null, null)],
        ("id", "piece", row => row.Item1),
        ("profit", "profit", row => row.Item2),
        ("sold_on", "day of sale", row => row.Item3));

    [Fact]
    public void A_text_that_a_spreadsheet_would_run_is_disarmed_and_unknown_stays_empty()
    {
        string folder = Directory.CreateTempSubdirectory("tables").FullName;
        try
        {
            string path = Assert.Single(ReportTableFiles.Write([Table], folder));
            Assert.Equal("id,profit,sold_on\nP1,12.50,2026-03-01\n'=1+1,,\n", File.ReadAllText(path));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public void A_table_becomes_a_data_frame_with_its_unknowns()
    {
        var frame = Table.ToDataFrame();
        Assert.Equal(12.50m, frame["profit"][0]);
        Assert.Null(frame["profit"][1]);
        Assert.Equal(new DateTime(2026, 3, 1), frame["sold_on"][0]);
    }
}
