namespace FlipAnalytics.Tests;

/// <summary>Rows that contradict themselves, each other, or another table.</summary>
public sealed class CrossCheckTests
{
    private const string Header = "id,type,bought_price,trip,bought_on,ready_on,listed_on,sold_on,sold_price,left_on,left_as\n";

    [Theory]
    [InlineData("P1,desk,1,,2025-02-01,,2025-03-01,2025-02-20,90,,", "sold_on", "2025-03-01 or later, its listed_on")]
    [InlineData("P1,desk,1,,2025-02-01,,,2025-01-20,90,,", "sold_on", "its bought_on")]
    [InlineData("P1,desk,1,,2025-02-01,,2025-01-31,,,,", "listed_on", "its bought_on")]
    [InlineData("P1,desk,1,,2025-02-01,2025-01-31,,,,,", "ready_on", "its bought_on")]
    [InlineData("P1,desk,1,,2025-02-01,,,,,2025-01-31,kept", "left_on", "its bought_on")]
    [InlineData("P1,desk,1,,,,2025-02-01,,,2025-01-31,kept", "left_on", "its listed_on")]
    [InlineData("P1,desk,1,,,,,2025-02-20,,,", "sold_price", "a sale price")]
    [InlineData("P1,desk,1,,,,,2025-02-20,90,2025-02-21,", "left_on", "either a sale or a departure")]
    [InlineData("P1,desk,1,,,,,,90,,kept", "left_on", "either a sale or a departure")]
    public void A_piece_that_contradicts_itself_is_set_aside(string row, string column, string expected)
    {
        LogReading reading = LogFolder.ReadPieces(Header + row + "\n");

        LogProblem problem = Assert.Single(reading.Problems);
        Assert.Equal((Severity.Error, 2, column), (problem.Severity, problem.Row, problem.Column));
        Assert.Contains(expected, problem.Expected, StringComparison.Ordinal);
        Assert.Empty(reading.Log!.Pieces);
        Assert.Equal(1, reading.Tables[0].RowsSetAside);
    }

    [Fact]
    public void All_on_one_day_is_no_contradiction_and_a_way_out_needs_no_day() =>
        Assert.Empty(LogFolder.ReadPieces(
            Header + "P1,desk,1,,2025-02-01,2025-02-01,2025-02-01,2025-02-01,90,,\nP2,desk,1,,,,,,,,given\n").Problems);

    [Fact]
    public void Of_two_ids_alike_the_later_row_is_set_aside()
    {
        LogReading reading = LogFolder.ReadPieces("id,type,bought_price\nP1,desk,1\np1,chair,2\n");

        LogProblem problem = Assert.Single(reading.Problems);
        Assert.Equal((Severity.Error, 3, "id"), (problem.Severity, problem.Row, problem.Column));
        Assert.Contains("Line 2 has the same id", problem.Remedy, StringComparison.Ordinal);
        Assert.Equal("desk", reading.Log!.Pieces.Single().Type);
    }

    [Fact]
    public void A_missing_purchase_price_draws_a_warning_and_the_piece_stays()
    {
        LogReading reading = LogFolder.ReadPieces("id,type,bought_price\nP1,desk,\n");

        Assert.Equal(
            (Severity.Warning, "bought_price"), (Assert.Single(reading.Problems).Severity, reading.Problems[0].Column));
        Assert.Single(reading.Log!.Pieces);
    }

    [Theory]
    [InlineData("P1,desk,1,,,,,,90,,\nP2,desk,1,,,,,2025-02-02,90,,\n", 1)]
    [InlineData("P1,desk,1,,,,,,90,,\nP2,desk,1,,,,,,90,,\n", 0)]
    public void A_sale_without_its_day_draws_a_warning_where_other_sales_have_theirs(string rows, int warnings)
    {
        LogReading reading = LogFolder.ReadPieces(Header + rows);

        Assert.Equal(
            warnings, reading.Problems.Count(problem => problem is { Severity: Severity.Warning, Column: "sold_on" }));
        Assert.Equal(2, reading.Log!.Pieces.Length);
    }

