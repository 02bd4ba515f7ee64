using System.Text;

namespace FlipAnalytics.Tests;

public sealed class WorkshopReaderTests
{
    [Fact]
    public void Every_setting_is_read()
    {
        (Workshop workshop, LogProblem[] problems) = Read("""
            name = "The Shed"
            currency = "eur"
            symbol = "€"
            length_unit = "cm"
            distance_unit = "km"
            target_wage = 15.50
            hours_per_week = 12
            [fees.online]
            rate = 0.13
            fixed = 0.30
            [fees."market stall"]
            fixed = 5
            [mileage]
            "2026-01-01" = 0.725
            2025-01-01 = 0.70
            [costing]
            method = "average"
            capital_rate = 0.05
            storage = 0.01
            [guess.dresser]
            sale_price = [150, 200.5, 280]
            hours = { low = 6, likely = 9, high = 12 }
            [guess.dresser.supplies]
            low = 20
            likely = 30
            high = 45
            """);

        Assert.Empty(problems);
        Assert.Equal(("The Shed", "EUR", "€"), (workshop.Name, workshop.Currency.Code, workshop.Symbol));
        Assert.Equal((LengthUnit.Centimetre, DistanceUnit.Kilometre), (workshop.LengthUnit, workshop.DistanceUnit));
        Assert.Equal((15.50m, 12m), (workshop.TargetWage!.Value, workshop.HoursPerWeek!.Value));
        Assert.Equal(new FeeRule(0.13m, 0.30m), workshop.Fees["Online"]);
        Assert.Equal(new FeeRule(0, 5), workshop.Fees["market stall"]);
        Assert.Equal<MileageRate>([new(new(2025, 1, 1), 0.70m), new(new(2026, 1, 1), 0.725m)], workshop.Mileage);
        Assert.Equal((CostingMethod.Average, 0.05m, 0.01m), (workshop.Costing, workshop.CapitalRate, workshop.Storage));
        Assert.Equal(
            new TypeGuess(new(150, 200.5m, 280), new(6, 9, 12), null, new(20, 30, 45)), workshop.Guesses["Dresser"]);
    }

    [Fact]
    public void A_missing_file_has_the_defaults_and_is_no_problem()
    {
        using LogFolder folder = new();
        LogReading reading = folder.With("pieces.csv", "type,bought_price\n").Read();

        Assert.False(reading.HasWorkshop);
        Assert.Equal("USD", reading.Log!.Workshop.Currency.Code);
    }

    [Theory]
    [InlineData("currency = \"dollars\"", "currency", "three letters")]
    [InlineData("currency = 5", "currency", "a text in quotes")]
    [InlineData("length_unit = \"feet\"", "length_unit", "\"in\" or \"cm\"")]
    [InlineData("distance_unit = 3", "distance_unit", "\"mi\" or \"km\"")]
    [InlineData("target_wage = -1", "target_wage", "zero or more")]
    [InlineData("target_wage = \"15\"", "target_wage", "without quotes")]
    [InlineData("target_wage = inf", "target_wage", "a number")]
    [InlineData("target_wage = [15]", "target_wage", "a number")]
    [InlineData("hours_per_week = 0", "hours_per_week", "at most 168")]
    [InlineData("hours_per_week = 169", "hours_per_week", "at most 168")]
    [InlineData("fees = 0.1", "fees", "a table")]
    [InlineData("fees.online = 0.1", "fees.online", "[fees.online]")]
    [InlineData("fees.online.rate = 1", "fees.online.rate", "0 to below 1")]
    [InlineData("fees.online.rate = 13", "fees.online.rate", "0 to below 1")]
    [InlineData("fees.online.fixed = -1", "fees.online.fixed", "zero or more")]
    [InlineData("fees.online.rate = 0.1\nfees.ONLINE.rate = 0.2", "fees.ONLINE", "each name once")]
    [InlineData("mileage.2026 = 0.7", "mileage.2026", "a date such as")]
    [InlineData("mileage.2026-01-01 = \"a lot\"", "mileage.2026-01-01", "a number")]
    [InlineData("costing.method = \"lifo\"", "costing.method", "\"fifo\" or \"average\"")]
    [InlineData("costing.capital_rate = 5", "costing.capital_rate", "0 to below 1")]
    [InlineData("guess.desk.hours = [3, 2, 4]", "guess.desk.hours", "rising order")]
    [InlineData("guess.desk.hours = [0, 2, 4]", "guess.desk.hours", "more than zero")]
    [InlineData("guess.desk.hours = [2, 4]", "guess.desk.hours", "three numbers")]
    [InlineData("guess.desk.hours = {low = 2, high = 4}", "guess.desk.hours", "three numbers")]
    [InlineData("guess.desk.hours = 4", "guess.desk.hours", "three numbers")]
    public void A_bad_value_is_reported_and_the_default_kept(string toml, string key, string expected)
    {
        (Workshop workshop, LogProblem[] problems) = Read("name = \"The Shed\"\n" + toml + "\n");

        LogProblem problem = Assert.Single(problems);
        Assert.Equal((Severity.Error, key), (problem.Severity, problem.Column));
        Assert.Equal(toml.Contains('\n', StringComparison.Ordinal) ? 3 : 2, problem.Row);
        Assert.Contains(expected, problem.Expected, StringComparison.Ordinal);
        Assert.Equal(("The Shed", "USD"), (workshop.Name, workshop.Currency.Code));
        Assert.Null(workshop.TargetWage);
    }

