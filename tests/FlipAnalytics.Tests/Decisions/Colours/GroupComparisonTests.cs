using System.Collections.Immutable;
using System.Text.Json;
using FlipAnalytics.Statistics;

namespace FlipAnalytics.Tests;

public sealed class GroupComparisonTests
{
    private static readonly SalesLog Log = Workbench.Demo(150, 1);

    public static TheoryData<GroupedBy> Groupings => [.. Enum.GetValues<GroupedBy>()];

    [Theory]
    [MemberData(nameof(Groupings))]
    public void Every_piece_sold_or_on_sale_is_in_one_level(GroupedBy by)
    {
        GroupComparisonReport report = GroupComparison.Of(Log, by);
        Assert.Equal(Log.Pieces.Count(p => p.IsSold), report.Levels.Sum(l => l.Sold));
        Assert.Equal(Log.Pieces.Count(p => p.State == PieceState.OnSale), report.Levels.Sum(l => l.OnSale));
    }

    [Theory]
    [MemberData(nameof(Groupings))]
    public void The_page_fits_a_screen_and_the_document_is_read_back(GroupedBy by)
    {
        GroupComparisonReport report = GroupComparison.Of(Log, by);
        string[] page = GroupComparisonText.Render(report).Split('\n');
        Assert.InRange(page.Length, 10, 37);
        Assert.All(page.Concat(GroupComparisonText.Render(report, all: true).Split('\n')), line => Assert.InRange(line.Length, 0, 100));
        using JsonDocument json = JsonDocument.Parse(GroupComparisonJson.Render(report));
        Assert.Equal(report.Levels.Length, json.RootElement.GetProperty("levels").GetArrayLength());
        Assert.Equal(by.ToString().ToLowerInvariant(), json.RootElement.GetProperty("by").GetString());
    }

    [Fact]
    public void The_curve_and_the_log_rank_test_are_those_of_the_library()
    {
        GroupComparisonReport report = GroupComparison.Of(Log, GroupedBy.Color);
        Piece[] offered = [.. Log.Pieces.Where(p => p.ListedOn is not null)];
        SurvivalTime Time(Piece p) => new(
            Math.Max(1, (p.SoldOn ?? p.LeftOn ?? Log.Date).DayNumber - p.ListedOn!.Value.DayNumber), p.IsSold);

        var sage = KaplanMeier.Estimate([.. offered.Where(p => p.Colour == "sage").Select(Time)], 0.8);
        LevelRecord found = report.Levels.Single(l => l.Level == "sage");
        Assert.Equal<SurvivalStep>([.. sage.Steps], [.. found.Curve]);
        Assert.Equal(sage.Median(), found.MedianDays);

        Piece[] compared = [.. offered.Where(p => p.Colour is not null && report.ToldApart.Compared.Contains(p.Colour))];
        var test = LogRank.Test(
            [.. compared.Select(Time)], [.. compared.Select(p => p.Colour!)], [.. compared.Select(p => p.Type)]);
        Assert.Equal(test.ChiSquared, report.ToldApart.LogRank!.ChiSquared, 1e-9);
        Assert.Equal(test.P, report.ToldApart.LogRank.P, 1e-12);

        string[] others = [.. report.ToldApart.Compared.Skip(1)];
        CoxFit cox = CoxRegression.Fit(
            [.. others.Select(level => new Regressor(level, compared.Select(p => p.Colour == level ? 1.0 : 0.0).ToArray()))],
            [.. compared.Select(Time)],
            [.. compared.Select(p => p.Type)]);
        Assert.Equal(others, report.ToldApart.Hazards.Select(hazard => hazard.Level));
        Assert.All(report.ToldApart.Hazards, hazard => Assert.Equal(cox[hazard.Level].HazardRatio, hazard.HazardRatio, 1e-9));
    }

