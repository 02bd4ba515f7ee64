using CsCheck;

namespace FlipAnalytics.Tests;

public sealed class SalesLogWriterTests
{
    private static readonly SalesLog OneDesk = new()
    {
        Date = DateOnly.MaxValue,
        Pieces = [new() { Id = "P1", Type = "desk", BoughtPrice = 12.50m, Condition = Condition.Worn, Colour = "sage" }],
    };

    [Fact]
    public void What_is_written_is_read_back_as_it_was_and_without_an_error() =>
        GeneratedLogs.Any.Sample(
            log =>
            {
                using LogFolder folder = new();
                SalesLogWriter.Write(log, folder.Path);
                LogReading reading = folder.Read();
                Assert.Empty(reading.Problems.Where(problem => problem.Severity == Severity.Error));
                Assert.Equal(LogContent.Of(log), LogContent.Of(reading.Log!));
            },
            iter: 300);

    [Fact]
    public void Columns_come_in_the_order_of_the_dictionary_and_those_without_a_value_are_left_out()
    {
        using LogFolder folder = new();
        SalesLogWriter.Write(OneDesk, folder.Path);

        Assert.Equal(
            "id,type,condition,color,bought_price\nP1,desk,worn,sage,12.50\n",
            File.ReadAllText(Path.Combine(folder.Path, "pieces.csv")));
        Assert.Equal(["pieces.csv", "workshop.toml"], Directory.GetFiles(folder.Path).Select(Path.GetFileName).Order());
    }

    [Fact]
    public void A_log_with_nothing_in_it_has_the_required_columns()
    {
        using LogFolder folder = new();
        SalesLogWriter.Write(new() { Date = DateOnly.MaxValue }, folder.Path);

        Assert.Equal("type,bought_price\n", File.ReadAllText(Path.Combine(folder.Path, "pieces.csv")));
        Assert.Empty(folder.Read().Problems);
    }

    [Theory]
    [InlineData("pieces.csv")]
    [InlineData("hours.csv")]
    [InlineData("workshop.toml")]
    public void A_log_that_is_there_already_is_not_replaced_unasked(string file)
    {
        using LogFolder folder = new();
        folder.With(file, "as it was");

        IOException refusal = Assert.Throws<IOException>(() => SalesLogWriter.Write(OneDesk, folder.Path));

        Assert.Contains(file, refusal.Message, StringComparison.Ordinal);
        Assert.Equal("as it was", File.ReadAllText(Path.Combine(folder.Path, file)));
        Assert.Single(Directory.GetFiles(folder.Path));
    }

    [Fact]
    public void Replaced_when_asked_the_folder_reads_back_as_the_new_log()
    {
        using LogFolder folder = new();
        SalesLogWriter.Write(OneDesk with { Hours = [new("P1", null, null, 2)] }, folder.Path);
        SalesLogWriter.Write(OneDesk, folder.Path, overwrite: true);

        Assert.Equal(LogContent.Of(OneDesk), LogContent.Of(folder.Read().Log!));
    }

    [Fact]
    public void A_log_that_cannot_be_written_leaves_the_old_one_as_it_was()
    {
        using LogFolder folder = new();
        SalesLogWriter.Write(OneDesk, folder.Path);
        string before = File.ReadAllText(Path.Combine(folder.Path, "pieces.csv"));

        Assert.Throws<ArgumentException>(() => SalesLogWriter.Write(
            OneDesk with { Trips = [new("T1", null, null, null, null, "a\0b")] }, folder.Path, overwrite: true));

        Assert.Equal(before, File.ReadAllText(Path.Combine(folder.Path, "pieces.csv")));
        Assert.Equal(2, Directory.GetFiles(folder.Path).Length);
    }
}
