using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>
/// Where the entries of the curvature, minus the second derivatives in (β, u, log σ), lie in one array. The matrix is
/// K = [A B′; B C] after ordering: C, dense, holds the border (the fixed columns, the levels that many rows touch, and log σ),
/// A the small blocks on the diagonal, one for each set of other levels that share rows, and B what lies between; all else is
/// zero. First comes the lower triangle of C as a square, then for each block the lower triangle of its square and a row a
/// member of its entries with that part of the border which it touches. With every level in the border this is the lower
/// triangle of K itself.
/// </summary>
internal sealed class CurvatureLayout
{
    private readonly int[] placeInBorder;
    private readonly int[] placeInBlock;
    private readonly int[] blockOf;
    private readonly int[] members;
    private readonly int[] touched;
    private readonly int[][][] pairs;

    /// <param name="coefficientCount">Fixed columns.</param>
    /// <param name="groups">The groups, whose levels are the next parameters.</param>
    /// <param name="blocks">By level the block, −1 for the border.</param>
    internal CurvatureLayout(int coefficientCount, IReadOnlyList<GroupColumn> groups, int[] blocks)
    {
        ParameterCount = coefficientCount + blocks.Length + 1;
        blockOf = [.. Enumerable.Repeat(-1, coefficientCount), .. blocks, -1];
        BorderParameters = [.. Enumerable.Range(0, ParameterCount).Where(parameter => blockOf[parameter] < 0)];
        placeInBorder = new int[ParameterCount];
        placeInBlock = new int[ParameterCount];
        for (int place = 0; place < BorderCount; place++)
            placeInBorder[BorderParameters[place]] = place;
        members = [.. Enumerable.Range(0, ParameterCount).Where(parameter => blockOf[parameter] >= 0).OrderBy(parameter => blockOf[parameter])];
        int[] sizes = new int[members.Length == 0 ? 0 : blocks.Max() + 1];
        foreach (int member in members)
            placeInBlock[member] = sizes[blockOf[member]]++;
        (touched, int[] counts) = Touched(coefficientCount, groups, sizes.Length);
        Blocks = Placed(sizes, counts);
        Length = BorderCount * BorderCount + Blocks.Sum(block => block.Size * (block.Size + block.TouchedCount));
        FixedColumns = new int[ParameterCount];
        LogScale = new int[ParameterCount];
        Diagonal = new int[ParameterCount];
        for (int parameter = 0; parameter < ParameterCount; parameter++)
        {
            bool isBorder = blockOf[parameter] < 0;
            FixedColumns[parameter] = isBorder ? placeInBorder[parameter] * BorderCount : RowOf(parameter);
            LogScale[parameter] = isBorder
                ? (BorderCount - 1) * BorderCount + placeInBorder[parameter]
                : RowOf(parameter) + Blocks[blockOf[parameter]].TouchedCount - 1;
            Diagonal[parameter] = Entry(parameter, parameter);
        }

        pairs = [.. groups.Select((_, k) => Enumerable.Range(0, k).Select(other => PairEntries(coefficientCount, groups, k, other)).ToArray())];
    }

    internal int ParameterCount { get; }

    /// <summary>Rows of C.</summary>
    internal int BorderCount => BorderParameters.Length;

    /// <summary>The border's parameters in order: fixed columns, levels, log σ.</summary>
    internal int[] BorderParameters { get; }

    internal ImmutableArray<CurvatureBlock> Blocks { get; }

    /// <summary>Numbers in the array.</summary>
    internal int Length { get; }

    /// <summary>By parameter, where its products with the fixed columns begin.</summary>
    internal int[] FixedColumns { get; }

    /// <summary>By parameter, where its product with log σ is.</summary>
    internal int[] LogScale { get; }

    /// <summary>By parameter, where its entry on the diagonal is.</summary>
    internal int[] Diagonal { get; }

    /// <summary>The parameters of a block, in order.</summary>
    internal ReadOnlySpan<int> Members(CurvatureBlock block) => members.AsSpan(block.FirstMember, block.Size);

    /// <summary>Places in the border that a block touches, in order: first all fixed columns, last log σ.</summary>
    internal ReadOnlySpan<int> Touched(CurvatureBlock block) => touched.AsSpan(block.FirstTouched, block.TouchedCount);

    /// <summary>By row, where the product of its levels of a group and of an earlier one is; −1 where it has none of either.</summary>
    internal int[] Pairs(int group, int earlier) => pairs[group][earlier];

