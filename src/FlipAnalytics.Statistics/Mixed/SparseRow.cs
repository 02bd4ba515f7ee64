namespace FlipAnalytics.Statistics;

/// <summary>
/// A row in the coordinates of <see cref="MixedSolution"/>: a few levels with their factors, then every orthonormal
/// fixed column.
/// </summary>
internal sealed class SparseRow
{
    private readonly MixedModelData _data;
    private readonly int[] _levels;
    private readonly double[] _levelFactors;
    private readonly double[] _fixed;
    private int _count;

    public SparseRow(MixedModelData data)
    {
        _data = data;
        _levels = new int[2 * data.Terms.Length];
        _levelFactors = new double[_levels.Length];
        _fixed = new double[data.Reduced.FixedCount];
    }

    /// <summary>The mean's part that centring took out of the response.</summary>
    public double Offset { get; private set; }

    /// <summary>Variance over σ² of what no fitted level knows: unseen levels and stretches of a walk.</summary>
    public double ExtraVariance { get; private set; }

    /// <summary>How many levels have a factor.</summary>
    public int Count => _count;

    /// <summary>The orthonormal fixed columns.</summary>
    public ReadOnlySpan<double> Fixed => _fixed;

    /// <summary>A level, counted over all terms.</summary>
    public int Level(int index) => _levels[index];

    /// <summary>Its factor.</summary>
    public double Factor(int index) => _levelFactors[index];

    /// <summary>Takes a fitted row.</summary>
    public void Set(int row)
    {
        RowStore rows = _data.Rows!;
        SetFixed(rows.X(row));
        ReadOnlySpan<int> levels = rows.Levels(row);
        for (int k = 0; k < levels.Length; k++)
        {
            if (levels[k] >= 0)
            {
                AddLevel(k, levels[k], 1);
            }
        }
    }

    /// <summary>Takes a new row.</summary>
    public void Set(ReadOnlySpan<double> x, ReadOnlySpan<LevelRef> levels, double[] ratios)
    {
        if (x.Length != _data.CoefficientNames.Length || levels.Length != _data.Terms.Length)
        {
            throw new ArgumentException(
                $"A row to predict has {x.Length} columns and {levels.Length} levels; "
                + $"{_data.CoefficientNames.Length} columns and {_data.Terms.Length} levels are expected.");
        }

        for (int j = 0; j < x.Length; j++)
        {
            if (!double.IsFinite(x[j]))
            {
                throw new ArgumentException(FormattableString.Invariant(
                    $"'{_data.CoefficientNames[j]}' is {x[j]} in a row to predict; give a finite value."));
            }
        }

        SetFixed(x);
        for (int k = 0; k < levels.Length; k++)
        {
            AddReference(k, levels[k], ratios[k]);
        }
    }

    /// <summary>v'm for a vector over all coordinates.</summary>
    public double Times(ReadOnlySpan<double> levels, ReadOnlySpan<double> fixedPart)
    {
        double sum = VectorKernel.Dot(_fixed, fixedPart);
        for (int a = 0; a < _count; a++)
        {
            sum += _levelFactors[a] * levels[_levels[a]];
        }

        return sum;
    }

    private void SetFixed(ReadOnlySpan<double> x)
    {
        _count = 0;
        ExtraVariance = 0;
        Offset = _data.Reduced.Fixed.ResponseOffset(x);
        _data.Reduced.Fixed.ToOrthonormal(x, _fixed);
    }

    private void AddLevel(int term, int level, double factor)
    {
        _levels[_count] = _data.LevelOffsets[term] + level;
        _levelFactors[_count++] = factor;
    }

    private void AddReference(int k, LevelRef reference, double ratio)
    {
        RandomTerm term = _data.Terms[k];
        bool walk = term.Structure == RandomStructure.RandomWalk;
        switch (reference.Kind)
        {
            case LevelKind.Known when reference.Index < term.Levels.Length:
                AddLevel(k, reference.Index, 1);
                break;
            case LevelKind.Known:
                throw new ArgumentException(
                    $"Level {reference.Index} of '{term.Name}' does not exist; it has levels 0 to "
                    + $"{term.Levels.Length - 1}. Use LevelRef.Unseen for a new one.");
            case LevelKind.Unseen when !walk:
                ExtraVariance += ratio;
                break;
            case LevelKind.Position when walk:
                AddPosition(k, term, reference.Position, ratio);
                break;
            case LevelKind.None:
                break;
            default:
                throw new ArgumentException(walk
                    ? $"'{term.Name}' is a random walk; say where the row lies with LevelRef.AtPosition."
                    : $"'{term.Name}' has no positions; use LevelRef.Known, Unseen or None.");
        }
    }

    private void AddPosition(int k, RandomTerm term, double position, double ratio)
    {
        int after = 0;
        while (after < term.Positions.Length && term.Positions[after] < position)
        {
            after++;
        }

        if (after == 0 || after == term.Positions.Length)
        {
            int end = after == 0 ? 0 : after - 1;
            AddLevel(k, end, 1);
            ExtraVariance += ratio * Math.Abs(position - term.Positions[end]);
            return;
        }

        double gap = term.Positions[after] - term.Positions[after - 1];
        double share = (position - term.Positions[after - 1]) / gap;
        AddLevel(k, after - 1, 1 - share);
        AddLevel(k, after, share);
        ExtraVariance += ratio * gap * share * (1 - share);
    }
}
