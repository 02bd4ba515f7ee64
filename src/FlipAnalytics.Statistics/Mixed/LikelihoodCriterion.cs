namespace FlipAnalytics.Statistics;

/// <summary>What the variance ratios of a mixed model maximise.</summary>
public enum LikelihoodCriterion
{
    /// <summary>
    /// Restricted likelihood, of the contrasts that do not depend on the coefficients; Patterson and Thompson (1971),
    /// Biometrika 58, 545–554.
    /// </summary>
    Reml,

    /// <summary>Ordinary likelihood; comparable between models with different coefficients.</summary>
    Ml,
}
