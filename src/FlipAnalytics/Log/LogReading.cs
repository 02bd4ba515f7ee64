using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What came of reading a folder: the log, and everything in it that needs the owner's eye.</summary>
/// <param name="Log">
/// The log; null only if the folder or <c>pieces.csv</c> is missing or cannot be read. Its date is that of the last
/// dated fact in any table; <see cref="DateOnly.MaxValue"/>, everything known, if no fact has a date.
/// </param>
/// <param name="Problems">Problems, by file and line.</param>
/// <param name="Tables">What was read of each table, the required one first.</param>
/// <param name="HasWorkshop">Whether there is a <c>workshop.toml</c>.</param>
public sealed record LogReading(
    SalesLog? Log,
    ImmutableArray<LogProblem> Problems,
    ImmutableArray<TableReading> Tables,
    bool HasWorkshop)
{
    /// <summary>Words that were read as another spelling of one seen before.</summary>
    internal IReadOnlyList<OtherSpelling> OtherSpellings { get; init; } = [];

    /// <summary>Pieces that are not in the log as their dates contradict each other.</summary>
    internal IReadOnlyList<Piece> Contradicting { get; init; } = [];

    /// <summary>Whether something could not be used.</summary>
    public bool HasErrors => Problems.Any(problem => problem.Severity == Severity.Error);
}

/// <summary>What was read of a table.</summary>
/// <param name="File">File name, such as hours.csv.</param>
/// <param name="IsPresent">Whether there is something under that name.</param>
/// <param name="IsReadable">Whether its rows could be told apart; false if the whole file was set aside.</param>
/// <param name="Rows">Rows below the header, blank ones not counted; lines, if the whole file was set aside.</param>
/// <param name="RowsSetAside">Rows that are not in the log; each has an error among the problems.</param>
/// <param name="UnknownColumns">Headers that the log does not know; they are left in the file.</param>
public sealed record TableReading(
    string File,
    bool IsPresent,
    bool IsReadable,
    int Rows,
    int RowsSetAside,
    ImmutableArray<string> UnknownColumns)
{
    /// <summary>What the rows set aside hold, as far as it can be read.</summary>
    public AmountsSetAside Aside { get; init; } = new(0, 0, 0, 0);

    /// <summary>Cells that count as unknown because they cannot be read, in rows that are used.</summary>
    public int CellsSetAside { get; init; }
}
