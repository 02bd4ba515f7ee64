namespace FlipAnalytics;

/// <summary>What is left of a supply.</summary>
/// <param name="Item">The owner's name for it.</param>
/// <param name="Quantity">How much is left, in <paramref name="Unit"/>; null where unknown.</param>
/// <param name="Unit">Unit it was last bought in.</param>
/// <param name="Value">What the rest cost; purchases without a price are not in it.</param>
/// <param name="LastBought">Day of the last purchase; null where unknown.</param>
public sealed record SupplyStock(string Item, decimal? Quantity, string? Unit, decimal Value, DateOnly? LastBought);

/// <summary>A tool's book value.</summary>
/// <param name="Item">The tool.</param>
/// <param name="Value">Price less wear so far; never below salvage.</param>
/// <param name="Worn">Wear so far.</param>
/// <param name="Origin">Row and rule.</param>
public sealed record ToolValue(string Item, decimal Value, decimal Worn, CostOrigin Origin);

/// <summary>How far a supply really reached where its use was both measured and written as coats on an area.</summary>
/// <param name="Item">The supply.</param>
/// <param name="Assumed">Area a unit covers in one coat as <c>supplies.csv</c> has it.</param>
/// <param name="Implied">Area that the measured uses imply, after the same allowance for loss, to three digits.</param>
/// <param name="Unit">Unit of both, such as ft2/quart.</param>
/// <param name="Uses">Number of measured uses it rests on.</param>
public sealed record CoverageCheck(string Item, decimal Assumed, decimal Implied, string Unit, int Uses)
{
    /// <summary>What to do: a sentence.</summary>
    public string Suggestion => Math.Abs(Implied - Assumed) * 10 <= Assumed
        ? FormattableString.Invariant($"{Item}: {Uses} measured uses bear out {Assumed:0.###} {Unit}.")
        : FormattableString.Invariant(
            $"{Item}: {Uses} measured uses come to {Implied:0.###} {Unit}, not {Assumed:0.###}; write {Implied:0.###} as its coverage in supplies.csv.");
}
