using System.Collections.Concurrent;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>The fixed nodes of the joint forecast, a coordinate for each source of uncertainty.</summary>
internal sealed class NodeTable
{
    public const int Price = 0;
    public const int Hours = 1;
    public const int Supplies = 2;
    public const int Duration = 3;
    public const int Location = 4;
    public const int Scale = 5;
    public const int Delivery = 6;
    private const int Coordinates = 7;

    private static readonly ConcurrentDictionary<int, NodeTable> Tables = new();

    private readonly double[][] normal;
    private readonly double[][] uniform;

    private NodeTable(int count)
    {
        NormalNodes nodes = NormalNodes.Create(Coordinates, count);
        normal = [.. Enumerable.Range(0, Coordinates).Select(d => nodes.Normal(d).ToArray())];
        uniform = [.. Enumerable.Range(0, Coordinates).Select(d => nodes.Uniform(d).ToArray())];
        ExtremeValue = [.. uniform[Duration].Select(u => Math.Log(-Math.Log(1 - u)))];
    }

    public int Count => normal[0].Length;

    /// <summary>Standard extreme values, the errors of log days under the Weibull law.</summary>
    public double[] ExtremeValue { get; }

    public static NodeTable Of(int count) => Tables.GetOrAdd(count, c => new NodeTable(c));

    public double[] Normal(int coordinate) => normal[coordinate];

    public double[] Uniform(int coordinate) => uniform[coordinate];
}