    [Fact]
    public void A_piece_of_a_lot_needs_no_price_of_its_own_where_the_lot_has_one()
    {
        LogReading reading = LogFolder.ReadPieces("id,type,lot,bought_price\nP1,chair,barn,90\nP2,chair,Barn,\nP3,desk,shed,\n");
        Assert.Equal(4, Assert.Single(reading.Problems, problem => problem.Column == "bought_price").Row);
    }

    [Fact]
    public void A_rent_of_a_channel_that_no_piece_uses_draws_one_warning_with_the_likeliest_word()
    {
        using LogFolder folder = new();
        LogProblem[] warnings = [.. folder
            .With("pieces.csv", "id,type,bought_price,channel\nP1,desk,10,antique booth\nP2,desk,10,online\n")
            .With("overheads.csv", "month,item,amount,channel\n2026-01,rent,60,antiqe boths\n2026-02,rent,60,antiqe boths\n2026-02,rent,9,Antique-Booths\n2026-03,stall,20,market\n2026-03,rent,30,\n")
            .Read().Problems];

        Assert.Equal(
            [(Severity.Warning, 2, "antiqe boths"), (Severity.Warning, 5, "market")],
            warnings.Select(problem => (problem.Severity, problem.Row!.Value, problem.Found!)));
        Assert.StartsWith("Did you mean antique booth? Write here and as channel of the pieces", warnings[0].Remedy, StringComparison.Ordinal);
        Assert.EndsWith("until then all 2 rows of it are a cost of idle months, on no piece.", warnings[0].Remedy, StringComparison.Ordinal);
        Assert.StartsWith("Write here", warnings[1].Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Before_the_first_piece_a_booth_has_no_piece_and_that_is_no_mistake()
    {
        using LogFolder folder = new();
        Assert.Empty(folder.With("pieces.csv", "id,type,bought_price\n")
            .With("overheads.csv", "month,item,amount,channel\n2026-01,rent,60,booth\n").Read().Problems);
    }

    [Theory]
    [InlineData("asking.csv", "id,date,price\nP9,2025-02-01,80\n")]
    [InlineData("hours.csv", "id,hours\nP9,2\n")]
    [InlineData("uses.csv", "id,item,quantity\nP9,white,1\n")]
    public void A_row_for_an_unknown_piece_is_set_aside(string file, string text)
    {
        using LogFolder folder = new();
        LogReading reading = folder.With("pieces.csv", "id,type,bought_price\nP1,desk,1\n").With(file, text).Read();

        LogProblem problem = Assert.Single(reading.Problems);
        Assert.Equal((Severity.Error, file, 2, "P9"), (problem.Severity, problem.File, problem.Row, problem.Found));
        Assert.Equal(1, reading.Tables.Single(table => table.File == file).RowsSetAside);
    }

    [Theory]
    [InlineData("P1,desk,x")]
    [InlineData("P1,,1")]
    public void A_row_for_a_piece_that_is_set_aside_points_to_that_piece(string piece)
    {
        using LogFolder folder = new();
        LogReading reading = folder.With("pieces.csv", $"id,type,bought_price\n{piece}\n").With("hours.csv", "id,hours\nP1,2\n").Read();

        Assert.Contains(
            reading.Problems,
            problem => problem.File == "hours.csv" && problem.Remedy.Contains("put line 2 of pieces.csv right first", StringComparison.Ordinal));
    }

    [Fact]
    public void An_unknown_trip_draws_a_warning_only_if_trips_are_kept()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", Header + "P1,desk,1,T9,,,,,,,\n");
        Assert.Empty(folder.Read().Problems);

        LogReading reading = folder.With("trips.csv", "trip\nT1\n").Read();
        Assert.Equal(
            (Severity.Warning, "trip", "T9"),
            (Assert.Single(reading.Problems).Severity, reading.Problems[0].Column, reading.Problems[0].Found));
        Assert.Equal("T9", reading.Log!.Pieces.Single().Trip);
    }

    [Theory]
    [InlineData("trips.csv", "trip\nT1\nt1\n")]
    [InlineData("colors.csv", "color\nsage\nSage\n")]
    public void Of_two_rows_for_the_same_thing_the_later_is_set_aside(string file, string text)
    {
        using LogFolder folder = new();
        LogReading reading = folder.With("pieces.csv", "type,bought_price\n").With(file, text).Read();

        Assert.Equal((Severity.Error, 3), (Assert.Single(reading.Problems).Severity, reading.Problems[0].Row));
    }

    [Theory]
    [InlineData("2025-01-31", "2025-02-01 or later, when the piece was listed")]
    [InlineData("2025-03-02", "2025-03-01 or earlier, when the piece left")]
    public void A_price_change_before_listing_or_after_the_sale_draws_a_warning(string date, string expected)
    {
        using LogFolder folder = new();
        LogReading reading = folder
            .With("pieces.csv", Header + "P1,desk,1,,,,2025-02-01,2025-03-01,80,,\n")
            .With("asking.csv", $"id,date,price\nP1,{date},90\n")
            .Read();

        Assert.Equal(
            (Severity.Warning, expected), (Assert.Single(reading.Problems).Severity, reading.Problems[0].Expected));
        Assert.Single(reading.Log!.AskingPrices);
    }

    [Theory]
    [InlineData("24", 0)]
    [InlineData("24.5", 1)]
    public void More_hours_than_a_day_has_draw_a_warning(string hours, int warnings)
    {
        using LogFolder folder = new();
        LogReading reading = folder
            .With("pieces.csv", "type,bought_price\n").With("hours.csv", $"date,hours\n2025-02-01,{hours}\n").Read();

        Assert.Equal(
            warnings, reading.Problems.Count(problem => problem is { Severity: Severity.Warning, Column: "hours" }));
        Assert.Single(reading.Log!.Hours);
    }

    [Theory]
    [InlineData("1,quart", "0.6,quart", 0)]
    [InlineData("0.5,quart", "0.6,Quart", 1)]
    [InlineData("0.5,quart", "600,ml", 0)]
    [InlineData(",quart", "0.6,quart", 0)]
    public void More_of_a_supply_used_than_bought_draws_a_warning_where_units_are_alike(
        string bought, string used, int warnings)
    {
        using LogFolder folder = new();
        LogReading reading = folder
            .With("pieces.csv", "id,type,bought_price\nP1,desk,1\n")
            .With("supplies.csv", $"item,quantity,unit\nwhite,{bought}\n")
            .With("uses.csv", $"id,item,quantity,unit\nP1,white,{used}\n")
            .Read();

        Assert.Equal(warnings, reading.Problems.Length);
        Assert.All(
            reading.Problems,
            problem => Assert.Equal((Severity.Warning, "uses.csv", 2), (problem.Severity, problem.File, problem.Row)));
    }

    [Fact]
    public void A_supply_that_was_never_bought_draws_a_warning()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "id,type,bought_price\nP1,desk,1\n").With(
            "uses.csv", "id,item,quantity\nP1,white,1\n");
        Assert.Contains(
            "supplies.csv beside it", Assert.Single(folder.Read().Problems).Expected, StringComparison.Ordinal);

