namespace FlipAnalytics;

/// <summary>
/// A piece in the store aisle, as far as it is known: the options of <c>flip buy</c> or a row of its candidates file.
/// Whatever is null is unknown and estimated; whatever the owner states replaces the estimate.
/// </summary>
public sealed record Candidate
{
    /// <summary>The owner's name for it.</summary>
    public required string Id { get; init; }

    /// <summary>Kind of furniture in the owner's words.</summary>
    public required string Type { get; init; }

    /// <summary>How many items would be sold as one; 1 or more.</summary>
    public int? Count { get; init; }

    /// <summary>Width, in the workshop's length unit.</summary>
    public decimal? Width { get; init; }

    /// <summary>Depth, in the workshop's length unit.</summary>
    public decimal? Depth { get; init; }

    /// <summary>Height, in the workshop's length unit.</summary>
    public decimal? Height { get; init; }

    /// <summary>What it is made of.</summary>
    public string? Material { get; init; }

    /// <summary>How sound it is.</summary>
    public Condition? Condition { get; init; }

    /// <summary>Colour it would be given.</summary>
    public string? Colour { get; init; }

    /// <summary>Finish it would be given.</summary>
    public string? Finish { get; init; }

    /// <summary>Hours the owner expects it to take.</summary>
    public decimal? Hours { get; init; }

    /// <summary>Cost of supplies the owner expects.</summary>
    public decimal? Supplies { get; init; }

    /// <summary>Sale price the owner expects.</summary>
    public decimal? SalePrice { get; init; }

    /// <summary>What the store asks.</summary>
    public decimal? StickerPrice { get; init; }
}
