using System.Collections.Immutable;
using System.Globalization;

namespace FlipAnalytics;

/// <summary>
/// Reads <c>workshop.toml</c>. A key that is unknown or has a bad value is reported and its default kept; a file that is
/// not TOML is reported and every default kept.
/// </summary>
internal sealed class WorkshopReader
{
    private static readonly ImmutableArray<string> TopKeys =
    [
        "name", "currency", "symbol", "length_unit", "distance_unit", "target_wage", "hours_per_week",
        "fees", "mileage", "costing", "guess", "car",
    ];

    private const int LongestSymbol = 8;

    private static readonly ImmutableArray<string> CarKeys = ["width", "length", "height"];

    private static readonly ImmutableArray<string> FeeKeys = ["rate", "fixed"];
    private static readonly ImmutableArray<string> CostingKeys = ["method", "capital_rate", "storage"];
    private static readonly ImmutableArray<string> GuessKeys = ["sale_price", "hours", "days", "supplies"];

    private readonly SettingProblems problems;

    private WorkshopReader(LogProblems problems) => this.problems = new(problems);

    /// <summary>Reads the settings of a folder.</summary>
    /// <returns>The settings, and whether there is such a file.</returns>
    public static (Workshop Workshop, bool IsPresent) Read(string folder, LogProblems problems)
    {
        SourceFile file = SourceFile.Read(folder, Columns.WorkshopFile, problems);
        if (file.Bytes is not { } bytes)
            return (new(), file.IsPresent);
        return SettingTree.Parse(bytes, problems) is { } settings
            ? (new WorkshopReader(problems).Read(settings), true)
            : (new(), true);
    }

    private Workshop Read(SettingTree top)
    {
        problems.ReportUnknown(top, TopKeys);
        Workshop defaults = new();
        Workshop workshop = defaults with
        {
            Name = problems.Text(top, "name"),
            Currency = Currency(top) ?? defaults.Currency,
            Symbol = Symbol(top),
            LengthUnit = problems.Choice(top, "length_unit", ("in", LengthUnit.Inch), ("cm", LengthUnit.Centimetre))
                ?? defaults.LengthUnit,
            DistanceUnit = problems.Choice(top, "distance_unit", ("mi", DistanceUnit.Mile), ("km", DistanceUnit.Kilometre))
                ?? defaults.DistanceUnit,
            TargetWage = problems.Number(top, "target_wage", NumberRange.Money),
            HoursPerWeek = problems.Number(top, "hours_per_week", NumberRange.HoursOfAWeek),
            Car = Car(top),
            Fees = Fees(top, defaults.Fees),
            Mileage = Mileage(top),
            Guesses = Guesses(top, defaults.Guesses),
        };
        if (problems.Table(top, "costing") is not { } costing)
            return workshop;
        problems.ReportUnknown(costing, CostingKeys);
        return workshop with
        {
            Costing = problems.Choice(costing, "method", ("fifo", CostingMethod.Fifo), ("average", CostingMethod.Average))
                ?? defaults.Costing,
            CapitalRate = problems.Number(costing, "capital_rate", NumberRange.Share) ?? defaults.CapitalRate,
            Storage = problems.Number(costing, "storage", NumberRange.Money) ?? defaults.Storage,
        };
    }

    // It stands before every amount.
    private string? Symbol(SettingTree top)
    {
        if (problems.Text(top, "symbol", LongestSymbol) is not { } symbol)
            return null;
        if (CleanText.OnOneLine(symbol) == symbol)
            return symbol;
        problems.Bad(top["symbol"], "signs that can be seen, such as $", "Write it anew; none is printed until then.");
        return null;
    }

    private Car? Car(SettingTree top)
    {
        if (problems.Table(top, "car") is not { } car)
            return null;
        problems.ReportUnknown(car, CarKeys);
        decimal?[] sides = [.. CarKeys.Select(key => problems.Number(car, key, NumberRange.Length))];
        if (sides is [{ } width, { } length, { } height])
            return new(width, length, height);
        // A side that is there and wrong has been reported already.
        string[] missing = [.. CarKeys.Where(key => car[key] is null)];
        if (missing.Length > 0)
        {
            problems.Bad(
                car, "width, length and height of the room in the car", $"Add {string.Join(" and ", missing)}.",
                string.Join(", ", car.Children.Select(entry => entry.Key)));
        }

        return null;
    }

    private Currency? Currency(SettingTree top)
    {
        if (problems.Text(top, "currency") is not { } code)
            return null;
        if (code.Length == 3 && code.All(char.IsAsciiLetter))
            return FlipAnalytics.Currency.Of(code);
        problems.Bad(top["currency"], "a currency code of three letters, such as USD", "USD is used until then.");
        return null;
    }

    private ImmutableDictionary<string, FeeRule> Fees(SettingTree top, ImmutableDictionary<string, FeeRule> none)
    {
        ImmutableDictionary<string, FeeRule>.Builder fees = none.ToBuilder();
        foreach (SettingTree channel in problems.Tables(top, "fees"))
        {
            problems.ReportUnknown(channel, FeeKeys);
            decimal? rate = problems.Number(channel, "rate", NumberRange.Share);
            decimal? fixedFee = problems.Number(channel, "fixed", NumberRange.Money);
            if (rate is not null || fixedFee is not null)
                AddOnce(fees, channel, new FeeRule(rate ?? 0, fixedFee ?? 0));
        }

        return fees.ToImmutable();
    }

    private ImmutableArray<MileageRate> Mileage(SettingTree top)
    {
        List<MileageRate> rates = [];
        foreach (SettingTree entry in problems.Table(top, "mileage")?.Children ?? [])
        {
            if (!DateOnly.TryParseExact(
                entry.Key, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly from))
                problems.Bad(
                    entry,
                    "a date such as 2026-01-01 before the rate",
                    "Write the first day on which the rate holds.",
                    entry.Key);
            else if (problems.Number(entry, NumberRange.Money) is { } rate)
                rates.Add(new(from, rate));
        }

        return [.. rates.OrderBy(rate => rate.From)];
    }

    private ImmutableDictionary<string, TypeGuess> Guesses(SettingTree top, ImmutableDictionary<string, TypeGuess> none)
    {
        ImmutableDictionary<string, TypeGuess>.Builder guesses = none.ToBuilder();
        foreach (SettingTree type in problems.Tables(top, "guess"))
        {
            problems.ReportUnknown(type, GuessKeys);
            TypeGuess guess = new(
                problems.Guess(type, "sale_price", NumberRange.Money.AboveZero),
                problems.Guess(type, "hours", NumberRange.Hours.AboveZero),
                problems.Guess(type, "days", NumberRange.Days),
                problems.Guess(type, "supplies", NumberRange.Money.AboveZero));
            if (guess != new TypeGuess(null, null, null, null))
                AddOnce(guesses, type, guess);
        }

        return guesses.ToImmutable();
    }

    private void AddOnce<T>(ImmutableDictionary<string, T>.Builder entries, SettingTree entry, T value)
    {
        string name = CleanText.OnOneLine(entry.Key).Trim();
        if (name.Length == 0)
            problems.Bad(entry, "a name after the point", "Write, for instance, [fees.online] or [guess.dresser].");
        else if (name.Length > CleanText.LongestName)
            problems.Bad(entry, CleanText.NameWords, "Shorten it.", name);
        else if (!entries.TryAdd(name, value))
            problems.Bad(
                entry,
                "each name once, whatever its capitals",
                "Remove one of the two; the first is used until then.",
                name);
    }
}
