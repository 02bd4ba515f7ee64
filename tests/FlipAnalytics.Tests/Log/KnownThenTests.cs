using CsCheck;

namespace FlipAnalytics.Tests;

public sealed class KnownThenTests
{
    private static readonly DateOnly Today = new(2025, 6, 1);
    private static readonly DateOnly Earlier = Today.AddDays(-10);
    private static readonly DateOnly Later = Today.AddDays(10);

    private static readonly Gen<DateOnly> AnyDay = Gen.Int[0, 130].Select(GeneratedLogs.FirstDay.AddDays);

    [Fact]
    public void A_piece_sold_later_is_on_sale_and_nothing_of_the_sale_is_known()
    {
        Piece then = Then(new Piece
        {
            Id = "P1",
            Type = "desk",
            ListedOn = Earlier,
            AskingPrice = 120,
            SoldOn = Later,
            SoldPrice = 110,
            Channel = "online",
            Fees = 11,
            DeliveryCharged = 20,
            DeliveryCost = 5,
            Hours = 6,
            SuppliesCost = 14,
            Colour = "sage",
            Finish = "satin",
        });

        Assert.Equal(PieceState.OnSale, then.State);
        Assert.Equal(
            new Piece
            {
                Id = "P1",
                Type = "desk",
                ListedOn = Earlier,
                AskingPrice = 120,
                Channel = "online",
                Hours = 6,
                SuppliesCost = 14,
                Colour = "sage",
                Finish = "satin",
            },
            then);
    }

    [Fact]
    public void A_piece_listed_later_is_in_the_workshop_and_what_has_no_date_is_known_with_it()
    {
        Piece then = Then(new Piece
        {
            Id = "P1",
            Type = "desk",
            BoughtOn = Earlier,
            BoughtPrice = 30,
            ReadyOn = Later,
            ListedOn = Later,
            AskingPrice = 120,
            Hours = 6,
            SuppliesCost = 14,
            Colour = "sage",
            Finish = "satin",
        });

        Assert.Equal(
            new Piece
            {
                Id = "P1",
                Type = "desk",
                BoughtOn = Earlier,
                BoughtPrice = 30,
                Hours = 6,
                SuppliesCost = 14,
                Colour = "sage",
                Finish = "satin",
            },
            then);
    }

    [Fact]
    public void A_piece_bought_later_is_not_there_and_neither_is_anything_about_it()
    {
        SalesLog then = new SalesLog
        {
            Date = DateOnly.MaxValue,
            Pieces = [new() { Id = "P1", Type = "desk", BoughtOn = Later }],
            AskingPrices = [new("P1", Earlier, 80)],
            Hours = [new("P1", null, null, 2), new(null, Earlier, null, 1)],
            Uses = [new("P1", null, "white", 1, "quart", null, null)],
        }.AsOf(Today);

        Assert.Empty(then.Pieces);
        Assert.Empty(then.AskingPrices);
        Assert.Empty(then.Uses);
        Assert.Null(Assert.Single(then.Hours).PieceId);
    }

    [Fact]
    public void An_id_in_the_other_case_hides_the_same_piece()
    {
        SalesLog log = new()
        {
            Date = Later,
            Pieces = [new() { Id = "P1", Type = "desk", BoughtOn = Later }, new() { Id = "P2", Type = "desk", ReadyOn = Later }],
            Hours = [new("p1", Earlier, null, 3), new("p1", null, null, 4), new("p2", Earlier, null, 1)],
        };
        Assert.Equal([1m], log.AsOf(Today).Hours.Select(entry => entry.Hours));
    }

    [Fact]
    public void A_piece_that_left_later_is_still_here() =>
        Assert.Equal(
            PieceState.InTheWorkshop,
            Then(new Piece { Id = "P1", Type = "desk", BoughtOn = Earlier, LeftOn = Later, LeftAs = LeftAs.Given }).State);

    [Fact]
    public void A_purchase_or_a_sale_without_a_day_counts_as_known()
    {
        Piece sold = new() { Id = "P1", Type = "desk", BoughtPrice = 10, SoldPrice = 90, Hours = 4 };

        Assert.Equal(sold, Then(sold));
    }

    [Fact]
    public void A_day_written_down_later_takes_nothing_from_an_earlier_one()
    {
        Piece onTheBench = new() { Id = "P1", Type = "desk", SuppliesCost = 14, Hours = 3 };
        Piece sold = new() { Id = "P2", Type = "desk", SoldPrice = 90 };

        Assert.Equal(onTheBench, Then(onTheBench with { ReadyOn = Later }));
        Assert.Equal(onTheBench, Then(onTheBench with { ReadyOn = Later, ListedOn = Later, AskingPrice = 120, SoldOn = Later, SoldPrice = 110 }));
        Assert.Equal(sold, Then(sold with { ListedOn = Later, AskingPrice = 120 }));
    }

