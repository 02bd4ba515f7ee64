using System.Globalization;

namespace FlipAnalytics.Tests;

/// <summary>What a log leaves out widens an answer; it does not bend it.</summary>
public class GapsInThePiecesTests
{
    private static readonly SalesLog Log = Workbench.Demo(100, 6);

    private static readonly Candidate Nightstand = new()
    {
        Id = "C1",
        Type = "nightstand",
        Count = 1,
        Width = 21,
        Depth = 16,
        Height = 26,
        Condition = Condition.Worn,
        Colour = "sage",
        Finish = "satin",
    };

    [Fact]
    public void A_type_that_was_never_measured_is_not_held_against_the_size_of_others()
    {
        SalesLog unmeasured = Log with
        {
            Pieces =
            [
                .. Log.Pieces.Select(p => p.Type == "nightstand" ? p with { Width = null, Depth = null, Height = null } : p),
            ],
        };
        decimal measured = Workbench.Decide(Log, Nightstand).SalePrice!.Median;
        Assert.Equal(1, (double)(Workbench.Decide(unmeasured, Nightstand).SalePrice!.Median / measured), 0.15);
    }

    [Fact]
    public void A_log_without_any_dimension_answers_as_well()
    {
        SalesLog unmeasured = Log with
        {
            Pieces = [.. Log.Pieces.Select(p => p with { Width = null, Depth = null, Height = null })],
        };
        decimal measured = Workbench.Decide(Log, Nightstand).SalePrice!.Median;
        Assert.Equal(1, (double)(Workbench.Decide(unmeasured, Nightstand).SalePrice!.Median / measured), 0.15);
    }

    [Fact]
    public void Measuring_is_asked_for_only_where_a_dimension_is_open()
    {
        static bool AsksToMeasure(Candidate candidate) => Workbench.Decide(Log, candidate).Notes
            .Any(note => note.StartsWith("Not every dimension is known", StringComparison.Ordinal));
        Assert.True(AsksToMeasure(Nightstand with { Width = null }));
        Assert.False(AsksToMeasure(Nightstand));
        Assert.False(AsksToMeasure(Nightstand with { Type = "grandfather clock" }));
    }

    [Fact]
    public void Each_thing_not_known_of_a_candidate_widens_the_range_of_its_sale_price()
    {
        static double Width(Candidate candidate) =>
            Workbench.Decide(Log, candidate).SalePrice is { } price ? Math.Log((double)(price.High / price.Low)) : 0;
        double known = Width(Nightstand);
        Assert.True(Width(Nightstand with { Colour = null }) > known);
        Assert.True(Width(Nightstand with { Width = null, Depth = null, Height = null }) > known);
        Assert.True(Width(Nightstand with { Type = "grandfather clock" }) > known);
    }

    [Fact]
    public void An_unknown_colour_widens_the_range_about_alike_whether_or_not_the_log_has_such_gaps()
    {
        static double Variance(SalesLog log)
        {
            var models = FittedModels.Of(log);
            double Of(string? colour) => models.Price!.Predict(
                models.ValuesOf(PieceFacts.Of(Nightstand with { Colour = colour }, log), log.Date, 0), 0).Variance;
            double colours = models.Price!.Fit.Terms.Where(t => t.Name is TermNames.Colour or TermNames.Family).Sum(t => t.Variance);
            return (Of(null) - Of("sage")) / colours;
        }

        SalesLog complete = Log with { Pieces = [.. Log.Pieces.Where(p => p.Colour is not null)] };
        Assert.InRange(Variance(Log), 0.6, 1.65);
        Assert.InRange(Variance(complete), 0.6, 1.65);
    }

    /// <summary>Fifteen pieces that needed nothing and five that took 20: the mean forecast lies between.</summary>
    [Fact]
    public void Supplies_of_nothing_on_most_pieces_do_not_make_the_forecast_absurd()
    {
        var log = new SalesLog
        {
            Date = Log.Date,
            Pieces =
            [
                .. Enumerable.Range(0, 20).Select(i => new Piece
                {
                    Id = string.Create(CultureInfo.InvariantCulture, $"P{i}"),
                    Type = "dresser",
                    SoldPrice = 200 + i,
                    SuppliesCost = i % 4 == 0 ? 20 : 0,
                }),
            ],
        };
        Assert.InRange(Workbench.Decide(log, Workbench.Dresser).Supplies!.Mean, 1, 20);
    }
}
