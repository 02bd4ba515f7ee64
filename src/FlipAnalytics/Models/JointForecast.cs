namespace FlipAnalytics;

/// <summary>
/// The joint predictive distribution of one candidate's sale price, hours, supplies, days on market and delivery cost, at
/// a fixed set of equally likely nodes: every source of uncertainty has a coordinate of its own, and the sale price
/// follows the hours through the price model's slope. Stated hours and supplies are taken as exact; a stated sale price
/// as the mean, around which a single sale still scatters.
/// </summary>
internal sealed class JointForecast
{
    /// <summary>Nodes of a full answer; the error of a mean is some 1e-4 of the spread, measured in the tests.</summary>
    public const int Nodes = 2048;

    /// <summary>Nodes for comparing answers under changed assumptions.</summary>
    public const int CoarseNodes = 256;

    // A piece that has not sold after three years is held as one that took three years.
    private const double LongestDays = 1095;

    private JointForecast(int nodes)
    {
        SalePrice = new double[nodes];
        Hours = new double[nodes];
        Supplies = new double[nodes];
        Days = new double[nodes];
        Delivery = new double[nodes];
    }

    public double[] SalePrice { get; }

    public double[] Hours { get; }

    public double[] Supplies { get; }

    public double[] Days { get; }

    /// <summary>Delivery cost less delivery charge.</summary>
    public double[] Delivery { get; }

    /// <summary>
    /// The forecast that these laws make of what the candidate does not state; the wage bounds what stated hours are taken to
    /// add to the price.
    /// </summary>
    public static JointForecast Of(Candidate candidate, CandidateLaws laws, SellingTerms selling, int nodeCount, double wage = 0)
    {
        var forecast = new JointForecast(nodeCount);
        NodeTable nodes = NodeTable.Of(nodeCount);
        forecast.FillHours(candidate, laws.Hours, nodes);
        forecast.FillPrice(candidate, laws.Price, laws.Hours, nodes);
        if (candidate.SalePrice is null && candidate.Hours is { } hours)
            forecast.WorkFor(Crossing.Number(hours), laws, wage / (1 - Crossing.Number(selling.FeeRate)));
        forecast.FillSupplies(candidate, laws.Supplies, nodes);
        forecast.FillDays(laws.Days, nodes);
        forecast.FillDelivery(selling, nodes);
        HeldMean.WithinRange(forecast.SalePrice);
        HeldMean.WithinRange(forecast.Hours);
        HeldMean.WithinRange(forecast.Supplies);
        HeldMean.WithinRange(forecast.Days);
        return forecast;
    }

    private void FillHours(Candidate candidate, LogPrediction hours, NodeTable nodes)
    {
        if (candidate.Hours is { } stated)
        {
            Array.Fill(Hours, Crossing.Number(stated));
            return;
        }

        Fill(Hours, hours, nodes, NodeTable.Hours);
    }

    private void FillPrice(Candidate candidate, LogPrediction? price, LogPrediction hours, NodeTable nodes)
    {
        if (candidate.SalePrice is { } stated)
        {
            double spread = price is null
                ? Expectations.SalePrice.Residual
                : Math.Min(Math.Sqrt(price.Variance), 2 * Expectations.SalePrice.Residual);
            Fill(SalePrice, 0, spread * spread, (price?.Shape ?? ResidualShape.Normal).At(nodes, NodeTable.Price));
            double factor = Crossing.Number(stated) / SalePrice.Average();
            for (int i = 0; i < SalePrice.Length; i++)
                SalePrice[i] *= factor;
            return;
        }

        double[] error = price!.Shape.At(nodes, NodeTable.Price);
        double deviation = Math.Sqrt(price.Variance);
        for (int i = 0; i < SalePrice.Length; i++)
        {
            double unforeseenHours = candidate.Hours is null
                ? Math.Clamp(Math.Log(Hours[i]) - hours.Mean, -hours.FurthestOff, hours.FurthestOff) : 0;
            SalePrice[i] = Math.Exp(Math.Clamp(
                price.Mean + price.HoursSlope * unforeseenHours + deviation * error[i], price.Limits.Low, price.Limits.High));
        }
    }

    private void WorkFor(double hours, CandidateLaws laws, double wageBeforeFees)
    {
        double usual = Math.Exp(laws.Hours.Mean);
        double factor = HoursEffect.Factor(
            Math.Log(Math.Max(hours, 1e-6) / usual), laws.Price!.HoursSlope, laws.Hours.FurthestOff,
            wageBeforeFees * usual / SalePrice.Average());
        for (int i = 0; i < SalePrice.Length; i++)
            SalePrice[i] *= factor;
    }

    private void FillSupplies(Candidate candidate, LogPrediction? supplies, NodeTable nodes)
    {
        if (candidate.Supplies is { } stated)
        {
            Array.Fill(Supplies, Crossing.Number(stated));
        }
        else if (supplies is not null)
        {
            Fill(Supplies, supplies, nodes, NodeTable.Supplies);
        }
        else
        {
            Fill(Supplies, Math.Log(Expectations.SuppliesShare * SalePrice.Average()),
                Expectations.SuppliesShareSpread * Expectations.SuppliesShareSpread,
                ResidualShape.Normal.At(nodes, NodeTable.Supplies));
        }
    }

    private void FillDays(DaysPrediction days, NodeTable nodes)
    {
        // Cholesky factor of the covariance of location and log scale.
        double location = Math.Sqrt(days.VarianceOfLocation);
        double across = location == 0 ? 0 : days.Covariance / location;
        double rest = Math.Sqrt(Math.Max(0, days.VarianceOfLogScale - across * across));
        double[] extreme = nodes.ExtremeValue;
        double[] a = nodes.Normal(NodeTable.Location);
        double[] b = nodes.Normal(NodeTable.Scale);
        for (int i = 0; i < Days.Length; i++)
        {
            double scale = Math.Exp(days.LogScale + across * a[i] + rest * b[i]);
            Days[i] = Math.Clamp(Math.Exp(days.Location + location * a[i] + scale * extreme[i]), 1, LongestDays);
        }
    }

    private void FillDelivery(SellingTerms selling, NodeTable nodes)
    {
        if (selling.SaleCount == 0)
            return;
        double[] uniform = nodes.Uniform(NodeTable.Delivery);
        int collected = selling.SaleCount - selling.Deliveries.Length;
        for (int i = 0; i < Delivery.Length; i++)
        {
            int sale = (int)(uniform[i] * selling.SaleCount) - collected;
            Delivery[i] = sale < 0 ? 0 : Crossing.Number(selling.Deliveries[sale]);
        }
    }

    private static void Fill(double[] target, LogPrediction prediction, NodeTable nodes, int coordinate)
    {
        double[] error = prediction.Shape.At(nodes, coordinate);
        double deviation = Math.Sqrt(prediction.Variance);
        for (int i = 0; i < target.Length; i++)
        {
            target[i] = Math.Exp(Math.Clamp(
                prediction.Mean + deviation * error[i], prediction.Limits.Low, prediction.Limits.High));
        }
    }

    private static void Fill(double[] target, double mean, double variance, double[] error)
    {
        double deviation = Math.Sqrt(variance);
        for (int i = 0; i < target.Length; i++)
            target[i] = Math.Exp(mean + deviation * error[i]);
    }
}
