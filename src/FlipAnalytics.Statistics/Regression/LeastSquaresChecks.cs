namespace FlipAnalytics.Statistics;

/// <summary>What no fit can be made from, each with its place and its remedy.</summary>
internal static class LeastSquaresChecks
{
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
    }

    public static ArgumentException NothingToExplain(double response, int rows) => new(
        $"The response is {response:R} in all {rows} rows, so there is nothing to explain. Use that value itself.", nameof(response));

    public static void RefuseTooFewRows(int rows, int rank)
    {
        if (rank == 0)
            throw new ArgumentException("Every column of the design is 0; give at least an intercept.");
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
