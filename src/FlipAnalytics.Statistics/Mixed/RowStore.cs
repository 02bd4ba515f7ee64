using System.Runtime.InteropServices;

namespace FlipAnalytics.Statistics;

/// <summary>The rows of a mixed model, one after another in flat arrays.</summary>
internal sealed class RowStore(int columns, int terms, int expectedRows)
{
    private readonly List<double> _x = new(columns * expectedRows);
    private readonly List<int> _levels = new(terms * expectedRows);
    private readonly List<double> _y = new(expectedRows);
    private readonly List<double> _weights = new(expectedRows);

    public int Count => _y.Count;

    public ReadOnlySpan<double> X(int row) => CollectionsMarshal.AsSpan(_x).Slice(row * columns, columns);

    public ReadOnlySpan<int> Levels(int row) => CollectionsMarshal.AsSpan(_levels).Slice(row * terms, terms);

    public double Y(int row) => _y[row];

    public double Weight(int row) => _weights[row];

    public void Add(ReadOnlySpan<double> x, ReadOnlySpan<int> levels, double y, double weight)
    {
        _x.AddRange(x);
        _levels.AddRange(levels);
        _y.Add(y);
        _weights.Add(weight);
    }
}
