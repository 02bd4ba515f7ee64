namespace FlipAnalytics.Tests;

/// <summary>What a year's sheet asks a professional: by the currency, which is only a hint, and each with its source.</summary>
public sealed class YearPromptsTests
{
    public static TheoryData<string, string, int> Countries => new()
    {
        { "USD", "the US", 8 },
        { "GBP", "the UK", 7 },
        { "EUR", "the euro area", 4 },
        { "CAD", "Canada", 5 },
        { "AUD", "Australia", 4 },
        { "JPY", "Japan", 4 },
        { "CHF", "any country", 6 },
    };

    [Theory]
    [MemberData(nameof(Countries))]
    public void EveryCurrencyHasQuestionsWithASourceAndHowGoodItIs(string currency, string place, int atLeast)
    {
        YearReport sheet = Sheet(currency, "2025", 900);
        Assert.InRange(sheet.Prompts.Count(prompt => prompt.Place == place), atLeast, 20);
        Assert.All(sheet.Prompts, prompt =>
        {
            Assert.EndsWith(".", prompt.Text, StringComparison.Ordinal);
            Assert.NotEmpty(prompt.Source);
            Assert.NotEmpty(prompt.Status);
        });
        string whose = YearPrompts.Whose(sheet.Workshop);
        Assert.Contains(currency, whose, StringComparison.Ordinal);
        Assert.Contains(currency == "CHF" ? "No country's own" : "only a hint", whose, StringComparison.Ordinal);
        Assert.Contains(whose[..40], YearText.Render(sheet, all: true), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("GBP", "2025", "flip year 2025-04-06..2026-04-05")]
    [InlineData("AUD", "2024", "flip year 2024-07-01..2025-06-30")]
    public void ACalendarYearWhereTheTaxYearIsAnotherIsAnsweredByTheCallForThat(string currency, string year, string call)
    {
        Assert.Contains(Sheet(currency, year, 900).Prompts, prompt => prompt.Text.Contains(call, StringComparison.Ordinal));
        string span = call["flip year ".Length..];
        Assert.DoesNotContain(Sheet(currency, span, 900).Prompts, prompt => prompt.Text.Contains("flip year", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("CAD", 22_500, "register for GST/HST")]
    [InlineData("AUD", 56_250, "you register for GST")]
    [InlineData("GBP", 15_000, "quarterly updates")]
    [InlineData("JPY", 7_500_000, "consumption tax is due")]
    public void AThresholdIsNamedFromThreeQuartersOfTheWayOn(string currency, int takings, string said)
    {
        Assert.DoesNotContain(Sheet(currency, "2025", takings).Prompts, prompt => prompt.Text.Contains(said, StringComparison.Ordinal));
        Assert.Contains(Sheet(currency, "2025", takings + 1).Prompts, prompt => prompt.Text.Contains(said, StringComparison.Ordinal));
    }

    [Fact]
    public void AYearWithoutAPieceKeptAsksNothingAboutPiecesKept()
    {
        SalesLog log = Log("USD", 900);
        YearReport sheet = YearReport.Of(log with { Pieces = [.. log.Pieces.Where(piece => !piece.IsGone)] }, ReportPeriod.Parse("2025")!);
        Assert.DoesNotContain(sheet.Prompts, prompt => prompt.Text.Contains("kept pieces", StringComparison.Ordinal));
        Assert.Contains(Sheet("USD", "2025", 900).Prompts, prompt => prompt.Text.Contains("kept pieces that had cost $15;", StringComparison.Ordinal));
    }

    private static YearReport Sheet(string currency, string year, decimal takings) =>
        YearReport.Of(Log(currency, takings), ReportPeriod.Parse(year)!);

    private static SalesLog Log(string currency, decimal takings) => new()
    {
        Date = new(2026, 1, 31),
        Workshop = new() { Symbol = "$", Currency = Currency.Of(currency), Mileage = [new(new(2020, 1, 1), 1)] },
        Pieces =
        [
            new() { Id = "A", Type = "desk", BoughtOn = new(2025, 4, 10), BoughtPrice = 20, SoldOn = new(2025, 8, 1), SoldPrice = takings, Trip = "T" },
            new() { Id = "B", Type = "desk", BoughtOn = new(2025, 2, 1), BoughtPrice = 30 },
            new() { Id = "C", Type = "desk", BoughtOn = new(2025, 2, 1), BoughtPrice = 15, LeftOn = new(2025, 9, 1), LeftAs = LeftAs.Kept },
            new() { Id = "D", Type = "desk", BoughtOn = new(2024, 8, 1), BoughtPrice = 15, SoldOn = new(2024, 9, 1), SoldPrice = 40 },
        ],
        Trips = [new("T", new(2025, 4, 10), 12, null, null, null), new("U", new(2024, 8, 1), 3, null, null, null)],
        Tools = [new("saw", new(2024, 1, 1), 50, null, null, 48)],
    };
}
