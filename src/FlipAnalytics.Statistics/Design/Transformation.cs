namespace FlipAnalytics.Statistics;

/// <summary>What is done to a column of numbers before it enters a model.</summary>
public enum Transformation
{
    /// <summary>Natural logarithm, of numbers above 0.</summary>
    Log,

    /// <summary>x².</summary>
    Square,

    /// <summary>√x, of numbers of 0 or more.</summary>
    SquareRoot,

    /// <summary>1/x, of numbers that are not 0.</summary>
    Reciprocal,
}

internal static class TransformationMethods
{
    /// <summary>The name R gives to the transformed column.</summary>
    public static string NameOf(this Transformation transformation, string column) => transformation switch
    {
        Transformation.Log => $"log({column})",
        Transformation.Square => $"I({column}^2)",
        Transformation.SquareRoot => $"sqrt({column})",
        Transformation.Reciprocal => $"I(1/{column})",
        _ => throw Unknown(transformation),
    };

    /// <summary>The transformed column within a sentence.</summary>
    public static string WordsFor(this Transformation transformation, string column) => transformation switch
    {
        Transformation.Log => $"log {column}",
        Transformation.Square => $"{column} squared",
        Transformation.SquareRoot => $"root of {column}",
        Transformation.Reciprocal => $"1 / {column}",
        _ => throw Unknown(transformation),
    };

    /// <summary>The transformed values; a value outside the transformation's domain is named.</summary>
    public static double[] Apply(this Transformation transformation, string column, DataColumns data)
    {
        double[] values = data.NumbersOf(column);
        double[] result = new double[values.Length];
        for (int i = 0; i < result.Length; i++)
        {
            double x = values[i];
            (bool defined, double value, string domain) = transformation switch
            {
                Transformation.Log => (x > 0, Math.Log(x), "the logarithm needs numbers above 0"),
                Transformation.Square => (true, x * x, ""),
                Transformation.SquareRoot => (x >= 0, Math.Sqrt(x), "the square root needs numbers of 0 or more"),
                Transformation.Reciprocal => (x != 0, 1 / x, "the reciprocal needs numbers that are not 0"),
                _ => throw Unknown(transformation),
            };
            result[i] = defined ? value : throw new ArgumentException(FormattableString.Invariant(
                $"'{column}' is {x} in row {data.PlaceOf(i)} (counting from 0), but {domain}; mend the value, make it missing, or describe the column another way."));
        }

        return result;
    }

    private static ArgumentOutOfRangeException Unknown(Transformation transformation) => new(
        nameof(transformation), transformation, $"A transformation is one of {string.Join(", ", Enum.GetNames<Transformation>())}.");
}
