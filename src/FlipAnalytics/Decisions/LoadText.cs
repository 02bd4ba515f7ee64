using System.Collections.Immutable;
using System.Globalization;

namespace FlipAnalytics;

/// <summary>
/// How a piece gets home: how many people lift it, and whether it goes into the car of <c>workshop.toml</c>. A piece may be
/// turned on any side; one that goes in only at a slant is said not to.
/// </summary>
internal static class LoadText
{
    /// <summary>Inches from which on furniture is carried by two (common practice, from memory).</summary>
    private const decimal LongForOne = 40;

    /// <summary>The sentences; none where no size is known.</summary>
    /// <param name="candidate">The piece in the store; its sizes are those of one item.</param>
    /// <param name="workshop">The workshop, for its unit and car.</param>
    public static ImmutableArray<string> Of(Candidate candidate, Workshop workshop)
    {
        decimal[] sides = [.. new[] { candidate.Width, candidate.Depth, candidate.Height }.OfType<decimal>().OrderDescending()];
        if (sides.Length == 0)
            return [];
        string unit = workshop.LengthUnit.Word();
        decimal longForOne = workshop.LengthUnit == LengthUnit.Inch ? LongForOne : decimal.Round(LongForOne * LengthUnits.CentimetresPerInch);
        string each = candidate.Count > 1 ? "Each is" : "It is";
        ImmutableArray<string> lift = sides[0] < longForOne ? [] :
        [
            Text($"{each} {sides[0]:0.#} {unit} long: two people carry it (common practice from {longForOne:0} {unit} on); ")
                + "empty it, take drawers out, and lift only what you can hold safely.",
        ];
        return workshop.Car is { } car ? lift.Add(Fit(sides, car, unit, each)) : lift;
    }

    // Sides against sides, the longest first: it goes in turned some way or in none.
    private static string Fit(decimal[] sides, Car car, string unit, string each)
    {
        decimal[] room = [.. new[] { car.Width, car.Length, car.Height }.OrderDescending()];
        string said = Text($"your car ({car.Length:0.#} {unit} long, {car.Width:0.#} wide, {car.Height:0.#} high)");
        for (int i = 0; i < sides.Length; i++)
        {
            if (sides[i] > room[i])
                return Text($"{each} {sides[i]:0.#} {unit} on {Side(i)}: it will not go into {said}.");
        }

        return sides.Length == room.Length
            ? $"By its sizes it goes into {said}; a few fingers of room for blankets and straps are not counted."
            : $"Whether it goes into {said} cannot be said: measure {(sides.Length == 1 ? "its other sides" : "its third side")}.";
    }

    private static string Side(int rank) => rank switch { 0 => "its longest side", 1 => "its middle side", _ => "its shortest side" };

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
