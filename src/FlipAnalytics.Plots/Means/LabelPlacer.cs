namespace FlipAnalytics.Plots;

/// <summary>Moves labels apart along a line so that none overlap.</summary>
internal static class LabelPlacer
{
    /// <summary>How many labels of a height fit.</summary>
    public static int Room(float height, float low, float high) => Math.Max(0, (int)((high - low) / height));

    /// <summary>
    /// The middles of labels as near as can be to where they are wanted, in the least-squares sense, at least a height
    /// apart and between low and high: neighbours that collide form a block about their mean (pool adjacent violators,
    /// Barlow and others, Statistical Inference under Order Restrictions, 1972).
    /// </summary>
    /// <param name="wanted">Wanted middles, in any order.</param>
    /// <param name="height">Height of a label.</param>
    /// <param name="low">Where the first label may begin.</param>
    /// <param name="high">Where the last must end.</param>
    /// <exception cref="ArgumentException">There are more labels than fit; see <see cref="Room"/>.</exception>
    public static float[] Spread(IReadOnlyList<float> wanted, float height, float low, float high)
    {
        if (wanted.Count > Room(height, low, high))
        {
            throw new ArgumentException(
                $"{wanted.Count} labels of height {height} do not fit between {low} and {high}: leave some out.", nameof(wanted));
        }

        int[] order = [.. Enumerable.Range(0, wanted.Count).OrderBy(i => wanted[i])];
        // With the heights of those before taken off, the labels only have to keep their order.
        var blocks = new List<(double Sum, int Count)>();
        for (int k = 0; k < order.Length; k++)
        {
            blocks.Add((wanted[order[k]] - k * height, 1));
            while (blocks.Count > 1 && Mean(blocks[^2]) >= Mean(blocks[^1]))
            {
                var (sum, count) = blocks[^1];
                blocks.RemoveAt(blocks.Count - 1);
                blocks[^1] = (blocks[^1].Sum + sum, blocks[^1].Count + count);
            }
        }

        double first = low + height / 2, last = high - height / 2 - (wanted.Count - 1) * height;
        var placed = new float[wanted.Count];
        int next = 0;
        foreach (var block in blocks)
        {
            for (int i = 0; i < block.Count; i++, next++)
                placed[order[next]] = (float)(Math.Clamp(Mean(block), first, last) + next * height);
        }

        return placed;
    }

    private static double Mean((double Sum, int Count) block) => block.Sum / block.Count;
}
