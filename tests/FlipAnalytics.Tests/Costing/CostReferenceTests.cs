using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary>Costing against cases worked in whole cents in R: see ReferenceData/costing/README.md.</summary>
public sealed class CostReferenceTests
{
    private static readonly Currency Dollar = Currency.Of("USD");

    [Theory]
    [InlineData("01_moving_average_perpetual", CostingMethod.Average)]
    [InlineData("02_fifo", CostingMethod.Fifo)]
    [InlineData("05_paint_ml_fifo", CostingMethod.Fifo)]
    [InlineData("06_paint_ml_moving_average", CostingMethod.Average)]
    public void AnAccountIssuesAndKeepsWhatTheTextbookPrints(string name, CostingMethod method)
    {
        var (given, answer) = Case(name);
        SupplyAccount account = new(method, Dollar);
        List<decimal> issued = [];
        List<decimal> balances = [];
        JsonElement events = given.GetProperty("events");
        for (int i = 0; i < events.GetProperty("kind").GetArrayLength(); i++)
        {
            decimal quantity = events.GetProperty("qty")[i].GetDecimal();
            if (events.GetProperty("kind")[i].GetString() == "buy")
                account.Buy(Bought(quantity, Cents(events.GetProperty("cents")[i]), i));
            else
                issued.Add(account.Take(quantity).Cost);
            balances.Add(account.Value);
        }

        Assert.Equal(All(answer, "issue_cents"), issued);
        Assert.Equal(Cents(answer.GetProperty("left_cents")), account.Value);
        Assert.Equal(answer.GetProperty("left_qty").GetDecimal(), account.Quantity);
        if (answer.TryGetProperty("balance_cents_after_each_event", out _))
            Assert.Equal(All(answer, "balance_cents_after_each_event"), balances);
    }

    private static Can Bought(decimal quantity, decimal price, int place) =>
        new(place, new("goods", null, null, quantity, null, price, null, null, place + 1));

    [Fact]
    public void OneAverageForThePeriodLeavesWhatTheTextbookPrints()
    {
        var (given, answer) = Case("03_periodic_average");
        SupplyAccount account = new(CostingMethod.Average, Dollar);
        decimal used = 0;
        JsonElement events = given.GetProperty("events");
        for (int i = 0; i < events.GetProperty("kind").GetArrayLength(); i++)
        {
            if (events.GetProperty("kind")[i].GetString() == "buy")
                account.Buy(Bought(events.GetProperty("qty")[i].GetDecimal(), Cents(events.GetProperty("cents")[i]), i));
            else
                used += events.GetProperty("qty")[i].GetDecimal();
        }

        Assert.Equal(Cents(answer.GetProperty("issued_cents")), account.Take(used).Cost);
        Assert.Equal(Cents(answer.GetProperty("left_cents")), account.Value);
    }

    /// <summary>Lots kept apart are items of their own; what is used of each is named.</summary>
    [Fact]
    public void LotsThatAreNamedKeepTheirOwnCost()
    {
        var (given, answer) = Case("04_specific_lots");
        JsonElement events = given.GetProperty("events");
        int[] lots = [.. Enumerable.Range(0, 10).Where(i => events.GetProperty("kind")[i].GetString() == "buy")];
        List<(decimal Quantity, decimal UnitPrice)> left =
        [
            .. given.GetProperty("left_lots").EnumerateArray()
                .Select(lot => (lot.GetProperty("qty").GetDecimal(), lot.GetProperty("unit_cents").GetDecimal() / 100)),
        ];
        List<SupplyPurchase> purchases = [];
        List<SupplyUse> uses = [];
        // A supply that the log never uses counts as a consumable of every piece, so a lot kept whole stays out of this log.
        decimal keptWhole = 0;
        foreach (int i in lots)
        {
            decimal quantity = events.GetProperty("qty")[i].GetDecimal();
            decimal price = Cents(events.GetProperty("cents")[i]);
            string item = $"lot {i}";
            decimal kept = left.Where(lot => lot.UnitPrice == price / quantity).Sum(lot => lot.Quantity);
            if (kept == quantity)
            {
                keptWhole += price;
                continue;
            }

            purchases.Add(new(item, null, new(2025, 1, 1 + i), quantity, "each", price, null, null));
            uses.Add(new("P1", new(2025, 1, 20), item, quantity - kept, "each", null, null));
        }

        CostBook book = CostBook.Of(new()
        {
            Date = new(2025, 2, 1),
            Pieces = [new() { Id = "P1", Type = "dresser" }],
            Supplies = [.. purchases],
            Uses = [.. uses],
        });
        Assert.Equal(Cents(answer.GetProperty("issued_cents")), book["P1"].Of(CostKind.Supplies));
        Assert.Equal(Cents(answer.GetProperty("left_cents")), keptWhole + book.SuppliesLeft.Sum(stock => stock.Value));
    }

    [Fact]
    public void AToolWearsByMonthsAsTheTextbookAndTheScriptHaveIt()
    {
        var (given, answer) = Case("07_straight_line");
        Assert.Equal(
            All(answer, "per_year_cents"),
            Parts(Cents(given.GetProperty("cost_cents")), Cents(given.GetProperty("salvage_cents")), 10, Enumerable.Repeat(1m, 10)));
        JsonElement tool = given.GetProperty("tool");
        Assert.Equal(
            All(answer, "tool_per_month_cents"),
            Parts(Cents(tool.GetProperty("cost_cents")), Cents(tool.GetProperty("salvage_cents")), 36, Enumerable.Repeat(1m, 36)));
    }

