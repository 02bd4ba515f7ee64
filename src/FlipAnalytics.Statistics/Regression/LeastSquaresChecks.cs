namespace FlipAnalytics.Statistics;

/// <summary>What no fit can be made from, each with its place and its remedy.</summary>
internal static class LeastSquaresChecks
{
    // Squares of larger numbers, summed, leave the range of doubles; those of smaller ones lose the digits of residuals that are
    // a 1e-16th as large.
    private const double Largest = 1e150, Smallest = 1e-135;

    public static void Refuse(string[] names, double[][] columns, double[] response, double[] weights)
    {
        if (columns.Length == 0)
            throw new ArgumentException("The design has no columns; give at least an intercept.", nameof(columns));
        if (response.Length == 0)
            throw new ArgumentException("The response has no rows; a fit needs more rows than columns.", nameof(response));
        RefuseRepeatedNames(names);
        for (int j = 0; j < columns.Length; j++)
        {
            RefuseLength($"Column '{names[j]}'", columns[j].Length, response.Length);
            RefuseNotFinite($"Column '{names[j]}'", columns[j]);
        }
        RefuseNotFinite("The response", response);
        if (weights.Length > 0)
        {
            RefuseLength("The weights", weights.Length, response.Length);
            RefuseNotFinite("The weights", weights);
            int notPositive = Array.FindIndex(weights, weight => weight <= 0);
            if (notPositive >= 0)
                throw new ArgumentException(
                    $"The weight of row {notPositive} is {weights[notPositive]:R}; weights must be above 0. Leave the row out instead.",
                    nameof(weights));
        }
        if (response.AsSpan().IndexOfAnyExcept(response[0]) < 0
            && (response[0] == 0 || columns.Any(LeastSquares.IsConstant)))
            throw NothingToExplain(response[0], response.Length);
        double[] rootWeights = [.. weights.Select(Math.Sqrt)];
        for (int j = 0; j < columns.Length; j++)
            RefuseUnsquarable($"Column '{names[j]}'", columns[j], rootWeights);
        RefuseUnsquarable("The response", response, rootWeights);
    }

    /// <summary>Refuses sizes, the largest absolute value of a column, whose squares a double cannot hold; 0 is none.</summary>
    public static void RefuseUnsquarable(string what, double size)
    {
        if (size > Largest)
            throw new ArgumentException(
                $"{what} reaches {size:G6} in size; the squares of numbers above {Largest:R} are too large to be summed. Give it in a larger unit.");
        if (size is > 0 and < Smallest)
            throw new ArgumentException(
                $"{what} is nowhere above {size:G6} in size; the squares of numbers below {Smallest:R} are too small to be told from 0. Give it in a smaller unit.");
    }

    /// <summary>Refuses a fit whose variances a double cannot hold though its response and columns can be squared.</summary>
    public static void RefuseUnheldVariances(LinearFit fit)
    {
        foreach (var (j, coefficient) in fit.Coefficients.Index())
        {
            if (!double.IsFinite(fit.Covariance[j][j]) || (fit.Covariance[j][j] == 0 && fit.ResidualSumOfSquares > 0))
                throw new ArgumentException(
                    $"The coefficient of '{coefficient.Name}' is {coefficient.Estimate:R}, and its variance is beyond what a double holds. Give the response or the column in another unit.");
        }
    }

    public static ArgumentException NothingToExplain(double response, int rows) => new(
        $"The response is {response:R} in all {rows} rows, so there is nothing to explain. Use that value itself.", nameof(response));

    /// <summary>Refuses a design that leaves no residual. With no more rows than columns nothing tells how many of the columns
    /// would depend on others with more of them, so only as many rows as are enough in any case can be asked for.</summary>
    public static void RefuseTooFewRows(int rows, int rank, int columns)
    {
        if (rank == 0)
            throw new ArgumentException("Every column of the design is 0; give at least an intercept.");
        if (rows <= rank && rank < columns)
            throw new ArgumentException(
                $"{rows} rows cannot fit {columns} columns and leave a residual; give {columns + 1} rows or fewer columns.");
        if (rows <= rank)
            throw new ArgumentException(
                $"{rows} rows cannot fit {rank} coefficients and leave a residual; give at least {rank + 1} rows or fewer columns.");
    }

    public static void RefuseRepeatedNames(IReadOnlyList<string> names)
    {
        string? repeated = names.GroupBy(name => name).FirstOrDefault(group => group.Count() > 1)?.Key;
        if (repeated is not null)
            throw new ArgumentException($"Two columns are named '{repeated}'; each needs a name of its own.", nameof(names));
    }

    public static void RefuseLength(string what, int length, int rows)
    {
        if (length != rows)
            throw new ArgumentException($"{what} has {length} values where the response has {rows}.");
    }

    private static void RefuseUnsquarable(string what, double[] values, double[] rootWeights)
    {
        RefuseUnsquarable(what, values.Max(Math.Abs));
        if (rootWeights.Length > 0)
            RefuseUnsquarable($"{what} times the root of its weights", values.Select((value, i) => Math.Abs(value) * rootWeights[i]).Max());
    }

    public static void RefuseNotFinite(string what, ReadOnlySpan<double> values)
    {
        for (int i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
                throw new ArgumentException(
                    $"{what} is {values[i]} in row {i} (counting from 0); only finite numbers can be fitted. Leave the row out or fill the gap.");
        }
    }
}