    /// <summary>The block of a parameter and its place there; null for one in the border.</summary>
    internal (CurvatureBlock Block, int Place)? InBlock(int parameter) =>
        blockOf[parameter] < 0 ? null : (Blocks[blockOf[parameter]], placeInBlock[parameter]);

    /// <summary>The place in the border of a parameter that is there.</summary>
    internal int InBorder(int parameter) => placeInBorder[parameter];

    private int RowOf(int parameter)
    {
        CurvatureBlock block = Blocks[blockOf[parameter]];
        return block.Beside + placeInBlock[parameter] * block.TouchedCount;
    }

    // The later parameter comes first; the two lie in one block, or one of them in the border.
    private int Entry(int parameter, int earlier)
    {
        if (blockOf[parameter] < 0 && blockOf[earlier] < 0)
            return placeInBorder[parameter] * BorderCount + placeInBorder[earlier];
        if (blockOf[parameter] == blockOf[earlier])
        {
            CurvatureBlock block = Blocks[blockOf[parameter]];
            return block.Own + placeInBlock[parameter] * block.Size + placeInBlock[earlier];
        }

        var (member, other) = blockOf[parameter] < 0 ? (earlier, parameter) : (parameter, earlier);
        return RowOf(member) + Touched(Blocks[blockOf[member]]).BinarySearch(placeInBorder[other]);
    }

    private int[] PairEntries(int start, IReadOnlyList<GroupColumn> groups, int k, int other)
    {
        int[] level = groups[k].Level, otherLevel = groups[other].Level;
        int first = start + groups.Take(k).Sum(group => group.Levels.Length);
        int otherFirst = start + groups.Take(other).Sum(group => group.Levels.Length);
        var entries = new int[level.Length];
        for (int row = 0; row < entries.Length; row++)
            entries[row] = level[row] < 0 || otherLevel[row] < 0 ? -1 : Entry(first + level[row], otherFirst + otherLevel[row]);
        return entries;
    }

    private (int[] Touched, int[] Counts) Touched(int coefficientCount, IReadOnlyList<GroupColumn> groups, int blockCount)
    {
        var all = new SortedSet<int>?[blockCount];
        int[] starts = new int[groups.Count];
        for (int k = 0, next = coefficientCount; k < starts.Length; next += groups[k].Levels.Length, k++)
            starts[k] = next;
        for (int row = 0; blockCount > 0 && row < groups[0].Level.Length; row++)
        {
            int[] parameters = [.. groups.Select((group, k) => group.Level[row] < 0 ? -1 : starts[k] + group.Level[row]).Where(p => p >= 0)];
            foreach (int member in parameters.Where(parameter => blockOf[parameter] >= 0))
            {
                foreach (int other in parameters.Where(parameter => blockOf[parameter] < 0))
                    (all[blockOf[member]] ??= []).Add(placeInBorder[other]);
            }
        }

        var places = new List<int>();
        var counts = new int[blockCount];
        for (int block = 0; block < blockCount; block++)
        {
            int before = places.Count;
            places.AddRange([.. Enumerable.Range(0, coefficientCount), .. all[block] ?? [], BorderCount - 1]);
            counts[block] = places.Count - before;
        }

        return ([.. places], counts);
    }

    private ImmutableArray<CurvatureBlock> Placed(int[] sizes, int[] touchedCounts)
    {
        var placed = ImmutableArray.CreateBuilder<CurvatureBlock>(sizes.Length);
        int member = 0, place = 0, next = BorderCount * BorderCount;
        for (int block = 0; block < sizes.Length; block++)
        {
            int size = sizes[block], count = touchedCounts[block];
            placed.Add(new(member, size, place, count, next, next + size * size));
            member += size;
            place += count;
            next += size * (size + count);
        }

        return placed.MoveToImmutable();
    }
}

/// <summary>A block on the diagonal of the curvature.</summary>
/// <param name="FirstMember">Where its parameters begin in the list of all.</param>
/// <param name="Size">How many there are.</param>
/// <param name="FirstTouched">Where the places it touches in the border begin in the list of all.</param>
/// <param name="TouchedCount">How many there are.</param>
/// <param name="Own">Where its square begins.</param>
/// <param name="Beside">Where its entries with the border begin.</param>
internal readonly record struct CurvatureBlock(
    int FirstMember, int Size, int FirstTouched, int TouchedCount, int Own, int Beside);
