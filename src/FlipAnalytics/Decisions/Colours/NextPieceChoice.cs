using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Which color or finish to give the next piece of a type.</summary>
internal static class NextPieceChoice
{
    private static readonly double Sure = MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, 0.9);

    /// <summary>The choices among some levels; null where nothing tells a sale price.</summary>
    /// <param name="models">All models.</param>
    /// <param name="group">The models of the grouping.</param>
    /// <param name="by">Color or finish.</param>
    /// <param name="type">The type.</param>
    /// <param name="compared">The levels with enough sales to be compared.</param>
    /// <param name="levels">The levels to choose from with their sales, at most <see cref="JointRanks.Most"/>.</param>
    public static NextPiece? Of(
        FittedModels models, GroupModels group, GroupedBy by, string type, ImmutableArray<string> compared,
        ImmutableArray<(string Level, int Sold)> levels)
    {
        if (levels.IsEmpty)
            return null;
        var decisions = new MostToPay(models, new()).Decide(
        [
            .. levels.Select(l => new Candidate
            {
                Id = l.Level,
                Type = type,
                Colour = by == GroupedBy.Color ? l.Level : null,
                Finish = by == GroupedBy.Finish ? l.Level : null,
            }),
        ]);
        if (decisions.Any(d => d.Ceiling is null))
            return null;

        // Between levels the money differs by the price effect; what that is worth follows from the sale price kept after fees.
        double kept = 1 - Crossing.Number(SellingTerms.Of(models.Log).FeeRate);
        double[] worth = [.. decisions.Select(d => kept * Crossing.Number(d.SalePrice!.Mean))];
        int count = levels.Length;
        var covariance = new double[count, count];
        for (int i = 0; i < count; i++)
        {
            for (int j = 0; j < count; j++)
                covariance[i, j] = worth[i] * worth[j] * group.PriceCovariance(levels[i].Level, levels[j].Level);
        }

        double[] means = [.. decisions.Select(d => Crossing.Number(d.Ceiling!.Value))];
        int[] order = [.. Enumerable.Range(0, count).OrderByDescending(i => means[i]).ThenBy(i => i)];
        // What is not sold often enough to be compared is not ranked either.
        int[] ranked = [.. order.Where(i => compared.Contains(levels[i].Level))];
        var chances = ranked.Length < 2 ? [] : JointRanks.Highest([.. ranked.Select(i => means[i])], Among(ranked));
        return new(
            type,
            [
                .. order.Select(i => new NextChoice(
                    levels[i].Level, decisions[i].Ceiling!.Value, decisions[i].DaysOnMarket!.Median,
                    ranked.Contains(i), Array.IndexOf(ranked, i) is >= 0 and var at && ranked.Length > 1 ? chances[at].First : null)),
            ],
            ranked.Length < 2 ? null : MoreFlips(ranked[0], ranked[1]));

        double[,] Among(int[] some)
        {
            var part = new double[some.Length, some.Length];
            for (int i = 0; i < some.Length; i++)
            {
                for (int j = 0; j < some.Length; j++)
                    part[i, j] = covariance[some[i], some[j]];
            }

            return part;
        }

        // The variance of a difference falls as one over the number of sales: n (z² var / gap² − 1) more bring the gap to z
        // standard errors.
        int? MoreFlips(int best, int second)
        {
            double gap = means[best] - means[second];
            double variance = covariance[best, best] + covariance[second, second] - 2 * covariance[best, second];
            double more = (levels[best].Sold + levels[second].Sold) * (Sure * Sure * variance / (gap * gap) - 1);
            return more <= 0 || double.IsNaN(more) ? null : (int)Math.Min(9999, Math.Ceiling(more));
        }
    }
}
