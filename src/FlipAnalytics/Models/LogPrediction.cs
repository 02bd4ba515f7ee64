namespace FlipAnalytics;

/// <summary>What a model expects of the log of an amount.</summary>
/// <param name="Mean">Mean of the log, at usual hours where hours are a term and were not stated.</param>
/// <param name="Variance">Variance of the log with every source of uncertainty but that of the hours.</param>
/// <param name="VarianceOfMean">The part of it that enough sales would remove: how unsure the mean of such pieces is.</param>
/// <param name="SizeVariance">The part of it that knowing all dimensions would remove.</param>
/// <param name="HoursSlope">Change of the log per unit of log hours over usual; 0 where hours are no term.</param>
/// <param name="Shape">Shape of the error.</param>
/// <param name="Limits">Logs between which the amount is held: ten times beyond any on record or guessed.</param>
/// <param name="FurthestOff">How far off its mean the log of an ordinary piece's amount lies at most.</param>
internal sealed record LogPrediction(
    double Mean, double Variance, double VarianceOfMean, double SizeVariance, double HoursSlope, ResidualShape Shape,
    (double Low, double High) Limits, double FurthestOff = double.PositiveInfinity);
