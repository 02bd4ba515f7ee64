namespace FlipAnalytics.Statistics;

/// <summary>One of 2⁶⁴ independent streams of a seed, each of 2⁶⁴ blocks of <see cref="Philox"/>: piece r of some work takes
/// stream r, and the answer is the same on any number of threads.</summary>
public sealed class RandomNumbers
{
    // Blocks do not depend on each other, so a processor makes some of them in the time of one.
    private const int Blocks = 8;

    private readonly (uint, uint) key;
    private readonly uint streamLow;
    private readonly uint streamHigh;
    private readonly uint[] numbers = new uint[4 * Blocks];
    private ulong next;
    private int used = 4 * Blocks;

    /// <summary>The beginning of a stream.</summary>
    /// <param name="seed">Chooses the family of streams.</param>
    /// <param name="stream">Chooses the stream.</param>
    public RandomNumbers(ulong seed, ulong stream = 0)
    {
        key = ((uint)seed, (uint)(seed >> 32));
        (streamLow, streamHigh) = ((uint)stream, (uint)(stream >> 32));
    }

    /// <summary>32 random bits.</summary>
    public uint NextBits()
    {
        if (used == numbers.Length)
            Refill();
        return numbers[used++];
    }

    private void Refill()
    {
        for (int i = 0; i < numbers.Length; i += 4, next++)
        {
            (numbers[i], numbers[i + 1], numbers[i + 2], numbers[i + 3]) =
                Philox.Block(((uint)next, (uint)(next >> 32), streamLow, streamHigh), key);
        }

        used = 0;
    }

    /// <summary>A number above 0 and below 1, evenly spread: (k + ½)/2⁵³.</summary>
    public double NextUniform()
    {
        ulong bits = ((ulong)NextBits() << 32) | NextBits();
        return ((bits >> 11) + 0.5) / (1UL << 53);
    }

    /// <summary>One of 0 … count − 1, each exactly as likely; Lemire (2019), ACM Trans. Model. Comput. Simul. 29, article 3.
    /// </summary>
    /// <param name="count">1 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than 1.</exception>
    public int NextIndex(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        uint range = (uint)count;
        ulong product = (ulong)NextBits() * range;
        if ((uint)product < range)
        {
            uint uneven = unchecked(0u - range) % range;
            while ((uint)product < uneven)
                product = (ulong)NextBits() * range;
        }
        return (int)(product >> 32);
    }
}
