using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>
/// Named columns of equal length, of numbers or of text. A missing number is NaN; a missing text is null or empty.
/// Immutable: adding a column gives another table.
/// </summary>
public sealed class DataColumns
{
    private readonly ImmutableDictionary<string, double[]> _numbers;
    private readonly ImmutableDictionary<string, string?[]> _texts;
    private readonly int[]? _places;

    private DataColumns(
        ImmutableArray<string> names,
        ImmutableDictionary<string, double[]> numbers,
        ImmutableDictionary<string, string?[]> texts,
        int rowCount,
        int[]? places)
    {
        Names = names;
        _numbers = numbers;
        _texts = texts;
        RowCount = rowCount;
        _places = places;
    }

    /// <summary>No columns yet; the first one added sets the number of rows.</summary>
    public static DataColumns Empty { get; } = new(
        [],
        ImmutableDictionary.Create<string, double[]>(StringComparer.Ordinal),
        ImmutableDictionary.Create<string, string?[]>(StringComparer.Ordinal),
        0,
        null);

    /// <summary>The columns' names in the order they were added.</summary>
    public ImmutableArray<string> Names { get; }

    /// <summary>Rows.</summary>
    public int RowCount { get; }

    /// <summary>These columns and one more, of numbers.</summary>
    /// <param name="name">A name not used yet.</param>
    /// <param name="values">A finite value a row, NaN where it is missing.</param>
    /// <exception cref="ArgumentException">A name used twice, another number of rows, or an infinite value.</exception>
    public DataColumns With(string name, IEnumerable<double> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        double[] column = [.. values];
        Check(name, column.Length);
        int infinite = Array.FindIndex(column, double.IsInfinity);
        if (infinite >= 0)
        {
            throw new ArgumentException(FormattableString.Invariant(
                $"Row {infinite} (counting from 0): '{name}' is {column[infinite]}; give a finite number, or NaN for a missing one."));
        }

        return new(Names.Add(name), _numbers.Add(name, column), _texts, column.Length, null);
    }

    /// <summary>These columns and one more, of text.</summary>
    /// <param name="name">A name not used yet.</param>
    /// <param name="values">A text a row, null or empty where it is missing.</param>
    /// <exception cref="ArgumentException">A name used twice, or another number of rows.</exception>
    public DataColumns With(string name, IEnumerable<string?> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        string?[] column = [.. values];
        Check(name, column.Length);
        return new(Names.Add(name), _numbers, _texts.Add(name, column), column.Length, null);
    }

    /// <summary>Whether there is a column of that name.</summary>
    public bool Has(string name) => _numbers.ContainsKey(name) || _texts.ContainsKey(name);

    /// <summary>The numbers of a column.</summary>
    /// <exception cref="ArgumentException">No such column, or one of text.</exception>
    public ReadOnlySpan<double> Numbers(string name) => NumbersOf(name);

    /// <summary>The texts of a column.</summary>
    /// <exception cref="ArgumentException">No such column, or one of numbers.</exception>
    public ReadOnlySpan<string?> Texts(string name) => TextsOf(name);

    /// <summary>Whether a column has no value in a row (counting from 0).</summary>
    /// <exception cref="ArgumentException">No such column.</exception>
    public bool IsMissing(string name, int row) => _numbers.TryGetValue(name, out double[]? numbers)
        ? double.IsNaN(numbers[row])
        : _texts.TryGetValue(name, out string?[]? texts) ? string.IsNullOrEmpty(texts[row]) : throw Unknown(name);

    internal double[] NumbersOf(string name) => _numbers.TryGetValue(name, out double[]? numbers) ? numbers
        : throw (_texts.ContainsKey(name)
            ? new ArgumentException(
                $"Column '{name}' holds text where numbers are expected; describe it as a Category or a RandomIntercept.")
            : Unknown(name));

    internal string?[] TextsOf(string name) => _texts.TryGetValue(name, out string?[]? texts) ? texts
        : throw (_numbers.ContainsKey(name)
            ? new ArgumentException(
                $"Column '{name}' holds numbers where text is expected; describe it as a Number, or give the levels as text.")
            : Unknown(name));

    /// <summary>A row's place, counting from 0, in the data these rows were picked from.</summary>
    internal int PlaceOf(int row) => _places is null ? row : _places[row];

    /// <summary>The named columns, some of the rows.</summary>
    internal DataColumns Pick(IReadOnlyCollection<string> names, int[] rows) => new(
        [.. names],
        Picked(_numbers, names, rows),
        Picked(_texts, names, rows),
        rows.Length,
        rows);

    private static ImmutableDictionary<string, T[]> Picked<T>(
        ImmutableDictionary<string, T[]> columns, IReadOnlyCollection<string> names, int[] rows) =>
        names.Where(columns.ContainsKey)
            .ToImmutableDictionary(name => name, name => rows.Select(row => columns[name][row]).ToArray(), StringComparer.Ordinal);

    private ArgumentException Unknown(string name) => new(
        $"There is no column '{name}'; the data have {(Names.IsEmpty ? "no columns" : Listing.Quoted(Names))}.");

    private void Check(string name, int length)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        if (Has(name))
        {
            throw new ArgumentException($"There is a column '{name}' already; each needs a name of its own.", nameof(name));
        }

        if (!Names.IsEmpty && length != RowCount)
        {
            throw new ArgumentException(
                $"Column '{name}' has {length} rows where '{Names[0]}' has {RowCount}; give every column the same rows.");
        }
    }
}
