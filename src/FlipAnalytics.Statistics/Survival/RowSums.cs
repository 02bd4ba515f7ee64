using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FlipAnalytics.Statistics;

/// <summary>Sums of short rows of numbers, four lanes at a time whatever the processor.</summary>
internal static class RowSums
{
    /// <summary>Adds factor × x to the sums.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static void AddScaled(ReadOnlySpan<double> x, double factor, Span<double> sums)
    {
        ref double from = ref MemoryMarshal.GetReference(x);
        ref double to = ref MemoryMarshal.GetReference(sums);
        var factors = Vector256.Create(factor);
        nuint j = 0;
        for (; j + 4 <= (nuint)sums.Length; j += 4)
        {
            (Vector256.LoadUnsafe(ref to, j) + factors * Vector256.LoadUnsafe(ref from, j)).StoreUnsafe(ref to, j);
        }

        for (; j < (nuint)sums.Length; j++)
        {
            Unsafe.Add(ref to, j) += factor * Unsafe.Add(ref from, j);
        }
    }
}
