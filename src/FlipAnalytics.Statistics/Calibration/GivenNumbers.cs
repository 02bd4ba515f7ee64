namespace FlipAnalytics.Statistics;

/// <summary>The one rule for numbers that are given: a value that is not a number has no rank, no distance and no score, and sorts
/// and compares as if it had, so it is refused by value and place before anything is made of it.</summary>
internal static class GivenNumbers
{
    /// <summary>Refuses a number that is not finite.</summary>
    /// <param name="what">What it is, at the beginning of a sentence.</param>
    /// <param name="value">The number.</param>
    /// <param name="parameter">The caller's parameter.</param>
    public static void RefuseNotFinite(string what, double value, string parameter)
    {
        if (!double.IsFinite(value))
            throw new ArgumentException($"{what} is {value}; give a finite number.", parameter);
    }

    /// <summary>Refuses a list with a number that is not finite.</summary>
    /// <param name="what">What each is, at the beginning of a sentence.</param>
    /// <param name="values">The numbers.</param>
    /// <param name="parameter">The caller's parameter.</param>
    public static void RefuseNotFinite(string what, ReadOnlySpan<double> values, string parameter)
    {
        for (int i = 0; i < values.Length; i++)
        {
            if (!double.IsFinite(values[i]))
                throw new ArgumentException(
                    $"{what} {i} (counting from 0) is {values[i]}; give a finite number, or leave its row out.", parameter);
        }
    }

    /// <summary>Refuses a list with a number that is not finite or below 0.</summary>
    /// <param name="what">What each is, at the beginning of a sentence.</param>
    /// <param name="values">The numbers.</param>
    /// <param name="parameter">The caller's parameter.</param>
    public static void RefuseNegative(string what, ReadOnlySpan<double> values, string parameter)
    {
        for (int i = 0; i < values.Length; i++)
        {
            if (!(values[i] >= 0 && double.IsFinite(values[i])))
                throw new ArgumentException(
                    $"{what} {i} (counting from 0) is {values[i]}; give a finite number of 0 or more, or leave its row out.", parameter);
        }
    }

    /// <summary>Refuses a list with a value that is not a number; infinite ones have a rank.</summary>
    /// <param name="what">What each is, at the beginning of a sentence.</param>
    /// <param name="values">The numbers.</param>
    /// <param name="parameter">The caller's parameter.</param>
    public static void RefuseNaN(string what, ReadOnlySpan<double> values, string parameter)
    {
        for (int i = 0; i < values.Length; i++)
        {
            if (double.IsNaN(values[i]))
                throw new ArgumentException(
                    $"{what} {i} (counting from 0) is {values[i]}; give a number, or leave its row out.", parameter);
        }
    }

    /// <summary>Refuses limits of which one is not a number, or whose lower one is above the upper.</summary>
    /// <param name="what">Whose they are, at the beginning of a sentence.</param>
    /// <param name="limits">The limits; either may be infinite.</param>
    /// <param name="parameter">The caller's parameter.</param>
    public static void RefuseReversed(string what, Limits limits, string parameter)
    {
        if (!(limits.Low <= limits.High))
            throw new ArgumentException(
                $"{what} runs from {limits.Low} to {limits.High}; the lower limit must be a number that is not above the upper.",
                parameter);
    }
}