    [Fact]
    public void What_is_dated_on_the_day_itself_is_known()
    {
        Piece sold = new() { Id = "P1", Type = "desk", BoughtOn = Today, ListedOn = Today, SoldOn = Today, SoldPrice = 90, Hours = 2 };

        Assert.Equal(sold, Then(sold));
    }

    [Fact]
    public void The_result_carries_the_date_asked_for() =>
        Assert.Equal(Later, new SalesLog { Date = Today }.AsOf(Later).Date);

    [Fact]
    public void Looking_back_twice_is_looking_back_to_the_earlier_date() =>
        Gen.Select(GeneratedLogs.Any, AnyDay, AnyDay).Sample(
            (log, first, second) =>
                LogContent.Of(log.AsOf(first).AsOf(second)) == LogContent.Of(log.AsOf(first < second ? first : second)),
            iter: 1000);

    [Fact]
    public void Nothing_that_came_later_shows_in_what_was_known_then() =>
        Gen.Select(GeneratedLogs.Any, AnyDay).Sample(
            (log, date) => LogContent.Of(Altered(log, date).AsOf(date)) == LogContent.Of(log.AsOf(date)),
            iter: 1000);

    private static Piece Then(Piece piece) =>
        new SalesLog { Date = DateOnly.MaxValue, Pieces = [piece] }.AsOf(Today).Pieces.Single();

    /// <summary>The log as it might have gone on after the date: every later fact is another.</summary>
    private static SalesLog Altered(SalesLog log, DateOnly date)
    {
        HashSet<string> unbought = [.. log.Pieces.Where(piece => piece.BoughtOn > date).Select(piece => piece.Id)];
        return log with
        {
            Pieces = [.. log.Pieces.Select(AlteredPiece), new() { Id = "New", Type = "desk", BoughtOn = date.AddDays(1), SoldPrice = 7 }],
            AskingPrices = [.. log.AskingPrices.Select(change => change.Date > date ? change with { Price = change.Price + 1, Date = change.Date.AddDays(1) } : change)],
            Hours = [.. log.Hours.Select(entry => IsLater(entry.PieceId, entry.Date) ? entry with { Hours = entry.Hours + 1, Task = null } : entry)],
            Uses = [.. log.Uses.Select(use => IsLater(use.PieceId, use.Date) ? use with { Quantity = 99, Item = "grey" } : use)],
            Counts = [.. log.Counts.Select(count => count.Date > date ? count with { Quantity = 99, Date = count.Date.AddDays(1) } : count)],
            Supplies = [.. log.Supplies.Where(purchase => !(purchase.BoughtOn > date))],
            Trips = [.. log.Trips.Select(trip => trip.Date > date ? trip with { Distance = 999 } : trip)],
            Tools = [.. log.Tools.Select(tool => tool.BoughtOn > date ? tool with { Price = 999 } : tool), new(
                "drill", date.AddDays(1), 5, null, null, null)],
            Overheads = [.. log.Overheads.Select(overhead => overhead.Month > date ? overhead with { Amount = 999 } : overhead)],
            Returns = [.. log.Returns.Select(back => back.ReturnedOn <= date ? back : back with
            {
                Refund = 999,
                Cost = 99,
                SoldPrice = back.SoldOn > date ? 777 : back.SoldPrice,
            })],
        };

        bool IsLater(string? id, DateOnly? day) => day > date || (id is not null && unbought.Contains(id));

        Piece AlteredPiece(Piece piece)
        {
            if (piece.BoughtOn > date)
                return piece with { BoughtOn = piece.BoughtOn.Value.AddDays(2), Type = "bed", BoughtPrice = 1, Title = "another" };
            Piece other = piece;
            if (piece.ReadyOn > date)
                other = other with { ReadyOn = piece.ReadyOn.Value.AddDays(3) };
            if (piece.ListedOn > date)
                other = other with { ListedOn = piece.ListedOn.Value.AddDays(1), AskingPrice = 1 };
            if (piece.SoldOn > date)
                other = other with { SoldOn = piece.SoldOn.Value.AddDays(4), SoldPrice = 1, Fees = 1, DeliveryCharged = 1, DeliveryCost = 1 };
            return piece.LeftOn > date ? other with { LeftOn = piece.LeftOn.Value.AddDays(4), LeftAs = LeftAs.Parts } : other;
        }
    }
}
