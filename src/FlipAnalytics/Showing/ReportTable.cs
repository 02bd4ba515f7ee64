using System.Collections.Immutable;
using System.Globalization;

namespace FlipAnalytics;

/// <summary>A column of a report's table.</summary>
/// <param name="Name">Its name in snake_case, as in the JSON.</param>
/// <param name="Meaning">What it holds, with its unit.</param>
public sealed record ReportColumn(string Name, string Meaning);

/// <summary>
/// Figures of a report as rows and columns, for a spreadsheet, a data frame or a page. A cell is a string, a decimal, an
/// int, a bool or a <see cref="DateOnly"/>; null is unknown.
/// </summary>
/// <param name="Name">Its name, also of the file: lower case, such as wages-by-flip.</param>
/// <param name="Caption">What it shows, in a few words.</param>
/// <param name="Columns">Columns.</param>
/// <param name="Rows">Rows of as many cells as there are columns.</param>
public sealed record ReportTable(
    string Name, string Caption, ImmutableArray<ReportColumn> Columns, ImmutableArray<ImmutableArray<object?>> Rows)
{
    /// <summary>The table of some records.</summary>
    /// <typeparam name="T">Type of a record.</typeparam>
    /// <param name="name">Name of the table.</param>
    /// <param name="caption">What it shows.</param>
    /// <param name="records">A record a row.</param>
    /// <param name="columns">Each column's name, meaning and cell.</param>
    public static ReportTable Of<T>(
        string name,
        string caption,
        IEnumerable<T> records,
        params (string Name, string Meaning, Func<T, object?> Cell)[] columns)
    {
        ArgumentNullException.ThrowIfNull(records);
        ArgumentNullException.ThrowIfNull(columns);
        return new(
            name,
            caption,
            [.. columns.Select(column => new ReportColumn(column.Name, column.Meaning))],
            [.. records.Select(record => columns.Select(column => column.Cell(record)).ToImmutableArray())]);
    }

    /// <summary>The same table with some of its columns, in the order named.</summary>
    /// <param name="names">Names of columns.</param>
    /// <exception cref="ArgumentException">The table has no such column.</exception>
    public ReportTable Only(params string[] names)
    {
        ArgumentNullException.ThrowIfNull(names);
        int[] places = [.. names.Select(Place)];
        return this with
        {
            Columns = [.. places.Select(place => Columns[place])],
            Rows = [.. Rows.Select(row => places.Select(place => row[place]).ToImmutableArray())],
        };

        int Place(string name) => Columns.Select(column => column.Name).ToList().IndexOf(name) is >= 0 and var place
            ? place
            : throw new ArgumentException(
                $"The table {Name} has no column {name}; it has {string.Join(", ", Columns.Select(column => column.Name))}.",
                nameof(names));
    }

    /// <summary>A cell as text, the same in every culture; empty where unknown.</summary>
    /// <param name="cell">A cell.</param>
    public static string TextOf(object? cell) => cell switch
    {
        null => "",
        DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        bool value => value ? "yes" : "no",
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => cell.ToString() ?? "",
    };
}
