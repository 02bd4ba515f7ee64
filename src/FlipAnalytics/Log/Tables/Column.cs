namespace FlipAnalytics;

/// <summary>A column of a table whose rows are read into records: what it means and where it stands in the table.</summary>
/// <param name="meaning">Name, kind, meaning and limits.</param>
/// <param name="place">Its place among the columns of the table, from 0.</param>
internal abstract class Column(LogColumn meaning, int place)
{
    public LogColumn Meaning { get; } = meaning;

    public int Place { get; } = place;

    public string Name => Meaning.Name;
}

/// <summary>A column with what a record has in it.</summary>
internal abstract class Column<TRecord>(LogColumn meaning, int place) : Column(meaning, place)
{
    /// <summary>What a record has in it, as the text of a cell; null where empty.</summary>
    public abstract string? Cell(TRecord record);
}

/// <summary>A column whose values are of one type: how a cell is read and how it is written.</summary>
/// <param name="meaning">Name, kind, meaning and limits.</param>
/// <param name="place">Its place among the columns of the table, from 0.</param>
/// <param name="get">What a record has in it.</param>
/// <param name="read">Reads the cell of the current row; a cell that cannot be read is reported there.</param>
/// <param name="write">The text of a value; null where it is empty.</param>
internal sealed class Column<TRecord, TValue>(
    LogColumn meaning, int place, Func<TRecord, TValue> get, Func<Cells, Column, TValue> read, Func<TValue, string?> write)
    : Column<TRecord>(meaning, place)
{
    /// <summary>Its value in the current row.</summary>
    public TValue In(Cells cells) => read(cells, this);

    public override string? Cell(TRecord record) => write(get(record));
}
