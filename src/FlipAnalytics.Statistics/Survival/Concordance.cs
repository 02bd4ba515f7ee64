namespace FlipAnalytics.Statistics;

/// <summary>How often the spell with the higher score is the one that ends first, among pairs of which that is known:
/// Harrell, Lee and Mark (1996), Stat. Med. 15, 361–387. 1 is perfect, 0.5 no better than chance. Pairs are compared within
/// a stratum; two endings at one time are not compared; counted as R's survival package 3.5 counts.</summary>
/// <param name="Value">(concordant + half the ties in score) / pairs.</param>
/// <param name="StandardError">From the infinitesimal jackknife: the influence of each row's weight, squared and summed.</param>
/// <param name="Concordant">Pairs, each times both weights, in which the higher score ended first.</param>
/// <param name="Discordant">Pairs in which the lower did.</param>
/// <param name="TiedInScore">Pairs with equal scores.</param>
public sealed record Concordance(
    double Value, double StandardError, double Concordant, double Discordant, double TiedInScore)
{
    /// <summary>Counts the pairs; n log n.</summary>
    /// <param name="times">The spells.</param>
    /// <param name="scores">Of each spell, the higher the sooner it should end.</param>
    /// <param name="strata">Of each spell; null for one.</param>
    /// <param name="weights">Of each spell; empty for equal weights.</param>
    /// <exception cref="ArgumentException">Lists of different lengths, a score that is not a number, or no pair to compare.
    /// </exception>
    public static Concordance Of(
        IReadOnlyList<SurvivalTime> times,
        ReadOnlySpan<double> scores,
        IReadOnlyList<string>? strata = null,
        ReadOnlySpan<double> weights = default)
    {
        SurvivalTime.Refuse(times);
        if (scores.Length != times.Count)
            throw new ArgumentException($"There are {times.Count} spells and {scores.Length} scores; each spell needs one.");
        if ((strata is not null && strata.Count != times.Count) || (!weights.IsEmpty && weights.Length != times.Count))
            throw new ArgumentException(
                $"There are {times.Count} spells, {strata?.Count ?? times.Count} strata and {weights.Length} weights; each spell needs one of each, or none.");
        double[] given = scores.ToArray(), weightOf = weights.ToArray();
        if (Array.FindIndex(given, double.IsNaN) is int missing and >= 0)
            throw new ArgumentException($"Score {missing} (counting from 0) is not a number; leave its spell out.", nameof(scores));
        if (Array.FindIndex(weightOf, weight => !(weight > 0 && double.IsFinite(weight))) is int bad and >= 0)
            throw new ArgumentException($"Weight {bad} (counting from 0) is {weightOf[bad]}; it must be finite and above 0.", nameof(weights));
        CoxRows rows = CoxRows.From([], times, strata, weightOf);
        return Of(rows, [.. rows.Original.Select(row => given[row])]);
    }

    internal static Concordance Of(CoxRows rows, double[] scores)
    {
        PairCounts[] influence = new PairCounts[rows.Count];
        for (int stratum = 0; stratum < rows.Strata.Length; stratum++)
            new ConcordanceCounter(rows, scores, rows.StratumStart[stratum], rows.StratumStart[stratum + 1], influence).Count();
        // Every pair is in the influence of both its rows.
        double concordant = 0, discordant = 0, tied = 0;
        for (int i = 0; i < influence.Length; i++)
        {
            concordant += rows.Weight[i] * influence[i].Concordant / 2;
            discordant += rows.Weight[i] * influence[i].Discordant / 2;
            tied += rows.Weight[i] * influence[i].Tied / 2;
        }
        double pairs = concordant + discordant + tied;
        if (!(pairs > 0))
            throw new ArgumentException(
                "No spell ended while another was known to last longer, so there is no pair to compare. Wait for more endings.");
        double difference = (concordant - discordant) / pairs, variance = 0;
        for (int i = 0; i < influence.Length; i++)
        {
            PairCounts own = influence[i];
            double change = rows.Weight[i]
                * (own.Concordant - own.Discordant - difference * (own.Concordant + own.Discordant + own.Tied)) / pairs;
            variance += change * change;
        }
        return new((difference + 1) / 2, Math.Sqrt(variance) / 2, concordant, discordant, tied);
    }
}
