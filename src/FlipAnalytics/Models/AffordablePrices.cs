namespace FlipAnalytics;

/// <summary>
/// The price affordable at each node of a joint forecast,
/// P = (S(1 − f) − g − L − C − s·D − w·H) / (1 + r·D), and what its mean consists of.
/// </summary>
internal sealed class AffordablePrices
{
    private const double DaysInYear = 365.25;

    private readonly JointForecast forecast;
    private readonly double feeRate;
    private readonly double feeFixed;
    private readonly double storageADay;
    private readonly double capitalRateADay;

    public AffordablePrices(JointForecast forecast, SellingTerms selling, Workshop workshop, double? logFootprint)
    {
        this.forecast = forecast;
        feeRate = Crossing.Number(selling.FeeRate);
        feeFixed = Crossing.Number(selling.FeeFixed);
        // Storage is priced by the square foot where lengths are in inches, by the square metre where in centimetres.
        double lengthsInArea = workshop.LengthUnit == LengthUnit.Inch ? 144 : 10_000;
        storageADay = logFootprint is { } log ? Crossing.Number(workshop.Storage) * Math.Exp(log) / lengthsInArea : 0;
        capitalRateADay = Crossing.Number(workshop.CapitalRate) / DaysInYear;
    }

    /// <summary>Affordable prices at a wage, by node.</summary>
    public double[] At(double wage)
    {
        var prices = new double[forecast.Days.Length];
        for (int i = 0; i < prices.Length; i++)
            prices[i] = (BeforeHours(i) - wage * forecast.Hours[i]) / (1 + capitalRateADay * forecast.Days[i]);
        return prices;
    }

    /// <summary>
    /// Money left after everything but hours when a price is paid, over the hours: a ratio of means; null without hours.
    /// </summary>
    public double? ExpectedWage(double price)
    {
        double money = 0;
        double hours = 0;
        for (int i = 0; i < forecast.Days.Length; i++)
        {
            money += BeforeHours(i) - price * (1 + capitalRateADay * forecast.Days[i]);
            hours += forecast.Hours[i];
        }

        return hours > 0 ? money / hours : null;
    }

    /// <summary>The parts of the mean affordable price: they add up to it.</summary>
    public IEnumerable<(string Item, double Amount)> Parts(double wage)
    {
        double sale = forecast.SalePrice.Average();
        double fees = feeRate * sale + feeFixed;
        double delivery = forecast.Delivery.Average();
        double supplies = forecast.Supplies.Average();
        double hours = wage * forecast.Hours.Average();
        double storage = storageADay * forecast.Days.Average();
        double beforeWaiting = sale - fees - delivery - supplies - hours - storage;
        yield return ("sale price", sale);
        yield return ("channel fees", -fees);
        if (delivery != 0)
            yield return ("delivery", -delivery);
        yield return ("supplies", -supplies);
        yield return ("hours", -hours);
        if (storage != 0)
            yield return ("storage", -storage);
        if (capitalRateADay != 0)
            yield return ("money tied up", At(wage).Average() - beforeWaiting);
    }

    private double BeforeHours(int node) =>
        forecast.SalePrice[node] * (1 - feeRate) - feeFixed - forecast.Delivery[node] - forecast.Supplies[node]
        - storageADay * forecast.Days[node];
}
