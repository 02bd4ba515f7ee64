using System.Globalization;

namespace FlipAnalytics;

/// <summary>
/// The range that a number of the owner's may be in. These are all the limits there are: a cell, a setting, a candidate and an
/// option for the same thing have the same. They are far beyond the trade, and near enough that no sum or product of such numbers
/// leaves what a <see cref="decimal"/> holds.
/// </summary>
public sealed record NumberRange
{
    private NumberRange(decimal least, decimal most) => (Least, Most) = (least, most);

    /// <summary>Amounts of money.</summary>
    public static NumberRange Money { get; } = new(0.0001m, 999_999_999_999) { HasZero = true };

    /// <summary>Hours of one piece, outing or row.</summary>
    public static NumberRange Hours { get; } = new(0.001m, 100_000) { HasZero = true };

    /// <summary>Hours that a week may have for work.</summary>
    public static NumberRange HoursOfAWeek { get; } = new(0.001m, 168);

    /// <summary>Days until a sale.</summary>
    public static NumberRange Days { get; } = new(0.001m, 36_500);

    /// <summary>Lengths of pieces and cars, in either unit.</summary>
    public static NumberRange Length { get; } = new(0.001m, 100_000);

    /// <summary>Distances of one outing, in either unit.</summary>
    public static NumberRange Distance { get; } = new(0.001m, 100_000) { HasZero = true };

    /// <summary>Quantities and areas, in any unit.</summary>
    public static NumberRange Quantity { get; } = new(0.0001m, 10_000_000);

    /// <summary>Coats of a use.</summary>
    public static NumberRange Coats { get; } = new(0.001m, 1_000);

    /// <summary>Items sold as one.</summary>
    public static NumberRange Count { get; } = new(1, 1_000);

    /// <summary>Pieces or months that a tool lasts.</summary>
    public static NumberRange Life { get; } = new(0.001m, 10_000);

    /// <summary>The owner's share of a sale price.</summary>
    public static NumberRange OwnShare { get; } = new(0.0001m, 1);

    /// <summary>Shares that a channel, or the capital in stock, may take.</summary>
    public static NumberRange Share { get; } = new(0, 0.9999m)
    {
        HasZero = true,
        Words = "a share from 0 to below 1 (0.9999), such as 0.13 for 13 %",
    };

    /// <summary>Chances with which a limit may have to hold.</summary>
    public static NumberRange Chance { get; } = new(0.01m, 0.99m) { Words = "from 0.01 to 0.99" };

    /// <summary>First day that a date may be.</summary>
    public static DateOnly FirstDay { get; } = new(1900, 1, 1);

    /// <summary>Last day that a date may be.</summary>
    public static DateOnly LastDay { get; } = new(2100, 12, 31);

    /// <summary>The smallest number above zero.</summary>
    public decimal Least { get; }

    /// <summary>The largest number.</summary>
    public decimal Most { get; }

    /// <summary>Whether zero is in it.</summary>
    public bool HasZero { get; private init; }

    /// <summary>Whether the same numbers below zero are in it.</summary>
    public bool HasMinus { get; private init; }

    /// <summary>The range in words, to be read after "expected".</summary>
    public string Words
    {
        get => field ?? string.Create(CultureInfo.InvariantCulture, $"{(HasMinus ? $"from -{Most:#,0} to {Most:#,0}" : $"{(HasZero ? "zero or more" : "more than zero")}, at most {Most:#,0}")}");
        private init;
    }

    /// <summary>The same with zero.</summary>
    public NumberRange OrZero => this with { HasZero = true };

    /// <summary>The same without zero.</summary>
    public NumberRange AboveZero => this with { HasZero = false };

    /// <summary>The same with zero and numbers below it.</summary>
    public NumberRange OrBelowZero => this with { HasZero = true, HasMinus = true };

    /// <summary>Whether a day is one that a date may be.</summary>
    /// <param name="day">The day.</param>
    public static bool Holds(DateOnly day) => day >= FirstDay && day <= LastDay;

    /// <summary>Whether a number is in it.</summary>
    /// <param name="number">The number.</param>
    public bool Holds(decimal number) => number == 0 ? HasZero
        : (number > 0 || HasMinus) && decimal.Abs(number) >= Least && decimal.Abs(number) <= Most;

    /// <summary>What was expected in place of a number that is not in it: the range, and how near to zero it begins where that is why.</summary>
    /// <param name="number">The number.</param>
    public string Expected(decimal number) => decimal.Abs(number) > 0 && decimal.Abs(number) < Least && (number > 0 || HasMinus)
        ? string.Create(CultureInfo.InvariantCulture, $"{Words}, and {(HasZero ? "zero or " : "")}not below {Least}")
        : Words;

    /// <summary>The number of the range that is nearest: for what is reckoned, and not written by anybody.</summary>
    /// <param name="number">Any number.</param>
    public decimal Nearest(decimal number) => Holds(number) ? number
        : number < 0 && HasMinus ? -Nearest(-number)
        : number > Most ? Most
        : HasZero ? 0 : Least;

    /// <summary>The number where it is in the range.</summary>
    /// <param name="number">The number; null where unknown.</param>
    /// <param name="name">What it is.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is not in the range.</exception>
    public decimal? Checked(decimal? number, string name) => number is { } known && !Holds(known)
        ? throw new ArgumentOutOfRangeException(name, number, $"It must be {Expected(known)}; correct it, or leave it out.")
        : number;
}
