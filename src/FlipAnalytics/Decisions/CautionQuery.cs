namespace FlipAnalytics;

/// <summary>What is known of a piece when cautions are looked up for it; whatever is null is unknown.</summary>
public sealed record CautionQuery
{
    /// <summary>Kind of furniture in the owner's words.</summary>
    public required string Type { get; init; }

    /// <summary>A few words that tell the piece from others.</summary>
    public string? Title { get; init; }

    /// <summary>Anything else the owner wrote, such as "1950s, musty".</summary>
    public string? Notes { get; init; }

    /// <summary>What it is made of.</summary>
    public string? Material { get; init; }

    /// <summary>How sound it is.</summary>
    public Condition? Condition { get; init; }

    /// <summary>Colour it has or will be given.</summary>
    public string? Colour { get; init; }

    /// <summary>Finish it has or will be given, such as oil or shellac.</summary>
    public string? Finish { get; init; }

    /// <summary>Width, in <see cref="LengthUnit"/>; above zero.</summary>
    public decimal? Width { get; init => field = AboveZero(value, nameof(Width)); }

    /// <summary>Depth, in <see cref="LengthUnit"/>; above zero.</summary>
    public decimal? Depth { get; init => field = AboveZero(value, nameof(Depth)); }

    /// <summary>Height, in <see cref="LengthUnit"/>; above zero.</summary>
    public decimal? Height { get; init => field = AboveZero(value, nameof(Height)); }

    /// <summary>Unit of the lengths; inches unless set.</summary>
    public LengthUnit LengthUnit { get; init; } = LengthUnit.Inch;

    /// <summary>Height in inches.</summary>
    internal decimal? HeightInches => Height / UnitsPerInch;

    /// <summary>Volume of the box around the piece: never less than the space enclosed in it.</summary>
    internal decimal? OuterCubicInches =>
        Width * Depth * Height / (UnitsPerInch * UnitsPerInch * UnitsPerInch);

    private decimal UnitsPerInch => LengthUnit == LengthUnit.Centimetre ? LengthUnits.CentimetresPerInch : 1;

    private static decimal? AboveZero(decimal? length, string name) => length is null or > 0
        ? length
        : throw new ArgumentOutOfRangeException(
            name, length, "A length must be above zero; leave it out where it is not known.");
}
