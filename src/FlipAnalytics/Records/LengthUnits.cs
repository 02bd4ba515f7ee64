namespace FlipAnalytics;

/// <summary>What a unit of length is worth and called.</summary>
public static class LengthUnits
{
    /// <summary>Exact by the international definition of the inch (1959).</summary>
    public const decimal CentimetresPerInch = 2.54m;

    /// <summary>Its short name, as workshop.toml writes it: in or cm.</summary>
    /// <param name="unit">The unit.</param>
    public static string Word(this LengthUnit unit) => unit == LengthUnit.Inch ? "in" : "cm";
}
