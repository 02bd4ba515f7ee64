using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A row as it was kept and as it is; one of them is null for a row added or removed.</summary>
internal sealed record QuarterKeptRowChange(QuarterKeptRow? Kept, QuarterKeptRow? Now)
{
    /// <summary>The row as it is, else as it was.</summary>
    public QuarterKeptRow Row => Now ?? Kept!;
}

/// <summary>A change of the facts that is followed by itself.</summary>
/// <param name="Rows">
/// Rows that change together, the one that counts first: a piece added, removed or dated otherwise brings its own rows along.
/// </param>
/// <param name="Setting">The setting that changes, where it is one; there are no rows then.</param>
internal sealed record QuarterKeptChange(ImmutableArray<QuarterKeptRowChange> Rows, QuarterKeptSettingChange? Setting)
{
    /// <summary>How many facts changed.</summary>
    public int Count => Math.Max(1, Rows.Length);
}

/// <summary>Finds which rows of a log are others than they were, whatever line they stand on now.</summary>
internal static class QuarterKeptChanges
{
    // Above this many rows left over on a side, a row is told as removed and added rather than compared with all others.
    private const int MostToPair = 500;

    private static readonly string[] DaysOfAPiece = ["bought_on", "ready_on", "listed_on", "sold_on", "left_on"];

    /// <summary>The changed rows, table by table in file order.</summary>
    /// <param name="kept">A table's rows as they were.</param>
    /// <param name="now">A table's rows as they are.</param>
    /// <param name="unchanged">Records as they are of rows that say the same, each with the record as it was.</param>
    public static ImmutableArray<QuarterKeptChange> Between(
        Func<LogRecords, ImmutableArray<QuarterKeptRow>> kept, Func<LogRecords, ImmutableArray<QuarterKeptRow>> now,
        out Dictionary<object, object> unchanged)
    {
        Dictionary<object, object> same = new(ReferenceEqualityComparer.Instance);
        QuarterKeptRowChange[] rows =
        [
            .. QuarterKeptFacts.Tables.SelectMany(of => OfTable(of, kept(of), now(of), same)
                .OrderBy(change => change.Row.Line)),
        ];
        unchanged = same;
        ILookup<string, QuarterKeptRowChange> returns = rows.Where(change => change.Row.Of.Table == Columns.Returns && (change.Kept is null || change.Now is null))
            .ToLookup(change => change.Row["id"] ?? "", StringComparer.OrdinalIgnoreCase);
        ILookup<string, QuarterKeptRowChange> pieces = rows.Where(BringsRowsAlong)
            .SelectMany(change => new[] { change.Kept, change.Now }.OfType<QuarterKeptRow>(), (change, row) => (change, Id: row["id"] ?? ""))
            .DistinctBy(piece => (piece.change, piece.Id.ToUpperInvariant()))
            .ToLookup(piece => piece.Id, piece => piece.change, StringComparer.OrdinalIgnoreCase);
        ILookup<QuarterKeptRowChange?, QuarterKeptRowChange> own = rows.ToLookup(change => OwnerOf(change, pieces, returns));
        return [.. own[null].Select(change => new QuarterKeptChange([change, .. own[change]], null))];
    }

    // A return that becomes known makes a sold piece one that is here again, and with it what else is known of the piece.
    private static QuarterKeptRowChange? OwnerOf(
        QuarterKeptRowChange change, ILookup<string, QuarterKeptRowChange> pieces, ILookup<string, QuarterKeptRowChange> returns)
    {
        if (change.Row["id"] is not { } id || change.Row.Of.Table == Columns.Returns)
            return null;
        QuarterKeptRowChange? piece = change.Row.Of.Table == Columns.Pieces ? pieces[id].FirstOrDefault(change.Equals)
            : change is { Kept: not null, Now: not null } ? null : pieces[id].FirstOrDefault();
        return piece is null ? null
            : piece is { Kept: not null, Now: not null } && returns[id].FirstOrDefault() is { } back ? back
            : ReferenceEquals(piece, change) ? null : piece;
    }

    // Where a piece's days change, undated work on it becomes known or unknown with them.
    private static bool BringsRowsAlong(QuarterKeptRowChange change) => change.Row.Of.Table == Columns.Pieces
        && (change.Kept is null || change.Now is null || DaysOfAPiece.Any(day => change.Kept[day] != change.Now[day]));

    private static List<QuarterKeptRowChange> OfTable(
        LogRecords of, ImmutableArray<QuarterKeptRow> kept, ImmutableArray<QuarterKeptRow> now, Dictionary<object, object> unchanged)
    {
        var byText = now.GroupBy(TextOf).ToDictionary(text => text.Key, text => new Queue<QuarterKeptRow>(text));
        List<QuarterKeptRow> gone = [];
        foreach (QuarterKeptRow row in kept)
        {
            if (byText.TryGetValue(TextOf(row), out var rows) && rows.TryDequeue(out QuarterKeptRow? same))
                unchanged[same.Record] = row.Record;
            else
                gone.Add(row);
        }

        List<QuarterKeptRow> come = [.. now.Where(row => !unchanged.ContainsKey(row.Record))];
        List<QuarterKeptRowChange> changes = [];
        string? name = of.Table == Columns.Pieces ? "id" : of.Table == Columns.Trips ? "trip" : null;
        foreach (QuarterKeptRow row in name is null ? [] : gone.ToArray())
        {
            if (row[name!] is { } own && come.Find(other => own.Equals(other[name!], StringComparison.OrdinalIgnoreCase)) is { } namesake)
                Pair(row, namesake);
        }

        if (gone.Count <= MostToPair && come.Count <= MostToPair)
        {
            foreach (var (row, other, _) in gone.SelectMany(_ => come, (row, other) => (row, other, Likeness: Likeness(row, other)))
                .Where(pair => pair.Likeness > 0).OrderByDescending(pair => pair.Likeness).ToArray())
            {
                if (gone.Contains(row) && come.Contains(other))
                    Pair(row, other);
            }
        }

        changes.AddRange(gone.Select(row => new QuarterKeptRowChange(row, null)));
        changes.AddRange(come.Select(row => new QuarterKeptRowChange(null, row)));
        return changes;

        void Pair(QuarterKeptRow row, QuarterKeptRow other)
        {
            changes.Add(new(row, other));
            gone.Remove(row);
            come.Remove(other);
        }
    }

    // Case never tells two names apart in a log.
    private static string TextOf(QuarterKeptRow row) => string.Join('\u001f', QuarterKeptFacts.ColumnsOf(row.Of.Table)
        .Select((column, i) => column.Kind is ColumnKind.Name or ColumnKind.Label ? row.Cells[i].ToUpperInvariant() : row.Cells[i]));

    /// <summary>How much a row looks like another one changed; 0 where most of it differs.</summary>
    private static int Likeness(QuarterKeptRow row, QuarterKeptRow other)
    {
        int alike = 0, filled = 0;
        for (int i = 0; i < row.Cells.Length; i++)
        {
            if (row.Cells[i].Length == 0 && other.Cells[i].Length == 0)
                continue;
            filled++;
            alike += row.Cells[i].Equals(other.Cells[i], StringComparison.OrdinalIgnoreCase) ? 1 : 0;
        }

        bool onSameLine = row.Line == other.Line && row.Line > 0;
        return alike * 2 >= filled || (onSameLine && alike > 0) ? 2 * alike + (onSameLine ? 1 : 0) : 0;
    }
}
