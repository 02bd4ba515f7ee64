namespace FlipAnalytics.Statistics;

/// <summary>
/// What each value of a list should be by the others of its group, with the spread of that prediction: the median of the
/// others, drawn to the median of all groups by the ratio of spread within groups to that between them, as a normal
/// random effect would be (Robinson, 1991, Statistical Science 6, 15–32), but by medians and median deviations
/// (<see cref="MedianScale"/>) throughout, so that neither a wild value nor a wild group moves it.
/// </summary>
public sealed class GroupedPrediction
{
    // The expected spreads count as this many values, so that five values do not make a scale of their own.
    private const double ExpectedCounts = 6;

    // Rounded values agree to the digit more often than what they stand for.
    private const double SmallestShare = 0.6;

    private readonly double[] centres;
    private readonly double[] spreads;

    /// <summary>Predicts every value from the others.</summary>
    /// <param name="values">Values, on a scale on which spread is alike, such as logarithms.</param>
    /// <param name="groups">The group of each value.</param>
    /// <param name="within">Expected spread within a group, above zero; weighs as much as six values.</param>
    /// <param name="between">Expected spread of the groups' middles, above zero.</param>
    public GroupedPrediction(IReadOnlyList<double> values, IReadOnlyList<string> groups, double within, double between)
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentNullException.ThrowIfNull(groups);
        ArgumentOutOfRangeException.ThrowIfNotEqual(groups.Count, values.Count);
        var members = Enumerable.Range(0, values.Count)
            .GroupBy(i => groups[i], StringComparer.OrdinalIgnoreCase)
            .Select(g => Sorted([.. g], values)).ToArray();
        double[] middles = [.. members.Select(g => (values[g[(g.Length - 1) / 2]] + values[g[g.Length / 2]]) / 2)];
        int[] byMiddle = Sorted([.. Enumerable.Range(0, middles.Length)], middles);
        double overall = MedianScale.Median(middles);
        Between = Scale([.. middles.Select(m => m - overall)], between);
        double[] deviations =
        [
            .. members.Where(g => g.Length > 2).SelectMany(g => g.Select((i, place) => values[i] - MedianOfOthers(values, g, place))),
        ];
        Within = Scale(deviations, within);
        double ratio = Within * Within / (Between * Between);

        int[] placeByMiddle = new int[members.Length];
        for (int place = 0; place < byMiddle.Length; place++)
            placeByMiddle[byMiddle[place]] = place;
        centres = new double[values.Count];
        spreads = new double[values.Count];
        for (int g = 0; g < members.Length; g++)
        {
            int others = members[g].Length - 1;
            // A value alone in its group is told by the other groups.
            double rest = others > 0 || members.Length < 3
                ? overall
                : MedianOfOthers(middles, byMiddle, placeByMiddle[g]);
            for (int place = 0; place <= others; place++)
            {
                int i = members[g][place];
                double own = others > 0 ? MedianOfOthers(values, members[g], place) : rest;
                centres[i] = ((others * own) + (ratio * rest)) / (others + ratio);
                spreads[i] = Within * Math.Sqrt(1 + (1 / (others + ratio)));
            }
        }
    }

    /// <summary>Spread within groups, as a normal's standard deviation.</summary>
    public double Within { get; }

    /// <summary>Spread of the groups' middles.</summary>
    public double Between { get; }

    /// <summary>What a value should be by the others.</summary>
    public double Centre(int value) => centres[value];

    /// <summary>Standard deviation of what a value should be.</summary>
    public double Spread(int value) => spreads[value];

    private static double Scale(double[] deviations, double expected) =>
        Math.Max(SmallestShare * expected, MedianScale.Deviation(deviations, 0, expected, ExpectedCounts));

    // Which of two equal values comes first makes no difference to a median.
    private static int[] Sorted(int[] members, IReadOnlyList<double> values)
    {
        Array.Sort(Array.ConvertAll(members, i => values[i]), members);
        return members;
    }

    private static double MedianOfOthers(IReadOnlyList<double> values, int[] sorted, int place)
    {
        int others = sorted.Length - 1;
        return (At((others - 1) / 2) + At(others / 2)) / 2;

        double At(int rank) => values[sorted[rank < place ? rank : rank + 1]];
    }
}
