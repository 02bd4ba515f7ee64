using System.Collections.Immutable;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Rows drawn from a known mixed model by a fixed generator (the same everywhere).</summary>
internal sealed class GeneratedRows
{
    private ulong _state;

    public GeneratedRows(int rows, int[] levelCounts, double[] levelDeviations, int columns = 3, ulong seed = 20260401)
    {
        _state = seed;
        Terms = [.. levelCounts.Select((count, k) => RandomTerm.Exchangeable(
            $"group{k}", [.. Enumerable.Range(0, count).Select(t => $"g{k}-{t}")]))];
        Effects = [.. levelCounts.Select((count, k) => Enumerable.Range(0, count)
            .Select(_ => levelDeviations[k] * Normal()).ToArray())];
        Coefficients = [.. Enumerable.Range(0, columns).Select(j => 1 + (0.5 * j))];
        Columns = [.. Enumerable.Range(0, columns).Select(j => j == 0 ? "(Intercept)" : $"x{j}")];
        X = new double[rows][];
        Levels = [.. levelCounts.Select(_ => new int[rows])];
        Y = new double[rows];
        Weights = new double[rows];
        for (int i = 0; i < rows; i++)
        {
            X[i] = [.. Enumerable.Range(0, columns).Select(j => j == 0 ? 1 : Normal())];
            Weights[i] = 0.5 + (2 * Uniform());
            Y[i] = X[i].Zip(Coefficients, (x, b) => x * b).Sum() + (ResidualDeviation * Normal());
            for (int k = 0; k < levelCounts.Length; k++)
            {
                Levels[k][i] = (int)(levelCounts[k] * Uniform());
                Y[i] += Effects[k][Levels[k][i]];
            }
        }
    }

    public const double ResidualDeviation = 0.5;

    public ImmutableArray<string> Columns { get; }

    public double[] Coefficients { get; }

    public RandomTerm[] Terms { get; }

    public double[][] Effects { get; }

    public double[][] X { get; }

    public int[][] Levels { get; }

    public double[] Y { get; }

    public double[] Weights { get; }

    public MixedModelData Data(bool weighted = false) =>
        MixedModelData.From(Columns, X, Terms, Levels, Y, weighted ? Weights : null);

    public MixedModelData DataOf(IEnumerable<int> rows, bool weighted = false)
    {
        int[] kept = [.. rows];
        return MixedModelData.From(
            Columns, Pick(X, kept), Terms, [.. Levels.Select(level => Pick(level, kept))], Pick(Y, kept),
            weighted ? Pick(Weights, kept) : null);
    }

    public LevelRef[] LevelsOf(int row) => [.. Levels.Select(level => LevelRef.Known(level[row]))];

    // SplitMix64; Steele, Lea and Flood (2014), Fast splittable pseudorandom number generators.
    private double Uniform()
    {
        _state += 0x9E3779B97F4A7C15;
        ulong z = _state;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return ((z ^ (z >> 31)) >> 11) * (1.0 / (1UL << 53));
    }

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - Uniform())) * Math.Cos(2 * Math.PI * Uniform());

    private static T[] Pick<T>(T[] values, int[] rows) => [.. rows.Select(row => values[row])];
}
