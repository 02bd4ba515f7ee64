using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>A file of a year's sheet.</summary>
/// <param name="Name">Its name, such as year-sales.csv.</param>
/// <param name="Rows">Rows of a table; null for the page.</param>
public sealed record YearFile(string Name, int? Rows);

/// <summary>
/// A year's sheet in a folder: the page and a CSV file for each list. The page ends in a list of the files with the first digits
/// of their SHA-256, so that a later run knows which files are as it wrote them, and replaces no others.
/// </summary>
public static class YearFiles
{
    /// <summary>Name of the page.</summary>
    public const string PageName = "year.txt";

    private const int Digits = 12;
    private const int LargestFile = 256_000_000;
    private const string ListBegins = "Files of the sheet of ";
    private const string ListGoesOn = ", as they were written (rows, first digits of SHA-256)";
    private const string PageSeal = "  this page ";

    /// <summary>
    /// Why the sheet cannot be written into a folder without replacing what this did not write, in a sentence; null where it can.
    /// </summary>
    /// <param name="report">The sheet.</param>
    /// <param name="folder">The folder; it need not exist.</param>
    public static string? Refusal(YearReport report, string folder)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        string[] there = [.. Names(report).Where(name => File.Exists(Path.Combine(folder, name)))];
        if (there.Length == 0)
            return null;
        string pagePath = Path.Combine(folder, PageName);
        var (period, digests) = File.Exists(pagePath) ? Listed(Encoding.UTF8.GetString(Read(pagePath))) : (null, ImmutableDictionary<string, string>.Empty);
        string[] foreign = [.. there.Where(name => name != PageName || digests.IsEmpty)
            .Where(name => digests.GetValueOrDefault(name) != DigestOf(Read(Path.Combine(folder, name))))];
        if (foreign.Length > 0)
        {
            string more = foreign.Length == 1 ? "" : Invariant($" and {TextLines.Counted(foreign.Length - 1, "more file")}");
            return $"{folder} holds {foreign[0]}{more} that flip year did not write, or that changed since: name another folder, or add --force to replace.";
        }

        return period == report.Period.Name ? null
            : $"{folder} holds the sheet of {period}: name another folder for that of {report.Period.Name}, or add --force to replace it.";
    }

    /// <summary>Writes the sheet; files of the same names are replaced, after all have been written in full.</summary>
    /// <param name="report">The sheet.</param>
    /// <param name="folder">The folder; made if it does not exist.</param>
    /// <returns>The files, the page first.</returns>
    /// <exception cref="IOException">Writing fails.</exception>
    public static ImmutableArray<YearFile> Write(YearReport report, string folder)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        (YearFile File, byte[] Bytes)[] tables = [.. YearTables.Of(report)
            .Select(table => (new YearFile(table.Name + ".csv", table.Rows.Length), ReportTableFiles.Bytes(table)))];
        byte[] page = Page(report, tables);
        // What is the owner's has been refused by now, or may be replaced.
        OutputFiles.Write(
            tables.Select(table => OutputFile.Judged(Path.Combine(folder, table.File.Name), table.Bytes))
                .Prepend(OutputFile.Judged(Path.Combine(folder, PageName), page)),
            replaces: true);
        return [new(PageName, null), .. tables.Select(table => table.File)];
    }

    /// <summary>What was written, in a sentence.</summary>
    /// <param name="written">The files.</param>
    /// <param name="folder">The folder.</param>
    public static string Sentence(ImmutableArray<YearFile> written, string folder) => Invariant(
        $"Wrote {written.Length} files into {folder}: {string.Join(", ", written.Select(file => file.Rows is { } rows ? Invariant($"{file.Name} ({TextLines.Counted(rows, "row")})") : file.Name))}.");

    private static IEnumerable<string> Names(YearReport report) => YearTables.Of(report).Select(table => table.Name + ".csv").Prepend(PageName);

    private static byte[] Page(YearReport report, (YearFile File, byte[] Bytes)[] tables)
    {
        StringBuilder page = new(YearText.Render(report, all: true));
        page.Append('\n').Append(ListBegins).Append(report.Period.Name).Append(ListGoesOn).Append('\n');
        foreach (var (file, bytes) in tables)
            page.Append(Invariant($"  {file.Name} {file.Rows} {DigestOf(bytes)}\n"));
        string above = page.ToString();
        return Encoding.UTF8.GetBytes(above + PageSeal + DigestOf(Encoding.UTF8.GetBytes(above)) + "\n");
    }

    // The list at the end of a page; empty where the page is not as it was written.
    private static (string? Period, ImmutableDictionary<string, string> Digests) Listed(string page)
    {
        int seal = page.LastIndexOf(PageSeal, StringComparison.Ordinal);
        int list = page.LastIndexOf(ListBegins, StringComparison.Ordinal);
        if (list < 0 || seal < list || page[(seal + PageSeal.Length)..].TrimEnd('\n') != DigestOf(Encoding.UTF8.GetBytes(page[..seal])))
            return (null, ImmutableDictionary<string, string>.Empty);
        string[] lines = page[list..seal].Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return (
            lines[0][ListBegins.Length..].Replace(ListGoesOn, "", StringComparison.Ordinal),
            lines.Skip(1).Select(line => line.Trim().Split(' ')).ToImmutableDictionary(cells => cells[0], cells => cells[^1]));
    }

    private static byte[] Read(string path) => PlainFile.Read(path, LargestFile) ?? [];

    private static string DigestOf(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes))[..Digits];
}
