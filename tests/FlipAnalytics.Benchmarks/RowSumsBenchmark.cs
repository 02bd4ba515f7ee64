using FlipAnalytics.Statistics;

namespace FlipAnalytics.Benchmarks;

/// <summary>The sums of squares and products behind a least-squares fit of a million rows by twenty columns, on one core.</summary>
internal static class RowSumsBenchmark
{
    private const int Rows = 1_000_000;
    private const int Columns = 20;

    public static void Run()
    {
        Console.WriteLine(Surroundings.Line());
        ReadOnlyMemory<double>[] columns = [.. Enumerable.Range(0, Columns).Select(j => (ReadOnlyMemory<double>)Made(j))];
        double[] response = Made(Columns);
        string[] names = [.. Enumerable.Range(0, Columns).Select(j => $"x{j}")];
        CrossProducts? sums = null;
        Console.WriteLine($"sums: {Repeated.Of(3, 15, () =>
        {
            sums = new(names);
            sums.Add(columns, response);
        })}");
        Console.WriteLine($"solving from the sums: {Repeated.Of(3, 15, () => sums!.Fit())}");
    }

    // Numbers between 0 and 1 without a visible pattern: multiples of an irrational number, whole parts left out.
    private static double[] Made(int column)
    {
        double step = Math.Sqrt((2 * column) + 3);
        double[] values = new double[Rows];
        for (int i = 0; i < Rows; i++)
            values[i] = (i + 1) * step % 1;
        return values;
    }
}
