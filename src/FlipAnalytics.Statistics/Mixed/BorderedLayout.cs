using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>
/// Which levels lie in small blocks that no row joins, and which in the border that rows share. With the blocks first,
/// I + ΛZ'ZΛ is block-diagonal but for the border, and only the border needs a dense matrix: the doubly bordered
/// diagonal form of a sparse matrix (Duff, Erisman and Reid, Direct Methods for Sparse Matrices, on block forms;
/// Bates, Mächler, Bolker and Walker 2015, Journal of Statistical Software 67(1), section 5, eliminate the draws in a
/// like order). The first period of a walk, where it is 0, is in neither.
/// </summary>
internal sealed class BorderedLayout
{
    private const int Nowhere = int.MinValue;

    private readonly int[] _place;

    /// <summary>Lays out the levels; <paramref name="blocks"/> holds the blocks, all other levels lie in the border.</summary>
    public BorderedLayout(ImmutableArray<RandomTerm> terms, int[] levelOffsets, IReadOnlyList<int[]> blocks)
    {
        _place = new int[levelOffsets[^1]];
        BlockStarts = new int[blocks.Count + 1];
        for (int c = 0; c < blocks.Count; c++)
        {
            BlockStarts[c + 1] = BlockStarts[c] + blocks[c].Length;
        }

        BlockLevels = [.. blocks.SelectMany(block => block)];
        Array.Fill(_place, -1);
        for (int a = 0; a < BlockLevels.Length; a++)
        {
            _place[BlockLevels[a]] = a;
        }

        BlockTerms = new int[BlockLevels.Length];
        BorderStarts = new int[terms.Length + 1];
        var border = new List<int>();
        var borderTerms = new List<int>();
        var walks = new List<(int, double[])>();
        for (int k = 0; k < terms.Length; k++)
        {
            bool walk = terms[k].Structure == RandomStructure.RandomWalk;
            if (walk)
            {
                walks.Add((border.Count, [.. terms[k].Positions.Skip(1).Zip(terms[k].Positions, (t, before) => Math.Sqrt(t - before))]));
            }

            for (int level = levelOffsets[k]; level < levelOffsets[k + 1]; level++)
            {
                if (walk && level == levelOffsets[k])
                {
                    _place[level] = Nowhere;
                }
                else if (_place[level] >= 0)
                {
                    BlockTerms[_place[level]] = k;
                }
                else
                {
                    _place[level] = -1 - border.Count;
                    border.Add(level);
                    borderTerms.Add(k);
                }
            }

            BorderStarts[k + 1] = border.Count;
        }

        BorderLevels = [.. border];
        BorderTerms = [.. borderTerms];
        Walks = [.. walks];
        HasBlocks = [.. Enumerable.Range(0, terms.Length).Select(k => Array.IndexOf(BlockTerms, k) >= 0)];
    }

    /// <summary>First level of each block in <see cref="BlockLevels"/>, and their number at the end.</summary>
    public int[] BlockStarts { get; }

    /// <summary>The levels of the blocks, block by block.</summary>
    public int[] BlockLevels { get; }

    /// <summary>Their terms.</summary>
    public int[] BlockTerms { get; }

    /// <summary>The levels of the border in increasing order; where the term is a walk, also its steps.</summary>
    public int[] BorderLevels { get; }

    /// <summary>Their terms.</summary>
    public int[] BorderTerms { get; }

    /// <summary>Where each term's levels begin in the border, and their number at the end.</summary>
    public int[] BorderStarts { get; }

    /// <summary>Whether a term has levels in the blocks.</summary>
    public bool[] HasBlocks { get; }

    /// <summary>Where each walk begins in the border, and √gap of its steps.</summary>
    public (int First, double[] RootGaps)[] Walks { get; }

    public int BlockCount => BlockStarts.Length - 1;

    public int BorderCount => BorderLevels.Length;

    /// <summary>Where a level lies among <see cref="BlockLevels"/>.</summary>
    public bool InBlocks(int level, out int index) => (index = _place[level]) >= 0;

    /// <summary>Where a level lies among <see cref="BorderLevels"/>.</summary>
    public bool InBorder(int level, out int index)
    {
        index = -1 - _place[level];
        return _place[level] is < 0 and not Nowhere;
    }

    /// <summary>What the border's draws make of its levels, in place: a walk's level is the sum of its steps so far.</summary>
    public void ToLevels(Span<double> draws)
    {
        foreach ((int first, double[] rootGaps) in Walks)
        {
            double level = 0;
            for (int t = 0; t < rootGaps.Length; t++)
            {
                level += rootGaps[t] * draws[first + t];
                draws[first + t] = level;
            }
        }
    }

    /// <summary>The same for a matrix of one row of the given width for each draw.</summary>
    public void ToLevels(Span<double> rows, int width)
    {
        foreach ((int first, double[] rootGaps) in Walks)
        {
            for (int t = 0; t < rootGaps.Length; t++)
            {
                Span<double> row = rows.Slice((first + t) * width, width);
                VectorKernel.Scale(row, rootGaps[t]);
                if (t > 0)
                {
                    VectorKernel.AddScaled(row, 1, rows.Slice((first + t - 1) * width, width));
                }
            }
        }
    }

    /// <summary>The transpose of <see cref="ToLevels(Span{double})"/>: sums over levels made into sums over draws, in place.</summary>
    public void ToDraws(Span<double> levels)
    {
        foreach ((int first, double[] rootGaps) in Walks)
        {
            double tail = 0;
            for (int t = rootGaps.Length - 1; t >= 0; t--)
            {
                tail += levels[first + t];
                levels[first + t] = rootGaps[t] * tail;
            }
        }
    }

    /// <summary>The same for a matrix of one row of the given width for each level.</summary>
    public void ToDraws(Span<double> rows, int width)
    {
        foreach ((int first, double[] rootGaps) in Walks)
        {
            for (int t = rootGaps.Length - 2; t >= 0; t--)
            {
                VectorKernel.AddScaled(
                    rows.Slice((first + t) * width, width), 1, rows.Slice((first + t + 1) * width, width));
            }

            for (int t = 0; t < rootGaps.Length; t++)
            {
                VectorKernel.Scale(rows.Slice((first + t) * width, width), rootGaps[t]);
            }
        }
    }
}
