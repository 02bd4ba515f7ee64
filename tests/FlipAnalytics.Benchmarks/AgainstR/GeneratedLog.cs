using System.Buffers.Text;
using System.Collections.Immutable;
using System.Text;
using CsvHelper;
using FlipAnalytics.Statistics;

namespace FlipAnalytics.Benchmarks;

/// <summary>The columns of a file that R/make_log.R wrote.</summary>
internal sealed class GeneratedLog
{
    private readonly Dictionary<string, double[]> numbers = [];
    private readonly Dictionary<string, CategoryColumn> categories = [];

    private GeneratedLog()
    {
    }

    public int Rows { get; private init; }

    public double[] Number(string column) => numbers[column];

    public CategoryColumn Category(string column) => categories[column];

    /// <summary>Reads a file once through, straight into arrays.</summary>
    public static GeneratedLog Read(string path)
    {
        var log = new GeneratedLog { Rows = LineCount(path) - 1 };
        using FileStream stream = File.OpenRead(path);
        using CsvReader reader = CsvReader.Create(stream, CsvReaderOptions.Default, false);
        reader.ReadHeader();
        string[] names = [.. reader.Headers!];
        CategoryColumn?[] words =
            [.. names.Select(n => n is "type" or "color" or "month" ? new CategoryColumn(n, log.Rows) : null)];
        double[][] values = [.. words.Select(w => w is null ? new double[log.Rows] : [])];
        for (int row = 0; reader.Read(); row++)
        {
            for (int j = 0; j < values.Length; j++)
            {
                if (words[j] is { } word)
                    word.Set(row, reader, j);
                else
                    values[j][row] = NumberIn(reader.GetSpan(j));
            }
        }

        for (int j = 0; j < values.Length; j++)
        {
            if (words[j] is { } word)
                log.categories.Add(names[j], word.Sorted());
            else
                log.numbers.Add(names[j], values[j]);
        }

        return log;
    }

    private static double NumberIn(ReadOnlySpan<byte> text) =>
        Utf8Parser.TryParse(text, out double value, out int length) && length == text.Length
            ? value
            : throw new InvalidDataException($"'{Encoding.UTF8.GetString(text)}' is no number.");

    private static int LineCount(string path)
    {
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
        byte[] block = new byte[1 << 16];
        int lines = 0;
        for (int length; (length = stream.Read(block)) > 0;)
            lines += block.AsSpan(0, length).Count((byte)'\n');
        return lines;
    }
}

/// <summary>A column of words as indices into its levels.</summary>
internal sealed class CategoryColumn(string name, int rows)
{
    private readonly Dictionary<string, int> indices = new(StringComparer.Ordinal);

    public int[] Index { get; } = new int[rows];

    public ImmutableArray<string> Levels { get; private set; }

    public RandomTerm AsRandomTerm => RandomTerm.Exchangeable(name, Levels);

    public GroupColumn AsGroup => new(name, Levels, Index);

    public void Set(int row, CsvReader reader, int field)
    {
        Span<char> word = stackalloc char[64];
        word = word[..reader.GetChars(field, word)];
        var lookup = indices.GetAlternateLookup<ReadOnlySpan<char>>();
        if (!lookup.TryGetValue(word, out int index))
            indices.Add(word.ToString(), index = indices.Count);
        Index[row] = index;
    }

    /// <summary>Puts the levels in alphabetical order, as R does, so that both have the same base level.</summary>
    public CategoryColumn Sorted()
    {
        Levels = [.. indices.Keys.Order(StringComparer.Ordinal)];
        int[] place = [.. indices.OrderBy(i => i.Value).Select(i => Levels.IndexOf(i.Key))];
        for (int row = 0; row < Index.Length; row++)
            Index[row] = place[Index[row]];
        return this;
    }
}
