using System.Globalization;
using System.Text;

namespace FlipAnalytics.Tests;

public sealed class SalesLogReaderTests
{
    [Fact]
    public void Type_and_prices_are_enough_for_a_log()
    {
        LogReading reading = LogFolder.ReadPieces("type,bought_price,sold_price\ndresser,45.50,260\nchair,0,\n");

        Assert.Empty(reading.Problems);
        Piece sold = reading.Log!.Pieces[0];
        Assert.Equal(("row 2", "dresser", 45.50m, 260m), (sold.Id, sold.Type, sold.BoughtPrice, sold.SoldPrice));
        Assert.Equal(PieceState.Sold, sold.State);
        Piece chair = reading.Log.Pieces[1];
        Assert.Equal(("row 3", 3, 0m), (chair.Id, chair.Row, chair.BoughtPrice));
        Assert.Null(chair.SoldPrice);
    }

    [Fact]
    public void An_empty_cell_is_unknown_and_never_zero()
    {
        Piece piece = LogFolder.ReadPieces("id,type,bought_price,hours,width,color\nP1,desk,10,, ,\n").Log!.Pieces.Single();

        Assert.Null(piece.Hours);
        Assert.Null(piece.Width);
        Assert.Null(piece.Colour);
    }

    [Fact]
    public void Column_order_case_and_a_byte_order_mark_do_not_matter()
    {
        LogReading reading = LogFolder.ReadPieces("\uFEFF Bought_Price ,TYPE,Id\r\n12,desk,P1\r\n");

        Assert.Empty(reading.Problems);
        Assert.Equal(
            ("P1", "desk", 12m),
            (reading.Log!.Pieces[0].Id, reading.Log.Pieces[0].Type, reading.Log.Pieces[0].BoughtPrice!.Value));
    }

    [Fact]
    public void A_label_keeps_the_spelling_first_seen_in_every_table()
    {
        using LogFolder folder = new();
        SalesLog log = folder
            .With(
                "pieces.csv",
                "id,type,bought_price,color,condition\nP1,Dresser,10, Sage ,WORN\np2,dresser,12,sage,worn\n")
            .With("colors.csv", "color,family,hex\nSAGE,green,#8FA68E\n")
            .With("hours.csv", "id,task,hours\nP2,Sanding,1.5\n")
            .Read().Log!;

        Assert.Equal(["Dresser", "Dresser"], log.Pieces.Select(piece => piece.Type));
        Assert.Equal(["Sage", "Sage"], log.Pieces.Select(piece => piece.Colour));
        Assert.All(log.Pieces, piece => Assert.Equal(Condition.Worn, piece.Condition));
        Assert.Equal(("Sage", "#8fa68e"), (log.Colours.Single().Word, log.Colours.Single().Hex));
        Assert.Equal(("p2", WorkTask.Sanding), (log.Hours.Single().PieceId, log.Hours.Single().Task));
    }

    [Fact]
    public void Unknown_columns_are_reported_without_a_problem()
    {
        LogReading reading = LogFolder.ReadPieces("type,bought_price,mood,,Weather\ndesk,1,glum,,\n");

        Assert.Empty(reading.Problems);
        Assert.Equal<string>(["mood", "Weather"], reading.Tables[0].UnknownColumns);
    }

    [Theory]
    [InlineData("sell_price", "sold_price")]
    [InlineData("Sold Price", "sold_price")]
    [InlineData("colour", "color")]
    [InlineData("bougth_on", "bought_on")]
    public void A_column_that_nearly_has_a_known_name_draws_a_warning(string written, string meant)
    {
        LogProblem problem = LogFolder.ReadPieces($"type,bought_price,{written}\ndesk,1,\n").Problems.Single();

        Assert.Equal(Severity.Warning, problem.Severity);
        Assert.Contains($"if you mean {meant}", problem.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void Blank_rows_as_spreadsheets_leave_them_are_no_rows()
    {
        LogReading reading = LogFolder.ReadPieces("type,bought_price\n\n,\ndesk,1\n , \n");

        Assert.Empty(reading.Problems);
        Assert.Equal((1, 0), (reading.Tables[0].Rows, reading.Tables[0].RowsSetAside));
        Assert.Equal(4, reading.Log!.Pieces.Single().Row);
    }

    [Fact]
    public void The_date_of_a_log_is_that_of_its_last_dated_fact_in_any_table()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "id,type,bought_price,bought_on\nP1,desk,1,2025-03-01\n");
        Assert.Equal(new(2025, 3, 1), folder.Read().Log!.Date);

        folder.With("trips.csv", "trip,date\nT1,2025-04-02\n");
        Assert.Equal(new(2025, 4, 2), folder.Read().Log!.Date);
    }

