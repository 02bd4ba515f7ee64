using System.Buffers;
using System.Collections.Immutable;
using System.Globalization;

using CsvHelper;

namespace FlipAnalytics;

/// <summary>
/// The cells of the current row, read strictly by the kind of their column. A cell that cannot be read is reported; it
/// counts as unknown, or sets its row aside where the row would say something untrue without it
/// (<see cref="LogColumn.IsDeciding"/>). An empty cell is unknown.
/// </summary>
internal sealed class Cells(
    CsvReader csv, LogTable table, int[] places, RowReading reading)
{
    private const string CorrectIt = "Correct it, or leave the cell empty if you do not know it.";

    private static readonly SearchValues<char> NumberSigns = SearchValues.Create("0123456789.");
    private static readonly SearchValues<char> HexDigits = SearchValues.Create("0123456789abcdefABCDEF");

    private readonly List<(string Column, string? Found, string Expected, string Remedy)> bad = [];

    /// <summary>Line of the file on which the row begins.</summary>
    public int Row { get; private set; }

    /// <summary>Whether a cell that decides could not be read, or a required one is empty: the row is set aside.</summary>
    public bool IsBad { get; private set; }

    /// <summary>Cells so far that were set aside alone.</summary>
    public int SetAside { get; private set; }

    /// <summary>Cells so far that look like a number with a decimal comma.</summary>
    public int DecimalCommas { get; private set; }

    /// <summary>An example of a number with a decimal comma.</summary>
    public string? DecimalComma { get; private set; }

    /// <summary>Turns to the row that the parser has just read.</summary>
    public void Next()
    {
        (Row, IsBad) = ((int)csv.LineNumber, false);
        bad.Clear();
    }

    /// <summary>Reports the bad cells of the row, once all of it has been read.</summary>
    public void Report()
    {
        foreach (var (column, found, expected, remedy) in bad)
        {
            string alone = IsBad ? remedy : $"{remedy} Until then it counts as unknown; the rest of the row is used.";
            reading.Problems.Error(table.File, Row, column, found, expected, alone);
        }

        SetAside += IsBad ? 0 : bad.Count;
    }

    /// <summary>Every cell of the row as it is written, with its header, those of columns that nobody knows included.</summary>
    public ImmutableArray<WrittenCell> All() =>
    [
        .. csv.Headers.Select((header, place) => new WrittenCell(
            header.Trim() is { Length: > 0 } name ? name : string.Create(CultureInfo.InvariantCulture, $"column {place + 1}"),
            CellText.Unescape(csv.GetString(place).Trim()),
            !places.Contains(place))),
    ];

    /// <summary>A text, a label or a name; null where empty.</summary>
    public string? Text(Column column)
    {
        if (Raw(column) is not { } cell)
            return null;
        string text = CellText.Unescape(cell);
        if (column.Meaning.Kind == ColumnKind.Text)
            return text;
        text = CleanText.OnOneLine(text).Trim();
        if (text.Length <= CleanText.LongestName)
            return text.Length == 0 ? null : reading.Spellings.FirstSeen(column.Name, text, table.File, Row);
        Bad(column, cell, CleanText.NameWords, "Shorten it.");
        return null;
    }

    /// <summary>A text that the row cannot do without.</summary>
    public string RequiredText(Column column)
    {
        int known = bad.Count;
        if (Text(column) is { } text)
            return text;
        if (bad.Count == known)
            BadMissing(column);
        return "";
    }

    /// <summary>One of the words of an enumeration; null where empty.</summary>
    public T? Word<T>(Column column)
        where T : struct, Enum
    {
        if (Raw(column) is not { } cell)
            return null;
        if (EnumWords<T>.ByWord.TryGetValue(cell, out T value))
            return value;
        Bad(
            column,
            cell,
            $"one of {string.Join(", ", column.Meaning.Words)}",
            new KnownWords(column.Meaning.Words).Meant(cell) is { } meant
                ? $"If you mean {meant}, write it so."
                : "Use one of these words, or leave the cell empty.");
        return null;
    }

    /// <summary>One of the words of an enumeration that the row cannot do without.</summary>
    public T RequiredWord<T>(Column column)
        where T : struct, Enum => Word<T>(column) ?? Missing<T>(column);

    /// <summary>A day; null where empty.</summary>
    public DateOnly? Date(Column column) =>
        Day(column, "yyyy-MM-dd", "a date such as 2026-03-31", "Write it as year-month-day.");

    /// <summary>A day that the row cannot do without.</summary>
    public DateOnly RequiredDate(Column column) => Date(column) ?? Missing<DateOnly>(column);

    /// <summary>The first day of a month that the row cannot do without.</summary>
    public DateOnly RequiredMonth(Column column) =>
        Day(column, "yyyy-MM", "a month such as 2026-03", "Write it as year-month.") ?? Missing<DateOnly>(column);

    /// <summary>A whole number; null where empty.</summary>
    public int? WholeNumber(Column column)
    {
        if (Decimal(column) is not { } number)
            return null;
        if (number == decimal.Truncate(number))
            return (int)number;
        Bad(column, Raw(column), "a whole number, such as 4", "Write how many, as 1, 2, 3 and so on.");
        return null;
    }

    /// <summary>An amount or a number; null where empty.</summary>
    public decimal? Decimal(Column column)
    {
        if (Raw(column) is not { } cell)
            return null;
        LogColumn meaning = column.Meaning;
        bool isMoney = meaning.Kind == ColumnKind.Money;
        if (meaning.WordForNone is { } none && cell.Equals(none, StringComparison.OrdinalIgnoreCase))
            return 0;
        const NumberStyles Plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint;
        if (!decimal.TryParse(cell, Plain, CultureInfo.InvariantCulture, out decimal number))
        {
            if (IsPlain(cell))
            {
                // Digits that no number here can have.
                Bad(column, cell, meaning.Range.Words, meaning.Remedy ?? CorrectIt);
                return null;
            }

            string expected = isMoney ? "an amount such as 12.50" : "a number such as 12.5";
            Bad(column, cell, meaning.WordForNone is { } word ? $"{expected}, or {word}" : expected, RemedyOfNumber(cell));
        }
        else if (!meaning.Range.Holds(number))
        {
            Bad(column, cell, meaning.Range.Expected(number), meaning.Remedy ?? CorrectIt);
        }
        else if (isMoney && number.Scale > reading.Currency.MinorDigits)
        {
            string digits = reading.Currency.MinorDigits.ToString(CultureInfo.InvariantCulture);
            Bad(
                column,
                cell,
                $"at most {digits} digits after the point in {reading.Currency.Code}",
                "Round it, and leave out thousands separators.");
        }
        else
        {
            return number;
        }

        return null;
    }

    /// <summary>A number that the row cannot do without.</summary>
    public decimal RequiredDecimal(Column column) => Decimal(column) ?? Missing<decimal>(column);

    /// <summary>A colour as #rrggbb in lower case; null where empty.</summary>
    public string? Hex(Column column)
    {
        if (Raw(column) is not { } cell)
            return null;
        if (cell.Length == 7 && cell[0] == '#' && !cell.AsSpan(1).ContainsAnyExcept(HexDigits))
            return cell.ToLowerInvariant();
        Bad(column, cell, "a color such as #8fa68e", "Write # and six digits from 0 to f, or leave the cell empty.");
        return null;
    }

    private DateOnly? Day(Column column, string format, string expected, string remedy)
    {
        if (Raw(column) is not { } cell)
            return null;
        if (!DateOnly.TryParseExact(cell, format, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
            Bad(column, cell, expected, HasShape(cell, format) ? "There is no such day; correct it." : remedy);
        else if (!NumberRange.Holds(day))
            Bad(column, cell, "a year from 1900 to 2100", "Correct the year.");
        else
            return day;
        return null;
    }

    private static bool HasShape(string cell, string format) =>
        cell.Length == format.Length
        && cell.Zip(format).All(pair => pair.Second == '-' ? pair.First == '-' : char.IsAsciiDigit(pair.First));

    private string? Raw(Column column)
    {
        int place = places[column.Place];
        if (place < 0)
            return null;
        string cell = csv.GetString(place).Trim();
        // What cannot be seen, such as a mark of direction beside a date copied from a page, is no part of a number or word.
        if (column.Meaning.Kind is not (ColumnKind.Text or ColumnKind.Label or ColumnKind.Name))
            cell = CleanText.WithoutHidden(cell).Trim();
        return cell.Length == 0 ? null : cell;
    }

    private T? Missing<T>(Column column)
    {
        // A cell that could not be read has been reported already.
        if (Raw(column) is null)
            BadMissing(column);
        return default;
    }

    private void BadMissing(Column column) =>
        Bad(column, null, $"{column.Name} in every row", "Fill it in; the row cannot be used without it.");

    private void Bad(Column column, string? found, string expected, string remedy)
    {
        IsBad |= column.Meaning.SetsRowAside;
        bad.Add((column.Name, found, expected, remedy));
    }

    private static bool IsPlain(string cell)
    {
        ReadOnlySpan<char> digits = cell.AsSpan(cell.StartsWith('-') ? 1 : 0);
        return digits.Count('.') <= 1 && digits.ContainsAnyInRange('0', '9') && !digits.ContainsAnyExcept(NumberSigns);
    }

    private string RemedyOfNumber(string cell)
    {
        int comma = cell.IndexOf(',', StringComparison.Ordinal);
        bool isTail = cell.AsSpan(comma + 1).IndexOfAnyExceptInRange('0', '9') < 0;
        if (comma > 0 && isTail && cell.Length - comma - 1 is 1 or 2)
        {
            DecimalCommas++;
            DecimalComma ??= cell;
            return "Write a point in place of the comma.";
        }

        bool hasDigits = cell.AsSpan().IndexOfAnyInRange('0', '9') >= 0;
        return comma >= 0 ? "Leave out thousands separators."
            : !hasDigits ? "Write the number in digits, or leave the cell empty if you do not know it."
            : "Write digits and a point only, without a sign, unit or spaces.";
    }
}
