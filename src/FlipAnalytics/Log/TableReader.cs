using System.Globalization;

using CsvHelper;

namespace FlipAnalytics;

/// <summary>Reads the rows of a table: a row is either built into a record, or set aside with an error; a cell may be too.</summary>
internal static class TableReader
{
    private static readonly CsvReaderOptions Options = CsvReaderOptions.Default with
    {
        Separator = ',',
        TrackLineNumbers = true,
        FormatProvider = CultureInfo.InvariantCulture,
        // Words and numbers of a column come again and again.
        PoolStrings = true,
    };

    /// <summary>Reads a table.</summary>
    /// <param name="of">Which table; the record of a row is dropped if a cell turned out bad.</param>
    /// <param name="reading">Folder, currency, spellings and problems.</param>
    /// <param name="name">Name of the file; that of the table where null.</param>
    public static ReadTable<T> Read<T>(RecordTable<T> of, RowReading reading, string? name = null)
        where T : class
    {
        LogTable table = name is null ? of.Definition : of.Definition with { File = name };
        SourceFile file = reading.Open(table.File);
        ReadTable<T> rows = new(table, file.IsPresent);
        if (file.Bytes is { } bytes)
        {
            Malformed malformed = new();
            using CsvReader csv = CsvReader.Create(
                bytes, Options with { OnMalformedRecord = malformed.Note });
            csv.ReadHeader();
            bool isBroken = malformed.Take() is not null;
            if (TableHeader.Read(csv.Headers, isBroken, bytes.Span, reading.Problems, rows) is { } places)
            {
                ReadRows(csv, malformed, places, rows, reading, of);
                return rows;
            }
        }

        if (file.IsPresent)
        {
            rows.IsReadable = false;
            rows.Rows = rows.RowsSetAside = Math.Max(0, file.Lines - 1);
        }

        return rows;
    }

    private static void ReadRows<T>(
        CsvReader csv,
        Malformed malformed,
        int[] places,
        ReadTable<T> rows,
        RowReading reading,
        RecordTable<T> of)
        where T : class
    {
        LogTable table = rows.Table;
        Cells cells = new(csv, table, places, reading);
        int width = csv.Headers.Count;
        while (csv.Read())
        {
            cells.Next();
            if (malformed.Take() is { } bad && IsUnusable(bad, cells.Row))
                continue;
            if (IsBlank(csv))
                continue;
            rows.Rows++;
            if (csv.FieldCount != width)
            {
                reading.Problems.Error(
                    table.File,
                    cells.Row,
                    null,
                    Counted(csv.FieldCount, "cell"),
                    $"{Counted(width, "cell")}, as in the header",
                    "Save the file again from the spreadsheet; typed by hand, a text with a comma in it needs quotes around it.");
                rows.RowsSetAside++;
                continue;
            }

            T record = of.Build(cells);
            cells.Report();
            (cells.IsBad ? rows.Unusable : rows.Read).Add(record);
            rows.RowsSetAside += cells.IsBad ? 1 : 0;
        }

        rows.CellsSetAside = cells.SetAside;
        if (cells.DecimalComma is { } example)
        {
            reading.Problems.Error(
                table.File,
                null,
                null,
                example,
                "numbers with a point",
                $"Numbers in this file have a decimal comma ({Counted(cells.DecimalCommas, "cell")}): set the spreadsheet's"
                + " language for numbers to English and save again.");
        }

        // A quote that opens in one row and closes in a later one swallows the rows between, so nothing of it is used.
        bool IsUnusable(CsvMalformedRecord bad, int line)
        {
            int lines = bad.RawRecord.AsSpan().Trim().Count('\n') + 1;
            if (bad.Reason == CsvMalformedReason.StrayQuote && lines == 1)
            {
                reading.Problems.Warning(
                    table.File,
                    line,
                    null,
                    "\"",
                    "a cell with a quote in it to be in quotes",
                    "It was read as it stands; saving the file from a spreadsheet puts it right.");
                return false;
            }

            string place = lines == 1 ? "this line" : string.Create(
                CultureInfo.InvariantCulture, $"lines {line} to {line + lines - 1}, none of which could be used");
            reading.Problems.Error(
                table.File,
                line,
                null,
                null,
                "quotes in pairs around a whole cell",
                $"Put the quotes right in {place}; a quote inside a text is written twice.");
            rows.Rows += lines;
            rows.RowsSetAside += lines;
            return true;
        }
    }

    private static bool IsBlank(CsvReader csv)
    {
        for (int i = 0; i < csv.FieldCount; i++)
        {
            if (!string.IsNullOrWhiteSpace(csv.GetString(i)))
                return false;
        }

        return true;
    }

    private static string Counted(int count, string what) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {what}{(count == 1 ? "" : "s")}");

    /// <summary>What the parser said of the row it is reading.</summary>
    private sealed class Malformed
    {
        private CsvMalformedRecord? noted;

        public void Note(CsvMalformedRecord record) => noted = record;

        public CsvMalformedRecord? Take()
        {
            CsvMalformedRecord? taken = noted;
            noted = null;
            return taken;
        }
    }
}
