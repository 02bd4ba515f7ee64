namespace FlipAnalytics.Statistics;

/// <summary>What was believed about a weighted sum of the first parameters, a normal distribution of a′β: minus its logarithm is
/// half of precision × (a′β − mean)², without its constant.</summary>
/// <param name="Weights">a, by column, those that are not zero.</param>
/// <param name="Mean">Of the sum.</param>
/// <param name="Precision">1 / variance of the sum.</param>
internal sealed record LinearPrior(IReadOnlyList<(int Column, double Weight)> Weights, double Mean, double Precision)
{
    /// <summary>The penalty; its slopes are taken from <paramref name="slope"/>.</summary>
    internal double Penalise(ReadOnlySpan<double> at, Span<double> slope)
    {
        double distance = -Mean;
        foreach ((int column, double weight) in Weights)
            distance += weight * at[column];
        foreach ((int column, double weight) in Weights)
            slope[column] -= Precision * distance * weight;
        return Precision * distance * distance / 2;
    }

    /// <summary>Adds precision × a a′ to the lower triangle of a square array of this row length.</summary>
    internal void AddInformation(Span<double> information, int stride)
    {
        foreach ((int column, double weight) in Weights)
        {
            foreach ((int other, double otherWeight) in Weights)
            {
                if (other <= column)
                    information[column * stride + other] += Precision * weight * otherWeight;
            }
        }
    }

    /// <summary>Adds precision × mean × a, the right side of its normal equations.</summary>
    internal void AddProducts(Span<double> products)
    {
        foreach ((int column, double weight) in Weights)
            products[column] += Precision * Mean * weight;
    }
}
