namespace FlipAnalytics.Tests;

public sealed class HoursLedgerTests
{
    private static readonly DateOnly March = new(2026, 3, 1);

    private static SalesLog TwoPieces(params HoursEntry[] entries) => new()
    {
        Date = new(2026, 4, 30),
        Pieces =
        [
            new() { Id = "A", Type = "desk", Trip = "T1", BoughtOn = March, ReadyOn = new(2026, 3, 20), Hours = 6 },
            new() { Id = "B", Type = "chair", Trip = "T1", BoughtOn = March, ReadyOn = new(2026, 3, 25), Hours = 2 },
        ],
        Trips = [new("T1", March, null, 3m, null, null), new("T2", new(2026, 3, 8), null, 1m, null, null)],
        Hours = [.. entries],
    };

    [Fact]
    public void An_outing_is_shared_equally_and_a_fruitless_one_by_the_work_of_its_month()
    {
        // Worked by hand: 3 h / 2 = 1.5 each; 1 h by 6 : 2 = 0.75 and 0.25.
        HoursLedger book = HoursLedger.Of(TwoPieces());
        Assert.Equal<PieceHours>([new(6, 1.5m, 0.75m), new(2, 1.5m, 0.25m)], book.Pieces);
        Assert.Equal(8.25m, book.Pieces[0].All);
    }

    [Fact]
    public void Sourcing_written_down_twice_counts_once()
    {
        // 3 h of the outing are in the entry of 4 h; the hour beyond them is general: 6 : 2 of 1 h.
        HoursLedger book = HoursLedger.Of(TwoPieces(new HoursEntry(null, March, WorkTask.Sourcing, 4)));
        Assert.Equal(1m + 1m, book.General.Sum(general => general.Hours));
        Assert.Equal(1.5m, book.Pieces[0].General);
    }

    [Fact]
    public void Hours_of_a_month_without_work_are_carried_by_no_piece()
    {
        HoursLedger book = HoursLedger.Of(TwoPieces(new HoursEntry(null, new(2026, 4, 2), WorkTask.Selling, 2)));
        Assert.False(book.General[^1].IsShared);
        Assert.Equal(1m, book.Pieces.Sum(piece => piece.General));
    }

    [Fact]
    public void Unknown_hours_give_no_wage_and_never_a_wage_of_nothing()
    {
        SalesLog log = TwoPieces();
        log = log with
        {
            Pieces = [log.Pieces[0] with { Hours = null, BoughtPrice = 20, SoldPrice = 120, SoldOn = March.AddDays(40) }],
        };
        FlipResult flip = Assert.Single(FlipResult.Sold(CostBook.Of(log), HoursLedger.Of(log)));
        Assert.Equal(100, flip.CashProfit);
        Assert.Null(flip.CashWage);
        Assert.Null(flip.FullWage);
        Assert.Contains(CostKind.Fees, flip.Missing);
        Assert.True(flip.CashIsAtMost);
    }
}