    [Fact]
    public void AToolWearsByUseAsTheTextbookAndTheScriptHaveIt()
    {
        var (given, answer) = Case("08_units_of_production");
        Assert.Equal(
            All(answer, "cents"),
            Parts(
                Cents(given.GetProperty("cost_cents")), Cents(given.GetProperty("salvage_cents")),
                given.GetProperty("life_units").GetDecimal(), Numbers(given.GetProperty("used"))));
        JsonElement sander = given.GetProperty("sander");
        Assert.Equal(
            All(answer, "sander_cents"),
            Parts(
                Cents(sander.GetProperty("cost_cents")), Cents(sander.GetProperty("salvage_cents")),
                sander.GetProperty("life_quarter_hours").GetDecimal(), Numbers(sander.GetProperty("used_quarter_hours"))));
    }

    [Fact]
    public void AJointCostIsSharedBySalesValueToTheCent()
    {
        var (given, answer) = Case("10_joint_cost_by_sales_value");
        Assert.Equal(
            All(answer, "joint"),
            Shares.InProportion(Cents(given.GetProperty("joint_cents")), Numbers(given.GetProperty("sales_value_cents")), 2));
        foreach (string lot in (string[])["lot", "lot2"])
        {
            JsonElement part = given.GetProperty(lot);
            decimal paid = Cents(part.GetProperty("paid_cents"));
            CostBook book = CostBook.Of(new()
            {
                Date = new(2026, 1, 1),
                Pieces =
                [
                    .. Numbers(part.GetProperty("expected_price_cents")).Select((expected, i) => new Piece
                    {
                        Id = $"P{i}",
                        Type = "chair",
                        Lot = "estate",
                        BoughtPrice = i == 0 ? paid : null,
                        ExpectedPrice = expected / 100,
                    }),
                ],
            });
            Assert.Equal(All(answer, lot), book.Pieces.Select(piece => piece.Of(CostKind.Purchase)));
            Assert.Equal(paid, book.Total(CostKind.Purchase).OnPieces);
        }
    }

    [Fact]
    public void ATripCostsItsMilesAtTheRateAndItsSharesAddUp()
    {
        var (given, answer) = Case("13_trip_shared");
        decimal miles = given.GetProperty("tenths_of_mile").GetDecimal() / 10;
        CostBook book = CostBook.Of(new()
        {
            Date = new(2024, 7, 1),
            Pieces = [.. "ABC".Select(id => new Piece { Id = $"{id}", Type = "chair", Trip = "T1" })],
            Trips = [new("T1", new(2024, 6, 1), miles, null, null, null)],
        });
        decimal trip = Cents(answer.GetProperty("trip_cents"));
        Assert.Equal(trip, book.Total(CostKind.Trip).Spent);
        Assert.Equal([9.76m, 9.76m, 9.76m], book.Pieces.Select(piece => piece.Of(CostKind.Trip)));
        Assert.Equal(All(answer, "share_cents"), Shares.InProportion(trip, Numbers(given.GetProperty("weights")), 2));
    }

    [Fact]
    public void OneFlipFromSalePriceToProfit()
    {
        var (given, answer) = Case("14_one_flip");
        CostBook book = CostBook.Of(new()
        {
            Date = new(2025, 3, 1),
            Workshop = new()
            {
                Fees = new Workshop().Fees.Add(
                    "online", new(given.GetProperty("fee_bp").GetDecimal() / 10_000, Cents(given.GetProperty("fixed_fee")))),
            },
            Pieces =
            [
                new()
                {
                    Id = "P1",
                    Type = "dresser",
                    Trip = "T1",
                    BoughtOn = new(2025, 1, 4),
                    BoughtPrice = Cents(given.GetProperty("bought")),
                    SuppliesCost = Cents(given.GetProperty("supplies")),
                    SoldOn = new(2025, 2, 1),
                    SoldPrice = Cents(given.GetProperty("price")),
                    Channel = "Online",
                    Hours = given.GetProperty("minutes").GetDecimal() / 60,
                },
            ],
            Trips = [new("T1", new(2025, 1, 4), 0, null, Cents(given.GetProperty("trip")), null)],
            Tools = [new("brush", new(2025, 1, 1), Cents(given.GetProperty("wear")), null, 1, null)],
        });
        PieceCost piece = book["P1"];
        decimal profit = piece.NetProceeds!.Value - piece.Of(CostKind.Purchase) - piece.Of(CostKind.Supplies)
            - piece.Of(CostKind.Trip) - piece.Of(CostKind.Tools);
        Assert.Equal(Cents(answer.GetProperty("fee_cents")), piece.Of(CostKind.Fees));
        Assert.Equal(Cents(answer.GetProperty("profit_cents")), profit);
    }

    private static (JsonElement Given, JsonElement Answer) Case(string name)
    {
        string folder = Path.Combine(AppContext.BaseDirectory, "ReferenceData", "costing", name);
        return (Read("input.json", "given"), Read("answer.json", "answer"));

        JsonElement Read(string file, string property)
        {
            using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, file)));
            return document.RootElement.GetProperty(property).Clone();
        }
    }

    private static decimal[] Parts(decimal price, decimal salvage, decimal life, IEnumerable<decimal> used)
    {
        decimal sum = 0;
        decimal[] worn = [0, .. used.Select(part => ToolWear.Worn(price, salvage, sum += part, life, Dollar))];
        return [.. worn.Skip(1).Zip(worn, (later, earlier) => later - earlier)];
    }

    private static decimal Cents(JsonElement cents) => cents.GetDecimal() / 100;

    private static decimal[] All(JsonElement answer, string name) => [.. Numbers(answer.GetProperty(name)).Select(c => c / 100)];

    private static decimal[] Numbers(JsonElement numbers) => [.. numbers.EnumerateArray().Select(n => n.GetDecimal())];
}
