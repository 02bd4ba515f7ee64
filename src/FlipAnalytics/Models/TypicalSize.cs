using MathNet.Numerics.LinearAlgebra;

namespace FlipAnalytics;

/// <summary>
/// Log size of a piece relative to its type: the log of width × depth × height less the type's average of it. A dimension
/// that was not recorded is filled in from those that were, by the pooled covariance of the log dimensions within types
/// (conditional normal mean); with none recorded the piece counts as of typical size; a
/// dimension that the log never has is left out. A type's average is drawn a little towards the average over types, since
/// types differ in size much more than pieces of a type do; a type that the log does not have, or never measured, is
/// taken as of its own typical size.
/// </summary>
internal sealed class TypicalSize
{
    private const double PriorPieces = 0.1;

    /// <summary>Width, depth and height.</summary>
    public const int Dimensions = 3;

    // Within a type, dimensions vary by some 15 % and go together somewhat: a mild guess worth a few pieces.
    private const double PriorSpread = 0.15;
    private const double PriorCorrelation = 0.3;
    private const double PriorPairs = 5;

    // Two dozen items sold as one is more than most logs hold.
    private static readonly double LargestSet = Math.Log(24);

    private readonly double[] overall = new double[Dimensions];
    private readonly double[] neverMeasured = [double.NaN, double.NaN, double.NaN];
    private readonly Dictionary<string, double[]> byType = new(StringComparer.OrdinalIgnoreCase);
    private readonly Matrix<double> within;
    private readonly double[] furthest;
    private readonly double largestCount;

    // What to do with each set of known dimensions; bit d stands for dimension d.
    private readonly (double[] Weights, double Variance)[] byKnownDimensions;

    public TypicalSize(IReadOnlyList<PieceFacts> pieces)
    {
        var groups = pieces.GroupBy(p => p.Type, StringComparer.OrdinalIgnoreCase).ToArray();
        for (int d = 0; d < Dimensions; d++)
        {
            double[] typeMeans =
            [
                .. groups.Select(g => g.Select(p => p.LogDimensions[d]).Where(v => v is not null).ToArray())
                    .Where(values => values.Length > 0).Select(values => values.Average()!.Value),
            ];
            overall[d] = typeMeans.Length == 0 ? double.NaN : typeMeans.Average();
        }

        foreach (var group in groups)
        {
            byType[group.Key] =
            [
                .. Enumerable.Range(0, Dimensions).Select(d =>
                {
                    var known = group.Select(p => p.LogDimensions[d]).Where(v => v is not null).ToArray();
                    return known.Length == 0
                        ? double.NaN
                        : (known.Sum()!.Value + PriorPieces * overall[d]) / (known.Length + PriorPieces);
                }),
            ];
        }

        within = WithinTypes(pieces);
        furthest =
        [
            .. Enumerable.Range(0, Dimensions).Select(d => pieces
                .Select(p => Math.Abs(Deviation(p, byType[p.Type], d) ?? 0)).Append(3 * Math.Sqrt(within[d, d])).Append(Math.Log(2)).Max()),
        ];
        largestCount = Math.Max(LargestSet, pieces.Select(p => p.LogCount).DefaultIfEmpty(0).Max() + Math.Log(2));
        byKnownDimensions = [.. Enumerable.Range(0, 1 << Dimensions).Select(Given)];
    }

    /// <summary>Expected relative log size and the variance that unrecorded dimensions leave in it.</summary>
    public (double Size, double Variance) Of(PieceFacts piece)
    {
        double[] centre = byType.GetValueOrDefault(piece.Type, neverMeasured);
        int known = 0;
        for (int d = 0; d < Dimensions; d++)
            known |= Deviation(piece, centre, d) is null ? 0 : 1 << d;
        (double[] weights, double variance) = byKnownDimensions[known];
        double size = 0;
        for (int d = 0; d < Dimensions; d++)
            size += weights[d] * (Deviation(piece, centre, d) ?? 0);
        return (size, variance);
    }

    /// <summary>
    /// Log of count × width × depth, the floor that a piece or set stands on, filled in with what is typical; null where
    /// nothing tells.
    /// </summary>
    public double? LogFootprint(PieceFacts piece)
    {
        double[] centre = byType.GetValueOrDefault(piece.Type, neverMeasured);
        double log = piece.LogCount + Enumerable.Range(0, 2)
            .Sum(d => piece.LogDimensions[d] ?? (double.IsNaN(centre[d]) ? overall[d] : centre[d]));
        return double.IsNaN(log) ? null : log;
    }

    /// <summary>The log of a type's usual width (0), depth (1) or height (2); null where the log does not tell.</summary>
    public double? Usual(string type, int dimension) =>
        byType.GetValueOrDefault(type, neverMeasured)[dimension] is var usual && double.IsNaN(usual) ? null : usual;

    /// <summary>
    /// The piece with dimensions and count held within what the log can tell: no dimension further from the type's usual one
    /// than twofold, three spreads or the furthest on record, no count above twice the largest on record or two dozen.
    /// </summary>
    public PieceFacts Held(PieceFacts piece) => piece with
    {
        LogCount = Math.Min(piece.LogCount, largestCount),
        LogDimensions =
        [
            .. piece.LogDimensions.Select((log, d) => log is { } stated && Usual(piece.Type, d) is { } usual
                ? Math.Clamp(stated, usual - furthest[d], usual + furthest[d])
                : log),
        ],
    };

    private Matrix<double> WithinTypes(IReadOnlyList<PieceFacts> pieces)
    {
        double[][] complete =
        [
            .. pieces.Where(p => p.LogDimensions.All(d => d is not null))
                .Select(p => Enumerable.Range(0, Dimensions).Select(d => Deviation(p, byType[p.Type], d)!.Value).ToArray()),
        ];
        return Matrix<double>.Build.Dense(Dimensions, Dimensions, (a, b) =>
        {
            double prior = PriorSpread * PriorSpread * (a == b ? 1 : PriorCorrelation);
            return (complete.Sum(d => d[a] * d[b]) + PriorPairs * prior) / (complete.Length + PriorPairs);
        });
    }

    // The sum of all deviations expected from the known ones: their weights, and the variance that is left.
    private (double[] Weights, double Variance) Given(int knownDimensions)
    {
        int[] known = [.. Enumerable.Range(0, Dimensions).Where(d => (knownDimensions & (1 << d)) != 0)];
        int[] missing = [.. Enumerable.Range(0, Dimensions).Where(d => !double.IsNaN(overall[d])).Except(known)];
        double[] weights = [.. Enumerable.Range(0, Dimensions).Select(d => known.Contains(d) ? 1.0 : 0.0)];
        if (missing.Length == 0)
            return (weights, 0);
        var rest = Block(missing, missing);
        if (known.Length > 0)
        {
            var slopes = Block(missing, known) * Block(known, known).Inverse();
            for (int i = 0; i < known.Length; i++)
                weights[known[i]] += slopes.Column(i).Sum();
            rest -= slopes * Block(known, missing);
        }

        return (weights, rest.Enumerate().Sum());
    }

    private Matrix<double> Block(int[] rows, int[] columns) =>
        Matrix<double>.Build.Dense(rows.Length, columns.Length, (i, j) => within[rows[i], columns[j]]);

    private static double? Deviation(PieceFacts piece, double[] centre, int dimension) =>
        double.IsNaN(centre[dimension]) ? null : piece.LogDimensions[dimension] - centre[dimension];
}