        folder.With("supplies.csv", "item,price\ngrey,20\n");
        Assert.Equal(
            (Severity.Warning, "item", "white"),
            (Assert.Single(folder.Read().Problems).Severity, folder.Read().Problems[0].Column, folder.Read().Problems[0].Found));
    }

    [Fact]
    public void A_use_without_an_id_is_waste_and_no_problem()
    {
        using LogFolder folder = new();
        LogReading reading = folder
            .With("pieces.csv", "id,type,bought_price\nP1,desk,1\n")
            .With("supplies.csv", "item,quantity,unit\nwhite,1,quart\n")
            .With("uses.csv", "id,date,item,quantity\n,2025-02-01,white,0.25\n")
            .Read();

        Assert.Empty(reading.Problems);
        Assert.Equal(new SupplyUse(null, new(2025, 2, 1), "white", 0.25m, null, null, null, 2), reading.Log!.Uses.Single());
    }

    [Fact]
    public void A_use_that_says_no_amount_draws_a_warning()
    {
        using LogFolder folder = new();
        LogReading reading = folder
            .With("pieces.csv", "id,type,bought_price\nP1,desk,1\n")
            .With("supplies.csv", "item\nwhite\n")
            .With("uses.csv", "id,item,quantity\nP1,white,\n")
            .Read();

        Assert.Equal(
            (Severity.Warning, "quantity"), (Assert.Single(reading.Problems).Severity, reading.Problems[0].Column));
    }
}
