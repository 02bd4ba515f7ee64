namespace FlipAnalytics.Plots;

/// <summary>Writes pictures to files.</summary>
public static class PlotFile
{
    /// <summary>Whether a file name ends in what a picture can be saved as.</summary>
    /// <param name="path">File name.</param>
    public static bool CanSave(string path) => Kind(path) is ".PNG" or ".SVG";

    /// <summary>
    /// Writes a figure as PNG or SVG, by the ending of the file name. A picture that this wrote before is replaced while nobody
    /// changed it. An SVG carries the figure's alternative text; a page that shows a PNG has to give it in its <c>alt</c>.
    /// </summary>
    /// <param name="figure">The figure.</param>
    /// <param name="path">File name that ends in .png or .svg, in either case.</param>
    /// <param name="replaces">Whether any other file of that name is replaced too.</param>
    /// <exception cref="ArgumentException">The name ends in something else.</exception>
    /// <exception cref="FileRefusedException">A file of that name may not be replaced.</exception>
    /// <exception cref="IOException">Writing fails.</exception>
    public static void Save(Figure figure, string path, bool replaces = false)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(path);
        if (!CanSave(path))
        {
            throw new ArgumentException(
                $"'{path}' is no name for a picture: it must end in .png or .svg. Give such a name.", nameof(path));
        }

        OutputFile file = Kind(path) == ".PNG"
            ? new(path, PngMark.Sealed(figure.Png()), PngMark.IsOn)
            : OutputFile.Marked(path, $"{figure.Svg().TrimEnd()}\n<!-- {OwnMark.Place} -->\n");
        OutputFiles.Write([file], replaces);
    }

    private static string Kind(string path) => Path.GetExtension(path).ToUpperInvariant();
}
