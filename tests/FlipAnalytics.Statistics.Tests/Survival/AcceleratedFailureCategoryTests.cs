using CsCheck;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>A category is the same as its indicator columns spelt out, which other tests check against R.</summary>
public sealed class AcceleratedFailureCategoryTests
{
    private static readonly GroupColumn Colour = new("colour", ["white", "oak", "never seen", "black"],
        [.. Enumerable.Range(0, 80).Select(row => row * 5 / 3 % 3 is var level and < 2 ? level : 3)]);

    private static readonly GroupColumn Finish = new("finish", ["matt", "gloss", "wax"],
        [.. Enumerable.Range(0, 80).Select(row => row % 10 == 0 ? -1 : row % 3)]);

    [Fact]
    public void CategoriesGiveTheFitOfTheirIndicatorColumns() => Gen.Select(
        Gen.UInt, Gen.Int[0, 3].Select(index => (FailureDistribution)index), Gen.Bool).Sample((seed, distribution, grouped) =>
        {
            AcceleratedFailureData numbers = new SyntheticSpells(seed).Draw(80, [0.6, -0.5, 0.2], 0.7, 60);
            numbers = grouped ? numbers : numbers with { Groups = [] };
            AcceleratedFailureData spelt = numbers with
            {
                CoefficientNames = [.. numbers.CoefficientNames, "colour:oak", "colour:never seen", "colour:black", "finish:gloss", "finish:wax"],
                X = [.. numbers.X.Select((x, row) => (double[])
                    [
                        .. x, .. Enumerable.Range(1, 3).Select(level => Colour.Level[row] == level ? 1.0 : 0),
                        .. Enumerable.Range(1, 2).Select(level => Finish.Level[row] == level ? 1.0 : 0),
                    ])],
            };
            AcceleratedFailureFit expected = Fit(spelt, distribution);
            AcceleratedFailureFit actual = Fit(numbers with { Categories = [Colour, Finish] }, distribution);

            Assert.Equal("colour:never seen", Assert.Single(actual.DroppedColumns));
            Assert.Equal((string[])[.. expected.CovarianceOrder], (string[])[.. actual.CovarianceOrder]);
            Assert.Equal(expected.LogScale, actual.LogScale, 1e-6);
            Assert.Equal(expected.LogLikelihood, actual.LogLikelihood, 1e-6);
            for (int i = 0; i < expected.Covariance.Length; i++)
            {
                Assert.All(expected.Covariance[i].Zip(actual.Covariance[i]), pair => Assert.Equal(pair.First, pair.Second, 1e-6));
            }

            double[] x = [.. spelt.X[7]];
            var levels = new GroupLevel[expected.Groups.Length];
            Assert.Equal(expected.Predict(x, levels).Location, actual.Predict(x, levels).Location, 1e-6);
        }, iter: 40);

    [Fact]
    public void ACategoryWithoutLevelsIsRefusedByName()
    {
        AcceleratedFailureData data = new SyntheticSpells(1).Draw(80, [0.6], 0.7, 60) with
        {
            Categories = [new("wood", [], [.. Enumerable.Repeat(-1, 80)])],
        };
        Assert.Contains("'wood'", Assert.Throws<ArgumentException>(() => Fit(data, FailureDistribution.Weibull)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ACategoryAndAColumnOfTheSameNameAreRefused()
    {
        AcceleratedFailureData data = new SyntheticSpells(1).Draw(80, [0.6], 0.7, 60);
        data = data with { CoefficientNames = ["(Intercept)", "colour:oak"], Categories = [Colour] };
        Assert.Throws<ArgumentException>(() => Fit(data, FailureDistribution.Weibull));
    }

    private static AcceleratedFailureFit Fit(AcceleratedFailureData data, FailureDistribution distribution) =>
        AcceleratedFailure.Fit(data, new AcceleratedFailureOptions { Distribution = distribution });
}
