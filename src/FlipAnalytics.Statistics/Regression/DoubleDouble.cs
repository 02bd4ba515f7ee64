namespace FlipAnalytics.Statistics;

/// <summary>An unevaluated sum of two doubles, about 32 significant digits (Dekker 1971, Numer. Math. 18, 224–242).</summary>
internal readonly record struct DoubleDouble(double High, double Low)
{
    public static implicit operator DoubleDouble(double value) => new(value, 0);

    public static explicit operator double(DoubleDouble value) => value.High + value.Low;

    public static DoubleDouble operator -(DoubleDouble value) => new(-value.High, -value.Low);

    public static DoubleDouble operator +(DoubleDouble left, DoubleDouble right)
    {
        // Knuth's exact sum of the leading parts, then of the trailing ones.
        double sum = left.High + right.High;
        double part = sum - left.High;
        double error = left.High - (sum - part) + (right.High - part);
        double lowSum = left.Low + right.Low;
        double lowPart = lowSum - left.Low;
        double lowError = left.Low - (lowSum - lowPart) + (right.Low - lowPart);
        var first = Normalise(sum, error + lowSum);
        return Normalise(first.High, first.Low + lowError);
    }

    public static DoubleDouble operator -(DoubleDouble left, DoubleDouble right) => left + -right;

    public static DoubleDouble operator *(DoubleDouble left, DoubleDouble right)
    {
        double product = left.High * right.High;
        double error = Math.FusedMultiplyAdd(left.High, right.High, -product);
        return Normalise(product, error + (left.High * right.Low + left.Low * right.High));
    }

    private static DoubleDouble Normalise(double high, double low)
    {
        double sum = high + low;
        return new(sum, low - (sum - high));
    }
}
