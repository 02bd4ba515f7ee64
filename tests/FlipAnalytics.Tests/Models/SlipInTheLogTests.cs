namespace FlipAnalytics.Tests;

/// <summary>One slip of the pen in a log of a hundred flips, left unmended, and what it does to the answers for other pieces.</summary>
public class SlipInTheLogTests
{
    private const int Flips = 100;

    public static TheoryData<string> Names => [.. Slips.All.Select(slip => slip.Name)];

    /// <summary>5 % in the middle and 15 % at most.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void One_slip_moves_no_other_pieces_ceiling_by_much(string name)
    {
        var make = Slips.All.Single(slip => slip.Name == name).Make;
        foreach (ulong seed in new ulong[] { 1, 2, 5 })
        {
            var moves = Slips.Moves(Flips, seed, make);
            Assert.NotEmpty(moves);
            Assert.InRange(moves[moves.Length / 2], 0, 0.05);
            Assert.InRange(moves[^1], 0, 0.15);
        }
    }

    [Fact]
    public void A_log_without_a_wild_row_is_fitted_as_it_is()
    {
        var models = FittedModels.Of(Workbench.Demo(60, 4));
        Assert.Empty(models.Weighed);
    }

    [Fact]
    public void A_wild_amount_that_no_slip_explains_counts_for_next_to_nothing()
    {
        SalesLog log = Workbench.Demo(60, 4);
        Piece sold = log.Pieces.First(p => p.SoldPrice > 0);
        var models = FittedModels.Of(log with
        {
            Pieces = log.Pieces.Replace(sold, sold with { SoldPrice = sold.SoldPrice * 31 }),
        });
        WeighedRow wild = Assert.Single(models.Weighed);
        Assert.Null(wild.ReadAs);
        Assert.InRange(wild.Count, 0, 0.05);
    }

    [Fact]
    public void What_counts_less_is_named_with_what_the_others_expect()
    {
        SalesLog log = Workbench.Demo(60, 4);
        Piece sold = log.Pieces.First(p => p.SoldPrice > 0);
        var models = FittedModels.Of(log with
        {
            Pieces = log.Pieces.Replace(sold, sold with { SoldPrice = sold.SoldPrice * 100 }),
        });
        WeighedRow wild = Assert.Single(models.Weighed);
        Assert.Equal((sold.Id, ModelName.Price), (wild.PieceId, wild.Model));
        Assert.InRange(wild.Expected, (double)sold.SoldPrice!.Value / 3, 3 * (double)sold.SoldPrice.Value);
        Assert.InRange(wild.Count, 0, 0.05);
        Assert.Equal((double)sold.SoldPrice.Value, wild.ReadAs!.Value, 1e-9);
    }
}
