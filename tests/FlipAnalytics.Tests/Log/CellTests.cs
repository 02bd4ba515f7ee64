namespace FlipAnalytics.Tests;

public sealed class CellTests
{
    [Theory]
    [InlineData("sold_price", "abc", "amount")]
    [InlineData("sold_price", "1e3", "amount")]
    [InlineData("sold_price", "$120", "amount")]
    [InlineData("sold_price", "1 200", "amount")]
    [InlineData("sold_price", "NaN", "amount")]
    [InlineData("sold_price", "-120", "more than zero")]
    [InlineData("sold_price", "0", "more than zero")]
    [InlineData("sold_price", "120.505", "at most 2 digits")]
    [InlineData("sold_price", "9999999999999", "more than zero, at most 999,999,999,999")]
    [InlineData("sold_price", "99999999999999999999999999999999999999", "at most 999,999,999,999")]
    [InlineData("left_as", "sold", "kept, given, scrapped, broken, parts, stolen")]
    [InlineData("sold_on", "2025-02-30", "date")]
    [InlineData("left_on", "soon", "date")]
    public void A_cell_that_decides_and_cannot_be_read_is_reported_and_its_row_set_aside(
        string column, string cell, string expected)
    {
        LogReading reading = LogFolder.ReadPieces($"id,type,bought_price,{column}\nP1,desk,1,\nP2,desk,1,{cell}\n");

        AssertReported(reading, column, cell, expected);
        Assert.Equal("P1", reading.Log!.Pieces.Single().Id);
        Assert.Equal((2, 1, 0), (reading.Tables[0].Rows, reading.Tables[0].RowsSetAside, reading.Tables[0].CellsSetAside));
    }

    [Theory]
    [InlineData("bought_on", "31/02/2025", "date")]
    [InlineData("bought_on", "2025-02-30", "date")]
    [InlineData("bought_on", "2025-2-3", "date")]
    [InlineData("bought_on", "3 Feb 2025", "date")]
    [InlineData("bought_on", "0225-02-03", "year")]
    [InlineData("fees", "-1", "zero or more")]
    [InlineData("hours", "about 5", "number")]
    [InlineData("width", "0", "more than zero")]
    [InlineData("count", "0", "more than zero")]
    [InlineData("count", "1.5", "whole number")]
    [InlineData("count", "99999999999", "more than zero, at most 1,000")]
    [InlineData("hours", "0.0000000000000000000000000001", "zero or more, at most 100,000, and zero or not below 0.001")]
    [InlineData("condition", "wonky", "sound, worn, damaged")]
    [InlineData("condition", "1", "sound, worn, damaged")]
    [InlineData("delivery_cost", "12.345", "at most 2 digits")]
    [InlineData("delivery_cost", "-5", "zero or more")]
    public void Any_other_cell_that_cannot_be_read_is_reported_and_unknown_and_the_sale_stays(
        string column, string cell, string expected)
    {
        LogReading reading = LogFolder.ReadPieces(
            $"id,type,bought_price,sold_price,{column}\nP1,desk,1,80,\nP2,desk,1,90,{cell}\n");

        AssertReported(reading, column, cell, expected);
        Assert.Equal([80m, 90m], reading.Log!.Pieces.Select(piece => piece.SoldPrice!.Value));
        Assert.Null(PieceColumns.Table.Cell(reading.Log.Pieces[1], column));
        Assert.Equal((2, 0, 1), (reading.Tables[0].Rows, reading.Tables[0].RowsSetAside, reading.Tables[0].CellsSetAside));
        Assert.EndsWith(
            "Until then it counts as unknown; the rest of the row is used.", reading.Problems[0].Remedy, StringComparison.Ordinal);
        Assert.StartsWith(
            "2 pieces read, every row used. 1 cell cannot be read and counts as unknown.",
            LogCheckText.Render(LogCheck.Of(reading)),
            StringComparison.Ordinal);
    }

