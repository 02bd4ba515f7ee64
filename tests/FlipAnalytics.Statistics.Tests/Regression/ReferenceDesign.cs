using System.Text.Json;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Builds the design of a reference case from the column names R gave it.</summary>
internal static class ReferenceDesign
{
    /// <param name="names">R's column names: "(Intercept)", "wt", "log(price)", "I(nox^2)", "cylc6", "a:b".</param>
    /// <param name="numbers">A numeric variable by its name.</param>
    /// <param name="levels">A factor by its name.</param>
    /// <param name="factors">The names of the factors.</param>
    /// <param name="rows">The number of rows.</param>
    public static Regressor[] Build(
        IEnumerable<string> names, Func<string, double[]> numbers, Func<string, string[]> levels, string[] factors, int rows)
    {
        return [.. names.Select(name => new Regressor(name, Column(name)))];

        double[] Column(string name)
        {
            if (name == Regressor.InterceptName)
                return [.. Enumerable.Repeat(1.0, rows)];
            if (name.Split(':') is [string left, string right])
                return [.. Column(left).Zip(Column(right), (a, b) => a * b)];
            if (name.StartsWith("log(", StringComparison.Ordinal))
                return [.. Column(name[4..^1]).Select(value => Math.Log(value))];
            if (name.StartsWith("I(", StringComparison.Ordinal))
                return [.. Column(name[2..^3]).Select(value => value * value)];
            string? factor = factors.FirstOrDefault(f => name.StartsWith(f, StringComparison.Ordinal) && name != f);
            return factor is null
                ? numbers(name)
                : [.. levels(factor).Select(level => level == name[factor.Length..] ? 1.0 : 0.0)];
        }
    }

    public static Regressor[] OfInput(ReferenceCase reference) => Build(
        ReferenceCase.Names(reference.At("design_columns")), reference.Numbers, reference.Text, Factors(reference),
        reference.RowCount);

    public static Regressor[] OfNewRows(ReferenceCase reference)
    {
        JsonElement rows = reference.At("new_rows");
        return Build(
            ReferenceCase.Names(reference.At("design_columns")),
            name => ReferenceCase.Numbers(rows.GetProperty(name)),
            name => ReferenceCase.Names(rows.GetProperty(name)),
            Factors(reference),
            rows.EnumerateObject().First().Value.GetArrayLength());
    }

    private static string[] Factors(ReferenceCase reference) =>
        [.. reference.At("factor_levels_base_first").EnumerateObject().Select(property => property.Name)];
}
