using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace FlipAnalytics.Statistics;

/// <summary>
/// Columns that are fitted from their means: β₀ + Σ βⱼxⱼ = γ₀ + Σ βⱼ(xⱼ − mⱼ) with γ₀ = β₀ + Σ mⱼβⱼ. A day number such as 738000
/// that spreads over a month would otherwise be all but the intercept over again, and its squares would keep no digit of the
/// spread. Only the intercept changes, and the change has determinant 1, so that no likelihood does. Units need no care here:
/// <see cref="ScaledCholesky"/> scales every column.
/// </summary>
internal sealed class CentredColumns
{
    // Squares about zero lose twice the digits of mean over spread. From here on they lose more than four, and below it columns
    // stay as they were given.
    private const double FarFromZero = 100;

    private readonly double[] means;

    private CentredColumns(int intercept, double[] means)
    {
        Intercept = intercept;
        this.means = means;
    }

    /// <summary>No column moved.</summary>
    internal static CentredColumns None { get; } = new(-1, []);

    /// <summary>Place of the column of ones; −1 where no column is moved.</summary>
    internal int Intercept { get; }

    internal bool IsNone => Intercept < 0;

    /// <summary>mⱼ; 0 for a column that stays where it is.</summary>
    internal double Mean(int column) => column < means.Length ? means[column] : 0;

    /// <summary>Finds the columns whose mean is far from zero for their spread; none without a column of ones to take up the
    /// means. Rows of weight 0 do not count.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static CentredColumns Of(AcceleratedFailureData data)
    {
        int count = data.CoefficientNames.Length;
        double[] means = new double[count], squares = new double[count];
        bool[] isOne = [.. Enumerable.Repeat(true, count)];
        double total = 0;
        for (int row = 0; row < data.X.Length; row++)
        {
            double weight = data.Weights?[row] ?? 1;
            if (weight == 0)
                continue;
            total += weight;
            double[] x = data.X[row];
            for (int j = 0; j < count; j++)
            {
                // Running mean and sum of squares about it, which keep their digits far from zero: Welford (1962),
                // Technometrics 4, 419–420.
                double distance = x[j] - means[j];
                means[j] += distance * (weight / total);
                squares[j] += weight * distance * (x[j] - means[j]);
                isOne[j] &= x[j] == 1;
            }
        }

        int intercept = Array.IndexOf(isOne, true);
        if (intercept < 0 || total == 0)
            return None;
        bool any = false;
        for (int j = 0; j < count; j++)
        {
            bool far = squares[j] > 0 && Math.Abs(means[j]) > FarFromZero * Math.Sqrt(squares[j] / total);
            means[j] = far ? means[j] : 0;
            any |= far;
        }

        return any ? new(intercept, means) : None;
    }

    /// <summary>The same for some of the columns, counted anew; none where the column of ones is not among them.</summary>
    internal CentredColumns Keep(ImmutableArray<int> columns) =>
        IsNone || !columns.Contains(Intercept) ? None : new(columns.IndexOf(Intercept), [.. columns.Select(Mean)]);

    /// <summary>A value of a row as the centred coefficients take it: xⱼ − x₀mⱼ.</summary>
    internal double Moved(int column, double value, double one) => IsNone ? value : value - one * Mean(column);

    /// <summary>The weights, by column, that a column's coefficient as given has in the centred ones: itself, and for the
    /// intercept −mⱼ of each moved column.</summary>
    internal List<(int Column, double Weight)> Given(int column)
    {
        List<(int Column, double Weight)> weights = [(column, 1)];
        for (int j = 0; j < means.Length && column == Intercept; j++)
        {
            if (means[j] != 0)
                weights.Add((j, -means[j]));
        }

        return weights;
    }
}
