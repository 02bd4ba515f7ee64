namespace FlipAnalytics.Statistics;

/// <summary>Cox's partial log-likelihood at one β, with its slope and information:
/// Σ wᵢ xᵢᵀβ − Σ w log(Σ r − share Σ r of those ending), the terms of <see cref="RiskSet.Terms"/>; the information is the
/// weighted covariance of the columns within the risk sets.</summary>
internal sealed class CoxLikelihood
{
    private readonly int width;

    private CoxLikelihood(int width)
    {
        this.width = width;
        Score = new double[width];
        Information = new double[width * width];
    }

    public double LogLikelihood { get; private set; }

    public double[] Score { get; }

    /// <summary>Row by row, both triangles.</summary>
    public double[] Information { get; }

    public static CoxLikelihood At(CoxRows rows, TieMethod ties, double[] coefficients)
    {
        CoxLikelihood at = new(rows.Width);
        double[] predictors = rows.LinearPredictors(coefficients);
        RiskSweep.Run(rows, Risks(rows, predictors), 2, risk => at.AddTime(rows, risk, ties, predictors));
        for (int j = 0; j < at.width; j++)
        {
            for (int k = 0; k < j; k++)
                at.Information[k * at.width + j] = at.Information[j * at.width + k];
        }
        return at;
    }

    /// <summary>Weight × exp(xᵀβ − c), c the largest in the row's stratum, so that nothing overflows; c is taken off the
    /// predictors too.</summary>
    public static double[] Risks(CoxRows rows, double[] predictors)
    {
        double[] risks = new double[predictors.Length];
        for (int stratum = 0; stratum < rows.Strata.Length; stratum++)
        {
            Span<double> own = predictors.AsSpan()[rows.StratumStart[stratum]..rows.StratumStart[stratum + 1]];
            double largest = double.NegativeInfinity;
            foreach (double predictor in own)
                largest = Math.Max(largest, predictor);
            for (int i = 0; i < own.Length; i++)
            {
                own[i] -= largest;
                risks[rows.StratumStart[stratum] + i] = rows.Weight[rows.StratumStart[stratum] + i] * Math.Exp(own[i]);
            }
        }
        return risks;
    }

    private void AddTime(CoxRows rows, RiskSet risk, TieMethod ties, double[] predictors)
    {
        for (int i = risk.First; i < risk.First + risk.EndingCount; i++)
        {
            LogLikelihood += rows.Weight[i] * predictors[i];
            ReadOnlySpan<double> x = rows.Row(i);
            for (int j = 0; j < width; j++)
                Score[j] += rows.Weight[i] * x[j];
        }
        foreach ((double weight, double gone) in risk.Terms(ties))
            AddTerm(risk, weight, gone);
    }

    private void AddTerm(RiskSet risk, double weight, double gone)
    {
        ReadOnlySpan<double> all = risk.All, ending = risk.Ending;
        double total = all[0] - gone * ending[0], inverse = 1 / total;
        LogLikelihood -= weight * Math.Log(total);
        Span<double> mean = width <= 64 ? stackalloc double[width] : new double[width];
        int at = 1 + width;
        for (int j = 0; j < width; j++)
        {
            mean[j] = (all[1 + j] - gone * ending[1 + j]) * inverse;
            Score[j] -= weight * mean[j];
            Span<double> row = Information.AsSpan(j * width, j + 1);
            for (int k = 0; k <= j; k++, at++)
                row[k] += weight * ((all[at] - gone * ending[at]) * inverse - mean[j] * mean[k]);
        }
    }
}
