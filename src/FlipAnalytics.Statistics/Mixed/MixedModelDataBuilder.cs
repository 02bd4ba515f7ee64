using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>
/// Takes rows one at a time and keeps only their weighted cross-products, and, unless told otherwise, the rows
/// themselves in compact form for residuals. Numbers are taken relative to the first row, so that large constant
/// parts (years, say) do not eat the digits.
/// </summary>
public sealed class MixedModelDataBuilder
{
    private readonly ImmutableArray<string> _coefficientNames;
    private readonly ImmutableArray<RandomTerm> _terms;
    private readonly int[] _levelOffsets;
    private readonly RowStore? _rows;
    private readonly double[] _shift;
    private readonly double[] _shifted;
    private readonly double[] _weighted;
    private readonly int[] _levelColumns;
    private readonly RawCrossProducts _sums;
    private bool _built;

    /// <summary>Starts with no rows.</summary>
    /// <param name="coefficientNames">Names of the fixed columns, the intercept included if there is one.</param>
    /// <param name="terms">The random terms.</param>
    /// <param name="keepRows">Whether leave-one-out predictions and row weights will be wanted.</param>
    /// <param name="expectedRows">How many rows to make room for.</param>
    public MixedModelDataBuilder(
        ImmutableArray<string> coefficientNames,
        IEnumerable<RandomTerm> terms,
        bool keepRows = true,
        int expectedRows = 0)
    {
        ArgumentNullException.ThrowIfNull(terms);
        _coefficientNames = coefficientNames.IsDefault ? [] : coefficientNames;
        _terms = [.. terms];
        _levelOffsets = new int[_terms.Length + 1];
        for (int k = 0; k < _terms.Length; k++)
        {
            _levelOffsets[k + 1] = _levelOffsets[k] + _terms[k].Levels.Length;
        }

        int columns = _coefficientNames.Length;
        _rows = keepRows ? new RowStore(columns, _terms.Length, expectedRows) : null;
        _shift = new double[columns + 1];
        _shifted = new double[columns + 2];
        _weighted = new double[columns + 2];
        _levelColumns = new int[_terms.Length];
        _sums = new RawCrossProducts(columns, _levelOffsets[^1], _shift);
    }

    /// <summary>Rows taken so far.</summary>
    public int RowCount => _sums.Rows;

    /// <summary>Takes one row.</summary>
    /// <param name="x">One finite value for each fixed column.</param>
    /// <param name="levels">The level index in each random term, or −1 where the term does not touch the row.</param>
    /// <param name="y">The response, finite.</param>
    /// <param name="weight">w in ε ~ N(0, σ²/w), above 0.</param>
    public void Add(ReadOnlySpan<double> x, ReadOnlySpan<int> levels, double y, double weight = 1)
    {
        Check(x, levels, y, weight);
        int columns = x.Length;
        if (_sums.Rows == 0)
        {
            x.CopyTo(_shift);
            _shift[columns] = y;
        }

        for (int j = 0; j < columns; j++)
        {
            _shifted[j] = x[j] - _shift[j];
        }

        _shifted[columns] = y - _shift[columns];
        _shifted[columns + 1] = 1;
        for (int j = 0; j < _shifted.Length; j++)
        {
            _weighted[j] = weight * _shifted[j];
        }

        int touched = 0;
        for (int k = 0; k < levels.Length; k++)
        {
            if (levels[k] >= 0)
            {
                _levelColumns[touched++] = _levelOffsets[k] + levels[k];
            }
        }

        _sums.Add(_shifted, _weighted, _levelColumns.AsSpan(0, touched), weight);
        _rows?.Add(x, levels, y, weight);
    }

    /// <summary>The data to fit. The builder takes no more rows afterwards.</summary>
    public MixedModelData Build()
    {
        ObjectDisposedException.ThrowIf(_built, this);
        _built = true;
        return new MixedModelData(_coefficientNames, _terms, _levelOffsets, _sums, _rows);
    }

    private void Check(ReadOnlySpan<double> x, ReadOnlySpan<int> levels, double y, double weight)
    {
        ObjectDisposedException.ThrowIf(_built, this);
        if (x.Length != _coefficientNames.Length || levels.Length != _terms.Length)
        {
            throw new ArgumentException(
                $"Row {RowCount} has {x.Length} columns and {levels.Length} levels; "
                + $"{_coefficientNames.Length} columns and {_terms.Length} levels are expected.");
        }

        for (int j = 0; j < x.Length; j++)
        {
            if (!double.IsFinite(x[j]))
            {
                throw NotFinite(_coefficientNames[j], x[j]);
            }
        }

        if (!double.IsFinite(y))
        {
            throw NotFinite("response", y);
        }

        if (!(weight > 0 && double.IsFinite(weight)))
        {
            throw new ArgumentOutOfRangeException(
                nameof(weight), weight, $"Row {RowCount}: a weight must be finite and above 0; leave out rows without weight.");
        }

        for (int k = 0; k < levels.Length; k++)
        {
            if (levels[k] < -1 || levels[k] >= _terms[k].Levels.Length)
            {
                throw new ArgumentOutOfRangeException(
                    nameof(levels), levels[k],
                    $"Row {RowCount}: '{_terms[k].Name}' has levels 0 to {_terms[k].Levels.Length - 1}, or -1 for none.");
            }
        }
    }

    private ArgumentException NotFinite(string column, double value) => new(FormattableString.Invariant(
        $"Row {RowCount}: '{column}' is {value}; leave out rows with missing or infinite values before fitting."));
}
