namespace FlipAnalytics.Tests;

public sealed class LogCheckTests
{
    private const string Pieces =
        """
        id,type,bought_price,bought_on,listed_on,sold_on,sold_price,left_as,mood
        P1,desk,10,2025-01-02,2025-01-20,2025-02-01,90,,good
        P2,chair,5,2025-01-03,2025-01-22,,,,
        P3,table,5,2025-01-04,,,,,
        P4,table,5,2025-01-04,,,,given,
        P5,table,five,2025-01-04,,,,,
        P6,table,,2025-03-04,,,,,
        """;

    [Fact]
    public void It_counts_pieces_by_where_they_stand_and_spans_their_dates()
    {
        LogCheck check = Check(Pieces);

        Assert.Equal((5, 1, 1, 2, 1), (check.Pieces, check.Sold, check.OnSale, check.InTheWorkshop, check.Gone));
        Assert.Equal((new(2025, 1, 2), new(2025, 3, 4)), (check.FirstFact!.Value, check.LastFact!.Value));
        Assert.Equal((1, 1, 1), (check.RowsSetAside, check.Errors, check.Warnings));
    }

    [Fact]
    public void Words_that_may_mean_the_same_are_a_hint_and_no_problem()
    {
        LogCheck check = Check("type,bought_price,color\ndesk,1,off white\ndesk,1,off-white\ndesk,1,offwhite\ndesk,1,navy\n");

        Assert.Equal((0, 0), (check.Errors, check.Warnings));
        Assert.Equal(
            "Read as one color: off white (1), off-white (1; pieces.csv line 3), offwhite (1; pieces.csv line 4).",
            Assert.Single(check.SimilarWords));
        Assert.Contains("Words that may mean the same", LogCheckText.Render(check), StringComparison.Ordinal);
    }

    [Fact]
    public void It_says_what_each_missing_file_would_add()
    {
        LogCheck check = Check(Pieces);

        Assert.Equal(
            ["asking.csv", "hours.csv", "supplies.csv", "uses.csv", "counts.csv", "trips.csv", "tools.csv", "overheads.csv", "moves.csv", "money.csv", "returns.csv", "colors.csv", "workshop.toml"],
            check.Missing.Select(missing => missing.File));
        Assert.Equal("pieces.csv", check.Tables.Single().File);
    }

    [Fact]
    public void In_words_the_answer_comes_first_and_every_problem_follows()
    {
        string text = LogCheckText.Render(Check(Pieces));

        Assert.StartsWith(
            "5 pieces read, 1 row set aside: 1 in pieces.csv. It stays in its file, but no answer counts on it.\n",
            text,
            StringComparison.Ordinal);
        Assert.Contains(
            "1 sold, 1 on sale, 2 in the workshop, 1 gone without a sale. Dates run from 2025-01-02 to\n  2025-03-04.",
            text,
            StringComparison.Ordinal);
        Assert.Contains(
            "To put right: 1\n  - pieces.csv line 6, bought_price: found 'five', expected an amount such as 12.50.",
            text,
            StringComparison.Ordinal);
        Assert.Contains(
            "Worth a look: 1\n  - pieces.csv line 7, bought_price: expected what you paid.",
            text,
            StringComparison.Ordinal);
        Assert.Contains("6 rows, 1 set aside; columns of your own, left alone: mood", text, StringComparison.Ordinal);
        Assert.Contains("hours.csv       With hours by task", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("type,bought_price\n", "0 pieces read: the log is empty and in order.")]
    [InlineData("type,bought_price\ndesk,1\n", "1 piece read, nothing to put right.")]
    [InlineData("type,bought_price\ndesk,\n", "1 piece read, nothing set aside, 1 thing worth a look.")]
    [InlineData("type\ndesk\n", "1 piece read, 1 problem to put right.")]
    [InlineData("desk\n", "No log could be read. 2 problems to put right first, listed below.")]
    public void The_answer_fits_the_log(string pieces, string answer) =>
        Assert.Equal(answer, LogCheckText.Render(Check(pieces)).Split('\n')[0]);

    [Fact]
    public void Of_many_problems_those_that_set_rows_aside_come_first_and_the_rest_is_counted()
    {
        string rows = string.Concat(Enumerable.Range(0, 40).Select(i => i % 2 == 0 ? "desk,cheap\n" : "desk,\n"));
        LogCheck check = Check("type,bought_price\n" + rows);
        string shown = LogCheckText.Render(check);
        string all = LogCheckText.Render(check, all: true);

        Assert.InRange(shown.Split('\n').Length, 20, 40);
        Assert.True(shown.IndexOf("To put right: 20", StringComparison.Ordinal) < shown.IndexOf("Worth a look: 20", StringComparison.Ordinal));
        foreach ((Severity severity, string heading) in new[] { (Severity.Error, "To put right"), (Severity.Warning, "Worth a look") })
        {
            string section = shown[shown.IndexOf(heading, StringComparison.Ordinal)..].Split("\n\n")[0];
            int listed = section.Split("\n  - ").Length - 1;
            Assert.InRange(listed, 3, 19);
            Assert.EndsWith($"  and {20 - listed} more: --all lists them", section, StringComparison.Ordinal);
            Assert.All(
                check.Problems.Where(problem => problem.Severity == severity),
                problem => Assert.Contains($"{problem.File} line {problem.Row}, bought_price:", all, StringComparison.Ordinal));
        }

        Assert.DoesNotContain("--all", all, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_folder_is_said_in_words() =>
        Assert.Contains(
            "There is no such folder",
            LogCheckText.Render(LogCheck.Of(SalesLogReader.Read("/nowhere/at-all"))),
            StringComparison.Ordinal);

    [Fact]
    public void No_line_is_wider_than_a_hundred_columns()
    {
        string wide = new('x', 300);
        string text = LogCheckText.Render(Check($"type,bought_price,{wide}\ndesk,{wide},\n{wide},1,{wide}\nchair,1\n"));

        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, 100));
    }

    [Fact]
    public void Nothing_in_a_file_can_upset_the_terminal()
    {
        string text = LogCheckText.Render(Check("type,bought_price,\u001b[31mred\ndesk,\u001b[2J,\n"));

        Assert.Contains("found ' [2J'", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', text);
    }

    private static LogCheck Check(string pieces) => LogCheck.Of(LogFolder.ReadPieces(pieces));
}