    [Fact]
    public void Beside_a_cell_that_decides_no_other_is_said_to_be_set_aside_alone()
    {
        LogReading reading = LogFolder.ReadPieces("id,type,bought_price,sold_price,width\nP1,desk,1,abc,abc\n");

        Assert.Empty(reading.Log!.Pieces);
        Assert.Equal((1, 0), (reading.Tables[0].RowsSetAside, reading.Tables[0].CellsSetAside));
        Assert.All(reading.Problems, problem => Assert.DoesNotContain("rest of the row", problem.Remedy, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("31.02.2025", "Write it as year-month-day.")]
    [InlineData("2025-02-30", "There is no such day; correct it.")]
    public void A_wrong_date_is_told_from_a_wrong_way_to_write_it(string cell, string remedy) =>
        Assert.Equal(
            remedy,
            Assert.Single(LogFolder.ReadPieces($"type,bought_price,sold_on\ndesk,1,{cell}\n").Problems).Remedy);

    [Fact]
    public void Every_bad_cell_of_a_row_is_reported()
    {
        LogReading reading = LogFolder.ReadPieces("type,bought_price,bought_on,count\n,twenty,yesterday,some\n");

        Assert.Equal(
            ["bought_on", "bought_price", "count", "type"], reading.Problems.Select(problem => problem.Column).Order());
        Assert.Equal(1, reading.Tables[0].RowsSetAside);
    }

    [Fact]
    public void Money_has_no_more_digits_than_the_currency()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "type,bought_price\ndesk,1200.5\n").With("workshop.toml", "currency = \"JPY\"\n");

        Assert.Contains(
            "at most 0 digits after the point in JPY",
            folder.Read().Problems.Single().Expected,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_decimal_comma_is_named_once_for_the_file_and_never_read_as_a_thousand()
    {
        LogReading reading = LogFolder.ReadPieces("type,bought_price\ndesk,\"12,50\"\nchair,\"7,5\"\ntable,\"1,250\"\n");

        Assert.Empty(reading.Log!.Pieces);
        LogProblem forTheFile = reading.Problems.Single(problem => problem.Row is null);
        Assert.Contains("decimal comma (2 cells)", forTheFile.Remedy, StringComparison.Ordinal);
        Assert.Equal(
            [2, 3, 4],
            reading.Problems.Where(problem => problem.Row is not null).Select(problem => problem.Row!.Value));
    }

    [Theory]
    [InlineData("color", "#8fa68")]
    [InlineData("color", "8fa68e0")]
    [InlineData("color", "#8fa68g")]
    public void A_screen_colour_is_a_hash_and_six_digits(string color, string hex)
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "type,bought_price\n").With("colors.csv", $"color,hex\n{color},{hex}\n");

        Assert.Equal("hex", folder.Read().Problems.Single().Column);
    }

    [Theory]
    [InlineData("2025-01-15")]
    [InlineData("2025")]
    [InlineData("2025-13")]
    public void A_month_is_a_year_and_a_month(string month)
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "type,bought_price\n").With("overheads.csv", $"month,amount\n{month},80\n");

        Assert.Equal(
            ("overheads.csv", "month"), (folder.Read().Problems.Single().File, folder.Read().Problems.Single().Column));
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("-12.50", "'-12.50")]
    [InlineData("'=1", "''=1")]
    [InlineData("\tx", "'\tx")]
    [InlineData("'tis", "'tis")]
    [InlineData("plain", "plain")]
    public void A_text_that_a_spreadsheet_would_run_is_written_with_one_apostrophe_and_read_without(
        string text, string cell)
    {
        using LogFolder folder = new();
        SalesLogWriter.Write(
            new() { Date = DateOnly.MaxValue, Pieces = [new() { Id = "P1", Type = "desk", Notes = text }] }, folder.Path);

        Assert.Contains(cell, File.ReadAllText(Path.Combine(folder.Path, "pieces.csv")), StringComparison.Ordinal);
        Assert.Equal(text, folder.Read().Log!.Pieces[0].Notes);
    }

    private static void AssertReported(LogReading reading, string column, string cell, string expected)
    {
        LogProblem problem = Assert.Single(reading.Problems);
        Assert.Equal(
            (Severity.Error, "pieces.csv", 3, column, cell),
            (problem.Severity, problem.File, problem.Row, problem.Column, problem.Found));
        Assert.Contains(expected, problem.Expected, StringComparison.Ordinal);
    }
}
