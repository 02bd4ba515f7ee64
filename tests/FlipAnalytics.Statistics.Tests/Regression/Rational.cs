using System.Numerics;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Fractions of whole numbers, with which sums of products of doubles come out without any rounding.</summary>
internal readonly record struct Rational(BigInteger Numerator, BigInteger Denominator)
{
    public static implicit operator Rational(long value) => new(value, 1);

    /// <summary>A double is a whole number times a power of two.</summary>
    public static Rational Of(double value)
    {
        int halvings = 0;
        for (; value != Math.Floor(value); halvings++)
            value *= 2;
        return new(new BigInteger(value), BigInteger.One << halvings);
    }

    public static Rational operator +(Rational left, Rational right) =>
        Reduced(left.Numerator * right.Denominator + right.Numerator * left.Denominator, left.Denominator * right.Denominator);

    public static Rational operator -(Rational left, Rational right) => left + right * -1;

    public static Rational operator *(Rational left, Rational right) =>
        Reduced(left.Numerator * right.Numerator, left.Denominator * right.Denominator);

    public static Rational operator /(Rational left, Rational right) =>
        Reduced(left.Numerator * right.Denominator, left.Denominator * right.Numerator);

    /// <summary>The nearest double but for its last digit.</summary>
    public double ToDouble()
    {
        const int Bits = 80;
        int shift = (int)(Denominator.GetBitLength() - Numerator.GetBitLength()) + Bits;
        BigInteger whole = shift >= 0 ? (Numerator << shift) / Denominator : Numerator / (Denominator << -shift);
        return Math.ScaleB((double)whole, -shift);
    }

    /// <summary>The inverse by Gauss and Jordan's elimination.</summary>
    public static Rational[][] Inverse(Rational[][] matrix)
    {
        int size = matrix.Length;
        Rational[][] work = [.. matrix.Select((line, i) => (Rational[])[.. line, .. Enumerable.Range(0, size).Select(j => (Rational)(i == j ? 1 : 0))])];
        for (int pivot = 0; pivot < size; pivot++)
        {
            Rational[] scaled = [.. work[pivot].Select(value => value / work[pivot][pivot])];
            for (int i = 0; i < size; i++)
                work[i] = i == pivot ? scaled : [.. work[i].Select((value, j) => value - work[i][pivot] * scaled[j])];
        }

        return [.. work.Select(line => line[size..])];
    }

    private static Rational Reduced(BigInteger numerator, BigInteger denominator)
    {
        BigInteger divisor = BigInteger.GreatestCommonDivisor(numerator, denominator) * denominator.Sign;
        return new(numerator / divisor, denominator / divisor);
    }
}