    [Theory]
    [InlineData("Target_Wage = 15", "if you mean target_wage")]
    [InlineData("targetwage = 15", "if you mean target_wage")]
    [InlineData("favourite = 1", "what can stand here is name, currency")]
    [InlineData("fees.online.rat = 0.1", "if you mean rate")]
    [InlineData("guess.desk.price = [1, 2, 3]", "sale_price")]
    public void A_key_that_means_nothing_draws_a_warning(string toml, string remedy)
    {
        LogProblem problem = Assert.Single(Read(toml + "\n").Problems);

        Assert.Equal(Severity.Warning, problem.Severity);
        Assert.Contains(remedy, problem.Remedy, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("name = \"The Shed\"\ntarget_wage = 15,50\n", 2)]
    [InlineData("name = The Shed\n", 1)]
    [InlineData("target_wage = 15\ntarget_wage = 16\n", 2)]
    [InlineData("[fees\n", 1)]
    public void What_is_no_toml_is_reported_with_its_line_and_none_of_it_used(string toml, int line)
    {
        (Workshop workshop, LogProblem[] problems) = Read(toml);

        LogProblem problem = Assert.Single(problems);
        Assert.Equal((Severity.Error, line), (problem.Severity, problem.Row));
        Assert.Equal(toml.Split('\n')[line - 1], problem.Found);
        Assert.Null(workshop.Name);
        Assert.Null(workshop.TargetWage);
    }

    [Theory]
    [InlineData("x = ", "[")]
    [InlineData("x = ", "{a=")]
    [InlineData("x = ", "[\n")]
    [InlineData("x", ".x")]
    public void Brackets_nested_without_end_are_refused(string start, string nested)
    {
        StringBuilder toml = new(start);
        for (int i = 0; i < 50_000; i++)
            toml.Append(nested);

        Assert.Equal(Severity.Error, Read(toml.ToString()).Problems[0].Severity);
    }

    private static (Workshop Workshop, LogProblem[] Problems) Read(string toml)
    {
        using LogFolder folder = new();
        LogReading reading = folder.With("pieces.csv", "type,bought_price\n").With("workshop.toml", toml).Read();
        return (reading.Log!.Workshop, [.. reading.Problems]);
    }

    [Fact]
    public void The_example_in_the_readme_is_read_without_a_problem()
    {
        string readme = House.Repository.Read("README.md").ReplaceLineEndings("\n");
        int start = readme.IndexOf("```toml\n", StringComparison.Ordinal) + "```toml\n".Length;
        using LogFolder folder = new();
        folder.With("pieces.csv", "type,bought_price\ndesk,10\n")
            .With("workshop.toml", readme[start..readme.IndexOf("```", start, StringComparison.Ordinal)]);

        LogReading reading = folder.Read();

        Assert.Empty(reading.Problems);
        Assert.Equal(15, reading.Log!.Workshop.TargetWage);
        Assert.Equal(0.10m, reading.Log.Workshop.Fees["online"].Rate);
        Assert.Equal(200, reading.Log.Workshop.Guesses["dresser"].SalePrice!.Likely);
    }
}
