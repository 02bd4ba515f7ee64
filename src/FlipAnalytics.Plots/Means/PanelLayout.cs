namespace FlipAnalytics.Plots;

/// <summary>The axes of a panel and the room around it.</summary>
/// <param name="X">Axis along the bottom.</param>
/// <param name="XLabel">What it is, with its unit.</param>
/// <param name="Y">Axis along the left side.</param>
/// <param name="YLabel">What it is, with its unit; written level above the axis.</param>
/// <param name="Height">Height of the area of the data, in pixels.</param>
internal sealed record PanelLayout(Scale X, string XLabel, Scale Y, string YLabel, float Height)
{
    /// <summary>What the panel says, where a picture has several.</summary>
    public string? Heading { get; init; }

    /// <summary>Where it begins, labels included.</summary>
    public float Left { get; init; } = Sheet.Left;

    /// <summary>Where it ends, labels included.</summary>
    public float Right { get; init; } = Sheet.Right;

    /// <summary>Room to the right of the area, for direct labels.</summary>
    public float Gutter { get; init; } = 16;

    /// <summary>Room to the left of the area; null for what the labels of the ticks need.</summary>
    public float? NameColumn { get; init; }

    /// <summary>Whether lines run across the area at the ticks of the upright axis.</summary>
    public bool LinesAcross { get; init; } = true;

    /// <summary>Whether lines run up the area at the ticks of the level axis.</summary>
    public bool LinesUp { get; init; }

    /// <summary>Whether the next panel stands beside this one.</summary>
    public bool KeepsTop { get; init; }
}
