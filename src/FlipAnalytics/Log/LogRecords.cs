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
        Of(PieceColumns.Table, log => log.Pieces, row => row.Row, (log, rows) => log with { Pieces = rows }),
        Of(AskingColumns.Table, log => log.AskingPrices, row => row.Row, (log, rows) => log with { AskingPrices = rows }),
        Of(HoursColumns.Table, log => log.Hours, row => row.Row, (log, rows) => log with { Hours = rows }),
        Of(SupplyColumns.Table, log => log.Supplies, row => row.Row, (log, rows) => log with { Supplies = rows }),
        Of(UseColumns.Table, log => log.Uses, row => row.Row, (log, rows) => log with { Uses = rows }),
        Of(CountColumns.Table, log => log.Counts, row => row.Row, (log, rows) => log with { Counts = rows }),
        Of(TripColumns.Table, log => log.Trips, row => row.Row, (log, rows) => log with { Trips = rows }),
        Of(ToolColumns.Table, log => log.Tools, row => row.Row, (log, rows) => log with { Tools = rows }),
        Of(OverheadColumns.Table, log => log.Overheads, row => row.Row, (log, rows) => log with { Overheads = rows }),
        Of(MoveColumns.Table, log => log.Moves, row => row.Row, (log, rows) => log with { Moves = rows }),
        Of(MoneyColumns.Table, log => log.Money, row => row.Row, (log, rows) => log with { Money = rows }),
        Of(ReturnColumns.Table, log => log.Returns, row => row.Row, (log, rows) => log with { Returns = rows }),
        Of(ColourColumns.Table, log => log.Colours, row => row.Row, (log, rows) => log with { Colours = rows }),
    ];

    private static LogRecords Of<T>(
        RecordTable<T> table, Func<SalesLog, ImmutableArray<T>> get, Func<T, int> row,
        Func<SalesLog, ImmutableArray<T>, SalesLog> with)
        where T : class => new(
            table.Definition,
            log => ImmutableArray<object>.CastUp(get(log)),
            record => row((T)record),
            (record, column) => table.Cell((T)record, column),
            (log, records) => with(log, [.. records.Cast<T>()]),
            reading => TableReader.Read(table, reading).Read);
}
