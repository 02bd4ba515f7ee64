namespace FlipAnalytics.Statistics;

/// <summary>Settings of <see cref="LeastSquares"/>.</summary>
public sealed record LeastSquaresOptions
{
    /// <summary>R's settings.</summary>
    public static LeastSquaresOptions Default { get; } = new();

    /// <summary>A column whose part not explained by the columns before it is shorter than this share of its length is
    /// dropped as dependent. Above 0 and below 1; 1e-7, as in R, by default.</summary>
    public double RankTolerance
    {
        get;
        init => field = value is > 0 and < 1 ? value : throw new ArgumentOutOfRangeException(
            nameof(RankTolerance), value, "The rank tolerance must lie between 0 and 1; R uses 1e-7.");
    } = 1e-7;

    /// <summary>Whether coefficients, residuals and covariance are carried to full double precision by refinement with
    /// 32-digit sums. Costs about as much again as the fit; on by default.</summary>
    public bool Refine { get; init; } = true;
}
