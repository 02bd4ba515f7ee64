namespace FlipAnalytics.Plots;

/// <summary>Writes pictures to files.</summary>
public static class PlotFile
{
    /// <summary>Whether a file name ends in what a picture can be saved as.</summary>
    /// <param name="path">File name.</param>
    public static bool CanSave(string path) => Kind(path) is ".PNG" or ".SVG";

    /// <summary>
    /// Writes a figure as PNG or SVG, by the ending of the file name; an existing file is replaced. An SVG carries the
    /// figure's alternative text; a page that shows a PNG has to give it in its <c>alt</c>.
    /// </summary>
    /// <param name="figure">The figure.</param>
    /// <param name="path">File name that ends in .png or .svg, in either case.</param>
    /// <exception cref="ArgumentException">The name ends in something else.</exception>
    public static void Save(Figure figure, string path)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(path);
        if (!CanSave(path))
        {
            throw new ArgumentException(
                $"'{path}' is no name for a picture: it must end in .png or .svg. Give such a name.", nameof(path));
        }

        if (Kind(path) == ".PNG")
            File.WriteAllBytes(path, figure.Png());
        else
            File.WriteAllText(path, figure.Svg());
    }

    private static string Kind(string path) => Path.GetExtension(path).ToUpperInvariant();
}
