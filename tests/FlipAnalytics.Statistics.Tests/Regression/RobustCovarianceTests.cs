namespace FlipAnalytics.Statistics.Tests;

/// <summary>Robust covariances of columns that are nearly the same, against the same sums in fractions, which round nothing.</summary>
public class RobustCovarianceTests
{
    private const int Rows = 14;

    /// <summary>Columns 1, x and x + δ with small whole x and δ a whole number of 2⁻ᵇ, all of them exact in doubles.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(12)]
    [InlineData(20)]
    public void Nearly_the_same_columns_lose_no_more_digits_than_their_condition_has(int bits)
    {
        double[][] columns = Columns(bits);
        double[] y = [.. Enumerable.Range(0, Rows).Select(i => (double)(3 + 2 * i + i * 7 % 5 * (1 + i % 3)))];
        LinearFit fit = Fit(columns, y, []);
        Assert.InRange(fit.ConditionNumber, Math.ScaleB(1, bits), Math.ScaleB(20, bits));
        (Rational[][] hc1, Rational[][] hc3) = Exact(columns, y, [.. Enumerable.Repeat(1.0, Rows)]);
        AssertClose(hc1, RobustCovariance.Hc1(fit).Select(line => line.ToArray()), Lost(fit));
        AssertClose(hc3, RobustCovariance.Hc3(fit).Select(line => line.ToArray()), Lost(fit));
    }

    [Fact]
    public void Weights_lose_no_more_digits_than_the_condition_has()
    {
        double[][] columns = Columns(20);
        double[] y = [.. Enumerable.Range(0, Rows).Select(i => (double)(5 - i + i * 3 % 7))];
        double[] weights = [.. Enumerable.Range(0, Rows).Select(i => 0.5 + i % 4)];
        LinearFit fit = Fit(columns, y, weights);
        (Rational[][] hc1, Rational[][] hc3) = Exact(columns, y, weights);
        AssertClose(hc1, RobustCovariance.Hc1(fit).Select(line => line.ToArray()), Lost(fit));
        AssertClose(hc3, RobustCovariance.Hc3(fit).Select(line => line.ToArray()), Lost(fit));
    }

    /// <summary>A few roundings (2⁻⁵³ each) times the condition number.</summary>
    private static double Lost(LinearFit fit) => 16 * fit.ConditionNumber * Math.ScaleB(1, -53);

    private static double[][] Columns(int bits)
    {
        double[] x = [.. Enumerable.Range(0, Rows).Select(i => (double)i)];
        return
        [
            [.. Enumerable.Repeat(1.0, Rows)], x, [.. x.Select((value, i) => value + Math.ScaleB(i * 5 % 7 + 1, -bits))],
        ];
    }

    private static LinearFit Fit(double[][] columns, double[] y, double[] weights) => LeastSquares.Fit(
        [.. columns.Select((column, j) => new Regressor($"x{j}", column))], y, weights,
        new LeastSquaresOptions { RankTolerance = 1e-12 });

    /// <summary>(XᵀWX)⁻¹ Xᵀ diag(w² a²) X (XᵀWX)⁻¹ as written.</summary>
    private static (Rational[][] Hc1, Rational[][] Hc3) Exact(double[][] columns, double[] response, double[] weights)
    {
        int width = columns.Length;
        Rational[][] x = [.. Enumerable.Range(0, Rows).Select(i => columns.Select(column => Rational.Of(column[i])).ToArray())];
        Rational[] y = [.. response.Select(Rational.Of)], w = [.. weights.Select(Rational.Of)];
        Rational[][] inverse = Rational.Inverse(Square(width, (j, k) => Sum(i => w[i] * x[i][j] * x[i][k])));
        Rational[] b = [.. inverse.Select(line => line.Select((value, k) => value * Sum(i => w[i] * x[i][k] * y[i])).Aggregate((s, t) => s + t))];
        Rational[] e = [.. y.Select((value, i) => value - Dot(x[i], b))];
        Rational[] h = [.. x.Select((row, i) => w[i] * Dot(row, [.. inverse.Select(line => Dot(line, row))]))];
        Rational degrees = (Rational)Rows / (Rows - width);
        return (Sandwich(i => e[i] * e[i] * degrees), Sandwich(i => e[i] * e[i] / ((1 - h[i]) * (1 - h[i]))));

        Rational[][] Sandwich(Func<int, Rational> squared)
        {
            Rational[][] meat = Square(width, (j, k) => Sum(i => w[i] * w[i] * squared(i) * x[i][j] * x[i][k]));
            return Product(Product(inverse, meat), inverse);
        }
    }

    private static Rational Sum(Func<int, Rational> term) => Enumerable.Range(0, Rows).Select(term).Aggregate((s, t) => s + t);

    private static Rational Dot(Rational[] left, Rational[] right) => left.Zip(right, (a, b) => a * b).Aggregate((s, t) => s + t);

    private static Rational[][] Square(int size, Func<int, int, Rational> entry) =>
        [.. Enumerable.Range(0, size).Select(j => Enumerable.Range(0, size).Select(k => entry(j, k)).ToArray())];

    private static Rational[][] Product(Rational[][] left, Rational[][] right) =>
        Square(left.Length, (j, k) => Dot(left[j], [.. right.Select(line => line[k])]));

    private static void AssertClose(Rational[][] expected, IEnumerable<double[]> actual, double relative)
    {
        foreach (var (j, line) in actual.Index())
        {
            foreach (var (k, value) in line.Index())
                ReferenceCase.AssertClose(expected[j][k].ToDouble(), value, relative, what: $"row {j}, column {k}");
        }
    }
}
