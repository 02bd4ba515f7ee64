namespace FlipAnalytics;

/// <summary>
/// Numbers drawn by SplitMix64 (Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators", OOPSLA):
/// integer arithmetic only, so that a seed gives the same draws everywhere. Each subject (a piece, an outing) has a
/// stream of its own, so that one more draw for one of them moves no other.
/// </summary>
internal sealed class DemoDraws
{
    private const ulong GoldenGamma = 0x9E3779B97F4A7C15;
    private ulong state;

    public DemoDraws(ulong seed) => state = seed;

    public DemoDraws(ulong seed, DemoStream stream, int index = 0) =>
        state = Mix(Mix(seed + GoldenGamma) ^ Mix(((ulong)stream << 40) + (ulong)index + GoldenGamma));

    public ulong Next() => Mix(state += GoldenGamma);

    /// <summary>Uniform on the open interval from 0 to 1: the middles of 2⁵³ equal cells.</summary>
    public double Uniform() => ((Next() >> 11) + 0.5) / 9007199254740992.0;

    public double Uniform(double low, double high) => low + (high - low) * Uniform();

    public double Normal() => MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, Uniform());

    public double Normal(double mean, double standardDeviation) => mean + standardDeviation * Normal();

    /// <summary>Exponential with mean 1.</summary>
    public double Exponential() => -Math.Log(Uniform());

    public bool Chance(double probability) => Uniform() < probability;

    /// <summary>A whole number from 0 to below <paramref name="limit"/>.</summary>
    public int Below(int limit) => (int)(Uniform() * limit);

    public T OneOf<T>(IReadOnlyList<T> choices) => choices[Below(choices.Count)];

    /// <summary>One of the choices, each with a chance in proportion to its weight.</summary>
    public T OneOf<T>(IReadOnlyList<T> choices, Func<T, double> weight)
    {
        double left = Uniform() * choices.Sum(weight);
        foreach (T choice in choices)
        {
            left -= weight(choice);
            if (left < 0)
                return choice;
        }
        return choices[^1];
    }

    private static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}

/// <summary>What a stream of draws is for.</summary>
internal enum DemoStream
{
    Drift = 1,
    Calendar,
    Outing,
    Piece,
    WritingDown,
    Supplies,
    HoursBook,
    General,
    Market,
    Offer,
}
