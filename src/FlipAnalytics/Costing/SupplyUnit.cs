using System.Collections.Frozen;
using UnitsNet.Units;

namespace FlipAnalytics;

/// <summary>
/// A unit in which supplies are bought and used, by the owner's word. Units measure the same thing, and convert, when
/// they share <see cref="Measure"/>. Gallon, quart, pint and fluid ounce are US ones unless the word says imperial
/// (NIST Handbook 44, appendix C).
/// </summary>
/// <param name="Word">The owner's word, trimmed.</param>
/// <param name="Measure">
/// litre, kilogram, square metre, metre or each, in which <paramref name="Factor"/> is given; for a word that is no unit
/// of measure, such as tin, the word itself in the singular.
/// </param>
/// <param name="Factor">How many of the measure one unit is; above 0.</param>
internal sealed record SupplyUnit(string Word, string Measure, decimal Factor)
{
    internal const string Litre = "litre";
    internal const string Kilogram = "kilogram";
    internal const string SquareMetre = "square metre";
    internal const string Metre = "metre";
    internal const string Each = "each";

    private static readonly FrozenDictionary<string, (string Measure, Lazy<decimal> Factor)> Words = Table();

    /// <summary>The unit of a word.</summary>
    /// <param name="word">The owner's word, such as quart, fl oz, sheet, m²; never empty.</param>
    /// <param name="boughtBy">
    /// What the supply is measured by, where known: of something bought by volume, "oz" is a fluid ounce.
    /// </param>
    /// <exception cref="ArgumentException">The word is empty.</exception>
    public static SupplyUnit Of(string word, string? boughtBy = null)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(word);
        string plain = Words.ContainsKey(word) ? word : Plain(word);
        if (boughtBy == Litre && plain is "oz" or "ounce" or "ounces")
            plain = "fl oz";
        string? known = Words.ContainsKey(plain) ? plain
            : plain.EndsWith('s') && Words.ContainsKey(plain[..^1]) ? plain[..^1]
            : null;
        return known is not null
            ? new(word.Trim(), Words[known].Measure, Words[known].Factor.Value)
            : new(word.Trim(), Singular(plain), 1);
    }

    /// <summary>"Sq. Ft." and "sq ft" are one word, ² is 2, and a hyphen is a space.</summary>
    private static string Plain(string word) => string.Join(
        ' ',
        word.Trim().ToLowerInvariant().Replace('²', '2').Replace(".", " ", StringComparison.Ordinal)
            .Replace("^", "", StringComparison.Ordinal).Replace('-', ' ')
            .Split(' ', StringSplitOptions.RemoveEmptyEntries));

    private static string Singular(string plain) =>
        plain.Length > 3 && plain.EndsWith('s') && !plain.EndsWith("ss", StringComparison.Ordinal)
            ? plain.EndsWith("xes", StringComparison.Ordinal) ? plain[..^2] : plain[..^1]
            : plain;

    private static FrozenDictionary<string, (string, Lazy<decimal>)> Table()
    {
        Dictionary<string, (string, Lazy<decimal>)> words = new(StringComparer.Ordinal);

        // A fluid ounce is 1/128 US or 1/160 imperial gallon; the package's own is off in the 13th digit.
        Add(Litre, () => Volume(VolumeUnit.UsGallon) / 128, "fl oz", "floz", "fluid ounce", "us fl oz", "us fluid ounce");
        Add(Litre, () => Volume(VolumeUnit.UsGallon), "gal", "gallon", "us gal", "us gallon");
        Add(Litre, () => Volume(VolumeUnit.UsQuart), "qt", "quart", "us qt", "us quart");
        Add(Litre, () => Volume(VolumeUnit.UsPint), "pt", "pint", "us pt", "us pint");
        Add(Litre, () => Volume(VolumeUnit.UsCustomaryCup), "cup");
        Add(Litre, () => Volume(VolumeUnit.UsTablespoon), "tbsp", "tablespoon");
        Add(Litre, () => Volume(VolumeUnit.UsTeaspoon), "tsp", "teaspoon");
        foreach (string imperial in (string[])["imp", "imperial", "uk"])
        {
            Add(Litre, () => Volume(VolumeUnit.ImperialGallon), $"{imperial} gal", $"{imperial} gallon");
            Add(Litre, () => Volume(VolumeUnit.ImperialQuart), $"{imperial} qt", $"{imperial} quart");
            Add(Litre, () => Volume(VolumeUnit.ImperialPint), $"{imperial} pt", $"{imperial} pint");
            Add(Litre, () => Volume(VolumeUnit.ImperialGallon) / 160, $"{imperial} fl oz", $"{imperial} fluid ounce");
        }

        Add(Litre, () => Volume(VolumeUnit.Liter), "l", "lt", "ltr", "litre", "liter");
        Add(Litre, () => Volume(VolumeUnit.Centiliter), "cl", "centilitre", "centiliter");
        Add(Litre, () => Volume(VolumeUnit.Milliliter), "ml", "millilitre", "milliliter");

        Add(Kilogram, () => Mass(MassUnit.Pound), "lb", "pound");
        Add(Kilogram, () => Mass(MassUnit.Ounce), "oz", "ounce");
        Add(Kilogram, () => Mass(MassUnit.Kilogram), "kg", "kilo", "kilogram", "kilogramme");
        Add(Kilogram, () => Mass(MassUnit.Gram), "g", "gr", "gram", "gramme");

        Add(SquareMetre, () => Area(AreaUnit.SquareFoot), "ft2", "sq ft", "sqft", "square foot", "square feet");
        Add(SquareMetre, () => Area(AreaUnit.SquareInch), "in2", "sq in", "square inch", "square inche");
        Add(SquareMetre, () => Area(AreaUnit.SquareYard), "yd2", "sq yd", "square yard");
        Add(SquareMetre, () => Area(AreaUnit.SquareMeter), "m2", "sq m", "sqm", "square metre", "square meter");
        Add(SquareMetre, () => Area(AreaUnit.SquareCentimeter), "cm2", "sq cm", "square centimetre", "square centimeter");

        Add(Metre, () => Length(UnitsNet.Units.LengthUnit.Foot), "ft", "foot", "feet");
        Add(Metre, () => Length(UnitsNet.Units.LengthUnit.Inch), "in", "inch", "inche");
        Add(Metre, () => Length(UnitsNet.Units.LengthUnit.Yard), "yd", "yard");
        Add(Metre, () => Length(UnitsNet.Units.LengthUnit.Meter), "m", "metre", "meter");
        Add(Metre, () => Length(UnitsNet.Units.LengthUnit.Centimeter), "cm", "centimetre", "centimeter");
        Add(Metre, () => Length(UnitsNet.Units.LengthUnit.Millimeter), "mm", "millimetre", "millimeter");

        Add(Each, () => 1, "each", "ea", "piece", "pc", "item", "count", "unit", "x");
        Add(Each, () => 2, "pair");
        Add(Each, () => 12, "dozen", "doz");
        return words.ToFrozenDictionary(StringComparer.Ordinal);

        void Add(string measure, Func<decimal> factor, params string[] names)
        {
            Lazy<decimal> once = new(factor);
            foreach (string name in names)
                words.Add(name, (measure, once));
        }
    }

    // Factors are stated to at most 15 digits, so the nearest decimal of that length is exact.
    private static decimal Volume(VolumeUnit unit) => (decimal)UnitsNet.Volume.From(1, unit).Liters;

    private static decimal Mass(MassUnit unit) => (decimal)UnitsNet.Mass.From(1, unit).Kilograms;

    private static decimal Area(AreaUnit unit) => (decimal)UnitsNet.Area.From(1, unit).SquareMeters;

    private static decimal Length(UnitsNet.Units.LengthUnit unit) => (decimal)UnitsNet.Length.From(1, unit).Meters;
}
