using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>The survival curve at one stopping time.</summary>
/// <param name="Time">t.</param>
/// <param name="AtRisk">Spells under observation just before t.</param>
/// <param name="Ended">Spells that ended at t.</param>
/// <param name="Censored">Spells last seen at t.</param>
/// <param name="Survival">Ŝ(t), 0 to 1.</param>
/// <param name="StandardError">Greenwood's, of Ŝ(t); null once Ŝ is 0.</param>
/// <param name="LogLogLimits">exp(−exp(log(−log Ŝ) ± z se)); null while Ŝ is 1 or once it is 0.</param>
/// <param name="LogLimits">exp(log Ŝ ± z se), at most 1; null once Ŝ is 0.</param>
public sealed record SurvivalStep(
    double Time, int AtRisk, int Ended, int Censored, double Survival,
    double? StandardError, Limits? LogLogLimits, Limits? LogLimits);

/// <summary>The time by which a share of spells has ended.</summary>
/// <param name="Probability">The share ended; 0.5 for the median.</param>
/// <param name="Time">The first time with Ŝ ≤ 1 − share, or the middle of a flat step at just 1 − share; null when the curve
/// never falls that far.</param>
/// <param name="Low">Lower limit of the time, where the curve's lower limit falls that far; null when it never does.</param>
/// <param name="High">Upper limit of the time; null when the curve's upper limit never falls that far.</param>
public sealed record SurvivalQuantile(double Probability, double? Time, double? Low, double? High);

/// <summary>The mean time up to a horizon, the area under the curve.</summary>
/// <param name="Horizon">τ.</param>
/// <param name="Mean">∫₀^τ Ŝ.</param>
/// <param name="StandardError">√ Σ (area from tⱼ to τ)² dⱼ / (nⱼ (nⱼ − dⱼ)) over tⱼ below τ.</param>
public sealed record RestrictedMean(double Horizon, double Mean, double StandardError);

/// <summary>Which limits of the curve a quantile's limits are read from.</summary>
public enum SurvivalLimits
{
    /// <summary>Limits symmetric in log(−log Ŝ), the better in small samples.</summary>
    LogLog,

    /// <summary>Limits symmetric in log Ŝ, R's default.</summary>
    Log,
}

/// <summary>Ŝ(t) = ∏ (1 − dⱼ/nⱼ) over tⱼ ≤ t: Kaplan and Meier (1958), J. Am. Stat. Assoc. 53, 457–481. Error of Greenwood
/// (1926). A spell last seen at tⱼ is at risk there; one that came under observation late counts from then on, and the curve
/// then speaks of spells that last until observed. Checked against R's survival package.</summary>
public sealed class KaplanMeier
{
    // R's survival package calls two heights of a curve equal within this.
    private const double SameHeight = 1.5e-8;

    private readonly double[] greenwoodTerms;

    private KaplanMeier(
        int count, double level, ImmutableArray<SurvivalStep> steps, ImmutableArray<RiskWeight> weights, double[] greenwoodTerms)
    {
        Count = count;
        Level = level;
        Steps = steps;
        Weights = weights;
        this.greenwoodTerms = greenwoodTerms;
    }

    /// <summary>Spells, without those of weight 0.</summary>
    public int Count { get; }

    /// <summary>Spells that ended.</summary>
    public int Ended => Steps.Sum(step => step.Ended);

    /// <summary>The level of the limits.</summary>
    public double Level { get; }

    /// <summary>One step a distinct stopping time, ascending.</summary>
    public ImmutableArray<SurvivalStep> Steps { get; }

    /// <summary>What the spells of each step weigh together, from which Ŝ is estimated; without weights, how many they are.
    /// </summary>
    public ImmutableArray<RiskWeight> Weights { get; }

    /// <summary>The last stopping time.</summary>
    public double LastFollowUp => Steps[^1].Time;

    /// <summary>Estimates the curve.</summary>
    /// <param name="times">The spells.</param>
    /// <param name="level">Of the limits, between 0 and 1.</param>
    /// <exception cref="ArgumentException">No spells, or one that does not stop after it starts.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static KaplanMeier Estimate(IReadOnlyList<SurvivalTime> times, double level = 0.95)
    {
        SurvivalTime.Refuse(times);
        RiskRow[] table = RiskTable.Of(times);
        return Estimate(times.Count, table, [.. table.Select(row => new RiskWeight(row.AtRisk, row.Ended, row.Censored))], level);
    }

