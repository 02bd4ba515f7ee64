using System.Collections.Frozen;
using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A table while it is read and checked: its records, and the count of those set aside.</summary>
internal sealed class ReadTable<T>(LogTable table, bool isPresent)
    where T : class
{
    private readonly HashSet<T> setAside = new(ReferenceEqualityComparer.Instance);

    public LogTable Table { get; } = table;

    public bool IsPresent { get; } = isPresent;

    public bool IsReadable { get; set; } = true;

    public int Rows { get; set; }

    public int RowsSetAside { get; set; }

    public int CellsSetAside { get; set; }

    public FrozenSet<string> Headers { get; set; } = [];

    public ImmutableArray<string> UnknownColumns { get; set; } = [];

    /// <summary>All rows that could be read, those set aside since included.</summary>
    public List<T> Read { get; } = [];

    /// <summary>What could be read of rows with a bad cell that decides; not in the log.</summary>
    public List<T> Unusable { get; } = [];

    /// <summary>Rows set aside for facts that contradict each other, each whole in itself.</summary>
    public List<T> Contradicting { get; } = [];

    /// <summary>Records that are in the log, in file order.</summary>
    public IEnumerable<T> Kept => Read.Where(record => !setAside.Contains(record));

    /// <summary>What could be read of the rows that are not in the log; of a row whose cells cannot be told apart, nothing.</summary>
    public IEnumerable<T> Aside => Unusable.Concat(setAside);

    public bool IsKept(T record) => !setAside.Contains(record);

    /// <summary>Takes a record out of the log; its problem is the caller's to report.</summary>
    public void SetAside(T record)
    {
        if (setAside.Add(record))
            RowsSetAside++;
    }

    public TableReading Summary() =>
        new(Table.File, IsPresent, IsReadable, Rows, RowsSetAside, UnknownColumns) { CellsSetAside = CellsSetAside };
}
