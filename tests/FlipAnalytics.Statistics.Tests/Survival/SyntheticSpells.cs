namespace FlipAnalytics.Statistics.Tests;

/// <summary>Weibull durations with known coefficients and level effects, from a fixed generator
/// (Knuth's 64-bit linear congruential one), so that every machine draws the same.</summary>
internal sealed class SyntheticSpells(ulong seed)
{
    private ulong state = seed;

    public double Uniform()
    {
        state = state * 6364136223846793005 + 1442695040888963407;
        return ((state >> 11) + 0.5) / (1UL << 53);
    }

    public double Normal() => Math.Sqrt(-2 * Math.Log(Uniform())) * Math.Cos(2 * Math.PI * Uniform());

    /// <summary>log T = 3 + 0.5 x + effect of the row's level + scale · e, censored somewhere up to <paramref name="longest"/>;
    /// the first levels are the most frequent.</summary>
    public AcceleratedFailureData Draw(int rowCount, double[] effects, double scale, double longest)
    {
        var x = new double[rowCount][];
        var spells = new Spell[rowCount];
        var level = new int[rowCount];
        for (int row = 0; row < rowCount; row++)
        {
            x[row] = [1, Normal()];
            level[row] = (int)(effects.Length * Math.Pow(Uniform(), 1.5));
            double duration = Math.Exp(3 + 0.5 * x[row][1] + effects[level[row]] + scale * Math.Log(-Math.Log(Uniform())));
            double seenUntil = longest * Uniform();
            spells[row] = duration <= seenUntil ? Spell.Ended(duration) : Spell.Running(seenUntil);
        }

        var group = new GroupColumn("colour", [.. effects.Select((_, l) => $"colour {l}")], level);
        return new AcceleratedFailureData(["(Intercept)", "size"], x, [.. spells], [group], null);
    }
}
