namespace FlipAnalytics.Tests;

/// <summary>How much of an answer is guess, and that a row with gaps still counts.</summary>
public class GuessShareTests
{
    private static readonly SalesLog Logged = Workbench.Demo(80, 4);

    private static readonly Workshop WithGuesses = Logged.Workshop with
    {
        Guesses = new Workshop().Guesses
            .Add("dresser", new(new(150, 250, 350), new(6, 9, 14), new(10, 30, 90), new(15, 30, 50)))
            .Add("nightstand", new(new(60, 90, 130), new(3, 4, 6), new(5, 15, 45), new(5, 10, 20)))
            .Add("desk", new(new(120, 180, 260), new(6, 8, 12), new(10, 25, 60), new(10, 25, 45))),
    };

    [Fact]
    public void With_guesses_alone_the_answer_is_all_guess_and_says_so()
    {
        PurchaseDecision decision = Workbench.Decide(
            new SalesLog { Date = Logged.Date, Workshop = WithGuesses }, Workbench.Dresser);
        Assert.Equal(1, decision.GuessShare);
        Assert.Contains(decision.Notes, note => note.StartsWith("All of the sale price is guess", StringComparison.Ordinal));
        Assert.Contains(decision.Notes, note => note.StartsWith("All of the hours is guess", StringComparison.Ordinal));
        // A guess may be off as a whole, so the guesses for other types draw on it.
        Assert.InRange(decision.SalePrice!.Median, 180, 260);
        Assert.InRange(decision.Hours!.Median, 7, 10.5m);
        Assert.InRange(decision.Supplies!.Median, 20, 34);
    }

    [Fact]
    public void With_guesses_alone_the_days_are_the_guessed_ones()
    {
        PurchaseDecision decision = Workbench.Decide(
            new SalesLog { Date = Logged.Date, Workshop = WithGuesses }, Workbench.Dresser);
        Assert.InRange(decision.DaysOnMarket!.Median, 22, 36);
        Assert.InRange(decision.DaysOnMarket.Low, 3, 12);
        Assert.InRange(decision.DaysOnMarket.High, 60, 140);
    }

    [Fact]
    public void An_empty_log_without_guesses_has_no_amounts_and_says_what_would_help()
    {
        PurchaseDecision decision = Workbench.Decide(new SalesLog { Date = Logged.Date }, Workbench.Dresser);
        Assert.Null(decision.Ceiling);
        Assert.Null(decision.SalePrice);
        Assert.Equal(Verdict.CannotSayYet, decision.Verdict);
        Assert.Contains("log a sale", Assert.Single(decision.Notes), StringComparison.Ordinal);
    }

    [Fact]
    public void The_guess_fades_as_sales_come_in()
    {
        Piece[] sold = [.. Logged.Pieces.Where(p => p is { SoldPrice: not null, Hours: not null, SuppliesCost: not null })];
        decimal[] shares =
        [
            .. new[] { 0, 1, 3, 8, 20 }.Select(n => Workbench.Decide(
                Logged with { Workshop = WithGuesses, Pieces = [.. sold.Take(n)], Hours = [] }, Workbench.Dresser).GuessShare),
        ];
        Assert.Equal(1, shares[0]);
        Assert.Equal(shares.OrderDescending(), shares);
        Assert.InRange(shares[^1], 0.001m, 0.5m);
    }

    [Fact]
    public void What_the_owner_states_is_no_guess() =>
        Assert.Equal(0, Workbench.Decide(
            Logged with { Workshop = WithGuesses, Pieces = [] }, Workbench.StatedDresser).GuessShare);

    public static TheoryData<string> Cells =>
        ["count", "width", "depth", "height", "size", "condition", "colour", "finish", "hours", "listing", "asking"];

    [Theory]
    [MemberData(nameof(Cells))]
    public void A_sale_with_an_empty_cell_still_counts(string cell)
    {
        int at = Logged.Pieces.IndexOf(Logged.Pieces.First(p => p is
        {
            SoldPrice: not null, Width: not null, Hours: not null, Colour: not null, Finish: not null, Condition: not null,
        }));
        SalesLog withGap = Logged with { Pieces = Logged.Pieces.SetItem(at, Without(Logged.Pieces[at], cell)) };
        foreach (bool plain in new[] { false, true })
        {
            Assert.Equal(
                ModelFitting.Fit(Logged, ModelName.Price, Estimator.Mixed, plain).N,
                ModelFitting.Fit(withGap, ModelName.Price, Estimator.Mixed, plain).N);
        }
    }

    private static Piece Without(Piece piece, string cell) => cell switch
    {
        "count" => piece with { Count = null },
        "width" => piece with { Width = null },
        "depth" => piece with { Depth = null },
        "height" => piece with { Height = null },
        "size" => piece with { Width = null, Depth = null, Height = null },
        "condition" => piece with { Condition = null },
        "colour" => piece with { Colour = null },
        "finish" => piece with { Finish = null },
        "hours" => piece with { Hours = null },
        "listing" => piece with { ListedOn = null },
        _ => piece with { AskingPrice = null },
    };
}
