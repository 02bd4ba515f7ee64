namespace FlipAnalytics.Tests;

public sealed class AsOfDateTests
{
    private static readonly DateOnly Today = new(2026, 3, 31);

    [Fact]
    public void It_is_today_while_the_log_is_kept() =>
        Assert.Equal(new(Today, null), AsOfDate.Choose(LogOf(Today.AddDays(-45)), Today, null));

    [Fact]
    public void It_is_the_last_entry_of_a_log_left_alone_and_says_so()
    {
        AsOfDate chosen = AsOfDate.Choose(LogOf(Today.AddDays(-46)), Today, null);

        Assert.Equal(new(2026, 2, 13), chosen.Date);
        Assert.Equal(
            "As of 2026-02-13, the last entry in the log, 46 days ago. If nothing has sold since, add --as-of today.",
            chosen.Sentence);
    }

    [Fact]
    public void A_log_left_alone_says_how_much_older_its_pieces_on_sale_are_if_none_has_sold()
    {
        SalesLog log = LogOf() with
        {
            Pieces =
            [
                Listed("P1", Today.AddDays(-60)), Listed("P2", Today.AddDays(-75)), Listed("P3", Today.AddDays(-100)),
                Listed("P4", Today.AddDays(-70)) with { SoldOn = Today.AddDays(-60) },
            ],
        };

        Assert.EndsWith(
            "add --as-of today: the middle one of 3 on sale has then been there for 75 days, not 15.",
            AsOfDate.Choose(log, Today, null).Sentence, StringComparison.Ordinal);
        Assert.EndsWith(
            "add --as-of today: the piece on sale has then been there for 60 days, not 0.",
            AsOfDate.Choose(log with { Pieces = log.Pieces[..1] }, Today, null).Sentence, StringComparison.Ordinal);
    }

    private static Piece Listed(string id, DateOnly day) =>
        new() { Id = id, Type = "desk", BoughtOn = day.AddDays(-9), ListedOn = day };

    [Fact]
    public void An_entry_dated_after_today_does_not_count() =>
        Assert.Equal(
            Today.AddDays(-60), AsOfDate.Choose(LogOf(Today.AddDays(-60), Today.AddDays(20)), Today, null).Date);

    [Fact]
    public void It_is_today_for_a_log_without_dates() =>
        Assert.Equal(new(Today, null), AsOfDate.Choose(LogOf(), Today, null));

    [Fact]
    public void A_date_asked_for_is_taken_also_after_today() =>
        Assert.Equal(new(Today.AddDays(9), null), AsOfDate.Choose(LogOf(Today.AddDays(-60)), Today, Today.AddDays(9)));

    [Fact]
    public void An_entry_in_any_table_counts()
    {
        DateOnly day = Today.AddDays(-50);
        SalesLog empty = new() { Date = DateOnly.MaxValue };
        SalesLog[] logs =
        [
            empty with { Pieces = [new() { Id = "P1", Type = "desk", BoughtOn = day }] },
            empty with { Pieces = [new() { Id = "P1", Type = "desk", ReadyOn = day }] },
            empty with { Pieces = [new() { Id = "P1", Type = "desk", ListedOn = day }] },
            empty with { Pieces = [new() { Id = "P1", Type = "desk", SoldOn = day }] },
            empty with { Pieces = [new() { Id = "P1", Type = "desk", LeftOn = day }] },
            empty with { AskingPrices = [new("P1", day, 1)] },
            empty with { Hours = [new(null, day, null, 1)] },
            empty with { Supplies = [new("white", null, day, null, null, null, null, null)] },
            empty with { Uses = [new("P1", day, "white", null, null, null, null)] },
            empty with { Trips = [new("T1", day, null, null, null, null)] },
            empty with { Tools = [new("sander", day, null, null, null, null)] },
            empty with { Overheads = [new(day, null, 1)] },
        ];

        Assert.All(logs, log => Assert.Equal(day, AsOfDate.Choose(log, Today, null).Date));
    }

    private static SalesLog LogOf(params DateOnly[] days) => new()
    {
        Date = DateOnly.MaxValue,
        Hours = [.. days.Select(day => new HoursEntry(null, day, null, 1))],
    };
}
