using System.Globalization;

using Tomlyn;
using Tomlyn.Model;
using Tomlyn.Serialization;

namespace FlipAnalytics;

/// <summary>The settings as the text of <c>workshop.toml</c>.</summary>
internal static class WorkshopText
{
    public static string Of(Workshop workshop)
    {
        TomlTable top = [];
        Add(top, "name", workshop.Name);
        top["currency"] = workshop.Currency.Code;
        Add(top, "symbol", workshop.Symbol);
        top["length_unit"] = workshop.LengthUnit.Word();
        top["distance_unit"] = workshop.DistanceUnit == DistanceUnit.Mile ? "mi" : "km";
        Add(top, "target_wage", workshop.TargetWage);
        Add(top, "hours_per_week", workshop.HoursPerWeek);
        top["costing"] = new TomlTable
        {
            ["method"] = workshop.Costing == CostingMethod.Fifo ? "fifo" : "average",
            ["capital_rate"] = workshop.CapitalRate,
            ["storage"] = workshop.Storage,
        };
        if (!workshop.Mileage.IsEmpty)
        {
            TomlTable mileage = [];
            foreach (MileageRate rate in workshop.Mileage)
                mileage[rate.From.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)] = rate.Rate;
            top["mileage"] = mileage;
        }

        if (workshop.Car is { } car)
            top["car"] = new TomlTable { ["width"] = car.Width, ["length"] = car.Length, ["height"] = car.Height };
        AddTables(top, "fees", workshop.Fees, fee => new TomlTable { ["rate"] = fee.Rate, ["fixed"] = fee.Fixed });
        AddTables(top, "guess", workshop.Guesses, Guess);
        return TomlSerializer.Serialize(top, WorkshopToml.Default.TomlTable);
    }

    private static TomlTable Guess(TypeGuess guess)
    {
        TomlTable table = [];
        Add("sale_price", guess.SalePrice);
        Add("hours", guess.Hours);
        Add("days", guess.Days);
        Add("supplies", guess.Supplies);
        return table;

        void Add(string key, ThreePointGuess? numbers)
        {
            if (numbers is not null)
                table[key] = new TomlArray { numbers.Low, numbers.Likely, numbers.High };
        }
    }

    private static void Add(TomlTable table, string key, object? value)
    {
        if (value is not null)
            table[key] = value;
    }

    private static void AddTables<T>(
        TomlTable top, string key, IReadOnlyDictionary<string, T> entries, Func<T, TomlTable> tableOf)
    {
        if (entries.Count == 0)
            return;
        TomlTable group = [];
        foreach ((string name, T entry) in entries.OrderBy(entry => entry.Key, StringComparer.OrdinalIgnoreCase))
            group[name] = tableOf(entry);
        top[key] = group;
    }
}

/// <summary>Writes it without reflection, which a natively compiled command does not have.</summary>
[TomlSerializable(typeof(TomlTable))]
internal sealed partial class WorkshopToml : TomlSerializerContext;
