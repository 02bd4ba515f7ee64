namespace FlipAnalytics;

/// <summary>
/// What the most to pay would be if the market were known: at each of equally likely nodes the means of sale price, hours
/// and supplies of such pieces are one of those that the log leaves possible. How far the nodes lie apart is what more
/// sales would tell; how single pieces scatter around their means is not in it.
/// </summary>
internal static class CeilingIfKnown
{
    /// <summary>The ceilings at the nodes, in no order; their mean is the ceiling.</summary>
    /// <param name="candidate">The piece; what it states is taken as known.</param>
    /// <param name="laws">What the models expect of it.</param>
    /// <param name="forecast">The joint forecast that the laws make.</param>
    /// <param name="selling">Fees of the sale.</param>
    /// <param name="ceiling">The most to pay.</param>
    /// <param name="wage">The wage it pays for.</param>
    public static double[] Of(
        Candidate candidate, CandidateLaws laws, JointForecast forecast, SellingTerms selling, double ceiling, double wage)
    {
        NodeTable nodes = NodeTable.Of(JointForecast.CoarseNodes);
        double[] price = Factors(candidate.SalePrice is null ? laws.Price!.VarianceOfMean : 0, nodes, NodeTable.Price);
        double[] hours = Factors(candidate.Hours is null ? laws.Hours.VarianceOfMean : 0, nodes, NodeTable.Hours);
        double[] supplies = Factors(SuppliesVariance(candidate, laws), nodes, NodeTable.Supplies);
        double sale = forecast.SalePrice.Average() * (1 - Crossing.Number(selling.FeeRate));
        double work = wage * forecast.Hours.Average();
        double spent = forecast.Supplies.Average();
        return
        [
            .. Enumerable.Range(0, nodes.Count).Select(i =>
                ceiling + sale * (price[i] - 1) - work * (hours[i] - 1) - spent * (supplies[i] - 1)),
        ];
    }

    private static double SuppliesVariance(Candidate candidate, CandidateLaws laws) =>
        candidate.Supplies is not null ? 0
        : laws.Supplies?.VarianceOfMean ?? Expectations.SuppliesShareSpread * Expectations.SuppliesShareSpread;

    // Means of a log that is not known for sure, over their average, which the forecast has.
    private static double[] Factors(double variance, NodeTable nodes, int coordinate)
    {
        double deviation = Math.Sqrt(variance);
        double[] factors = [.. nodes.Normal(coordinate).Select(z => Math.Exp(deviation * z))];
        double mean = factors.Average();
        return [.. factors.Select(factor => factor / mean)];
    }
}
