namespace FlipAnalytics.Statistics;

/// <summary>The counter-based generator Philox 4×32 with ten rounds: every block of random bits is a function of a counter
/// and a key, so that any part of a stream can be made by anyone at any time. Salmon, Moraes, Dror and Shaw (2011), Parallel
/// random numbers: as easy as 1, 2, 3, Proc. SC '11, section 3.3.</summary>
public static class Philox
{
    private const uint FirstMultiplier = 0xD2511F53, SecondMultiplier = 0xCD9E8D57;

    // The key moves on by the golden ratio and by √3 − 1, in 32 bits.
    private const uint FirstWeyl = 0x9E3779B9, SecondWeyl = 0xBB67AE85;

    /// <summary>The 128 bits that belong to a counter and a key, in their four words.</summary>
    public static (uint First, uint Second, uint Third, uint Fourth) Block(
        (uint First, uint Second, uint Third, uint Fourth) counter, (uint First, uint Second) key)
    {
        (uint a, uint b, uint c, uint d) = counter;
        (uint k, uint l) = key;
        for (int round = 0; round < 10; round++)
        {
            ulong left = (ulong)FirstMultiplier * a, right = (ulong)SecondMultiplier * c;
            (a, b, c, d) = ((uint)(right >> 32) ^ b ^ k, (uint)right, (uint)(left >> 32) ^ d ^ l, (uint)left);
            unchecked
            {
                k += FirstWeyl;
                l += SecondWeyl;
            }
        }
        return (a, b, c, d);
    }
}
