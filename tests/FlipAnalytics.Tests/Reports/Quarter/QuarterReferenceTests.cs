using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary>Quarters against sums made elsewhere: a script that reads the demo log, R on synthetic logs, textbook ratios.</summary>
public sealed class QuarterReferenceTests
{
    private const double Relative = 1e-12;

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void AQuarterOfTheDemoLogIsWhatAScriptFindsInItsFiles(int place)
    {
        using var document = Json("FlipAnalytics.Tests", "ReferenceData", "quarter-by-hand", "answer.json");
        JsonElement answer = document.RootElement.GetProperty("quarters")[place];
        SalesLog log = SalesLogReader.Read(House.Repository.PathOf("data-demo")).Log!
            .AsOf(Day(document.RootElement.GetProperty("as_of")));
        var report = QuarterReport.Of(
            log, ReportPeriod.Of(Day(answer.GetProperty("first")), Day(answer.GetProperty("last"))));
        (string Name, decimal Amount)[] found =
        [
            ("pieces_sold", report.Profit.Pieces),
            ("sales", report.Profit.Sales),
            ("delivery_charged", report.Profit.DeliveryCharged),
            ("purchases", report.Profit.Purchases),
            ("supplies", report.Profit.Supplies),
            ("outings", report.Profit.Outings),
            ("fees", report.Profit.Fees),
            ("delivery", report.Profit.Delivery),
            ("written_off", report.Profit.WrittenOff),
            ("tool_wear", report.Profit.ToolWear),
            ("overheads", report.Profit.Overheads),
            ("net", report.Profit.Net),
            ("money_in", report.Cash.In),
            ("money_out", report.Cash.Out),
            ("driving_reckoned", report.Cash.DrivingReckoned),
            ("stock_opening", report.Opening.Cost),
            ("stock_closing", report.Closing.Cost),
            ("cans_opening", report.Opening.InCans),
            ("cans_closing", report.Closing.InCans),
            ("tools_opening", report.Opening.Tools),
            ("tools_closing", report.Closing.Tools),
            ("bench_hours_of_sold", report.Hours.BenchOfSold),
            ("outing_hours_of_sold", report.Hours.OutingsOfSold),
            ("written_off_hours", report.Hours.OfWrittenOff),
            ("general_hours", report.Hours.General),
            ("hours_worked", decimal.Round(report.Hours.Worked, 6)),
        ];
        Assert.Equal(
            answer.EnumerateObject().Where(field => field.Value.ValueKind == JsonValueKind.Number)
                .Select(field => (field.Name, field.Value.GetDecimal())),
            found);
    }

    /// <summary>R's plain sums by quarter: ReferenceData/logs of the statistics tests.</summary>
    [Theory]
    [InlineData("01_log_60")]
    [InlineData("02_log_300")]
    [InlineData("03_log_3000")]
    public void QuartersOfASyntheticLogAreRsSums(string name)
    {
        string[] folder = ["FlipAnalytics.Statistics.Tests", "ReferenceData", "logs", name];
        using var document = Json([.. folder, "answer.json"]);
        JsonElement books = document.RootElement.GetProperty("books");
        JsonElement quarters = books.GetProperty("by_quarter");
        SalesLog log = Synthetic(
            File.ReadAllLines(House.Repository.PathOf(["tests", .. folder, "input.csv"])), books.GetProperty("fee").GetDecimal());
        for (int i = 0; i < quarters.GetProperty("quarter").GetArrayLength(); i++)
        {
            var report = QuarterReport.Of(log, ReportPeriod.Parse(quarters.GetProperty("quarter")[i].GetString()!)!);
            Assert.Equal(quarters.GetProperty("pieces")[i].GetInt32(), report.Profit.Pieces);
            Near("revenue", report.Profit.Sales);
            Near("fees", report.Profit.Fees);
            Near("bought", report.Profit.Purchases);
            Near("supplies", report.Profit.Supplies);
            Near("profit", report.Profit.Net);
            Near("hours", report.Hours.BenchOfSold);
            Near("pieces_without_hours", report.Hours.SoldWithout);
            Near("profit_with_hours", report.Hours.Wage?.Profit ?? 0);
            Near("wage_per_hour", report.Hours.Wage is { } wage ? wage.Profit / wage.Hours : 0);

            void Near(string column, decimal found) =>
                Assert.Equal(quarters.GetProperty(column)[i].GetDouble(), (double)found, 1e-6);
        }
    }

