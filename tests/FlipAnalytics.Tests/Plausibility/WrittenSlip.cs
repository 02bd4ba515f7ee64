using System.Globalization;

namespace FlipAnalytics.Tests;

/// <summary>A row of the table of slips, and how it is made in the files of a log.</summary>
public sealed record WrittenSlip(string Kind, int Pieces, ulong Seed, string File, string Column, string Change, int Nth)
{
    /// <summary>The table.</summary>
    public static IReadOnlyList<WrittenSlip> All { get; } =
    [
        .. System.IO.File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "ReferenceData", "slips", "slips.csv")).Skip(1)
            .Select(line => line.Split(','))
            .Select(c => new WrittenSlip(
                c[0], int.Parse(c[1], CultureInfo.InvariantCulture), ulong.Parse(c[2], CultureInfo.InvariantCulture), c[3], c[4], c[5],
                int.Parse(c[6], CultureInfo.InvariantCulture))),
    ];

    /// <summary>Makes the slip in a folder with a good log.</summary>
    /// <returns>The line of the file that has it.</returns>
    internal int Make(SalesLog log, string folder)
    {
        string path = Path.Combine(folder, File);
        List<string[]> lines = [.. System.IO.File.ReadAllLines(path).Select(Cells)];
        string[] header = lines[0];
        int column = Array.IndexOf(header, Column);
        int[] able = [.. Enumerable.Range(1, lines.Count - 1).Where(i => Changed(log, header, lines[i], column) is { } to && to != lines[i][column])];
        int row = able[(Nth - 1) % able.Length];
        switch (Change)
        {
            case "again":
                string[] again = [.. lines[row]];
                again[column] += "b";
                lines.Insert(row + 1, again);
                row++;
                break;
            case "lot":
                foreach (int i in new[] { row, row + 1, row + 2 })
                    lines[i] = [.. lines[i], "one price"];
                for (int i = 0; i < lines.Count; i++)
                    lines[i] = lines[i].Length > header.Length ? lines[i] : [.. lines[i], i == 0 ? "lot" : ""];
                lines[row][column] = "";
                break;
            case ['a', 'l', 'l', ' ', ..]:
                foreach (string length in new[] { "width", "depth", "height" })
                    lines[row][Array.IndexOf(header, length)] = Changed(log, header, lines[row], Array.IndexOf(header, length))!;
                break;
            default:
                lines[row][column] = Changed(log, header, lines[row], column)!;
                break;
        }

        System.IO.File.WriteAllLines(path, lines.Select(cells => string.Join(',', cells.Select(Quoted))));
        return row + 1;
    }

    // What becomes of the cell; null where the change cannot be made in this row.
    private string? Changed(SalesLog log, string[] header, string[] row, int column)
    {
        if (row[column].Length == 0)
            return null;
        string[] words = Change.Split(' ');
        switch (words)
        {
            case ["again"]:
                return row[Array.IndexOf(header, "sold_price")].Length > 0 && row[Array.IndexOf(header, "sold_on")].Length > 0
                    && row[Array.IndexOf(header, "bought_price")] is not ("" or "0") ? "" : null;
            case ["lot"]:
                return log.Pieces.SkipWhile(p => p.Id != row[0]).Skip(1).Take(2).Count(p => p.BoughtPrice is not null) == 2 ? "" : null;
            case ["all", _] when header.Zip(row).Any(c => c.First is "width" or "depth" or "height" && c.Second.Length == 0):
                return null;
            case ["before", "purchase", string days]:
                return log.Supplies.Where(s => s.Item == row[Array.IndexOf(header, "item")]).Min(s => s.BoughtOn) is { } bought
                    ? Iso(bought.AddDays(-Days(days))) : null;
            case ["before", string other, string days]:
                return row[Array.IndexOf(header, other)] is { Length: > 0 } from ? Iso(Date(from).AddDays(-Days(days))) : null;
            case ["swap"]:
                return Date(row[column]) is { Day: <= 12 } date ? Iso(new(date.Year, date.Day, date.Month)) : null;
            case [['y', 'e', 'a', 'r', 's', .. string years]]:
                return Iso(Date(row[column]).AddYears(Days(years)));
            case [['d', 'a', 'y', 's', .. string days]]:
                return row[Array.IndexOf(header, "trip")].Length > 0 ? Iso(Date(row[column]).AddDays(Days(days))) : null;
            default:
                decimal by = decimal.Parse(words[^1][1..], CultureInfo.InvariantCulture);
                decimal amount = decimal.Parse(row[column], CultureInfo.InvariantCulture);
                bool isWhole = Column == "count";
                decimal to = words[^1][0] == 'x' ? amount * by : amount / by;
                return (isWhole ? decimal.Round(to) : decimal.Round(to, 2)).ToString("0.##", CultureInfo.InvariantCulture);
        }
    }

    private static int Days(string text) => int.Parse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture);

    private static DateOnly Date(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Iso(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string[] Cells(string line)
    {
        List<string> cells = [""];
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"')
                quoted = !quoted;
            else if (c == ',' && !quoted)
                cells.Add("");
            else
                cells[^1] += c;
        }

        return [.. cells];
    }

    private static string Quoted(string cell) => cell.Contains(',', StringComparison.Ordinal) ? $"\"{cell}\"" : cell;
}
