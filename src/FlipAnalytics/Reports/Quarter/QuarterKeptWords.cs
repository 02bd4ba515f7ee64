using System.Collections.Immutable;
using System.Globalization;

using static System.FormattableString;
using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>Says a change of facts in words.</summary>
internal static class QuarterKeptWords
{
    private const int CellsSaid = 3;

    private static readonly Dictionary<string, string> Phrases = new()
    {
        ["sold_price"] = "sold for",
        ["bought_price"] = "bought for",
        ["life_pieces"] = "life in pieces",
        ["life_months"] = "life in months",
    };

    /// <summary>The same facts give another figure.</summary>
    public static QuarterKeptCause Reckoning { get; } = Plain("reckoning", "the way it is reckoned changed");

    /// <summary>What no fact explains: shares of an amount fall otherwise, as where rows stand in another order.</summary>
    public static QuarterKeptCause Sharing { get; } = Plain("sharing", "by sharing anew");

    /// <summary>The log is known up to a later day.</summary>
    public static QuarterKeptCause LaterDay(DateOnly day) =>
        Plain("later", Invariant($"the log is known up to {day:yyyy-MM-dd} now")) with { IsLater = true };

    /// <summary>One change, or several that are told together.</summary>
    /// <param name="changes">The changes, at least one.</param>
    /// <param name="isLater">Whether they became known after the kept date.</param>
    /// <param name="workshop">The workshop, for its money.</param>
    public static QuarterKeptCause Of(ImmutableArray<QuarterKeptChange> changes, bool isLater, Workshop workshop)
    {
        if (changes.Length > 1)
            return Several(changes, isLater);
        if (changes[0].Setting is { } setting)
            return Of(setting);
        QuarterKeptRowChange change = changes[0].Rows[0];
        QuarterKeptRow row = change.Row;
        string file = row.Of.Table.File;
        string who = Name(row);
        ImmutableArray<QuarterKeptCell> cells = Cells(change);
        string line = row.Line > 0 ? Invariant($", line {row.Line}") : "";
        string place = $"({(change.Now is null ? "was " : "")}{file}{line}){With(changes[0].Rows)}";
        string why = change.Kept is null ? "added" : change.Now is null ? "removed" : "changed";
        string text = why switch
        {
            "added" => $"{who} {(isLater ? "came later" : "added since")}{Size(row, workshop)} {place}",
            "removed" => $"{who} taken out since{Size(row, workshop)} {place}",
            _ => $"{(isLater ? "later " : "")}{who}{(row.Of.Table == Columns.Pieces ? "" : ":")} {Said(row.Of.Table, cells, isLater, workshop)} {place}",
        };
        return new(why, file, row.Line > 0 ? row.Line : null, who, cells, isLater, text, null);
    }

    private static QuarterKeptCause Of(QuarterKeptSettingChange setting) => new(
        "setting", Columns.WorkshopFile, null, setting.What, [new(setting.What, Known(setting.Kept), Known(setting.Now))], false,
        $"{setting.What} {(setting.Now.Length == 0 ? "no longer set" : setting.Now)}, kept {(setting.Kept.Length == 0 ? "without" : $"as {setting.Kept}")} ({Columns.WorkshopFile})",
        null);

    private static string? Known(string text) => text.Length == 0 ? null : text;

    private static QuarterKeptCause Several(ImmutableArray<QuarterKeptChange> changes, bool isLater)
    {
        QuarterKeptRowChange[] rows = [.. changes.SelectMany(change => change.Rows)];
        string[] files =
        [
            .. changes.Any(change => change.Setting is not null) ? [Columns.WorkshopFile] : Array.Empty<string>(),
            .. rows.Select(change => change.Row.Of.Table.File).Distinct(),
        ];
        string what = Invariant($"{changes.Sum(change => change.Count)} {(isLater ? "later rows" : "changes")} in {string.Join(", ", files)}");
        return new("several", files.Length == 1 ? files[0] : null, null, what, [], isLater, what, null);
    }

    private static QuarterKeptCause Plain(string why, string text) => new(why, null, null, text, [], false, text, null);

    /// <summary>What a row is about: a piece by its id, a purchase by item and day, work by piece and day.</summary>
    private static string Name(QuarterKeptRow row)
    {
        if (row.Of.Table == Columns.Pieces)
            return row["id"] ?? "";
        string head = row["item"] ?? row["trip"] ?? row["kind"]
            ?? (row.Of.Table == Columns.Hours ? "work" : row.Of.Table == Columns.Overheads ? "overhead" : row.Of.Table.File[..^4]);
        string piece = row["id"] is { } id ? $" on {id}" : "";
        string? day = row["date"] ?? row["month"] ?? row["bought_on"] ?? row["returned_on"];
        return $"{head}{piece}{(day is null ? "" : $" of {day}")}";
    }

    private static ImmutableArray<QuarterKeptCell> Cells(QuarterKeptRowChange change) => change.Kept is null || change.Now is null ? []
        :
        [
            .. QuarterKeptFacts.ColumnsOf(change.Row.Of.Table)
                .Where(column => !string.Equals(change.Kept[column.Name], change.Now[column.Name], StringComparison.OrdinalIgnoreCase))
                .Select(column => new QuarterKeptCell(column.Name, change.Kept[column.Name], change.Now[column.Name])),
        ];

    private static string Said(LogTable table, ImmutableArray<QuarterKeptCell> cells, bool isLater, Workshop workshop)
    {
        string more = cells.Length > CellsSaid ? Invariant($" and {Counted(cells.Length - CellsSaid, "more cell")}") : "";
        return string.Join("; ", cells.Take(CellsSaid).Select(Cell)) + more;

        string Cell(QuarterKeptCell cell)
        {
            string phrase = Phrases.GetValueOrDefault(cell.Column) ?? cell.Column.Replace('_', ' ');
            string now = cell.Now is { } there ? $"{phrase} {Value(table, cell.Column, there, workshop)}" : $"{phrase} left empty";
            return isLater && cell.Kept is null ? now
                : $"{now}, kept {(cell.Kept is { } then ? $"as {Value(table, cell.Column, then, workshop)}" : "empty")}";
        }
    }

    private static string Value(LogTable table, string column, string cell, Workshop workshop) =>
        QuarterKeptFacts.ColumnsOf(table).Find(known => known.Name == column)?.Kind == ColumnKind.Money
            ? MoneyText.Exact(decimal.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture), workshop)
            : cell;

    private static string Size(QuarterKeptRow row, Workshop workshop)
    {
        if (row.Of.Table == Columns.Pieces)
            return "";
        return QuarterKeptFacts.ColumnsOf(row.Of.Table).Find(column => column.Kind == ColumnKind.Money && row[column.Name] is not null) is { } money
            ? $", {Value(row.Of.Table, money.Name, row[money.Name]!, workshop)}"
            : row["hours"] is { } hours ? $", {hours} h" : "";
    }

    private static string With(ImmutableArray<QuarterKeptRowChange> rows) => rows.Length == 1 ? ""
        : $" with {Counted(rows.Length - 1, "row")} of {string.Join(", ", rows.Skip(1).Select(change => change.Row.Of.Table.File).Distinct())}";
}
