using System.Collections.Immutable;
using System.Globalization;

using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>What holds for every log that is kept, changed in one cell or in many, and looked at again.</summary>
public sealed class QuarterKeptLawsTests
{
    private const int Logs = 250;

    private sealed record Changed(string File, int Line, string Column, QuarterSinceKept Since, SalesLog Kept, SalesLog Now, ReportPeriod Period);

    [Fact]
    public void NothingChangedNothingIsReported() => QuarterLaws.Cases.Sample(
        given =>
        {
            QuarterSinceKept since = Since(given.Log, given.Log, Period(given.Log, given.From));
            Assert.Equal((true, 0, 0), (since.Holds, since.ChangedFacts, since.LaterFacts));
        },
        iter: Logs);

    [Fact]
    public void EveryLineThatDiffersNamesTheRowOfTheCellThatChanged()
    {
        int moved = 0;
        Gen.Select(QuarterLaws.Cases, Cell).Sample(
            (given, cell) =>
            {
                if (WithOneCellChanged(given.Log, Period(given.Log, given.From), cell) is not { } changed)
                    return;
                Assert.Equal(Differing(changed), changed.Since.Lines.Select(line => (line.Part, line.Line)).Order());
                foreach (QuarterLineSinceKept line in changed.Since.Lines)
                {
                    Assert.Contains(line.Causes, cause => cause.File == changed.File && cause.Line == changed.Line);
                    Assert.Equal(line.Difference, Sum(line));
                    Assert.DoesNotContain(line.Causes, cause => cause.Why is "sharing" or "reckoning");
                }

                Interlocked.Add(ref moved, changed.Since.Lines.Length);
            },
            iter: 2 * Logs);
        Assert.InRange(moved, Logs / 2, int.MaxValue);
    }

    [Fact]
    public void WhatManyChangesMoveAddsUpToTheDifference() => Gen.Select(QuarterLaws.Cases, Cell.Array[2, 12], Gen.Int[0, 400]).Sample(
        (given, cells, days) =>
        {
            SalesLog first = Reread(given.Log);
            ReportPeriod period = Period(first, given.From);
            SalesLog now = first with { Date = first.Date.AddDays(days) };
            foreach (var cell in cells)
                now = WithCell(now, cell)?.Log ?? now;
            now = now.AsOf(now.Date);
            QuarterSinceKept since = Since(first, now, period);
            var report = QuarterReport.Of(now, period) with { SinceKept = since };
            Assert.All(since.Lines, line => Assert.Equal(line.Difference, Sum(line)));
            Assert.All(QuarterText.Render(report, all: true).Split('\n'), line => Assert.InRange(line.Length, 0, 100));
            Assert.InRange(QuarterText.Render(report).Split('\n').TakeWhile(line => line.Length > 0).Count(line => line.StartsWith("    ", StringComparison.Ordinal)), 0, 8);
        },
        iter: Logs);

    // Sorting a table in the spreadsheet changes no fact; at most a cent of a share falls to another piece.
    [Fact]
    public void RowsInAnotherOrderAreNoChangedFact() => QuarterLaws.Cases.Sample(
        given =>
        {
            SalesLog first = Reread(given.Log);
            SalesLog sorted = QuarterKeptFacts.Tables.Aggregate(first, (log, of) => of.With(log, of.In(log).Reverse()));
            QuarterSinceKept since = Since(first, sorted, Period(first, given.From));
            Assert.Equal(0, since.ChangedFacts);
            Assert.All(since.Lines, line => Assert.All(line.Causes, cause => Assert.Equal("sharing", cause.Why)));
            Assert.True(since.HoldsAsKnownThen);
        },
        iter: Logs);

    // Looks, words and asking history are not kept, since no figure rests on them.
    [Fact]
    public void NoFigureRestsOnWhatIsNotKept() => QuarterLaws.Cases.Sample(
        given =>
        {
            SalesLog bare = Reread(given.Log);
            Assert.Empty(bare.AskingPrices);
            Assert.All(bare.Pieces, piece => Assert.Null(piece.Colour));
            ReportPeriod period = Period(given.Log, given.From);
            Assert.True(QuarterKeptFigures.Of(given.Log, period).SequenceEqual(QuarterKeptFigures.Of(bare, period)));
        },
        iter: Logs);

    // A table that were not among them would be written nowhere, and a change in it would look like another way of reckoning.
    [Fact]
    public void EveryTableOfTheLogIsWrittenAndKept() => Assert.Equal(Columns.Tables, LogRecords.All.Select(of => of.Table));

    [Fact]
    public void TheFingerprintTellsEveryFactAndFigure() => Gen.Select(QuarterLaws.Cases, Cell).Sample(
        (given, cell) =>
        {
            ReportPeriod period = Period(given.Log, given.From);
            var kept = QuarterKept.Of(QuarterReport.Of(given.Log, period), given.Log);
            Assert.Equal(kept.Fingerprint, (kept with { About = "" }).FingerprintOfFacts());
            if (kept.Facts.IsEmpty)
                return;
            QuarterKeptTable table = kept.Facts[cell.Table % kept.Facts.Length];
            int row = cell.Row % table.Rows.Length;
            QuarterKeptTable edited = table with { Rows = table.Rows.SetItem(row, table.Rows[row] + "0") };
            Assert.NotEqual(kept.Fingerprint, (kept with { Facts = kept.Facts.Replace(table, edited) }).FingerprintOfFacts());
            int figure = cell.Row % kept.Figures.Length;
            QuarterKeptFigure other = kept.Figures[figure] with { Amount = (kept.Figures[figure].Amount ?? 0) + 0.01m };
            Assert.NotEqual(kept.Fingerprint, (kept with { Figures = kept.Figures.SetItem(figure, other) }).FingerprintOfFacts());
            Assert.All(kept.MadeOf, line => Assert.NotEqual(
                kept.Fingerprint, (kept with { MadeOf = kept.MadeOf.Replace(line, line with { Total = line.Total + 1 }) }).FingerprintOfFacts()));
        },
        iter: Logs);

