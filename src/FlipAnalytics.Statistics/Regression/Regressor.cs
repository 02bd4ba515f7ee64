namespace FlipAnalytics.Statistics;

/// <summary>One named column of a design, a value a row.</summary>
/// <param name="Name">The name under which its coefficient is reported; unique within a design.</param>
/// <param name="Values">Finite values, a value a row.</param>
public sealed record Regressor(string Name, ReadOnlyMemory<double> Values)
{
    /// <summary>The usual name of the column of ones.</summary>
    public const string InterceptName = "(Intercept)";

    /// <summary>The column of ones.</summary>
    public static Regressor Intercept(int rows)
    {
        double[] ones = new double[rows];
        Array.Fill(ones, 1);
        return new(InterceptName, ones);
    }
}
