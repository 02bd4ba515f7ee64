using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The records of a table: where a log holds them, what their cells are and how they are read.</summary>
/// <param name="Table">The table.</param>
/// <param name="In">Its records in a log, in file order.</param>
/// <param name="Row">Line of a record in its file.</param>
/// <param name="Cell">What a record has in a column, as the text of a cell; null where empty.</param>
/// <param name="With">A log with other records in this table.</param>
/// <param name="Read">Reads records; what cannot be used is among the problems.</param>
internal sealed record LogRecords(
    LogTable Table,
    Func<SalesLog, ImmutableArray<object>> In,
    Func<object, int> Row,
    Func<object, string, string?> Cell,
    Func<SalesLog, IEnumerable<object>, SalesLog> With,
    Func<RowReading, IReadOnlyList<object>> Read)
{
    /// <summary>Every table of the log, the required one first: whoever writes or keeps a log goes through these.</summary>
    public static ImmutableArray<LogRecords> All { get; } =
    [
        Of(Columns.Pieces, log => log.Pieces, row => row.Row, TableColumns.Piece, Rows.Piece,
            (log, rows) => log with { Pieces = rows }),
        Of(Columns.Asking, log => log.AskingPrices, row => row.Row, TableColumns.Asking, Rows.Asking,
            (log, rows) => log with { AskingPrices = rows }),
        Of(Columns.Hours, log => log.Hours, row => row.Row, TableColumns.Hours, Rows.Hours,
            (log, rows) => log with { Hours = rows }),
        Of(Columns.Supplies, log => log.Supplies, row => row.Row, TableColumns.Supply, Rows.Supply,
            (log, rows) => log with { Supplies = rows }),
        Of(Columns.Uses, log => log.Uses, row => row.Row, TableColumns.Use, Rows.Use,
            (log, rows) => log with { Uses = rows }),
        Of(Columns.Counts, log => log.Counts, row => row.Row, TableColumns.Count, Rows.Count,
            (log, rows) => log with { Counts = rows }),
        Of(Columns.Trips, log => log.Trips, row => row.Row, TableColumns.Trip, Rows.Trip,
            (log, rows) => log with { Trips = rows }),
        Of(Columns.Tools, log => log.Tools, row => row.Row, TableColumns.Tool, Rows.Tool,
            (log, rows) => log with { Tools = rows }),
        Of(Columns.Overheads, log => log.Overheads, row => row.Row, TableColumns.Overhead, Rows.Overhead,
            (log, rows) => log with { Overheads = rows }),
        Of(Columns.Moves, log => log.Moves, row => row.Row, TableColumns.Move, Rows.Move,
            (log, rows) => log with { Moves = rows }),
        Of(Columns.Money, log => log.Money, row => row.Row, TableColumns.Money, Rows.Money,
            (log, rows) => log with { Money = rows }),
        Of(Columns.Returns, log => log.Returns, row => row.Row, TableColumns.Return, Rows.Return,
            (log, rows) => log with { Returns = rows }),
        Of(Columns.Colors, log => log.Colours, row => row.Row, TableColumns.Colour, Rows.Colour,
            (log, rows) => log with { Colours = rows }),
    ];

    private static LogRecords Of<T>(
        LogTable table, Func<SalesLog, ImmutableArray<T>> get, Func<T, int> row, Func<T, string, string?> cell,
        Func<Cells, T> build, Func<SalesLog, ImmutableArray<T>, SalesLog> with)
        where T : class => new(
            table,
            log => ImmutableArray<object>.CastUp(get(log)),
            record => row((T)record),
            (record, column) => cell((T)record, column),
            (log, records) => with(log, [.. records.Cast<T>()]),
            reading => TableReader.Read(table, reading, build).Read);
}
