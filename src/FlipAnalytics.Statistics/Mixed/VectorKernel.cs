using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace FlipAnalytics.Statistics;

/// <summary>
/// Inner loops of dense linear algebra, four lanes wide on every processor and without fused multiply-add, so that the
/// same numbers come out everywhere.
/// </summary>
internal static class VectorKernel
{
    /// <summary>Σ aᵢbᵢ.</summary>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        int n = a.Length;
        ref double first = ref MemoryMarshal.GetReference(a);
        ref double second = ref MemoryMarshal.GetReference(b[..n]);
        Vector256<double> even = Vector256<double>.Zero;
        Vector256<double> odd = Vector256<double>.Zero;
        int i = 0;
        for (; i <= n - 8; i += 8)
        {
            even += Vector256.LoadUnsafe(ref first, (nuint)i) * Vector256.LoadUnsafe(ref second, (nuint)i);
            odd += Vector256.LoadUnsafe(ref first, (nuint)(i + 4)) * Vector256.LoadUnsafe(ref second, (nuint)(i + 4));
        }

        double sum = Vector256.Sum(even + odd);
        for (; i < n; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    /// <summary>target += factor · source.</summary>
    public static void AddScaled(Span<double> target, double factor, ReadOnlySpan<double> source)
    {
        int n = target.Length;
        ref double to = ref MemoryMarshal.GetReference(target);
        ref double from = ref MemoryMarshal.GetReference(source[..n]);
        Vector256<double> factors = Vector256.Create(factor);
        int i = 0;
        for (; i <= n - 4; i += 4)
        {
            Vector256<double> sum = Vector256.LoadUnsafe(ref to, (nuint)i)
                + (factors * Vector256.LoadUnsafe(ref from, (nuint)i));
            sum.StoreUnsafe(ref to, (nuint)i);
        }

        for (; i < n; i++)
        {
            target[i] += factor * source[i];
        }
    }

    /// <summary>target *= factor.</summary>
    public static void Scale(Span<double> target, double factor)
    {
        ref double to = ref MemoryMarshal.GetReference(target);
        Vector256<double> factors = Vector256.Create(factor);
        int i = 0;
        for (; i <= target.Length - 4; i += 4)
        {
            (factors * Vector256.LoadUnsafe(ref to, (nuint)i)).StoreUnsafe(ref to, (nuint)i);
        }

        for (; i < target.Length; i++)
        {
            target[i] *= factor;
        }
    }
}
