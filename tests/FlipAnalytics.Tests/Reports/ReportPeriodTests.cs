namespace FlipAnalytics.Tests;

public sealed class ReportPeriodTests
{
    [Theory]
    [InlineData("2026", "2026-01-01", "2026-12-31", "2026", "year")]
    [InlineData("2026-Q1", "2026-01-01", "2026-03-31", "2026-Q1", "quarter")]
    [InlineData("2026-q4", "2026-10-01", "2026-12-31", "2026-Q4", "quarter")]
    [InlineData("2024-02", "2024-02-01", "2024-02-29", "2024-02", "month")]
    [InlineData("2026-01-01..2026-02-14", "2026-01-01", "2026-02-14", "2026-01-01..2026-02-14", "span")]
    [InlineData("2026-01 .. 2026-03", "2026-01-01", "2026-03-31", "2026-Q1", "quarter")]
    [InlineData("2025-Q2..2026-Q1", "2025-04-01", "2026-03-31", "2025-04-01..2026-03-31", "span")]
    [InlineData("2026-05-05", "2026-05-05", "2026-05-05", "2026-05-05..2026-05-05", "span")]
    public void A_span_is_named_by_year_quarter_month_or_its_ends(
        string text, string from, string to, string name, string noun)
    {
        ReportPeriod period = ReportPeriod.Parse(text)!;
        Assert.Equal((from, to), ($"{period.From:yyyy-MM-dd}", $"{period.To:yyyy-MM-dd}"));
        Assert.Equal((name, noun), (period.Name, period.Noun));
    }

    [Theory]
    [InlineData("")]
    [InlineData("2026-Q5")]
    [InlineData("2026-13")]
    [InlineData("2026-00")]
    [InlineData("0000")]
    [InlineData("2026-02-30")]
    [InlineData("2026-Q2..2026-Q1")]
    [InlineData("2026..")]
    [InlineData("2024..2025..2026")]
    [InlineData("last quarter")]
    public void What_names_no_span_is_refused(string text) => Assert.Null(ReportPeriod.Parse(text));

    [Theory]
    [InlineData("2026-Q1", "2025-Q4", "2025-Q1")]
    [InlineData("2024-03", "2024-02", "2023-03")]
    [InlineData("2026", "2025", "2025")]
    [InlineData("2026-01-11..2026-01-20", "2026-01-01..2026-01-10", "2025-01-11..2025-01-20")]
    [InlineData("2024-02-29..2024-03-01", "2024-02-27..2024-02-28", "2023-02-28..2023-03-01")]
    public void The_span_before_and_that_of_a_year_ago_are_of_the_same_kind(string text, string before, string yearEarlier)
    {
        ReportPeriod period = ReportPeriod.Parse(text)!;
        Assert.Equal(before, period.Before!.Name);
        Assert.Equal(yearEarlier, period.YearEarlier!.Name);
    }

    [Fact]
    public void Before_the_first_year_there_is_nothing_to_compare_with()
    {
        ReportPeriod first = ReportPeriod.Of(new(1, 1, 1), new(1, 3, 31));
        Assert.Null(first.Before);
        Assert.Null(first.YearEarlier);
    }

    [Theory]
    [InlineData("1899")]
    [InlineData("2101-Q1")]
    [InlineData("0001-01")]
    [InlineData("9999-12-31..9999-12-31")]
    public void A_year_of_no_living_workshop_is_no_span(string text) => Assert.Null(ReportPeriod.Parse(text));

    [Fact]
    public void A_day_belongs_to_one_quarter() =>
        Assert.Equal("2024-Q4", ReportPeriod.QuarterOf(new(2024, 12, 31)).Name);
}
