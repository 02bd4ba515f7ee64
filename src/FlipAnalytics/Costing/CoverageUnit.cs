using System.Globalization;

namespace FlipAnalytics;

/// <summary>An area for each unit of a supply, such as ft2/quart or m2/l.</summary>
/// <param name="Area">Unit of the area.</param>
/// <param name="Per">Unit of the supply.</param>
/// <param name="PerQuantity">How many of that unit, such as 250 in m2/250 g; above 0.</param>
internal sealed record CoverageUnit(SupplyUnit Area, SupplyUnit Per, decimal PerQuantity)
{
    private static readonly string[] Separators = ["/", " per ", " a "];

    /// <summary>Square metres that one of the supply's own measure (litre, kilogram, tin) covers at a coverage of 1.</summary>
    public decimal SquareMetres => Area.Factor / (PerQuantity * Per.Factor);

    /// <summary>The coverage unit of a text; null where it is none.</summary>
    /// <param name="text">Such as ft2/quart, "sq ft per gal", m2/250 g; an area alone is for each unit bought.</param>
    /// <param name="boughtIn">Unit of the purchase; null where unknown.</param>
    public static CoverageUnit? Of(string? text, SupplyUnit? boughtIn)
    {
        if (string.IsNullOrWhiteSpace(text))
            return null;
        string[] parts = text.Split(
            Separators, 2, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        SupplyUnit area = SupplyUnit.Of(parts[0]);
        if (area.Measure != SupplyUnit.SquareMetre)
            return null;
        if (parts.Length == 1)
            return boughtIn is null ? null : new(area, boughtIn, 1);

        string number = string.Concat(parts[1].TakeWhile(c => char.IsAsciiDigit(c) || c == '.'));
        string word = parts[1][number.Length..];
        decimal quantity = 1;
        if (string.IsNullOrWhiteSpace(word)
            || (number.Length > 0
                && !decimal.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out quantity))
            || quantity <= 0)
        {
            return null;
        }

        return new(area, SupplyUnit.Of(word, boughtIn?.Measure), quantity);
    }
}
