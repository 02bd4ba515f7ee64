namespace FlipAnalytics.Statistics;

/// <summary>
/// Weighted sums over rows of products of the row (fixed columns and response relative to <see cref="Shift"/>, and 1)
/// and of its level indicators.
/// </summary>
internal sealed class RawCrossProducts(int columns, int levelCount, double[] shift)
{
    private readonly int _width = columns + 2;

    public int Rows { get; private set; }

    public double SumOfLogWeights { get; private set; }

    public int Columns => columns;

    public int LevelCount => levelCount;

    /// <summary>The first row: fixed columns, then response.</summary>
    public double[] Shift => shift;

    /// <summary>Σ w v v' for v = (x, y, 1), lower triangle by rows of length columns + 2.</summary>
    public double[] Moments { get; } = new double[(columns + 2) * (columns + 2)];

    /// <summary>Σ w z v', one row of length columns + 2 for each level.</summary>
    public double[] LevelMoments { get; } = new double[levelCount * (columns + 2)];

    /// <summary>Σ w z z'.</summary>
    public LevelMeetings Meetings { get; } = new(levelCount);

    /// <summary>Adds one row; <paramref name="levels"/> are its level columns in increasing order.</summary>
    public void Add(
        ReadOnlySpan<double> row, ReadOnlySpan<double> weightedRow, ReadOnlySpan<int> levels, double weight)
    {
        Rows++;
        if (weight != 1)
        {
            SumOfLogWeights += Math.Log(weight);
        }

        for (int i = 0; i < row.Length; i++)
        {
            double value = row[i];
            Span<double> sums = Moments.AsSpan(i * _width, i + 1);
            for (int j = 0; j < sums.Length; j++)
            {
                sums[j] += value * weightedRow[j];
            }
        }

        for (int a = 0; a < levels.Length; a++)
        {
            Span<double> sums = LevelMoments.AsSpan(levels[a] * _width, weightedRow.Length);
            for (int j = 0; j < sums.Length; j++)
            {
                sums[j] += weightedRow[j];
            }

            Meetings.Own[levels[a]] += weight;
            for (int b = 0; b < a; b++)
            {
                Meetings.Add(levels[a], levels[b], weight);
            }
        }
    }
}
