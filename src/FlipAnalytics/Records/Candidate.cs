using System.Collections.Immutable;

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

    /// <summary>How many items would be sold as one; in <see cref="NumberRange.Count"/>.</summary>
    public int? Count
    {
        get;
        init => field = (int?)NumberRange.Count.Checked(value, nameof(Count));
    }

    /// <summary>Width, in the workshop's length unit.</summary>
    public decimal? Width { get; init => field = NumberRange.Length.Checked(value, nameof(Width)); }

    /// <summary>Depth, in the workshop's length unit.</summary>
    public decimal? Depth { get; init => field = NumberRange.Length.Checked(value, nameof(Depth)); }

    /// <summary>Height, in the workshop's length unit.</summary>
    public decimal? Height { get; init => field = NumberRange.Length.Checked(value, nameof(Height)); }

    /// <summary>What it is made of.</summary>
    public string? Material { get; init; }

    /// <summary>How sound it is.</summary>
    public Condition? Condition { get; init; }

    /// <summary>Colour it would be given.</summary>
    public string? Colour { get; init; }

    /// <summary>Finish it would be given.</summary>
    public string? Finish { get; init; }

    /// <summary>Hours the owner expects it to take.</summary>
    public decimal? Hours { get; init => field = NumberRange.Hours.Checked(value, nameof(Hours)); }

    /// <summary>Cost of supplies the owner expects.</summary>
    public decimal? Supplies { get; init => field = NumberRange.Money.Checked(value, nameof(Supplies)); }

    /// <summary>Sale price the owner expects.</summary>
    public decimal? SalePrice { get; init => field = NumberRange.Money.Checked(value, nameof(SalePrice)); }

    /// <summary>What the store asks.</summary>
    public decimal? StickerPrice { get; init => field = NumberRange.Money.Checked(value, nameof(StickerPrice)); }

    /// <summary>Its row of a file of candidates as the owner wrote it; empty where it comes from no file.</summary>
    public ImmutableArray<WrittenCell> Written { get; init; } = [];

    /// <summary>What was made of its words: taken for words of the log, or new to it; a sentence each.</summary>
    public ImmutableArray<string> WordNotes { get; init; } = [];

    /// <summary>A piece as it is seen in a store: what it is and what the store asks, and nothing of what came of it.</summary>
    /// <param name="seen">The piece.</param>
    public static Candidate Of(Piece seen)
    {
        ArgumentNullException.ThrowIfNull(seen);
        return new()
        {
            Id = seen.Id,
            Type = seen.Type,
            Count = seen.Count,
            Width = seen.Width,
            Depth = seen.Depth,
            Height = seen.Height,
            Material = seen.Material,
            Condition = seen.Condition,
            Colour = seen.Colour,
            Finish = seen.Finish,
            StickerPrice = seen.StickerPrice,
        };
    }
}

/// <summary>A cell of an owner's file as it is written.</summary>
/// <param name="Column">Header of its column; its place where it has none.</param>
/// <param name="Text">What it says; empty where nothing.</param>
/// <param name="IsOwn">Whether the column is the owner's own and means nothing to the answer.</param>
public sealed record WrittenCell(string Column, string Text, bool IsOwn);
