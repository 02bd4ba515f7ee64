using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The logs between two logs, one change after another.</summary>
internal sealed class QuarterKeptSteps
{
    private readonly SalesLog from;

    // Rows that are added stand where they stand now: after this row of the first log, or before all where there is none.
    private readonly Dictionary<object, object?> placeOfAdded = new(ReferenceEqualityComparer.Instance);

    /// <summary>The steps from a log to another.</summary>
    /// <param name="from">The log before all changes.</param>
    /// <param name="to">The log after them, apart from the order of rows.</param>
    /// <param name="lineOf">Line of a record of the first log in its file; null for the line it was read from.</param>
    /// <param name="settings">Settings that are others.</param>
    public QuarterKeptSteps(
        SalesLog from, SalesLog to, Func<LogRecords, object, int>? lineOf, IEnumerable<QuarterKeptSettingChange> settings)
    {
        this.from = from;
        var before = QuarterKeptFacts.Tables.ToDictionary(of => of, of => QuarterKeptFacts.RowsOf(from, of, lineOf));
        var after = QuarterKeptFacts.Tables.ToDictionary(of => of, of => QuarterKeptFacts.RowsOf(to, of));
        ImmutableArray<QuarterKeptChange> rows = QuarterKeptChanges.Between(of => before[of], of => after[of], out var unchanged);
        Changes = [.. settings.Select(setting => new QuarterKeptChange([], setting)), .. rows];
        foreach (QuarterKeptRowChange change in rows.SelectMany(change => change.Rows).Where(change => change.Kept is not null && change.Now is not null))
            unchanged[change.Now!.Record] = change.Kept!.Record;
        foreach (ImmutableArray<QuarterKeptRow> table in after.Values)
        {
            object? place = null;
            foreach (QuarterKeptRow row in table)
            {
                if (unchanged.TryGetValue(row.Record, out object? was))
                    place = was;
                else
                    placeOfAdded[row.Record] = place;
            }
        }
    }

    /// <summary>The changes, settings first, then table by table in file order.</summary>
    public ImmutableArray<QuarterKeptChange> Changes { get; }

    /// <summary>The log once the first changes have been made.</summary>
    /// <param name="count">How many of them.</param>
    public SalesLog After(int count)
    {
        SalesLog log = from;
        QuarterKeptChange[] made = [.. Changes.Take(count)];
        foreach (QuarterKeptSettingChange setting in made.Select(change => change.Setting).OfType<QuarterKeptSettingChange>())
            log = log with { Workshop = setting.Apply(log.Workshop) };
        foreach (var table in made.SelectMany(change => change.Rows).GroupBy(change => change.Row.Of))
        {
            Dictionary<object, object?> others = new(ReferenceEqualityComparer.Instance);
            foreach (QuarterKeptRowChange change in table.Where(change => change.Kept is not null))
                others[change.Kept!.Record] = change.Now?.Record;
            ILookup<object, object> added = table.Where(change => change.Kept is null)
                .ToLookup(change => placeOfAdded[change.Now!.Record] ?? this, change => change.Now!.Record,
                    (IEqualityComparer<object>)ReferenceEqualityComparer.Instance);
            log = table.Key.With(log,
            [
                .. added[this],
                .. table.Key.In(from).SelectMany(record => new[] { others.GetValueOrDefault(record, record) }.OfType<object>()
                    .Concat(added[record])),
            ]);
        }

        return log;
    }
}
