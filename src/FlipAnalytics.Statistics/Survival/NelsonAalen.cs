using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>The cumulative hazard at one stopping time.</summary>
/// <param name="Time">t.</param>
/// <param name="AtRisk">Spells under observation just before t.</param>
/// <param name="Ended">Spells that ended at t.</param>
/// <param name="CumulativeHazard">Ĥ(t) = Σ dⱼ/nⱼ.</param>
/// <param name="StandardError">√ Σ dⱼ/nⱼ².</param>
/// <param name="Limits">Ĥ exp(± z se/Ĥ); null while Ĥ is 0.</param>
public sealed record HazardStep(
    double Time, int AtRisk, int Ended, double CumulativeHazard, double StandardError, Limits? Limits);

/// <summary>Ĥ(t) = Σ dⱼ/nⱼ over tⱼ ≤ t: Nelson (1972), Technometrics 14, 945–966; Aalen (1978), Ann. Stat. 6, 701–726.</summary>
public static class NelsonAalen
{
    /// <summary>Estimates the cumulative hazard, a step a distinct stopping time.</summary>
    /// <param name="times">The spells.</param>
    /// <param name="level">Of the limits, between 0 and 1.</param>
    /// <exception cref="ArgumentException">No spells, or one that does not stop after it starts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static ImmutableArray<HazardStep> Estimate(IReadOnlyList<SurvivalTime> times, double level = 0.95)
    {
        SurvivalTime.Refuse(times);
        Limits.RefuseLevel(level);
        double z = Tails.NormalQuantile((1 + level) / 2);
        double hazard = 0, variance = 0;
        List<HazardStep> steps = [];
        foreach (RiskRow row in RiskTable.Of(times))
        {
            hazard += (double)row.Ended / row.AtRisk;
            variance += (double)row.Ended / row.AtRisk / row.AtRisk;
            double error = Math.Sqrt(variance);
            double spread = Math.Exp(z * error / hazard);
            steps.Add(new(
                row.Time, row.AtRisk, row.Ended, hazard, error, hazard > 0 ? new(hazard / spread, hazard * spread) : null));
        }
        return [.. steps];
    }
}
