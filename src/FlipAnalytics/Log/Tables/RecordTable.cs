using System.Collections.Frozen;
using System.Globalization;

namespace FlipAnalytics;

/// <summary>
/// A table of which each row is a record. Its columns are added one by one, each with its name, what it means and what a record
/// has in it; reader, writer and column dictionary take all of it from here.
/// </summary>
/// <typeparam name="T">The record of a row.</typeparam>
internal sealed class RecordTable<T>
    where T : class
{
    private readonly Func<Cells, T> build;
    private readonly List<Column<T>> columns = [];
    private readonly Lazy<LogTable> definition;
    private readonly Lazy<FrozenDictionary<string, Column<T>>> byName;

    /// <param name="file">File name, such as hours.csv.</param>
    /// <param name="adds">What the answers gain from it, as a sentence.</param>
    /// <param name="build">Makes a record of the current row.</param>
    public RecordTable(string file, string adds, Func<Cells, T> build)
    {
        this.build = build;
        definition = new(() => new(file, adds, [.. columns.Select(column => column.Meaning)]) { IsOccasional = IsOccasional });
        byName = new(() => columns.ToFrozenDictionary(column => column.Name));
    }

    /// <summary>Whether it is for what happens now and then.</summary>
    public bool IsOccasional { get; init; }

    /// <summary>Whether a cell that cannot be read sets its row aside in every column.</summary>
    public bool EveryCellDecides { get; init; }

    public IReadOnlyList<Column<T>> All => columns;

    /// <summary>The table without its records, once all columns are added.</summary>
    public LogTable Definition => definition.Value;

    /// <summary>A record of the current row.</summary>
    public T Build(Cells cells) => build(cells);

    /// <summary>What a record has in a column, as the text of a cell; null where it is empty.</summary>
    /// <exception cref="ArgumentException">The table has no such column.</exception>
    public string? Cell(T record, string column) => byName.Value.TryGetValue(column, out Column<T>? found) ? found.Cell(record)
        : throw new ArgumentException($"There is no column '{column}' in {Definition.File}.", nameof(column));

    public Column<T, string?> Name(string name, string meaning, Func<T, string?> get, Func<LogColumn, LogColumn>? also = null) =>
        Words(new(name, ColumnKind.Name, meaning), get, also);

    public Column<T, string> RequiredName(string name, string meaning, Func<T, string> get) =>
        RequiredWords(new(name, ColumnKind.Name, meaning, IsRequired: true), get);

    public Column<T, string?> Label(string name, string meaning, Func<T, string?> get, Func<LogColumn, LogColumn>? also = null) =>
        Words(new(name, ColumnKind.Label, meaning), get, also);

    public Column<T, string> RequiredLabel(string name, string meaning, Func<T, string> get) =>
        RequiredWords(new(name, ColumnKind.Label, meaning, IsRequired: true), get);

    public Column<T, string?> Text(string name, string meaning, Func<T, string?> get, Func<LogColumn, LogColumn>? also = null) =>
        Words(new(name, ColumnKind.Text, meaning), get, also);

    public Column<T, TWord?> Word<TWord>(string name, string meaning, Func<T, TWord?> get, Func<LogColumn, LogColumn>? also = null)
        where TWord : struct, Enum =>
        Add(Choice<TWord>(name, meaning), get, (cells, column) => cells.Word<TWord>(column), WordOf, also);

    public Column<T, TWord> RequiredWord<TWord>(string name, string meaning, Func<T, TWord> get)
        where TWord : struct, Enum =>
        Add(Choice<TWord>(name, meaning) with { IsRequired = true }, get, (cells, column) => cells.RequiredWord<TWord>(column),
            word => Columns.WordOf(word));

    public Column<T, DateOnly?> Date(string name, string meaning, Func<T, DateOnly?> get, Func<LogColumn, LogColumn>? also = null) =>
        Add(new(name, ColumnKind.Date, meaning), get, (cells, column) => cells.Date(column), CellText.Of, also);

    public Column<T, DateOnly> RequiredDate(string name, string meaning, Func<T, DateOnly> get) =>
        Add(new(name, ColumnKind.Date, meaning, IsRequired: true), get, (cells, column) => cells.RequiredDate(column),
            date => CellText.Of(date));

    public Column<T, DateOnly> RequiredMonth(string name, string meaning, Func<T, DateOnly> get) =>
        Add(new(name, ColumnKind.Month, meaning, IsRequired: true), get, (cells, column) => cells.RequiredMonth(column),
            month => month.ToString("yyyy-MM", CultureInfo.InvariantCulture));

    public Column<T, decimal?> Money(
        string name, string meaning, Func<T, decimal?> get, Smallest smallest, Func<LogColumn, LogColumn>? also = null) =>
        Numbers(new(name, ColumnKind.Money, meaning, Columns.CurrencyWords, smallest), get, also);

    public Column<T, decimal> RequiredMoney(string name, string meaning, Func<T, decimal> get, Smallest smallest) =>
        RequiredNumbers(new(name, ColumnKind.Money, meaning, Columns.CurrencyWords, smallest, IsRequired: true), get);

    public Column<T, decimal?> Number(
        string name, string meaning, Func<T, decimal?> get, string unit, Smallest smallest, Func<LogColumn, LogColumn>? also = null) =>
        Numbers(new(name, ColumnKind.Number, meaning, unit, smallest), get, also);

    public Column<T, decimal> RequiredNumber(
        string name, string meaning, Func<T, decimal> get, string unit, Smallest smallest, Func<LogColumn, LogColumn>? also = null) =>
        RequiredNumbers(new(name, ColumnKind.Number, meaning, unit, smallest, IsRequired: true), get, also);

    public Column<T, int?> WholeNumber(
        string name, string meaning, Func<T, int?> get, string unit, Smallest smallest, Func<LogColumn, LogColumn>? also = null) =>
        Add(new(name, ColumnKind.WholeNumber, meaning, unit, smallest), get, (cells, column) => cells.WholeNumber(column),
            number => number?.ToString(CultureInfo.InvariantCulture), also);

    public Column<T, string?> Hex(string name, string meaning, Func<T, string?> get) =>
        Add(new(name, ColumnKind.Hex, meaning), get, (cells, column) => cells.Hex(column), hex => hex);

    private Column<T, string?> Words(LogColumn meaning, Func<T, string?> get, Func<LogColumn, LogColumn>? also) =>
        Add(meaning, get, (cells, column) => cells.Text(column), text => text, also);

    private Column<T, string> RequiredWords(LogColumn meaning, Func<T, string> get) =>
        Add(meaning, get, (cells, column) => cells.RequiredText(column), text => text);

    private Column<T, decimal?> Numbers(LogColumn meaning, Func<T, decimal?> get, Func<LogColumn, LogColumn>? also) =>
        Add(meaning, get, (cells, column) => cells.Decimal(column), number => NumberOf(number, null), also);

    private Column<T, decimal> RequiredNumbers(LogColumn meaning, Func<T, decimal> get, Func<LogColumn, LogColumn>? also = null)
    {
        string? none = also?.Invoke(meaning).WordForNone;
        return Add(meaning, get, (cells, column) => cells.RequiredDecimal(column), number => NumberOf(number, none), also);
    }

    private Column<T, TValue> Add<TValue>(
        LogColumn meaning, Func<T, TValue> get, Func<Cells, Column, TValue> read, Func<TValue, string?> write,
        Func<LogColumn, LogColumn>? also = null)
    {
        LogColumn whole = also?.Invoke(meaning) ?? meaning;
        Column<T, TValue> column = new(
            EveryCellDecides ? whole with { IsDeciding = true } : whole, columns.Count, get, read, write);
        columns.Add(column);
        return column;
    }

    private static LogColumn Choice<TWord>(string name, string meaning)
        where TWord : struct, Enum =>
        new(name, ColumnKind.Word, meaning) { Words = [.. Enum.GetValues<TWord>().Select(Columns.WordOf)] };

    private static string? WordOf<TWord>(TWord? value)
        where TWord : struct, Enum => value is { } word ? Columns.WordOf(word) : null;

    private static string? NumberOf(decimal? number, string? none) =>
        number == 0 && none is not null ? none : number?.ToString(CultureInfo.InvariantCulture);
}
