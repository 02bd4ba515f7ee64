using CsCheck;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Prices in cents instead of dollars add log 100 to every log price: what must follow, and what must not move.
/// </summary>
public sealed class MoneyUnitTests
{
    private static readonly double Cents = Math.Log(100);

    [Theory]
    [InlineData("least squares")]
    [InlineData("mixed model")]
    public void Prices_in_cents_move_the_intercept_by_log_100_and_nothing_else(string model) => FourModels.Any.Sample(pieces =>
    {
        Regressor[] columns = [pieces.SizeColumn(), .. pieces.Finishes(0)];
        ModelFit dollars = pieces.Fit(model, columns), cents = pieces.WithPricesShifted(Cents).Fit(model, columns);
        Assert.Equal(dollars.LogLikelihood, cents.LogLikelihood, 1e-6);
        foreach ((string name, double estimate) in dollars.Estimates)
            Assert.Equal(estimate + (name == Regressor.InterceptName ? Cents : 0), cents.Estimates[name], 1e-6);
    }, iter: 25);

    /// <summary>A log asking price among the columns: b (x + log 100) = b x + b log 100 goes into the intercept, and where
    /// there is none, nowhere.</summary>
    [Theory]
    [MemberData(nameof(FourModels.Names), MemberType = typeof(FourModels))]
    public void A_log_price_among_the_columns_in_cents_moves_the_intercept_by_its_coefficient(string model) =>
        FourModels.Any.Sample(pieces =>
        {
            ModelFit dollars = pieces.Fit(model, [pieces.SizeColumn(), .. pieces.Finishes(0)]);
            ModelFit cents = pieces.Fit(model, [pieces.SizeColumn(Cents), .. pieces.Finishes(0)]);
            Assert.Equal(dollars.LogLikelihood, cents.LogLikelihood, 1e-7);
            foreach ((string name, double estimate) in dollars.Estimates)
            {
                double shift = name == Regressor.InterceptName ? -Cents * dollars.Estimates["log size"] : 0;
                Assert.Equal(estimate + shift, cents.Estimates[name], 1e-5);
            }
        }, iter: 25);
}
