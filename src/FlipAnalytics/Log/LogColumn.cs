using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What a cell of a column holds, and so how it is read.</summary>
public enum ColumnKind
{
    /// <summary>A name of one row, unique in its table or pointing to a row of another; case does not matter.</summary>
    Name,

    /// <summary>A short word or two that groups rows, such as a type or a colour; case does not matter.</summary>
    Label,

    /// <summary>Free text.</summary>
    Text,

    /// <summary>One of a few given words; case does not matter.</summary>
    Word,

    /// <summary>A day, as 2026-03-31.</summary>
    Date,

    /// <summary>A month, as 2026-03.</summary>
    Month,

    /// <summary>An amount in the workshop's currency, with at most its minor digits.</summary>
    Money,

    /// <summary>A number with a point.</summary>
    Number,

    /// <summary>A whole number.</summary>
    WholeNumber,

    /// <summary>An sRGB colour, as #8fa68e.</summary>
    Hex,
}

/// <summary>The smallest value a number may have.</summary>
public enum Smallest
{
    /// <summary>Any number, also below zero.</summary>
    Any,

    /// <summary>Zero or more.</summary>
    Zero,

    /// <summary>More than zero.</summary>
    AboveZero,
}

/// <summary>Which pieces can have a fact.</summary>
internal enum HadBy
{
    /// <summary>Every piece.</summary>
    All,

    /// <summary>Pieces sold or on sale.</summary>
    Offered,

    /// <summary>Pieces sold.</summary>
    Sold,

    /// <summary>Pieces gone without a sale.</summary>
    Gone,
}

/// <summary>A column of a table of the log: its name, what its cells hold and what they mean.</summary>
/// <param name="Name">Header of the column.</param>
/// <param name="Kind">What a cell holds.</param>
/// <param name="Meaning">What it says, as a sentence.</param>
/// <param name="Unit">Unit of a number, in words; null where it has none.</param>
/// <param name="Smallest">Smallest value of a number.</param>
/// <param name="IsRequired">Whether a row without it says nothing.</param>
public sealed record LogColumn(
    string Name,
    ColumnKind Kind,
    string Meaning,
    string? Unit = null,
    Smallest Smallest = Smallest.Any,
    bool IsRequired = false)
{
    /// <summary>The words a <see cref="ColumnKind.Word"/> may be; empty for other kinds.</summary>
    public ImmutableArray<string> Words { get; init; } = [];

    /// <summary>A word that a number may be in place of 0, such as empty; null for none.</summary>
    public string? WordForNone { get; init; }

    /// <summary>What to do with a number that is too small or too large; null for the usual words.</summary>
    public string? Remedy { get; init; }

    /// <summary>
    /// Whether the row would say something untrue without it, such as a sale without its price; a required column always
    /// decides.
    /// </summary>
    public bool IsDeciding { get; init; }

    /// <summary>Which pieces can have it.</summary>
    internal HadBy HadBy { get; init; }

    /// <summary>Whether it is often empty by right, so that a gap takes little from the answers.</summary>
    internal bool IsExtra { get; init; }

    /// <summary>The range that a number must be in.</summary>
    internal NumberRange Range => ColumnRanges.Of(this);

    /// <summary>Whether a cell that cannot be read sets its whole row aside; else the cell alone counts as unknown.</summary>
    internal bool SetsRowAside => IsRequired || IsDeciding;
}

/// <summary>A table of the log: its file, its columns in the order they are written, and what it is good for.</summary>
/// <param name="File">File name, such as hours.csv.</param>
/// <param name="Adds">What the answers gain from it, as a sentence.</param>
/// <param name="Columns">Its columns, in the order they are written.</param>
public sealed record LogTable(string File, string Adds, ImmutableArray<LogColumn> Columns)
{
    /// <summary>Whether it is for what happens now and then, so that most logs are whole without it.</summary>
    public bool IsOccasional { get; init; }

    /// <summary>The column of a name.</summary>
    /// <param name="name">Header of the column, exactly.</param>
    /// <exception cref="ArgumentException">The table has no such column.</exception>
    public LogColumn this[string name] =>
        Columns.FirstOrDefault(column => column.Name == name)
        ?? throw new ArgumentException(
            $"{File} has no column '{name}'; it has {string.Join(", ", Columns.Select(column => column.Name))}.",
            nameof(name));
}