    /// <summary>ReferenceData/costing/11_break_even: two published exercises and one of our own.</summary>
    [Fact]
    public void BreakEvenIsFixedCostOverContribution()
    {
        using var input = Json("FlipAnalytics.Tests", "ReferenceData", "costing", "11_break_even", "input.json");
        using var output = Json("FlipAnalytics.Tests", "ReferenceData", "costing", "11_break_even", "answer.json");
        JsonElement given = input.RootElement.GetProperty("given").GetProperty("cases");
        JsonElement answer = output.RootElement.GetProperty("answer");
        for (int i = 0; i < 3; i++)
        {
            BreakEven even = new(At(given, "fixed"), At(given, "price") - At(given, "variable"));
            Close(At(answer, "unit_contribution"), even.ContributionAFlip);
            Close(At(answer, "break_even_units"), even.Flips!.Value);
            Assert.Equal((int)At(answer, "break_even_whole_units"), even.WholeFlips);
            Close(At(answer, "units_for_target"), even.FlipsFor(At(given, "target"))!.Value);

            decimal At(JsonElement table, string column) => table.GetProperty(column)[i].GetDecimal();
        }
    }

    /// <summary>ReferenceData/costing/12_stock_ratios: a published example and two of our own.</summary>
    [Fact]
    public void StockRatiosAreTheTextbooks()
    {
        using var output = Json("FlipAnalytics.Tests", "ReferenceData", "costing", "12_stock_ratios", "answer.json");
        JsonElement answer = output.RootElement.GetProperty("answer");
        Close(Of("a_gmroi"), new StockRatios(83_000, 0, 129_500, 365).ReturnOnStock!.Value);

        answer = output.RootElement.GetProperty("answer").GetProperty("b");
        StockRatios year = new(StockRatios.Average([1895, 2410.6m]), 7320.4m, 18450.75m - 7320.4m, 365);
        Close(Of("average_stock"), year.AverageStock);
        Close(Of("gmroi"), year.ReturnOnStock!.Value);
        Close(Of("turnover"), year.Turnover!.Value);
        Close(Of("turnover"), year.TurnoverAYear!.Value);
        Close(Of("days_in_stock"), year.DaysOfStock!.Value);

        answer = output.RootElement.GetProperty("answer").GetProperty("c");
        StockRatios quarter = new(StockRatios.Average([900, 1250, 1100, 1400]), 4100, 9600 - 4100, 91);
        Close(Of("average_stock"), quarter.AverageStock);
        Close(Of("gmroi"), quarter.ReturnOnStock!.Value);
        Close(Of("gmroi_yearly"), quarter.ReturnOnStockAYear!.Value);
        Close(Of("turnover"), quarter.Turnover!.Value);
        Close(Of("days_in_stock"), quarter.DaysOfStock!.Value);

        decimal Of(string name) => answer.GetProperty(name).GetDecimal();
    }

    private static SalesLog Synthetic(string[] lines, decimal fee)
    {
        string[] head = lines[0].Split(',');
        return new()
        {
            Date = new(2024, 12, 31),
            Pieces =
            [
                .. lines.Skip(1).Where(line => line.Length > 0).Select(line => line.Split(',')).Select(cells => new Piece
                {
                    Id = Text(cells, "id")!,
                    Type = Text(cells, "type")!,
                    BoughtOn = DateOnly.Parse(Text(cells, "listed_on")!),
                    BoughtPrice = Amount(cells, "buy_price"),
                    SuppliesCost = Amount(cells, "supplies"),
                    Hours = Amount(cells, "hours"),
                    ListedOn = DateOnly.Parse(Text(cells, "listed_on")!),
                    SoldOn = Text(cells, "sold_on") is { } day ? DateOnly.Parse(day) : null,
                    SoldPrice = Amount(cells, "sold_price"),
                    Fees = Amount(cells, "sold_price") * fee,
                }),
            ],
        };

        string? Text(string[] cells, string column) =>
            cells[Array.IndexOf(head, column)].Trim('"') is { Length: > 0 } text and not "NA" ? text : null;

        decimal? Amount(string[] cells, string column) =>
            Text(cells, column) is { } text ? decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture) : null;
    }

    private static void Close(decimal expected, decimal found) =>
        Assert.InRange(found, expected * (decimal)(1 - Relative), expected * (decimal)(1 + Relative));

    private static DateOnly Day(JsonElement text) => DateOnly.ParseExact(text.GetString()!, "yyyy-MM-dd");

    private static JsonDocument Json(params string[] path) => JsonDocument.Parse(House.Repository.Read(["tests", .. path]));
}
