using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>How the costs of supplies are taken from purchases.</summary>
public enum CostingMethod
{
    /// <summary>First in, first out.</summary>
    Fifo,

    /// <summary>Weighted average.</summary>
    Average,
}

/// <summary>The unit that lengths of pieces are written in.</summary>
public enum LengthUnit
{
    /// <summary>Inches (25.4 mm exactly).</summary>
    Inch,

    /// <summary>Centimetres.</summary>
    Centimetre,
}

/// <summary>The unit that distances of trips are written in.</summary>
public enum DistanceUnit
{
    /// <summary>Miles.</summary>
    Mile,

    /// <summary>Kilometres.</summary>
    Kilometre,
}

/// <summary>What a selling channel keeps: a <c>[fees.CHANNEL]</c> table.</summary>
/// <param name="Rate">Share of the sale price, 0 to below 1.</param>
/// <param name="Fixed">Amount a sale, on top.</param>
public sealed record FeeRule(decimal Rate, decimal Fixed);

/// <summary>A rate for a unit of distance from a day on: an entry of <c>[mileage]</c>.</summary>
/// <param name="From">First day it holds.</param>
/// <param name="Rate">Money a unit of distance.</param>
public sealed record MileageRate(DateOnly From, decimal Rate);

/// <summary>A guess in three numbers; 8 in 10 of such pieces are expected between low and high.</summary>
/// <param name="Low">Only 1 in 10 is lower.</param>
/// <param name="Likely">The middle.</param>
/// <param name="High">Only 1 in 10 is higher.</param>
public sealed record ThreePointGuess(decimal Low, decimal Likely, decimal High);

/// <summary>The owner's own guesses for a type: a <c>[guess.TYPE]</c> table.</summary>
/// <param name="SalePrice">Sale price of a single piece.</param>
/// <param name="Hours">Hands-on hours.</param>
/// <param name="Days">Days on market.</param>
/// <param name="Supplies">Cost of supplies.</param>
public sealed record TypeGuess(
    ThreePointGuess? SalePrice,
    ThreePointGuess? Hours,
    ThreePointGuess? Days,
    ThreePointGuess? Supplies);

/// <summary>The room for a piece in a car, back seats down, in the log's length unit; above zero.</summary>
/// <param name="Width">Between the wheel arches.</param>
/// <param name="Length">From the front seats to the closed door.</param>
/// <param name="Height">Of the door's opening.</param>
public sealed record Car(decimal Width, decimal Length, decimal Height);

/// <summary>The settings of the workshop: <c>workshop.toml</c>. What the file leaves out has the default given here.</summary>
public sealed record Workshop
{
    /// <summary>The workshop's name.</summary>
    public string? Name { get; init; }

    /// <summary>Currency by ISO 4217; USD unless set.</summary>
    public Currency Currency { get; init; } = Currency.Of("USD");

    /// <summary>Sign printed before amounts; null prints none.</summary>
    public string? Symbol { get; init; }

    /// <summary>Unit of lengths; inches unless set.</summary>
    public LengthUnit LengthUnit { get; init; } = LengthUnit.Inch;

    /// <summary>Unit of distances; miles unless set.</summary>
    public DistanceUnit DistanceUnit { get; init; } = DistanceUnit.Mile;

    /// <summary>What the owner wants for an hour; null where not set.</summary>
    public decimal? TargetWage { get; init; }

    /// <summary>Hours the owner can work in a week; null where not set.</summary>
    public decimal? HoursPerWeek { get; init; }

    /// <summary>The room in the owner's car; null where not set.</summary>
    public Car? Car { get; init; }

    /// <summary>Fee rules by channel.</summary>
    public ImmutableDictionary<string, FeeRule> Fees { get; init; } =
        ImmutableDictionary.Create<string, FeeRule>(StringComparer.OrdinalIgnoreCase);

    /// <summary>Mileage rates, oldest first.</summary>
    public ImmutableArray<MileageRate> Mileage { get; init; } = [];

    /// <summary>How supplies are costed; first in, first out unless set.</summary>
    public CostingMethod Costing { get; init; } = CostingMethod.Fifo;

    /// <summary>Yearly rate that money bound in stock should earn, as a share; none unless set.</summary>
    public decimal CapitalRate { get; init; }

    /// <summary>
    /// Storage cost of a unit of floor area a day (ft² where lengths are in inches, else m²); none unless set.
    /// </summary>
    public decimal Storage { get; init; }

    /// <summary>The owner's guesses by type.</summary>
    public ImmutableDictionary<string, TypeGuess> Guesses { get; init; } =
        ImmutableDictionary.Create<string, TypeGuess>(StringComparer.OrdinalIgnoreCase);
}