    [Fact]
    public void Of_very_many_levels_the_fifty_sold_most_have_hazard_ratios_among_themselves()
    {
        SalesLog town = DemoLog.Generate(700, 1).Log;
        SalesLog many = town with { Pieces = [.. town.Pieces.Select((piece, i) => piece with { Colour = $"color {i % 60:00}" })] };
        ToldApart told = GroupComparison.Of(many, GroupedBy.Color).ToldApart;
        Assert.Equal(60, told.Compared.Length);
        Assert.Equal([.. told.Compared[1..50]], told.Hazards.Select(hazard => hazard.Level));

        SalesLog fewer = many with { Pieces = [.. many.Pieces.Where(piece => told.Compared[..50].Contains(piece.Colour!))] };
        Assert.Equal<LevelHazard>([.. GroupComparison.Of(fewer, GroupedBy.Color).ToldApart.Hazards], [.. told.Hazards]);
    }

    [Fact]
    public void Levels_that_cannot_be_compared_have_no_hazard_ratios_and_no_error()
    {
        SalesLog one = Log with { Pieces = [.. Log.Pieces.Select(piece => piece with { Colour = "sage" })] };
        SalesLog unsold = Log with { Pieces = [.. Log.Pieces.Select(piece => piece with { SoldOn = null, SoldPrice = null })] };
        Assert.Empty(GroupComparison.Of(one, GroupedBy.Color).ToldApart.Hazards);
        Assert.Empty(GroupComparison.Of(unsold, GroupedBy.Color).ToldApart.Hazards);
    }

    [Fact]
    public void The_shrunk_effects_are_those_of_the_fitted_models()
    {
        LevelRecord sage = GroupComparison.Of(Log, GroupedBy.Color).Levels.Single(l => l.Level == "sage");
        FitReport days = ModelFitting.Fit(Log, ModelName.Days, Estimator.Mixed, plain: false);
        FitReport price = ModelFitting.Fit(Log, ModelName.Price, Estimator.Mixed, plain: false);
        double Of(FitReport fit, string group, string level) =>
            fit.Random.Single(g => g.Group == group).Levels.Single(l => l.Level == level).Effect;
        Assert.Equal(Math.Exp(Of(days, "color", "sage")) - 1, sage.Days!.Share, 1e-9);
        Assert.Equal(Math.Exp(Of(price, "color", "sage") + Of(price, "color family", "green")) - 1, sage.Price!.Share, 1e-9);
    }

    [Fact]
    public void One_color_is_the_fastest_and_three_are_among_the_three_fastest()
    {
        LevelRecord[] ranked = [.. GroupComparison.Of(Log, GroupedBy.Color).Levels.Where(l => l.ChanceFastest is not null)];
        Assert.True(ranked.Length >= 5);
        Assert.Equal(1, ranked.Sum(l => l.ChanceFastest!.Value), 1e-9);
        Assert.Equal(3, ranked.Sum(l => l.ChanceTopThree!.Value), 1e-9);
    }

    [Fact]
    public void Money_a_week_is_what_is_left_of_a_sale_over_all_weeks_on_sale()
    {
        // 100 − 10 fees − 20 purchase − 8 supplies − 2 h at 15 = 32 over 2 weeks of the sold and 6 of the unsold piece.
        SalesLog log = Of(
            Sold("a", "sage", 14) with { SoldPrice = 100, Fees = 10, BoughtPrice = 20, SuppliesCost = 8, Hours = 2 },
            Sold("b", "sage", 1) with { SoldOn = null, SoldPrice = null, ListedOn = Today.AddDays(-42) },
            Sold("c", "sage", 7));
        MoneyPerWeek money = GroupComparison.Of(log, GroupedBy.Color).Levels.Single().Money;
        Assert.Equal(new MoneyPerWeek(4, 32, 8, 1, 1, 1), money);
    }

