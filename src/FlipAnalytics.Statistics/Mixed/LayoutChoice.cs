using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>
/// Chooses the <see cref="BorderedLayout"/> that takes least work. No row is in two levels of an exchangeable term, so
/// its levels can always be blocks of one. Where levels are many, blocks of several terms' rare levels are tried too:
/// levels that meet few others come first, each joining the blocks it meets as long as they stay small.
/// </summary>
internal static class LayoutChoice
{
    /// <summary>With fewer draws, looking for a better layout takes longer than it saves.</summary>
    private const int FewestToSearch = 150;

    private static readonly ImmutableArray<int> Limits = [1, 4, 8, 32];

    /// <summary>The layout.</summary>
    /// <param name="terms">The random terms.</param>
    /// <param name="levelOffsets">First level of each, and the number of levels.</param>
    /// <param name="neighbours">Which levels meet.</param>
    /// <param name="fixedCount">Number of fixed columns.</param>
    public static BorderedLayout Of(
        ImmutableArray<RandomTerm> terms, int[] levelOffsets, LevelNeighbours neighbours, int fixedCount)
    {
        int[] exchangeable = [.. Enumerable.Range(0, terms.Length)
            .Where(k => terms[k].Structure == RandomStructure.Exchangeable)
            .OrderByDescending(k => terms[k].ColumnCount)];
        var candidates = exchangeable.Select(k => SingleLevels(levelOffsets, k));
        if (terms.Sum(term => term.ColumnCount) < FewestToSearch)
        {
            return new(terms, levelOffsets, candidates.FirstOrDefault([]));
        }

        int[] termOf = new int[levelOffsets[^1]];
        for (int k = 0; k < terms.Length; k++)
        {
            termOf.AsSpan(levelOffsets[k]..levelOffsets[k + 1]).Fill(k);
        }

        int[] rarestFirst = [.. exchangeable.Order()
            .SelectMany(k => Enumerable.Range(levelOffsets[k], terms[k].Levels.Length))
            .OrderBy(level => neighbours.Of(level).Length)];
        int draws = terms.Sum(term => term.ColumnCount);
        int[][] best = candidates.Concat(Limits.Select(limit => Joined(rarestFirst, neighbours, limit)))
            .DefaultIfEmpty([])
            .MinBy(blocks => Work(blocks, neighbours, termOf, draws, fixedCount))!;
        return new(terms, levelOffsets, best);
    }

    private static int[][] SingleLevels(int[] levelOffsets, int term) =>
        [.. Enumerable.Range(levelOffsets[term], levelOffsets[term + 1] - levelOffsets[term]).Select(level => new[] { level })];

    private static int[][] Joined(int[] rarestFirst, LevelNeighbours neighbours, int limit)
    {
        int[] parent = new int[neighbours.Starts.Length - 1];
        int[] size = new int[parent.Length];
        int Root(int level)
        {
            while (parent[level] != level)
            {
                level = parent[level] = parent[parent[level]];
            }

            return level;
        }

        var roots = new List<int>();
        foreach (int level in rarestFirst)
        {
            roots.Clear();
            int joined = 1;
            foreach (int other in neighbours.Of(level))
            {
                if (size[other] > 0 && Root(other) is var root && !roots.Contains(root))
                {
                    roots.Add(root);
                    joined += size[root];
                    if (joined > limit)
                    {
                        break;
                    }
                }
            }

            if (joined <= limit)
            {
                parent[level] = level;
                size[level] = joined;
                roots.ForEach(root => parent[root] = level);
            }
        }

        return [.. rarestFirst.Where(level => size[level] > 0).Order().GroupBy(Root).Select(block => block.ToArray())];
    }

    /// <summary>Multiplications of one Newton step, roughly.</summary>
    private static double Work(int[][] blocks, LevelNeighbours neighbours, int[] termOf, int draws, int fixedCount)
    {
        int[] blockOf = new int[termOf.Length];
        int[] seenFrom = new int[termOf.Length];
        for (int c = 0; c < blocks.Length; c++)
        {
            Array.ForEach(blocks[c], level => blockOf[level] = c + 1);
        }

        double work = 0;
        var terms = new HashSet<int>();
        for (int c = 0; c < blocks.Length; c++)
        {
            double width = fixedCount + 1;
            foreach (int level in blocks[c])
            {
                terms.Add(termOf[level]);
                foreach (int other in neighbours.Of(level))
                {
                    if (blockOf[other] == 0 && seenFrom[other] != c + 1)
                    {
                        seenFrom[other] = c + 1;
                        width++;
                    }
                }
            }

            double size = blocks[c].Length;
            work += size * (size + width) * (size + (3 * width));
        }

        double border = draws - blocks.Sum(block => block.Length) + fixedCount;
        return work + (border * border * border * (1 + terms.Count));
    }
}