    private static readonly Gen<(int Table, int Row, int Column, int Value)> Cell =
        Gen.Select(Gen.Int[0, 999], Gen.Int[0, 999], Gen.Int[0, 999], Gen.Int[1, 400]);

    // A span that is over at the date of the log, so that it may be kept.
    private static ReportPeriod Period(SalesLog log, DateOnly from) => ReportPeriod.Of(from, log.Date);

    private static decimal? Sum(QuarterLineSinceKept line) =>
        line.Difference is null ? null : line.Causes.Sum(cause => cause.Amount!.Value);

    private static IEnumerable<(string, string)> Differing(Changed changed)
    {
        var then = QuarterKeptFigures.Of(changed.Kept, changed.Period).ToDictionary(figure => (figure.Part, figure.Line), figure => figure.Amount);
        var now = QuarterKeptFigures.Of(changed.Now, changed.Period).ToDictionary(figure => (figure.Part, figure.Line), figure => figure.Amount);
        return then.Keys.Union(now.Keys)
            .Where(line => then.GetValueOrDefault(line, 0m) != now.GetValueOrDefault(line, 0m)).Order();
    }

    private static Changed? WithOneCellChanged(SalesLog log, ReportPeriod period, (int Table, int Row, int Column, int Value) cell)
    {
        SalesLog first = Reread(log);
        if (WithCell(first, cell) is not { } changed)
            return null;
        SalesLog now = changed.Log.AsOf(first.Date);
        return new(changed.File, changed.Line, changed.Column, Since(first, now, period), first, now, period);
    }

    private static QuarterSinceKept Since(SalesLog kept, SalesLog now, ReportPeriod period) => QuarterSinceKept.Of(
        new(QuarterKept.Of(QuarterReport.Of(kept, period), kept), null), QuarterReport.Of(now, period), now)!;

    /// <summary>The log as its kept text tells it: rows on lines without gaps.</summary>
    private static SalesLog Reread(SalesLog log) => QuarterKeptFacts.Read(QuarterKeptFacts.Write(log), log.Date, log.Workshop)!.Value.Log;

    private static (SalesLog Log, string File, int Line, string Column)? WithCell(SalesLog log, (int Table, int Row, int Column, int Value) cell)
    {
        ImmutableArray<LogRecords> tables = [.. QuarterKeptFacts.Tables.Where(of => of.In(log).Length > 0)];
        if (tables.IsEmpty)
            return null;
        LogRecords of = tables[cell.Table % tables.Length];
        List<LogColumn> columns = QuarterKeptFacts.ColumnsOf(of.Table);
        ImmutableArray<QuarterKeptRow> rows = QuarterKeptFacts.RowsOf(log, of);
        QuarterKeptRow row = rows[cell.Row % rows.Length];
        int place = cell.Column % columns.Count;
        LogColumn column = columns[place];
        // A name is another row's to refer to; one that is changed leaves those rows behind, which reading sets aside.
        if (Another(column, row.Cells[place], cell.Value) is not { } value || column.Kind == ColumnKind.Name)
            return null;
        string text = string.Join('\n', [
            string.Join(',', columns.Select(known => known.Name)),
            .. rows.Select(other => string.Join(',', ReferenceEquals(other, row) ? other.Cells.SetItem(place, value) : other.Cells)),
        ]);
        LogProblems problems = new();
        RowReading reading = new("", log.Workshop.Currency, new Spellings(mergesWords: false), problems)
        {
            AtHand = new Dictionary<string, byte[]> { [of.Table.File] = System.Text.Encoding.UTF8.GetBytes(text) },
        };
        IReadOnlyList<object> records = of.Read(reading);
        return problems.Sorted().IsEmpty && records.Count == rows.Length
            ? (of.With(log, records), of.Table.File, row.Line, column.Name) : null;
    }

    private static string? Another(LogColumn column, string cell, int value) => column.Kind switch
    {
        ColumnKind.Date => cell.Length == 0 || value % 7 == 0
            ? (cell.Length == 0 ? Day(MessyLogs.FirstDay.AddDays(value)) : "")
            : Day(DateOnly.Parse(cell, CultureInfo.InvariantCulture).AddDays(value % 2 == 0 ? value : -value)),
        ColumnKind.Month => cell == "2023-05" ? "2024-02" : "2023-05",
        ColumnKind.Money or ColumnKind.Number or ColumnKind.WholeNumber => value.ToString(CultureInfo.InvariantCulture) == cell
            ? null : value.ToString(CultureInfo.InvariantCulture),
        ColumnKind.Label => cell == "other" ? "another" : "other",
        _ => null,
    };

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