    [Fact]
    public void Money_a_week_takes_off_a_pieces_share_of_its_lot_and_not_the_whole_sum()
    {
        // 40 for two alike is 20 each: 100 − 10 − 20 − 8 − 30 = 32 over 2 weeks, and the other is in the workshop.
        SalesLog log = Of(
            Sold("a", "sage", 14) with
            {
                SoldPrice = 100,
                Fees = 10,
                BoughtPrice = 40,
                ExpectedPrice = 90,
                SuppliesCost = 8,
                Hours = 2,
                Lot = "barn",
            },
            new() { Id = "b", Type = "dresser", Colour = "sage", ExpectedPrice = 90, Lot = "barn" });
        MoneyPerWeek money = GroupComparison.Of(log, GroupedBy.Color).Levels.Single().Money;
        Assert.Equal(new MoneyPerWeek(16, 32, 2, 1, 0, 0), money);
    }

    [Theory]
    [InlineData(0, "Nothing is sold yet")]
    [InlineData(1, "Every sale with a color written down is sage")]
    [InlineData(3, "Not enough sold to compare colors yet")]
    public void Few_sales_get_a_plain_sentence(int sales, string answer)
    {
        SalesLog log = Of([.. Enumerable.Range(0, sales).Select(i => Sold($"p{i}", i == 0 ? "sage" : "navy", 10 + i))]);
        string page = GroupComparisonText.Render(GroupComparison.Of(log, GroupedBy.Color));
        Assert.StartsWith(answer, page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_piece_without_a_color_is_a_row_and_a_note_of_its_own()
    {
        GroupComparisonReport report = GroupComparison.Of(Of(Sold("a", null, 5), Sold("b", "sage", 9)), GroupedBy.Color);
        Assert.Equal(["sage", "not written down"], report.Levels.Select(l => l.Level));
        Assert.Contains(report.Notes, note => note.StartsWith("The color of 1 piece sold or on sale is not written down", StringComparison.Ordinal));
    }

    [Fact]
    public void Spellings_and_hexes_that_may_be_one_color_are_pointed_out()
    {
        SalesLog log = Of(Sold("a", "off white", 5), Sold("b", "Off-White", 9), Sold("c", "offwhite", 9), Sold("d", "bone", 3)) with
        {
            Colours = [new("off white", null, "#f8f6f0"), new("bone", null, "#f8f6f1")],
        };
        ImmutableArray<string> notes = GroupComparison.Of(log, GroupedBy.Color).Notes;
        Assert.Contains(notes, n => n.StartsWith("Color that looks like one word written 3 ways: off white (2), Off-White (1; pieces.csv", StringComparison.Ordinal));
        Assert.Contains(notes, n => n.StartsWith("'off white' and 'bone' look the same", StringComparison.Ordinal));
    }

    [Fact]
    public void The_next_piece_is_weighed_in_every_color_as_a_purchase_would_be()
    {
        NextPiece next = GroupComparison.Of(Log, GroupedBy.Color, "dresser").Next!;
        PurchaseDecision sage = Workbench.Decide(Log, new Candidate { Id = "s", Type = "dresser", Colour = "sage" });
        Assert.Equal(sage.Ceiling, next.Choices.Single(c => c.Level == "sage").Money);
        Assert.Equal(next.Choices.OrderByDescending(c => c.Money), next.Choices);
        Assert.Equal(1, next.Choices.Sum(c => c.ChanceBest ?? 0), 1e-9);
        Assert.All(next.Choices, c => Assert.Equal(c.IsCompared, c.ChanceBest is not null));
    }

    private static DateOnly Today { get; } = new(2026, 3, 31);

    private static SalesLog Of(params ImmutableArray<Piece> pieces) => new() { Date = Today, Pieces = pieces };

    private static Piece Sold(string id, string? colour, int days) => new()
    {
        Id = id,
        Type = "dresser",
        Colour = colour,
        ListedOn = Today.AddDays(-days),
        SoldOn = Today,
        SoldPrice = 200,
    };
}
