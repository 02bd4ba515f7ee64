using System.Text;

using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Files that are no proper log: none throws, none is guessed at, and every one is named with what to do.</summary>
public sealed class BrokenFileTests
{
    private const string Pieces = "id,type,bought_price,sold_on,sold_price\nP1,desk,10,2025-01-02,80\nP2,chair,5,,\n";

    [Fact]
    public void A_missing_folder_gives_no_log_and_one_error()
    {
        LogReading reading = SalesLogReader.Read(Path.Combine(Path.GetTempPath(), "there-is-no-such-folder"));

        Assert.Null(reading.Log);
        Assert.Contains("no such folder", Assert.Single(reading.Problems).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_in_place_of_the_folder_gives_no_log_and_one_error()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", Pieces);

        LogReading reading = SalesLogReader.Read(Path.Combine(folder.Path, "pieces.csv"));

        Assert.Null(reading.Log);
        Assert.Contains("This is a file", Assert.Single(reading.Problems).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_pieces_file_gives_no_log_and_one_error()
    {
        using LogFolder folder = new();
        LogReading reading = folder.Read();

        Assert.Null(reading.Log);
        Assert.Equal("pieces.csv", Assert.Single(reading.Problems).File);
    }

    [Theory]
    [InlineData("Pieces.csv", "rename")]
    [InlineData("piece.csv", "rename")]
    [InlineData("pieces.xlsx", "save it as \"CSV UTF-8\"")]
    public void A_file_under_nearly_the_right_name_is_pointed_out(string name, string remedy)
    {
        using LogFolder folder = new();
        folder.With(name, Pieces);

        Assert.Contains(
            folder.Read().Problems,
            problem => problem.File == name && problem.Severity == Severity.Warning && problem.Remedy.Contains(
                remedy, StringComparison.Ordinal));
    }

    [Fact]
    public void A_folder_in_place_of_a_file_is_an_error()
    {
        using LogFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "hours.csv"));
        LogReading reading = folder.With("pieces.csv", Pieces).Read();

        Assert.Equal(2, reading.Log!.Pieces.Length);
        Assert.Contains(
            "There is a folder named hours.csv", Assert.Single(reading.Problems).Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    [InlineData("\uFEFF")]
    public void An_empty_file_is_an_error(string text)
    {
        LogReading reading = LogFolder.ReadPieces(text);

        Assert.Null(reading.Log);
        Assert.Contains("a header line", Assert.Single(reading.Problems).Expected, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(';', "semicolons")]
    [InlineData('\t', "tabs")]
    [InlineData('|', "bars")]
    public void Another_separator_than_a_comma_is_named(char separator, string name)
    {
        LogReading reading = LogFolder.ReadPieces(Pieces.Replace(',', separator));

        Assert.Null(reading.Log);
        Assert.Contains($"separated by {name}", Assert.Single(reading.Problems).Remedy, StringComparison.Ordinal);
        Assert.Equal(
            (false, 2, 2), (reading.Tables[0].IsReadable, reading.Tables[0].Rows, reading.Tables[0].RowsSetAside));
    }

    [Fact]
    public void Semicolons_are_named_also_where_every_cell_is_in_quotes() =>
        Assert.Contains(
            "separated by semicolons",
            Assert.Single(LogFolder.ReadPieces("\"type\";\"bought_price\"\n\"desk\";\"1\"\n").Problems).Remedy,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("type,\"bought_price\ndesk,1\n")]
    [InlineData("type,\"bought\"_price\ndesk,1\n")]
    public void A_header_with_a_quote_out_of_place_leaves_the_file_unread(string text)
    {
        LogReading reading = LogFolder.ReadPieces(text);

        Assert.Null(reading.Log);
        Assert.Contains("A quote in the header", Assert.Single(reading.Problems).Remedy, StringComparison.Ordinal);
        Assert.Equal((1, 1), (reading.Tables[0].Rows, reading.Tables[0].RowsSetAside));
    }

    [Fact]
    public void A_separator_hint_for_semicolons_is_named() =>
        Assert.Contains(
            "separated by semicolons",
            Assert.Single(LogFolder.ReadPieces("sep=;\ntype;bought_price\n").Problems).Remedy,
            StringComparison.Ordinal);

    [Fact]
    public void Another_character_set_is_named_with_the_line_of_its_first_letter()
    {
        byte[] latin = Encoding.Latin1.GetBytes("type,bought_price,notes\ndesk,1,plain\ndesk,2,été\n");
        using LogFolder folder = new();
        LogProblem problem = Assert.Single(folder.With("pieces.csv", latin).Read().Problems);

        Assert.Equal(3, problem.Row);
        Assert.Contains("Byte E9", problem.Remedy, StringComparison.Ordinal);
        Assert.Contains("CSV UTF-8", problem.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("utf-16", true)]
    [InlineData("utf-16", false)]
    [InlineData("utf-16BE", true)]
    [InlineData("utf-16BE", false)]
    public void Unicode_text_of_two_bytes_a_letter_is_named_with_and_without_its_mark(string name, bool hasMark)
    {
        Encoding encoding = Encoding.GetEncoding(name);
        byte[] text = encoding.GetBytes(Pieces);
        using LogFolder folder = new();
        LogReading reading = folder.With("pieces.csv", hasMark ? [.. encoding.GetPreamble(), .. text] : text).Read();

        Assert.Null(reading.Log);
        Assert.Contains("UTF-16", Assert.Single(reading.Problems).Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_zero_byte_is_named_with_its_line() =>
        Assert.Equal(
            3,
            Assert.Single(LogFolder.ReadPieces("type,bought_price,notes\ndesk,1,some plain words here\ndesk,2,a\0b\n").Problems).Row);

    [Fact]
    public void A_line_of_fifty_megabytes_is_refused_in_little_memory()
    {
        using LogFolder folder = new();
        byte[] line = new byte[50_000_000];
        line.AsSpan().Fill((byte)'x');
        folder.With("pieces.csv", line);
        long before = GC.GetAllocatedBytesForCurrentThread();

        LogReading reading = folder.Read();

        Assert.Null(reading.Log);
        Assert.Contains(
            "a line of ordinary length", Assert.Single(reading.Problems).Expected, StringComparison.Ordinal);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 5_000_000);
    }

    [Theory]
    [InlineData("P1,desk\n", "2 cells")]
    [InlineData("P1,desk,12,50,,\n", "6 cells")]
    public void A_row_with_too_many_or_too_few_cells_is_set_aside(string row, string found)
    {
        LogReading reading = LogFolder.ReadPieces(Pieces + row);

        LogProblem problem = Assert.Single(reading.Problems);
        Assert.Equal((4, found), (problem.Row, problem.Found));
        Assert.Equal(2, reading.Log!.Pieces.Length);
    }

    [Fact]
    public void A_quote_that_is_never_closed_costs_the_rows_it_swallows_and_no_other()
    {
        LogReading reading = LogFolder.ReadPieces(Pieces + "P3,\"desk,1,,\nP4,desk,2,,\nP5,desk,2,,\n");

        LogProblem problem = Assert.Single(reading.Problems);
        Assert.Equal((Severity.Error, 4), (problem.Severity, problem.Row));
        Assert.Contains("lines 4 to 6", problem.Remedy, StringComparison.Ordinal);
        Assert.Equal(["P1", "P2"], reading.Log!.Pieces.Select(piece => piece.Id));
        Assert.Equal((5, 3), (reading.Tables[0].Rows, reading.Tables[0].RowsSetAside));
    }

    [Fact]
    public void An_inch_mark_in_a_bare_cell_is_read_as_it_stands_with_a_warning()
    {
        LogReading reading = LogFolder.ReadPieces("type,bought_price,title\ndesk,1,48\" top\n");

        Assert.Equal("48\" top", reading.Log!.Pieces.Single().Title);
        Assert.Equal(Severity.Warning, Assert.Single(reading.Problems).Severity);
    }

    [Fact]
    public void Two_columns_of_one_name_leave_the_file_unread()
    {
        LogReading reading = LogFolder.ReadPieces("type,bought_price,Bought_Price\ndesk,1,2\n");

        Assert.Null(reading.Log);
        Assert.Equal("bought_price", Assert.Single(reading.Problems).Column);
    }

    [Fact]
    public void Without_a_type_column_there_is_no_log()
    {
        LogReading reading = LogFolder.ReadPieces("id,bought_price\nP1,2\n");

        Assert.Null(reading.Log);
        Assert.Equal("type", Assert.Single(reading.Problems).Column);
    }

    [Fact]
    public void Without_a_price_column_the_pieces_still_tell_what_sells()
    {
        LogReading reading = LogFolder.ReadPieces("id,type,sold_price\nP1,desk,90\n");

        Assert.Single(reading.Log!.Pieces);
        Assert.Equal("bought_price", Assert.Single(reading.Problems).Column);
    }

    [Fact]
    public void Whatever_happens_to_a_file_every_row_is_in_the_log_or_set_aside_with_an_error()
    {
        Gen<(int, byte)[]> damage = Gen.Select(Gen.Int[0, 400], Gen.OneOf<byte>((byte)'"', (byte)',', (byte)'\n', (byte)'\r', (byte)';', 0, 0xE9, (byte)'-', (byte)' ', (byte)'9')).Array[1, 6];
        Gen.Select(GeneratedLogs.Any, damage).Sample(
            (log, hits) =>
            {
                using LogFolder folder = new();
                SalesLogWriter.Write(log, folder.Path);
                foreach (string path in Directory.EnumerateFiles(folder.Path))
                {
                    byte[] bytes = File.ReadAllBytes(path);
                    foreach ((int place, byte hit) in hits.Where(hit => hit.Item1 < bytes.Length))
                        bytes[place] = hit;
                    File.WriteAllBytes(path, bytes);
                }

                LogReading reading = folder.Read();

                Assert.All(reading.Tables, table => Assert.True(
                    table.RowsSetAside == 0 || reading.Problems.Any(problem => problem.File == table.File && problem.Severity == Severity.Error)));
                if (reading.Log is { } read)
                {
                    Assert.Equal(
                        LogRecords.All.Select(records => (records.Table.File, records.In(read).Length)),
                        reading.Tables.Select(table => (table.File, table.Rows - table.RowsSetAside)));
                }
            },
            iter: 200);
    }
}
