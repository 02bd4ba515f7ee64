namespace FlipAnalytics.Statistics;

/// <summary>
/// Which levels of the groups stand in the border of the curvature, beside the fixed columns and log σ, and which fall into
/// small blocks: levels outside the border belong to one block if a chain of rows joins them. Levels with more than a
/// number of neighbours, levels that share a row, stand in the border, and perhaps all groups but one; of these choices the one
/// with the fewest operations is taken: n³ for a border of n, (b + t)³ − t³ for a block of b that touches t of the border.
/// </summary>
internal static class CurvatureBorder
{
    // With fewer parameters blocks have nothing to gain, and with less to gain than this factor they lose it to bookkeeping.
    private const int FewestParameters = 64;
    private const double LeastGain = 2;

    /// <summary>By level, those of one group after those of another, the block; −1 in the border.</summary>
    /// <param name="coefficientCount">Fixed columns.</param>
    /// <param name="groups">The groups.</param>
    internal static int[] Blocks(int coefficientCount, IReadOnlyList<GroupColumn> groups)
    {
        int levels = groups.Sum(group => group.Levels.Length), parameters = coefficientCount + levels + 1;
        int[] best = AllInBorder(levels);
        if (parameters < FewestParameters)
            return best;
        (int One, int Other)[] shared = SharedRows(groups);
        int[] neighbours = new int[levels], groupOf = new int[levels];
        foreach ((int one, int other) in shared)
        {
            neighbours[one]++;
            neighbours[other]++;
        }

        for (int k = 0, level = 0; k < groups.Count; level += groups[k].Levels.Length, k++)
            Array.Fill(groupOf, k, level, groups[k].Levels.Length);
        double least = Cube(parameters) / LeastGain;
        foreach (int most in Limits(neighbours))
        {
            for (int only = groups.Count > 1 ? -1 : 0; only < groups.Count; only++)
            {
                int[] blocks = Joined([.. neighbours.Select((n, level) => n <= most && (only < 0 || groupOf[level] == only))], shared);
                double cost = Cost(blocks, shared, coefficientCount + 1);
                if (cost < least)
                    (best, least) = (blocks, cost);
            }
        }

        return best;
    }

    /// <summary>No blocks: the curvature as one dense matrix.</summary>
    internal static int[] AllInBorder(int levels)
    {
        var blocks = new int[levels];
        Array.Fill(blocks, -1);
        return blocks;
    }

    /// <summary>Pairs of levels of different groups that some row has both of, each once.</summary>
    private static (int One, int Other)[] SharedRows(IReadOnlyList<GroupColumn> groups)
    {
        var pairs = new HashSet<(int, int)>();
        for (int k = 0, start = 0; k < groups.Count; start += groups[k].Levels.Length, k++)
        {
            for (int other = 0, otherStart = 0; other < k; otherStart += groups[other].Levels.Length, other++)
            {
                int[] level = groups[k].Level, otherLevel = groups[other].Level;
                for (int row = 0; row < level.Length; row++)
                {
                    if (level[row] >= 0 && otherLevel[row] >= 0)
                        pairs.Add((start + level[row], otherStart + otherLevel[row]));
                }
            }
        }

        return [.. pairs.Order()];
    }

    // 0, 1, 2, 4, 8 … up to the most neighbours that a level has.
    private static IEnumerable<int> Limits(int[] neighbours)
    {
        int most = neighbours.Max();
        yield return 0;
        for (int limit = 1; limit < 2 * most; limit *= 2)
            yield return limit;
    }

    /// <summary>Numbers the chains of levels outside the border, in the order of their first levels.</summary>
    private static int[] Joined(bool[] outside, (int One, int Other)[] shared)
    {
        int[] parent = [.. Enumerable.Range(0, outside.Length)];
        foreach ((int one, int other) in shared)
        {
            if (outside[one] && outside[other])
            {
                int first = Root(parent, one), second = Root(parent, other);
                parent[Math.Max(first, second)] = Math.Min(first, second);
            }
        }

        var blocks = new int[outside.Length];
        int count = 0;
        for (int level = 0; level < blocks.Length; level++)
        {
            int root = Root(parent, level);
            blocks[level] = !outside[level] ? -1 : root == level ? count++ : blocks[root];
        }

        return blocks;
    }

    private static int Root(int[] parent, int level)
    {
        while (parent[level] != level)
        {
            parent[level] = parent[parent[level]];
            level = parent[level];
        }

        return level;
    }

    private static double Cost(int[] blocks, (int One, int Other)[] shared, int always)
    {
        int count = blocks.Max() + 1;
        int[] size = new int[count], touched = new int[count];
        int border = always;
        foreach (int block in blocks)
        {
            if (block < 0)
                border++;
            else
                size[block]++;
        }

        foreach ((int one, int other) in shared)
        {
            int block = Math.Max(blocks[one], blocks[other]);
            if (block >= 0 && Math.Min(blocks[one], blocks[other]) < 0)
                touched[block]++;
        }

        double cost = Cube(border);
        for (int block = 0; block < count; block++)
        {
            double beside = always + Math.Min(touched[block], border - always);
            cost += Cube(size[block] + beside) - Cube(beside);
        }

        return cost;
    }

    private static double Cube(double n) => n * n * n;
}