    /// <summary>Estimates the curve of weighted spells: dⱼ and nⱼ are sums of weights, as in R's <c>survfit</c> with Greenwood's
    /// error (<c>robust = FALSE</c>).</summary>
    /// <param name="times">The spells.</param>
    /// <param name="weights">Case weights, how many alike spells each stands for: finite, 0 or more, whole or not. 0 leaves a
    /// spell out.</param>
    /// <param name="level">Of the limits, between 0 and 1.</param>
    /// <exception cref="ArgumentException">No spells, one that does not stop after it starts, another number of weights, one that
    /// is negative or not finite, or weights of 0 only.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The level is not between 0 and 1.</exception>
    public static KaplanMeier Estimate(IReadOnlyList<SurvivalTime> times, ReadOnlySpan<double> weights, double level = 0.95)
    {
        SurvivalTime.Refuse(times);
        (SurvivalTime[] counting, double[] counts) = CaseWeights.Counting(times, weights);
        RiskRow[] table = RiskTable.Of(counting);
        return Estimate(counting.Length, table, CaseWeights.At(table, counting, counts), level);
    }

    private static KaplanMeier Estimate(int count, RiskRow[] table, RiskWeight[] weights, double level)
    {
        Limits.RefuseLevel(level);
        double z = Tails.NormalQuantile((1 + level) / 2);
        double[] terms = [.. weights.Select(at => at.Ended / at.AtRisk / (at.AtRisk - at.Ended))];
        var steps = ImmutableArray.CreateBuilder<SurvivalStep>(table.Length);
        double survival = 1, sum = 0;
        foreach (var (j, row) in table.Index())
        {
            if (row.Ended > 0)
                survival *= 1 - weights[j].Ended / weights[j].AtRisk;
            sum += row.Ended > 0 ? terms[j] : 0;
            steps.Add(Step(row, survival, Math.Sqrt(sum), z));
        }
        return new(count, level, steps.MoveToImmutable(), [.. weights], terms);
    }

    /// <summary>Ŝ(t); 1 before the first ending.</summary>
    public double At(double time) => Steps.LastOrDefault(step => step.Time <= time)?.Survival ?? 1;

    /// <summary>The time by which half have ended.</summary>
    public SurvivalQuantile Median(SurvivalLimits limits = SurvivalLimits.LogLog) => Quantile(0.5, limits);

    /// <summary>The time by which a share has ended, with limits by inverting the curve's (Brookmeyer and Crowley 1982,
    /// Biometrics 38, 29–41).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The share is not between 0 and 1.</exception>
    public SurvivalQuantile Quantile(double probability, SurvivalLimits limits = SurvivalLimits.LogLog)
    {
        Limits.RefuseLevel(probability);
        Func<SurvivalStep, Limits?> chosen = limits == SurvivalLimits.Log ? step => step.LogLimits : step => step.LogLogLimits;
        return new(
            probability,
            FirstAtOrBelow(1 - probability, step => step.Survival),
            FirstAtOrBelow(1 - probability, step => chosen(step)?.Low),
            FirstAtOrBelow(1 - probability, step => chosen(step)?.High));
    }

    /// <summary>The mean time up to a horizon.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The horizon is not above 0, or lies past the last follow-up while some
    /// spells still run: the curve is unknown there.</exception>
    public RestrictedMean RestrictedMean(double horizon)
    {
        if (!(horizon > 0) || (horizon > LastFollowUp && Steps[^1].Survival > 0))
            throw new ArgumentOutOfRangeException(
                nameof(horizon), horizon, $"The horizon must be above 0 and at most {LastFollowUp}, the last follow-up.");
        double mean = 0, variance = 0, end = horizon;
        for (int j = Steps.Length - 1; j >= 0; j--)
        {
            if (Steps[j].Time >= horizon)
                continue;
            mean += Steps[j].Survival * (end - Steps[j].Time);
            // A step to 0 leaves no area behind it, and its term is infinite.
            if (mean > 0)
                variance += mean * mean * greenwoodTerms[j];
            end = Steps[j].Time;
        }
        return new(horizon, mean + end, Math.Sqrt(variance));
    }

    private static SurvivalStep Step(RiskRow row, double survival, double errorOfLog, double z)
    {
        bool gone = survival == 0;
        double log = Math.Log(survival);
        Limits? logLog = gone || survival == 1
            ? null
            : new(Math.Exp(log * Math.Exp(-z * errorOfLog / log)), Math.Exp(log * Math.Exp(z * errorOfLog / log)));
        Limits? plainLog = gone
            ? null
            : new(Math.Exp(log - z * errorOfLog), Math.Min(1, Math.Exp(log + z * errorOfLog)));
        return new(
            row.Time, row.AtRisk, row.Ended, row.Censored, survival, gone ? null : survival * errorOfLog, logLog, plainLog);
    }

    private double? FirstAtOrBelow(double height, Func<SurvivalStep, double?> curve)
    {
        SurvivalStep? first = Steps.FirstOrDefault(step => curve(step) <= height + SameHeight);
        if (first is null || curve(first) < height - SameHeight)
            return first?.Time;
        SurvivalStep? below = Steps.FirstOrDefault(step => curve(step) < height - SameHeight);
        return (first.Time + (below?.Time ?? LastFollowUp)) / 2;
    }
}
