using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>What one ending's columns were, less what was to be expected of whoever ended then; a trend over time says that
/// a coefficient changes. Schoenfeld (1982), Biometrika 69, 239–241.</summary>
/// <param name="Row">Of the ending, counted from 0 in the order given to the fit.</param>
/// <param name="Time">When it ended.</param>
/// <param name="Values">xᵢ − x̄(t), one a coefficient; with Efron's ties x̄ is the mean over the tied terms.</param>
public sealed record SchoenfeldResidual(int Row, double Time, ImmutableArray<double> Values)
{
    /// <summary>One residual an ending, stratum by stratum, in the order of their times. They sum to 0 over an unweighted
    /// fit.</summary>
    public static ImmutableArray<SchoenfeldResidual> Of(CoxFit fit)
    {
        ArgumentNullException.ThrowIfNull(fit);
        CoxRows rows = fit.Rows;
        List<SchoenfeldResidual>[] byStratum = [.. rows.Strata.Select(_ => new List<SchoenfeldResidual>())];
        double[] risks = CoxLikelihood.Risks(rows, rows.LinearPredictors(fit.Estimates));
        RiskSweep.Run(rows, risks, 1, risk =>
        {
            double[] mean = new double[rows.Width];
            foreach ((double weight, double gone) in risk.Terms(fit.Ties))
            {
                double share = weight / risk.EndingWeight / (risk.All[0] - gone * risk.Ending[0]);
                for (int j = 0; j < mean.Length; j++)
                    mean[j] += share * (risk.All[1 + j] - gone * risk.Ending[1 + j]);
            }
            // The walk goes backwards in time.
            for (int i = risk.First + risk.EndingCount - 1; i >= risk.First; i--)
                byStratum[risk.Stratum].Add(new(rows.Original[i], risk.Time, [.. rows.Row(i).ToArray().Zip(mean, (x, m) => x - m)]));
        });
        return [.. byStratum.SelectMany(residuals => residuals.AsEnumerable().Reverse())];
    }
}
