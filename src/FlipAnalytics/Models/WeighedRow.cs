namespace FlipAnalytics;

/// <summary>An amount on record so far out of line with the rest that the models let it count for less.</summary>
/// <param name="PieceId">The piece.</param>
/// <param name="Model">The model it counts less in.</param>
/// <param name="Amount">The amount on record.</param>
/// <param name="Expected">What all other rows expect of it.</param>
/// <param name="Count">How much of a row it counts as, above 0 to below 1.</param>
/// <param name="ReadAs">
/// The amount that was likely meant, where one slip of the pen explains it: the model takes it as that, in full.
/// </param>
public sealed record WeighedRow(
    string PieceId, ModelName Model, double Amount, double Expected, double Count, double? ReadAs = null)
{
    /// <summary>
    /// Below this, nearly six spreads out, a row is left out of the shape of errors and of what forecasts are held within.
    /// </summary>
    internal const double HardlyCounts = 0.06;
}
