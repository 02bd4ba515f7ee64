namespace FlipAnalytics.Tests;

/// <summary>What can be told of a use or a count without its cost: more than was bought, no day, a word that is no number.</summary>
public sealed class StockCheckTests
{
    private const string TwoCans = "item,bought_on,quantity,unit\nwhite,2025-01-02,1,quart\nwhite,2025-03-01,1,quart\n";

    [Theory]
    [InlineData("2025-02-01,white,1", null)]
    [InlineData("2025-02-01,white,1.25", "at most 1 quart, which is all that was bought by then")]
    [InlineData("2025-03-01,white,2", null)]
    [InlineData("2025-03-01,white,2.5", "at most 2 quart, which is all that was bought by then")]
    [InlineData("2025-01-01,white,0.5", "none, as nothing was bought by then")]
    [InlineData("2025-01-01,white,empty", null)]
    [InlineData("2025-02-01,white,0.75\n2025-02-01,white,0.5", "at most 1 quart, which is all that was bought by then")]
    public void A_count_above_what_was_bought_by_then_draws_a_warning(string counts, string? expected)
    {
        LogReading reading = Read(TwoCans, "", $"date,item,quantity\n{counts}\n");

        Assert.Equal(expected, reading.Problems.SingleOrDefault()?.Expected);
        Assert.All(reading.Problems, problem => Assert.Equal(
            (Severity.Warning, "counts.csv", "quantity"), (problem.Severity, problem.File, problem.Column)));
        Assert.Equal(counts.Split('\n').Length, reading.Log!.Counts.Length);
    }

    [Theory]
    [InlineData(",white,1", "date")]
    [InlineData("2025-02-01,,1", "item")]
    [InlineData("2025-02-01,white,", "quantity")]
    [InlineData("2025-02-01,white,-1", "quantity")]
    [InlineData("2025-02-01,white,some", "quantity")]
    public void A_count_without_its_day_or_with_no_quantity_is_set_aside(string count, string column)
    {
        LogReading reading = Read(TwoCans, "", $"date,item,quantity\n{count}\n");

        LogProblem problem = Assert.Single(reading.Problems);
        Assert.Equal((Severity.Error, "counts.csv", 2, column), (problem.Severity, problem.File, problem.Row, problem.Column));
        Assert.Empty(reading.Log!.Counts);
    }

    [Fact]
    public void What_may_stand_for_nothing_left_is_said()
    {
        LogProblem problem = Assert.Single(Read(TwoCans, "", "date,item,quantity\n2025-02-01,white,gone\n").Problems);
        Assert.Equal("a number such as 12.5, or empty", problem.Expected);
    }

    [Theory]
    [InlineData("wite", "If you mean white, write it so, or add the purchase; until then the count counts for nothing.")]
    [InlineData("linseed oil", "Correct the name, or add the purchase; until then the count counts for nothing.")]
    public void A_count_of_what_was_never_bought_draws_a_warning(string item, string remedy)
    {
        LogProblem problem = Assert.Single(Read(TwoCans, "", $"date,item,quantity\n2025-02-01,{item},1\n").Problems);
        Assert.Equal((Severity.Warning, "item", item, remedy), (problem.Severity, problem.Column, problem.Found, problem.Remedy));
    }

    [Fact]
    public void A_count_of_cans_bought_in_two_units_must_say_its_own()
    {
        LogProblem problem = Assert.Single(Read(
            "item,bought_on,quantity,unit\nwhite,2025-01-02,1,quart\nwhite,2025-01-02,1,l\n", "",
            "date,item,quantity,unit\n2025-02-01,white,0.5,\n2025-02-02,white,0.5,l\n2025-02-03,white,empty,\n").Problems);
        Assert.Equal((2, "unit", "a unit, as white was bought in quart and l"), (problem.Row, problem.Column, problem.Expected));
    }

    [Fact]
    public void A_count_of_a_can_whose_quantity_is_not_written_down_cannot_be_compared()
    {
        LogProblem problem = Assert.Single(Read(
            "item,quantity\nwhite,\n", "", "date,item,quantity\n2025-02-01,white,0.5\n2025-02-02,white,empty\n").Problems);
        Assert.Equal((2, "quantity"), (problem.Row, problem.Column));
        Assert.Contains("line 2 has none", problem.Expected, StringComparison.Ordinal);
    }

    /// <summary>1.2 quarts were used in February, when 1 was there; a second quart came in March.</summary>
    [Theory]
    [InlineData("P1,2025-02-01,white,1.2", 2, "at most 1 quart, which is all that was bought by then")]
    [InlineData("P1,2025-03-01,white,1.2", 0, "")]
    [InlineData("P1,,white,2.2", 2, "at most 2 quart, which is all that was bought")]
    [InlineData("P1,2025-02-01,white,0.8\nP1,2025-02-02,white,0.4", 3, "at most 1 quart, which is all that was bought by then")]
    public void More_used_than_was_bought_by_then_draws_a_warning(string uses, int row, string expected)
    {
        LogProblem? problem = Read(TwoCans, $"id,date,item,quantity\n{uses}\n", "").Problems.SingleOrDefault();
        Assert.Equal((row, expected), (problem?.Row ?? 0, problem?.Expected ?? ""));
    }

    /// <summary>Counted empty in February, then half a quart used; with a quarter counted, a fifth used is in order.</summary>
    [Theory]
    [InlineData("empty", "0.5", "0.5 quart of white used since it was counted on 2025-02-10", "at most 0 quart, which is all that was left and bought since")]
    [InlineData("0.25", "0.5", "0.5 quart of white used since it was counted on 2025-02-10", "at most 0.25 quart, which is all that was left and bought since")]
    [InlineData("0.25", "0.2", null, null)]
    public void More_used_than_a_count_left_draws_a_warning(string counted, string used, string? found, string? expected)
    {
        LogProblem? problem = Read(
            TwoCans, $"id,date,item,quantity\nP1,2025-02-20,white,{used}\n", $"date,item,quantity\n2025-02-10,white,{counted}\n")
            .Problems.SingleOrDefault();
        Assert.Equal((found, expected), (problem?.Found, problem?.Expected));
    }

    [Fact]
    public void What_was_used_on_the_day_of_the_count_is_off_before_it_is_counted() => Assert.Empty(Read(
        TwoCans, "id,date,item,quantity\nP1,2025-02-10,white,1\n", "date,item,quantity\n2025-02-10,white,empty\n").Problems);

    /// <summary>Half a quart on one shelf and a pint on the other are a quart: 0.8 of it used later is in order.</summary>
    [Fact]
    public void A_count_of_two_cans_in_two_units_is_not_taken_for_one_of_them() => Assert.Empty(Read(
        TwoCans, "id,date,item,quantity\nP1,2025-02-20,white,0.8\n",
        "date,item,quantity,unit\n2025-02-10,white,0.5,quart\n2025-02-10,white,1,pint\n").Problems);

    private static LogReading Read(string supplies, string uses, string counts)
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "id,type,bought_price\nP1,desk,1\n").With("supplies.csv", supplies);
        if (uses.Length > 0)
            folder.With("uses.csv", uses);
        if (counts.Length > 0)
            folder.With("counts.csv", counts);
        return folder.Read();
    }
}
