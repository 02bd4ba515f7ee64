namespace FlipAnalytics;

/// <summary>Where an observation comes from.</summary>
internal enum RowOrigin
{
    /// <summary>The log.</summary>
    Log,

    /// <summary>The owner's own guess in workshop.toml.</summary>
    OwnersGuess,

    /// <summary>What is usual in the trade, used where the owner's log is thin.</summary>
    CommonPractice,
}

/// <summary>One observation of a log amount.</summary>
/// <param name="Origin">Where it comes from.</param>
/// <param name="Facts">What the piece is.</param>
/// <param name="Response">Log of the amount.</param>
/// <param name="Size">Relative log size, with the variance that unrecorded dimensions leave in it.</param>
/// <param name="RelativeHours">Log hours over what such a piece usually takes, and its variance where unrecorded.</param>
/// <param name="TypeHours">Log hours that the type takes over those of all types.</param>
/// <param name="Date">Day of the observation; null where unknown.</param>
/// <param name="Weight">How many observations it counts as.</param>
/// <param name="PieceId">The piece, for observations from the log.</param>
/// <param name="Slip">Log of the factor by which the amount on record seems to be off; 0 for nearly every row.</param>
internal sealed record EffectsRow(
    RowOrigin Origin,
    PieceFacts Facts,
    double Response,
    (double Value, double Variance) Size,
    (double Value, double Variance) RelativeHours,
    double TypeHours,
    DateOnly? Date,
    double Weight = 1,
    string? PieceId = null,
    double Slip = 0)
{
    /// <summary>Log of the amount as the fit reads it.</summary>
    public double AsRead => Response - Slip;

    public DesignValues Values => new(Facts, Size.Value, Date, RelativeHours.Value, TypeHours);
}
