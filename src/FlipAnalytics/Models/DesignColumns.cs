using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What the fixed columns of a model are made from, for one observation.</summary>
/// <param name="Facts">What the piece is.</param>
/// <param name="Size">Relative log size.</param>
/// <param name="Date">Day of the observation; null leaves the season out.</param>
/// <param name="RelativeHours">Log hours over usual.</param>
/// <param name="TypeHours">Log hours that the type takes over those of all types.</param>
/// <param name="Asking">Log of the asking price over the expected sale price.</param>
internal readonly record struct DesignValues(
    PieceFacts Facts, double Size, DateOnly? Date, double RelativeHours = 0, double TypeHours = 0,
    double Asking = 0);

/// <summary>
/// The fixed columns of a model, by name. Where a condition was not recorded, the row takes the log's average of its
/// columns: a row with gaps still counts.
/// </summary>
internal sealed class DesignColumns
{
    private readonly double wornShare;
    private readonly double damagedShare;

    private DesignColumns(ImmutableArray<string> names, double wornShare, double damagedShare)
    {
        Names = names;
        this.wornShare = wornShare;
        this.damagedShare = damagedShare;
    }

    public ImmutableArray<string> Names { get; }

    /// <summary>Columns of these names for a set of pieces, whose conditions give the averages.</summary>
    public static DesignColumns Of(ImmutableArray<string> names, IEnumerable<PieceFacts> pieces)
    {
        Condition[] recorded = [.. pieces.Where(f => f.Condition is not null).Select(f => f.Condition!.Value)];
        double Share(Condition level) =>
            recorded.Length == 0 ? 0 : (double)recorded.Count(c => c == level) / recorded.Length;
        return new(names, Share(Condition.Worn), Share(Condition.Damaged));
    }

    /// <summary>The same without those, but for the intercept, that are alike in all of these observations.</summary>
    public DesignColumns WithoutConstant(IEnumerable<DesignValues> observations)
    {
        double[][] x = [.. observations.Select(Row)];
        return new(
            [.. Names.Where((name, j) => name == TermNames.Intercept || x.Any(row => Math.Abs(row[j] - x[0][j]) > 1e-12))],
            wornShare, damagedShare);
    }

    /// <summary>The same without one of them.</summary>
    public DesignColumns Without(string column) =>
        new([.. Names.Where(name => name != column)], wornShare, damagedShare);

    public double[] Row(DesignValues values)
    {
        var row = new double[Names.Length];
        for (int j = 0; j < row.Length; j++)
            row[j] = Value(Names[j], values);
        return row;
    }

    /// <summary>Variance that an unrecorded condition leaves, given the two slopes.</summary>
    public double ConditionVariance(PieceFacts facts, double wornSlope, double damagedSlope)
    {
        if (facts.Condition is not null)
            return 0;
        double mean = wornShare * wornSlope + damagedShare * damagedSlope;
        return wornShare * wornSlope * wornSlope + damagedShare * damagedSlope * damagedSlope - mean * mean;
    }

    private double Value(string name, DesignValues values) => name switch
    {
        TermNames.Intercept => 1,
        TermNames.Count => values.Facts.LogCount,
        TermNames.Size => values.Size,
        TermNames.Worn => Dummy(values.Facts.Condition, Condition.Worn, wornShare),
        TermNames.Damaged => Dummy(values.Facts.Condition, Condition.Damaged, damagedShare),
        TermNames.Hours => values.RelativeHours,
        TermNames.TypeHours => values.TypeHours,
        TermNames.SeasonSine => values.Date is { } day ? Math.Sin(2 * Math.PI * Crossing.PartOfYear(day)) : 0,
        TermNames.SeasonCosine => values.Date is { } day ? Math.Cos(2 * Math.PI * Crossing.PartOfYear(day)) : 0,
        TermNames.Asking => values.Asking,
        _ => throw new InvalidOperationException($"No column is called '{name}'."),
    };

    private static double Dummy(Condition? condition, Condition level, double share) =>
        condition is null ? share : condition == level ? 1 : 0;
}