    [Fact]
    public void Without_any_date_everything_is_known() =>
        Assert.Equal(DateOnly.MaxValue, LogFolder.ReadPieces("type,bought_price\ndesk,1\n").Log!.Date);

    [Fact]
    public void A_new_log_with_a_header_only_is_in_order()
    {
        LogReading reading = LogFolder.ReadPieces("type,bought_price,sold_price\n");

        Assert.Empty(reading.Problems);
        Assert.Empty(reading.Log!.Pieces);
    }

    [Fact]
    public void Every_table_is_read_column_by_column()
    {
        using LogFolder folder = new();
        SalesLog log = folder
            .With("pieces.csv", "id,type,bought_price,trip,listed_on,asking_price\nP1,desk,1,T1,2025-02-01,90\n")
            .With("asking.csv", "id,date,price\nP1,2025-02-20,79.50\n")
            .With("hours.csv", "id,date,task,hours\n,2025-02-01,sourcing,2\nP1,,,0.25\n")
            .With(
                "supplies.csv",
                "item,kind,bought_on,quantity,unit,price,coverage,coverage_unit\nwhite,paint,2025-01-02,2,quart,38,100,ft2/quart\n")
            .With(
                "uses.csv",
                "id,date,item,quantity,unit,coats,area\nP1,2025-01-20,White,0.5,quart,,\nP1,,white,,,2,30\n")
            .With("counts.csv", "date,item,quantity,unit,notes\n2025-02-28,white,0.75,,after the desk\n2025-03-31,WHITE,Empty,quart,\n")
            .With("trips.csv", "trip,date,distance,hours,other_cost,notes\nT1,2025-01-03,24.5,3,4,\"rain, cold\"\n")
            .With("tools.csv", "item,bought_on,price,salvage,life_pieces,life_months\nsander,2024-12-01,120,20,100,\n")
            .With("overheads.csv", "month,item,amount\n2025-01,rent,80\n2025-02,rent,-5\n")
            .With("colors.csv", "color,family,hex\nsage,green,\n")
            .Read().Log!;

        Assert.Equal(new("P1", new(2025, 2, 20), 79.50m, 2), log.AskingPrices.Single());
        Assert.Equal<HoursEntry>(
            [new(null, new(2025, 2, 1), WorkTask.Sourcing, 2, 2), new("P1", null, null, 0.25m, 3)], log.Hours);
        Assert.Equal(
            new("white", "paint", new(2025, 1, 2), 2, "quart", 38, 100, "ft2/quart", 2), log.Supplies.Single());
        Assert.Equal<SupplyUse>(
            [new("P1", new(2025, 1, 20), "white", 0.5m, "quart", null, null, 2), new(
                "P1", null, "white", null, null, 2, 30, 3)],
            log.Uses);
        Assert.Equal<StockCount>(
            [new(new(2025, 2, 28), "white", 0.75m, null, "after the desk", 2), new(new(2025, 3, 31), "white", 0, "quart", null, 3)],
            log.Counts);
        Assert.Equal(new("T1", new(2025, 1, 3), 24.5m, 3, 4, "rain, cold", 2), log.Trips.Single());
        Assert.Equal(new("sander", new(2024, 12, 1), 120, 20, 100, null, 2), log.Tools.Single());
        Assert.Equal<Overhead>(
            [new(new(2025, 1, 1), "rent", 80, 2), new(new(2025, 2, 1), "rent", -5, 3)], log.Overheads);
        Assert.Equal(new("sage", "green", null, 2), log.Colours.Single());
    }

    [Fact]
    public void Ten_thousand_pieces_are_read()
    {
        StringBuilder pieces = new("id,type,count,width,condition,color,bought_on,bought_price,listed_on,asking_price,sold_on,sold_price,notes\n");
        for (int i = 0; i < 10_000; i++)
            pieces.Append(
                CultureInfo.InvariantCulture,
                $"P{i},dresser,1,48.5,worn,sage,2025-01-02,45.50,2025-02-03,240,2025-03-04,210.00,\"knobs, new\"\n");
        using LogFolder folder = new();
        folder.With("pieces.csv", pieces.ToString());

        Assert.Equal(10_000, folder.Read().Log!.Pieces.Length);
    }
}
