using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary>Wages against R: ReferenceData/wages/README.md, and one flip of ReferenceData/costing.</summary>
public sealed class WagesReferenceTests
{
    [Theory]
    [InlineData("log-60")]
    [InlineData("log-300")]
    [InlineData("log-3000")]
    public void Every_flip_and_quarter_paid_what_R_says(string name)
    {
        var report = WagesReport.Of(Log(name));
        var flips = report.Flips.ToDictionary(flip => flip.Id);
        var expected = Rows(name + "-by-flip");
        Assert.Equal(expected.Length, flips.Count);
        Assert.All(expected, row =>
        {
            Near(row, "profit", flips[row["id"]].FullProfit);
            Near(row, "wage", flips[row["id"]].FullWage);
            Near(row, "wage", flips[row["id"]].CashWage);
        });

        var quarters = Rows(name + "-by-quarter");
        Assert.Equal(quarters.Select(row => row["quarter"]), report.By(WageGroupBy.Quarter).Groups.Select(group => group.Name));
        Assert.All(quarters.Zip(report.By(WageGroupBy.Quarter).Groups), pair =>
        {
            Assert.Equal(pair.First["pieces"], pair.Second.Sum.Flips.ToString(CultureInfo.InvariantCulture));
            Near(pair.First, "profit", pair.Second.Sum.FullProfit);
            Near(pair.First, "wage", pair.Second.Sum.FullWage);
        });
    }

    [Theory]
    [InlineData("log-60")]
    [InlineData("log-300")]
    [InlineData("log-3000")]
    public void The_total_its_range_the_trend_and_the_quartiles_are_those_of_R(string name)
    {
        var report = WagesReport.Of(Log(name));
        var expected = Rows("wages").Single(row => row["log"] == name);
        Near(expected, "wage", report.Total.FullWage);
        Near(expected, "quartile_1", report.Spread!.LowerQuartile);
        Near(expected, "median", report.Spread.Median);
        Near(expected, "quartile_3", report.Spread.UpperQuartile);

        // Estimates are kept to a hundredth of a cent.
        const double Kept = 0.5001e-4;
        Near(expected, "low", report.Total.Range!.Low, Kept);
        Near(expected, "high", report.Total.Range.High, Kept);
        Near(expected, "slope", report.Trend!.ChangePerYear, Kept);
        Near(expected, "slope_low", report.Trend.Low, Kept);
        Near(expected, "slope_high", report.Trend.High, Kept);
    }

    [Fact]
    public void One_flip_pays_what_the_case_in_whole_cents_says()
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "ReferenceData", "costing", "14_one_flip");
        using JsonDocument input = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "input.json")));
        using JsonDocument answer = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "answer.json")));
        JsonElement given = input.RootElement.GetProperty("given");
        var report = WagesReport.Of(new()
        {
            Date = new(2025, 3, 1),
            Workshop = new()
            {
                Fees = new Workshop().Fees.Add("online", new(given.GetProperty("fee_bp").GetDecimal() / 10_000, Cents("fixed_fee"))),
            },
            Pieces =
            [
                new()
                {
                    Id = "P1", Type = "dresser", Trip = "T1", BoughtOn = new(2025, 1, 4), BoughtPrice = Cents("bought"),
                    SuppliesCost = Cents("supplies"), SoldOn = new(2025, 2, 1), SoldPrice = Cents("price"), Channel = "online",
                    Hours = given.GetProperty("minutes").GetDecimal() / 60,
                },
            ],
            Trips = [new("T1", new(2025, 1, 4), 0, null, Cents("trip"), null)],
            Tools = [new("brush", new(2025, 1, 1), Cents("wear"), null, 1, null)],
        });
        decimal expected = answer.RootElement.GetProperty("answer").GetProperty("wage_cents_per_hour").GetDecimal() / 100;
        Assert.Equal(1, (double)(report.Total.FullWage!.Value / expected), 1e-12);
        Assert.StartsWith("Your one flip paid 20.70 an hour", WagesSentences.Answer(report), StringComparison.Ordinal);

        decimal Cents(string name) => given.GetProperty(name).GetDecimal() / 100;
    }

    private static void Near(Dictionary<string, string> row, string column, decimal? actual, double within = 1e-6) =>
        Assert.Equal(double.Parse(row[column], CultureInfo.InvariantCulture), (double)actual!.Value, within);

    /// <summary>The log with fees of exactly 8 % and supplies as stated, so that no rounding plays a part.</summary>
    private static SalesLog Log(string name) => new()
    {
        Date = new(2024, 12, 31),
        Pieces =
        [
            .. Rows(name).Select(row => new Piece
            {
                Id = row["id"],
                Type = row["type"],
                Colour = row["color"],
                BoughtPrice = Number(row["buy_price"]),
                ListedOn = DateOnly.Parse(row["listed_on"], CultureInfo.InvariantCulture),
                SoldOn = row["sold_on"].Length == 0 ? null : DateOnly.Parse(row["sold_on"], CultureInfo.InvariantCulture),
                SoldPrice = Number(row["sold_price"]),
                Fees = Number(row["sold_price"]) * 0.08m,
                SuppliesCost = Number(row["supplies"]),
                Hours = Number(row["hours"]),
            }),
        ],
    };

    private static decimal? Number(string cell) =>
        cell.Length == 0 ? null : decimal.Parse(cell, CultureInfo.InvariantCulture);

    private static ImmutableArray<Dictionary<string, string>> Rows(string name)
    {
        string[] lines = File.ReadAllLines(
            Path.Combine(AppContext.BaseDirectory, "ReferenceData", "wages", name + ".csv"));
        string[] header = lines[0].Split(',');
        return [.. lines.Skip(1).Select(line => header.Zip(line.Split(',')).ToDictionary(cell => cell.First, cell => cell.Second))];
    }
}
