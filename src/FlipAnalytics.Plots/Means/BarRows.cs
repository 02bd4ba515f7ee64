using ScottPlot;

namespace FlipAnalytics.Plots;

/// <summary>A bar of a chart of rows.</summary>
/// <param name="Name">What stands to its left.</param>
/// <param name="Amount">How long it is; below zero it runs to the left.</param>
/// <param name="Label">What stands to its right.</param>
internal sealed record BarRow(string Name, double Amount, string Label)
{
    /// <summary>Its colour.</summary>
    public Color Color { get; init; } = Style.Standing;

    /// <summary>Where a paler bar behind it ends; null for none.</summary>
    public double? Paler { get; init; }
}

/// <summary>Bars in rows, each with its name and its amount in words; the panel grows with the rows.</summary>
internal static class BarRows
{
    private const double PalerOpacity = 0.4;

    /// <summary>Adds the rows to a sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="rows">The rows, at least one, from top to bottom.</param>
    /// <param name="look">Heading, axis along the bottom, room for names, and heights.</param>
    public static void AddTo(Sheet sheet, IReadOnlyList<BarRow> rows, BarRowsLook look)
    {
        Panel panel = sheet.AddPanel(new(
            look.Axis, look.AxisLabel, Scale.Fixed(-rows.Count + 0.5, 0.5, []), "", rows.Count * look.RowHeight)
        {
            Heading = look.Heading,
            NameColumn = look.NameColumn,
            Gutter = look.Gutter ?? rows.Max(row => Lettering.Small.Measure(row.Label).Width) + 12,
            LinesUp = true,
        });
        panel.Upright(0, new(Style.Ink));
        for (int i = 0; i < rows.Count; i++)
        {
            BarRow row = rows[i];
            if (row.Paler is { } paler)
                panel.Bar(0, paler, -i, look.Thickness, row.Color.WithAlpha(PalerOpacity));
            panel.Bar(Math.Min(0, row.Amount), Math.Max(0, row.Amount), -i, look.Thickness, row.Color);
            panel.NameRow(row.Name, -i, look.NameLines);
            panel.Write(row.Label, look.Gutter is not null ? look.Axis.High : Math.Max(0, row.Paler ?? row.Amount), -i);
        }
    }
}

/// <summary>How a chart of rows is laid out.</summary>
/// <param name="Axis">The axis along the bottom.</param>
/// <param name="AxisLabel">What it is, with its unit.</param>
internal sealed record BarRowsLook(Scale Axis, string AxisLabel)
{
    /// <summary>What the rows say; null for nothing.</summary>
    public string? Heading { get; init; }

    /// <summary>Height of a row in pixels.</summary>
    public float RowHeight { get; init; } = 30;

    /// <summary>Height of a bar in pixels.</summary>
    public float Thickness { get; init; } = 18;

    /// <summary>Room for names in pixels.</summary>
    public float NameColumn { get; init; } = 190;

    /// <summary>Lines that a name may take.</summary>
    public int NameLines { get; init; } = 1;

    /// <summary>
    /// Room to the right for labels that stand in line there; null for labels at the ends of the bars and the room they need.
    /// </summary>
    public float? Gutter { get; init; }
}
