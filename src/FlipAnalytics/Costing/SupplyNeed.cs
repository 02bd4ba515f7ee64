using System.Globalization;

namespace FlipAnalytics;

/// <summary>How much of a supply a use took.</summary>
/// <param name="Quantity">In the unit's measure; above 0.</param>
/// <param name="Unit">Unit of the quantity.</param>
/// <param name="Rule">How it follows from the row, as words that end a sentence.</param>
internal sealed record SupplyNeed(decimal Quantity, SupplyUnit Unit, string Rule)
{
    /// <summary>
    /// Share lost in brush and roller, of what is taken: 10 to 15 % by coatings makers; the higher end, common practice.
    /// </summary>
    public const decimal Loss = 0.15m;

    /// <summary>The need of a use; null with the reason where the log does not tell it.</summary>
    /// <param name="use">The use.</param>
    /// <param name="purchases">Purchases of the item, oldest first; at least one.</param>
    /// <param name="piece">The piece; null where the log has none of that id.</param>
    /// <param name="lengths">Unit of lengths.</param>
    /// <param name="lack">What is missing, as words that end a sentence.</param>
    public static SupplyNeed? Of(
        SupplyUse use, IReadOnlyList<SupplyPurchase> purchases, Piece? piece, LengthUnit lengths, out string lack)
    {
        lack = "";
        SupplyPurchase known = purchases.FirstOrDefault(p => p.Unit is not null) ?? purchases[0];
        if (use.Quantity is { } quantity)
        {
            if ((use.Unit ?? known.Unit) is not { } word)
                return new(quantity, Bare, Text($"{quantity:0.###} measured, in the unit it was bought in"));
            SupplyUnit unit = SupplyUnit.Of(word, MeasureOf(known));
            string said = use.Unit is null ? ", taken as the unit it was bought in" : "";
            return new(quantity * unit.Factor, unit, Text($"{quantity:0.###} {unit.Word} measured{said}"));
        }

        if (use.Coats is not { } coats)
        {
            lack = "neither a quantity nor coats are written down";
            return null;
        }

        if (AreaOf(use, piece, lengths) is not { } area)
        {
            lack = "coats are written down without an area, and none follows from type and dimensions";
            return null;
        }

        if (CoverageAt(use.Date, purchases, lengths) is not { } coverage)
        {
            lack = "coats are written down, but the item has no coverage in supplies.csv";
            return null;
        }

        // V = area × coats / coverage / (1 − loss)
        decimal squareMetres = area.Value * SquareMetres(lengths);
        decimal taken = squareMetres * coats / (coverage.Value * coverage.Unit.SquareMetres) / (1 - Loss);
        SupplyUnit per = coverage.Unit.Per;
        return new(taken, per, Text(
            $"{coats:0.###} coats on {area.Value:0.##} {AreaWord(lengths)}{(area.Estimated ? " estimated from its dimensions" : "")} at {coverage.Value:0.###} {coverage.Text} with {Loss:0 %} lost, {taken / per.Factor:0.###} {per.Word}"));
    }

    /// <summary>Coated area of a use in m² times coats, where both are known, for checking coverage.</summary>
    public static decimal? CoatedSquareMetres(SupplyUse use, Piece? piece, LengthUnit lengths) =>
        AreaOf(use, piece, lengths)?.Value * use.Coats * SquareMetres(lengths);

    /// <summary>The coverage on the label of the last can bought by a day, else of the first that states one.</summary>
    /// <param name="day">The day; null where it is unknown.</param>
    /// <param name="purchases">Purchases of the item, oldest first.</param>
    /// <param name="lengths">Unit of lengths.</param>
    public static (decimal Value, CoverageUnit Unit, string Text)? CoverageAt(
        DateOnly? day, IReadOnlyList<SupplyPurchase> purchases, LengthUnit lengths)
    {
        int last = BoughtBy(day, purchases) - 1;
        while (last >= 0 && !(purchases[last].Coverage > 0))
            last--;
        SupplyPurchase? purchase = last >= 0 ? purchases[last] : purchases.FirstOrDefault(p => p.Coverage > 0);
        if (purchase is null)
            return null;
        SupplyUnit? boughtIn = purchase.Unit is null ? null : SupplyUnit.Of(purchase.Unit);
        string text = purchase.CoverageUnit ?? AreaWord(lengths);
        CoverageUnit? unit = CoverageUnit.Of(text, boughtIn);
        return unit is null ? null
            : (purchase.Coverage!.Value, unit, purchase.CoverageUnit ?? $"{text}/{purchase.Unit}");
    }

    // How many of the purchases, oldest first, were made by a day: halved again and again, for a use of every piece asks.
    private static int BoughtBy(DateOnly? day, IReadOnlyList<SupplyPurchase> purchases)
    {
        int low = 0;
        int high = purchases.Count;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = (purchases[middle].BoughtOn ?? DateOnly.MinValue) <= day ? (middle + 1, high) : (low, middle);
        }

        return low;
    }

    /// <summary>A quantity in no unit: comparable with other quantities in no unit only.</summary>
    public static SupplyUnit Bare { get; } = new("", "", 1);

    private static string? MeasureOf(SupplyPurchase purchase) =>
        purchase.Unit is null ? null : SupplyUnit.Of(purchase.Unit).Measure;

    private static (decimal Value, bool Estimated)? AreaOf(SupplyUse use, Piece? piece, LengthUnit lengths) =>
        use.Area is { } stated ? (stated, false)
        : piece is not null && PaintedArea.Of(piece, lengths) is { } estimated ? (estimated, true)
        : null;

    private static decimal SquareMetres(LengthUnit lengths) =>
        lengths == LengthUnit.Centimetre ? 1 : PaintedArea.SquareMetresPerSquareFoot;

    private static string AreaWord(LengthUnit lengths) => lengths == LengthUnit.Centimetre ? "m2" : "ft2";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
