namespace FlipAnalytics.Plots;

/// <summary>Writes pictures to files.</summary>
public static class PlotFile
{
    /// <summary>Writes a figure as PNG or SVG, by the ending of the file name; an existing file is replaced.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="path">File name that ends in .png or .svg, in either case.</param>
    /// <exception cref="ArgumentException">The name ends in something else.</exception>
    public static void Save(Figure figure, string path)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(path);
        switch (Path.GetExtension(path).ToUpperInvariant())
        {
            case ".PNG":
                figure.Plot.SavePng(path, figure.Width, figure.Height);
                break;
            case ".SVG":
                figure.Plot.SaveSvg(path, figure.Width, figure.Height);
                break;
            default:
                throw new ArgumentException(
                    $"'{path}' is no name for a picture: it must end in .png or .svg. Give such a name.", nameof(path));
        }
    }
}
