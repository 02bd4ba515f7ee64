using System.Globalization;
using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary>The most to pay where it can be worked out by hand or by quadrature.</summary>
public class CeilingByHandTests
{
    private static readonly Workshop Plain = new()
    {
        TargetWage = 15,
        Fees = new Workshop().Fees.Add("online", new(0.1m, 1.50m)),
    };

    private static readonly PurchaseTerms Online = new() { Channel = "online" };

    /// <summary>260·(1 − 0.1) − 1.50 − 12 − 30 − 15·8 = 70.50.</summary>
    [Fact]
    public void Stated_price_hours_and_supplies_give_the_ceiling_to_the_cent()
    {
        PurchaseDecision decision = Workbench.Decide(Delivered(Plain), Workbench.StatedDresser, Online);
        Assert.Equal(70.50m, decision.Ceiling);
        Assert.Equal(190.50m, decision.CeilingBreakEven);
        Assert.Equal(
            [
                ("sale price", 260m), ("channel fees", -27.5m), ("delivery", -12m), ("supplies", -30m), ("hours", -120m),
                ("most to pay", 70.5m),
            ],
            decision.Waterfall.Select(step => (step.Item, step.Amount)));
    }

    /// <summary>The same less 0.02 a square foot and day on 58 × 18 / 144 = 7.25 square feet.</summary>
    [Fact]
    public void Storage_takes_its_rate_times_floor_area_times_mean_days()
    {
        PurchaseDecision decision =
            Workbench.Decide(Delivered(Plain with { Storage = 0.02m }), Workbench.StatedDresser, Online);
        Assert.Equal(70.50m - 0.02m * 7.25m * decision.DaysOnMarket!.Mean, decision.Ceiling!.Value, Within(0.02m));
        Assert.Contains(decision.Waterfall, step => step.Item == "storage" && step.Amount < 0);
    }

    /// <summary>In centimetres: 147 × 46 / 10,000 = 0.6762 square metres an item, two of them in a pair.</summary>
    [Fact]
    public void A_pair_takes_the_floor_of_two()
    {
        Workshop metric = Plain with { LengthUnit = LengthUnit.Centimetre, Storage = 0.5m };
        PurchaseDecision decision = Workbench.Decide(
            Delivered(metric), Workbench.StatedDresser with { Width = 147, Depth = 46, Height = 84, Count = 2 }, Online);
        Assert.Equal(70.50m - 0.5m * 2 * 0.6762m * decision.DaysOnMarket!.Mean, decision.Ceiling!.Value, Within(0.05m));
    }

    /// <summary>With money tied up, (S(1 − f) − g − L − C − w·H) / (1 + r·D) lies between D's range ends.</summary>
    [Fact]
    public void Money_tied_up_divides_by_one_and_the_rate_times_the_days()
    {
        PurchaseDecision decision =
            Workbench.Decide(Delivered(Plain with { CapitalRate = 0.365_25m }), Workbench.StatedDresser, Online);
        // Jensen: the mean of 1 / (1 + r·D) is a little above that of the mean days.
        double atMeanDays = 70.5 / (1 + 0.001 * (double)decision.DaysOnMarket!.Mean);
        Assert.InRange((double)decision.Ceiling!.Value, atMeanDays, 1.02 * atMeanDays);
        Assert.Contains(decision.Waterfall, step => step.Item == "money tied up" && step.Amount < 0);
    }

    /// <summary>
    /// Sale price lognormal, days Weibull, hours and supplies stated, against quadrature in R: see the folder's README.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void The_mean_over_the_nodes_is_that_of_quadrature(int row)
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "ReferenceData", "most-to-pay");
        string[] lines = File.ReadAllLines(Path.Combine(folder, "input.csv"));
        var cells = lines[0].Split(',').Select(name => name.Trim('"')).Zip(lines[row + 1].Split(','))
            .ToDictionary(pair => pair.First, pair => pair.Second);
        double Input(string name) => double.Parse(cells[name], CultureInfo.InvariantCulture);
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "answer.json")));
        JsonElement answer = document.RootElement.GetProperty("answers")[row];
        double Expected(string name) => answer.GetProperty(name).GetDouble();

        var candidate = new Candidate { Id = "C", Type = "desk", Hours = (decimal)Input("h"), Supplies = (decimal)Input("c") };
        var none = (double.NegativeInfinity, double.PositiveInfinity);
        var selling = new SellingTerms { FeeRate = (decimal)Input("f"), FeeFixed = 0, Deliveries = [], SaleCount = 0 };
        var workshop = new Workshop { CapitalRate = (decimal)Input("r") * 365.25m };
        JointForecast forecast = JointForecast.Of(
            candidate,
            new(
                new(0, 0, 0, 0, 0, ResidualShape.Normal, none),
                new(Input("mu"), Input("s") * Input("s"), 0, 0, 0, ResidualShape.Normal, none),
                null,
                new(Math.Log(Input("scale")), 0, -Math.Log(Input("shape")), 0, 0),
                null,
                new(0, 0, 0, 0)),
            selling,
            JointForecast.Nodes);
        var affordable = new AffordablePrices(forecast, selling, workshop, null);
        double[] prices = affordable.At(Input("w"));

        double oneOfAMillionDraws = answer.GetProperty("monte_carlo").GetProperty("mean_of_ratio_se").GetDouble();
        Assert.Equal(Expected("mean_of_ratio"), prices.Average(), 4 * oneOfAMillionDraws);
        Assert.Equal(
            Expected("prob_loss_at_offer"), prices.Count(p => p < Input("offer")) / (double)prices.Length, 4.0 / prices.Length);
        Assert.Equal(Expected("expected_wage_at_offer"), affordable.ExpectedWage(Input("offer"))!.Value, 0.05);
        Array.Sort(prices);
        Assert.Equal(
            Expected("price_with_20pct_loss"), prices[(int)(0.2 * prices.Length)], 20 * oneOfAMillionDraws);
    }

    private static Func<decimal, decimal, bool> Within(decimal tolerance) => (a, b) => Math.Abs(a - b) <= tolerance;

    // Every sale was delivered at 12 net, so delivery is no matter of chance.
    private static SalesLog Delivered(Workshop workshop) => new()
    {
        Date = new(2026, 3, 31),
        Workshop = workshop,
        Pieces =
        [
            .. Enumerable.Range(0, 6).Select(i => new Piece
            {
                Id = string.Create(CultureInfo.InvariantCulture, $"P{i}"),
                Type = "dresser",
                ListedOn = new DateOnly(2026, 1, 1).AddDays(i),
                SoldOn = new DateOnly(2026, 2, 1).AddDays(3 * i),
                AskingPrice = 300,
                SoldPrice = 240 + 10 * i,
                Hours = 8 + i,
                SuppliesCost = 30,
                DeliveryCost = 20,
                DeliveryCharged = 8,
            }),
        ],
    };
}
