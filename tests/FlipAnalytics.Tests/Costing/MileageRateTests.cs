namespace FlipAnalytics.Tests;

/// <summary>Published mileage rates by date; sources stand with the rates.</summary>
public sealed class MileageRateTests
{
    [Theory]
    [InlineData("US", 2022, 6, 30, 0.585)]
    [InlineData("US", 2022, 7, 1, 0.625)]
    [InlineData("US", 2026, 1, 1, 0.725)]
    [InlineData("UK", 2026, 4, 5, 0.45)]
    [InlineData("UK", 2026, 4, 6, 0.55)]
    [InlineData("Canada", 2025, 12, 31, 0.72)]
    public void TheRateInForceOnADay(string country, int year, int month, int day, decimal rate) =>
        Assert.Equal(rate, MileageRates.On(country, new(year, month, day))!.Rate);

    /// <summary>12,000 miles: £5,000 at 45p and 25p, £6,000 at 55p and 25p.</summary>
    [Theory]
    [InlineData(2026, 4, 5, 5_000)]
    [InlineData(2026, 4, 6, 6_000)]
    public void BeyondTenThousandMilesTheUkRateIsLower(int year, int month, int day, decimal pounds) =>
        Assert.Equal(pounds, MileageRates.Amount(MileageRates.On("UK", new(year, month, day))!, 12_000));

    /// <summary>6,000 km in 2026 in a province: $4,320.00.</summary>
    [Fact]
    public void BeyondFiveThousandKilometresTheCanadianRateIsLower() =>
        Assert.Equal(4_320m, MileageRates.Amount(MileageRates.On("Canada", new(2026, 3, 1))!, 6_000));

    [Fact]
    public void TheThresholdCountsAllTripsOfATaxYear()
    {
        CostBook book = CostBook.Of(Trips("GBP", null,
            (new(2025, 4, 5), 9_999), (new(2025, 4, 6), 9_000), (new(2025, 6, 1), 2_000), (new(2026, 4, 5), 100)));
        Assert.Equal([4_499.55m, 4_050m, 700m, 25m], book.Overheads.Select(line => line.Amount));
    }

    [Fact]
    public void TheOwnersRateOverridesTheTableFromItsDay()
    {
        SalesLog log = Trips("USD", new(new(2025, 3, 1), 0.5m), (new(2025, 2, 28), 10), (new(2025, 3, 1), 10));
        Assert.Equal([7m, 5m], CostBook.Of(log).Overheads.Select(line => line.Amount));
    }

    [Fact]
    public void WithoutARateDrivingIsUnknownAndSaidSo()
    {
        SalesLog log = Trips("EUR", null, (new(2025, 2, 28), 10)) with
        {
            Pieces = [new() { Id = "P1", Type = "dresser", Trip = "T0" }],
        };
        CostBook book = CostBook.Of(log);
        Assert.Null(book["P1"].Known(CostKind.Trip));
        Assert.Contains(book.Notes, note => note.Contains("[mileage]", StringComparison.Ordinal));
    }

    private static SalesLog Trips(string currency, MileageRate? own, params (DateOnly Day, decimal Distance)[] trips) => new()
    {
        Date = new(2026, 12, 31),
        Workshop = new() { Currency = Currency.Of(currency), Mileage = own is null ? [] : [own] },
        Trips = [.. trips.Select((trip, i) => new Trip($"T{i}", trip.Day, trip.Distance, null, null, null))],
    };
}
