namespace FlipAnalytics.Tests;

/// <summary>What the owner reads when there is little to say.</summary>
public sealed class WagesTextTests
{
    private static Piece Sold(string id, decimal? price = 100, decimal? hours = 4) => new()
    {
        Id = id,
        Type = "chair",
        BoughtPrice = 20,
        SoldPrice = price,
        SoldOn = new(2026, 2, 1),
        Hours = hours,
    };

    private static string Text(params Piece[] pieces) =>
        WagesText.Render(WagesReport.Of(new() { Date = new(2026, 3, 1), Pieces = [.. pieces] }));

    [Fact]
    public void Nothing_sold_is_a_plain_sentence()
    {
        Assert.Equal("Nothing is sold yet, so there is no wage to tell.\n", Text());
        Assert.Equal("Nothing is sold yet, so there is no wage to tell.\n", Text(new Piece { Id = "A", Type = "chair" }));
    }

    [Fact]
    public void A_bare_list_of_pieces_gets_its_wage_and_what_it_leaves_out()
    {
        string text = Text(Sold("A"));
        Assert.StartsWith("Your one flip paid at most 20.00 an hour (full wage: all that they carry of costs and work counted).", text, StringComparison.Ordinal);
        Assert.Contains("Too few flips to say how much of that is luck, or whether pay rises or falls.", text, StringComparison.Ordinal);
        Assert.Contains("fees of 1 flip", text, StringComparison.Ordinal);
        Assert.Contains("No supplies are written down anywhere", text, StringComparison.Ordinal);
        Assert.Contains("The log has no tools (tools.csv), no outings (trips.csv), no rent and the like", text, StringComparison.Ordinal);
        Assert.Contains("photos, listing and selling are not written down", text, StringComparison.Ordinal);
    }

    [Fact]
    public void No_hours_is_no_wage() => Assert.StartsWith(
        "What your 2 flips paid by the hour cannot be told: none has its hours written down.",
        Text(Sold("A", hours: null), Sold("B", hours: null)), StringComparison.Ordinal);

    [Fact]
    public void No_hours_still_tell_what_was_left() => Assert.EndsWith(
        " Together they left at most 160.00.",
        WagesSentences.Answer(WagesReport.Of(new()
        {
            Date = new(2026, 3, 1),
            Pieces = [Sold("A", hours: null), Sold("B", hours: null)],
        })),
        StringComparison.Ordinal);

    [Fact]
    public void What_is_left_out_is_named()
    {
        string text = Text(Sold("A"), Sold("B", price: null), Sold("C") with { BoughtPrice = null }, Sold("D", hours: null));
        Assert.Contains("Sold without a price on record, so left out: B.", text, StringComparison.Ordinal);
        Assert.Contains("What was paid is not on record, so left out: C.", text, StringComparison.Ordinal);
        Assert.Contains("No hours are written down for D: what was left on them, 80.00, is in no wage.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unknown_piece_is_refused_with_the_one_that_was_meant()
    {
        SalesLog log = new() { Date = new(2026, 3, 1), Pieces = [Sold("P0012"), Sold("P0400")] };
        Assert.Null(WageTrail.Refusal(log, "p0012"));
        Assert.Contains("did you mean P0012?", WageTrail.Refusal(log, "P012"), StringComparison.Ordinal);
        Assert.Contains("look like P0012, P0400", WageTrail.Refusal(log, "dresser"), StringComparison.Ordinal);
        Assert.Contains("has no pieces", WageTrail.Refusal(log with { Pieces = [] }, "P1"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_piece_not_sold_is_explained_by_its_cost_so_far() => Assert.StartsWith(
        "A (chair) is not sold. It has cost 20.00 so far.",
        WageTrailText.Render(
            WageTrail.Of(
                new() { Date = new(2026, 3, 1), Pieces = [new() { Id = "A", Type = "chair", BoughtPrice = 20, Row = 2 }] }, "A"),
            new()),
        StringComparison.Ordinal);

    [Fact]
    public void Hours_on_record_are_never_filled_in_and_estimates_grow_with_the_piece()
    {
        SalesLog log = new()
        {
            Date = new(2026, 3, 1),
            Pieces =
            [
                .. Enumerable.Range(0, 12).Select(i => Sold($"C{i}", hours: 3 + i % 3)),
                .. Enumerable.Range(0, 12).Select(i => Sold($"D{i}", hours: 12 + i % 5) with { Type = "dresser" }),
                Sold("X", hours: null), Sold("Y", hours: null) with { Type = "dresser" },
            ],
        };
        var filled = HoursFilledIn.ByPiece(log);
        Assert.Equal(["X", "Y"], filled.Keys.Order(StringComparer.Ordinal));
        Assert.InRange(filled["X"], 3, 6);
        Assert.InRange(filled["Y"], 10, 16);
    }
}
