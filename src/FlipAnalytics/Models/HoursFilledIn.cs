using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Estimates of hands-on hours for sold pieces that have none on record, by the model of hours.</summary>
public static class HoursFilledIn
{
    private const int Digits = 2;

    /// <summary>
    /// Mean hours by piece id; empty where every sold piece has hours on record. The mean is that of the predictive law at
    /// fixed nodes, so that long jobs count as the log shows them.
    /// </summary>
    /// <param name="log">The log, as of its date.</param>
    public static ImmutableDictionary<string, decimal> ByPiece(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        var known = BenchHours.ByPiece(log);
        Piece[] unknown = [.. log.Pieces.Where(piece => piece.IsSold && !known.ContainsKey(piece.Id))];
        var filled = ImmutableDictionary.CreateBuilder<string, decimal>(StringComparer.OrdinalIgnoreCase);
        if (unknown.Length == 0)
            return filled.ToImmutable();
        AmountRows rows = new(log);
        EffectsModel model = EffectsModel.TryFit(Expectations.Hours, rows.HoursRows())!;
        foreach (Piece piece in unknown)
        {
            var size = rows.Sizes[piece.Id];
            LogPrediction law = model.Predict(
                new(rows.Facts[piece.Id], size.Value, piece.SoldOn ?? piece.ReadyOn ?? piece.ListedOn), size.Variance);
            filled[piece.Id] = Crossing.Rounded(MeanOf(law), Digits);
        }

        return filled.ToImmutable();
    }

    private static double MeanOf(LogPrediction law)
    {
        double[] errors = law.Shape.At(NodeTable.Of(JointForecast.CoarseNodes), NodeTable.Hours);
        double deviation = Math.Sqrt(law.Variance);
        return errors.Average(error => Math.Exp(Math.Clamp(law.Mean + deviation * error, law.Limits.Low, law.Limits.High)));
    }
}
