using System.Globalization;
using System.Text.RegularExpressions;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>A linear regression file of the NIST Statistical Reference Datasets, read as published.</summary>
internal sealed partial class NistFile
{
    public NistFile(string name)
    {
        string[] lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "ReferenceData", "nist", name + ".dat"));
        Match range = DataLines().Match(string.Join('\n', lines));
        int first = int.Parse(range.Groups[1].Value, CultureInfo.InvariantCulture);
        int last = int.Parse(range.Groups[2].Value, CultureInfo.InvariantCulture);
        double[][] rows = [.. lines[(first - 1)..last].Select(Numbers)];
        Response = [.. rows.Select(row => row[0])];
        Predictors = [.. Enumerable.Range(1, rows[0].Length - 1).Select(j => rows.Select(row => row[j]).ToArray())];

        Match[] parameters = [.. lines.Select(line => ParameterLine().Match(line)).Where(match => match.Success)];
        Estimates = [.. parameters.Select(match => Numbers(match.Groups[1].Value)[0])];
        StandardErrors = [.. parameters.Select(match => Numbers(match.Groups[1].Value)[1])];
        ResidualStandardDeviation = Last("Standard Deviation");
        RSquared = Last("R-Squared");

        double Last(string label) => Numbers(lines.First(line =>
            line.TrimStart().StartsWith(label, StringComparison.Ordinal) && line.Any(char.IsDigit)).Trim()[label.Length..])[0];
    }

    public double[] Response { get; }

    public double[][] Predictors { get; }

    public double[] Estimates { get; }

    public double[] StandardErrors { get; }

    public double ResidualStandardDeviation { get; }

    public double RSquared { get; }

    private static double[] Numbers(string line) =>
    [
        .. line.Split(' ', StringSplitOptions.RemoveEmptyEntries)
            .Select(text => double.Parse(text, CultureInfo.InvariantCulture)),
    ];

    [GeneratedRegex(@"Data +\(lines +(\d+) +to +(\d+)\)")]
    private static partial Regex DataLines();

    [GeneratedRegex(@"^\s*B\d+\s+([-\d.E+]+\s+[-\d.E+]+)\s*$")]
    private static partial Regex ParameterLine();
}
