using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>The cumulative hazard where every column is 0.</summary>
/// <param name="Time">A stopping time.</param>
/// <param name="CumulativeHazard">Ĥ₀ up to and with it.</param>
public readonly record struct BaselineStep(double Time, double CumulativeHazard);

/// <summary>Ĥ₀(t) of one stratum: Σ w/Σ exp(xᵀb) over the endings up to t, with the ties of the fit; Breslow (1974),
/// Biometrics 30, 89–99, for Breslow's.</summary>
/// <param name="Stratum">Its name; empty without strata.</param>
/// <param name="Steps">One a distinct stopping time, ascending.</param>
public sealed record CoxBaseline(string Stratum, ImmutableArray<BaselineStep> Steps)
{
    /// <summary>Ĥ₀(t), 0 before the first ending; past the last stop it is unknown and stays what it was there.</summary>
    public double At(double time)
    {
        int low = 0, high = Steps.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = Steps[middle].Time <= time ? (middle + 1, high) : (low, middle);
        }
        return low == 0 ? 0 : Steps[low - 1].CumulativeHazard;
    }

    internal static ImmutableArray<CoxBaseline> Of(CoxRows rows, TieMethod ties, double[] coefficients)
    {
        double[] predictors = rows.LinearPredictors(coefficients);
        double[] shifted = [.. predictors];
        double[] risks = CoxLikelihood.Risks(rows, shifted);
        double offset = -coefficients.Select((b, j) => b * rows.Means[j]).Sum();
        List<BaselineStep>[] jumps = [.. rows.Strata.Select(_ => new List<BaselineStep>())];
        RiskSweep.Run(rows, risks, 0, risk => jumps[risk.Stratum].Add(new(
            risk.Time, risk.Terms(ties).Sum(term => term.Weight / (risk.All[0] - term.Gone * risk.Ending[0])))));
        return
        [
            .. rows.Strata.Select((name, stratum) =>
            {
                int first = rows.StratumStart[stratum];
                // Back from centred columns and from the largest predictor to columns of 0.
                double scale = Math.Exp(offset + shifted[first] - predictors[first]);
                return new CoxBaseline(name, Accumulate(rows.Times[first..rows.StratumStart[stratum + 1]], jumps[stratum], scale));
            }),
        ];
    }

    private static ImmutableArray<BaselineStep> Accumulate(SurvivalTime[] latestFirst, List<BaselineStep> jumps, double scale)
    {
        var steps = ImmutableArray.CreateBuilder<BaselineStep>();
        int next = jumps.Count - 1;
        double hazard = 0;
        for (int i = latestFirst.Length - 1; i >= 0; i--)
        {
            double time = latestFirst[i].Stop;
            if (i > 0 && latestFirst[i - 1].Stop == time)
                continue;
            if (next >= 0 && jumps[next].Time == time)
                hazard += jumps[next--].CumulativeHazard * scale;
            steps.Add(new(time, hazard));
        }
        return steps.ToImmutable();
    }
}
