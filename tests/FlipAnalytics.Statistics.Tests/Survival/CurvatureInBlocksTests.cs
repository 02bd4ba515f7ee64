namespace FlipAnalytics.Statistics.Tests;

/// <summary>Many types and colours of few pieces each: the fit that takes the curvature apart against the one that does not.</summary>
public sealed class CurvatureInBlocksTests
{
    public enum Pieces
    {
        EveryColourNewFewTypes,
        EveryTypeAndColourNew,
        ManyTypesFewColours,
        TypesAndColoursOftenAndSeldom,
        EveryColourNewAndNoTypes,
        ThreeGroups,
    }

    [Theory]
    [InlineData(Pieces.EveryColourNewFewTypes, FailureDistribution.Weibull, 7)]
    [InlineData(Pieces.EveryColourNewFewTypes, FailureDistribution.LogLogistic, 7)]
    [InlineData(Pieces.EveryTypeAndColourNew, FailureDistribution.Weibull, 4)]
    [InlineData(Pieces.EveryTypeAndColourNew, FailureDistribution.Lognormal, 4)]
    [InlineData(Pieces.ManyTypesFewColours, FailureDistribution.Weibull, 13)]
    [InlineData(Pieces.ManyTypesFewColours, FailureDistribution.Exponential, 13)]
    [InlineData(Pieces.TypesAndColoursOftenAndSeldom, FailureDistribution.Weibull, 70)]
    [InlineData(Pieces.EveryColourNewAndNoTypes, FailureDistribution.Weibull, 3)]
    [InlineData(Pieces.ThreeGroups, FailureDistribution.Weibull, 12)]
    public void TheFitIsThatOfTheWholeMatrix(Pieces pieces, FailureDistribution distribution, int mostInBorder)
    {
        AcceleratedFailureData data = Draw(pieces, 160);
        Assert.InRange(InBorder(data), 3, mostInBorder);
        AcceleratedFailureOptions options = Options(data, distribution);
        AcceleratedFailureFit whole = AcceleratedFailure.FitWith(data, options, inBlocks: false);
        AcceleratedFailureFit fit = AcceleratedFailure.FitWith(data, options, inBlocks: true);
        AssertNear([whole.LogScale, whole.LogLikelihood, whole.MarginalLogLikelihood, whole.RestrictedMarginalLogLikelihood],
            [fit.LogScale, fit.LogLikelihood, fit.MarginalLogLikelihood, fit.RestrictedMarginalLogLikelihood]);
        AssertNear(whole.Coefficients.Select(c => c.Estimate), fit.Coefficients.Select(c => c.Estimate));
        AssertNear(whole.Groups.Select(g => g.Variance), fit.Groups.Select(g => g.Variance));
        AssertNear(whole.Groups.SelectMany(g => g.Levels).Select(l => l.Effect), fit.Groups.SelectMany(g => g.Levels).Select(l => l.Effect));
        AssertNear(whole.Groups.SelectMany(g => g.Levels).Select(l => l.StandardError),
            fit.Groups.SelectMany(g => g.Levels).Select(l => l.StandardError));
        Assert.Equal<string>(whole.CovarianceOrder, fit.CovarianceOrder);
        AssertNear(whole.Covariance.SelectMany(row => row), fit.Covariance.SelectMany(row => row));
        AssertNear(Predictions(whole, data), Predictions(fit, data));
    }

    [Fact]
    public void WithoutGroupPriorsTheSearchDropsAndKeepsTheSameGroups()
    {
        AcceleratedFailureData data = Draw(Pieces.ManyTypesFewColours, 240);
        AcceleratedFailureOptions options = Options(data, FailureDistribution.Weibull) with { LogGroupVariancePriors = [] };
        AcceleratedFailureFit whole = AcceleratedFailure.FitWith(data, options, inBlocks: false);
        AcceleratedFailureFit fit = AcceleratedFailure.FitWith(data, options, inBlocks: true);
        Assert.Equal(whole.Groups.Select(g => g.AtZeroBoundary), fit.Groups.Select(g => g.AtZeroBoundary));
        Assert.Equal(whole.RestrictedMarginalLogLikelihood, fit.RestrictedMarginalLogLikelihood, 1e-9);
        AssertNear(Predictions(whole, data), Predictions(fit, data), 1e-7);
    }

    [Fact]
    public void AColourOfOnePieceIsPulledInByTheShareOfItsVariance()
    {
        // With normal errors and nothing censored: effect = τ²/(τ² + σ²) × what the piece is beyond the coefficients.
        AcceleratedFailureData data = Draw(Pieces.EveryColourNewAndNoTypes, 100);
        data = data with { Spells = [.. data.Spells.Select(spell => Spell.Ended(spell.Stop))], Weights = null };
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(data, Options(data, FailureDistribution.Lognormal));
        double variance = fit.Groups[0].Variance, share = variance / (variance + fit.Scale * fit.Scale);
        for (int row = 0; row < data.X.Length; row++)
        {
            double beyond = Math.Log(data.Spells[row].Stop) - fit.Predict(data.X[row]).Location;
            Assert.Equal(share * beyond, fit.Groups[0].Levels[data.Groups[0].Level[row]].Effect, 1e-9);
        }
    }

    [Fact]
    public void TheCovarianceOfTwoEffectsIsTheirEntryOfTheWhole()
    {
        AcceleratedFailureData data = Draw(Pieces.EveryTypeAndColourNew, 90);
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(data, Options(data, FailureDistribution.Weibull));
        int first = fit.CovarianceOrder.IndexOf("colour:colour 0");
        Assert.Equal(fit.Covariance[first + 3][first + 8], fit.CovarianceOfEffects(1, 3, 8));
        Assert.NotEqual(0, fit.CovarianceOfEffects(1, 3, 8));
        Assert.Equal(Math.Pow(fit.Groups[1].Levels[3].StandardError, 2), fit.CovarianceOfEffects(1, 3, 3), 1e-12);
    }

    [Fact]
    public void FewTypesAndColoursStayOneMatrix()
    {
        AcceleratedFailureData data = Draw(Pieces.EveryColourNewFewTypes, 50);
        Assert.Equal(2 + data.Groups.Sum(g => g.Levels.Length) + 1, InBorder(data));
    }

    [Theory]
    [InlineData(Pieces.EveryColourNewFewTypes, 5000)]
    [InlineData(Pieces.ManyTypesFewColours, 6000)]
    [InlineData(Pieces.EveryTypeAndColourNew, 1000)]
    public void ThousandsOfLevelsTakeTensOfMegabytes(Pieces pieces, int count)
    {
        AcceleratedFailureData data = Draw(pieces, count);
        Assert.True(data.Groups.Max(g => g.Levels.Length) >= 1000);
        long before = GC.GetAllocatedBytesForCurrentThread();
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(data, Options(data, FailureDistribution.Weibull));
        FailurePrediction prediction = fit.Predict(data.X[0], [.. data.Groups.Select(g => GroupLevel.Known(g.Level[0]))]);
        // All made on the way together: a single square of the whole matrix would be 32 megabytes or more.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 60L << 20);
        Assert.True(prediction.VarianceOfLocation > 0);
    }

    private static int InBorder(AcceleratedFailureData data) =>
        data.CoefficientNames.Length + CurvatureBorder.Blocks(data.CoefficientNames.Length, data.Groups).Count(block => block < 0) + 1;

    private static AcceleratedFailureOptions Options(AcceleratedFailureData data, FailureDistribution distribution) => new()
    {
        Distribution = distribution,
        CoefficientPriors = [new NormalPrior(3, 2), new NormalPrior(0, 1)],
        LogScalePrior = new NormalPrior(-0.2, 0.3),
        LogGroupVariancePriors = [.. data.Groups.Select(_ => new NormalPrior(-2, 0.7))],
    };

    private static IEnumerable<double> Predictions(AcceleratedFailureFit fit, AcceleratedFailureData data)
    {
        for (int row = 0; row < data.X.Length; row++)
        {
            GroupLevel[] levels = [.. data.Groups.Select((g, k) => Level(g.Level[row], row + k))];
            FailurePrediction prediction = fit.Predict(data.X[row], levels);
            yield return prediction.Location;
            yield return prediction.VarianceOfLocation;
            yield return prediction.Covariance;
        }
    }

    private static GroupLevel Level(int index, int turn) =>
        turn % 5 == 0 ? GroupLevel.Unseen : index < 0 ? GroupLevel.None : GroupLevel.Known(index);

    // Ended, running, entered late, ended within limits; weights of 1 and a half.
    private static AcceleratedFailureData Draw(Pieces pieces, int count)
    {
        var source = new SyntheticSpells(77);
        int Of(int levels, double power = 1) => (int)(levels * Math.Pow(source.Uniform(), power));
        (string Name, Func<int, int> Level)[] groups = pieces switch
        {
            Pieces.EveryColourNewFewTypes => [("type", _ => Of(4)), ("colour", row => row)],
            Pieces.EveryTypeAndColourNew => [("type", row => row), ("colour", row => row)],
            Pieces.ManyTypesFewColours => [("type", _ => Of(count / 3)), ("colour", _ => Of(10))],
            Pieces.TypesAndColoursOftenAndSeldom => [("type", _ => Of(count / 2, 3)), ("colour", _ => Of(count, 3))],
            Pieces.EveryColourNewAndNoTypes => [("colour", row => row)],
            _ => [("type", _ => Of(4)), ("colour", row => row / 2), ("source", row => row % 17 < 12 ? Of(5) : -1)],
        };
        int[][] levels = [.. groups.Select(g => Enumerable.Range(0, count).Select(g.Level).ToArray())];
        double[][] effects = [.. groups.Select(_ => Enumerable.Range(0, count).Select(_ => 0.4 * source.Normal()).ToArray())];
        var x = new double[count][];
        var spells = new Spell[count];
        for (int row = 0; row < count; row++)
        {
            x[row] = [1, source.Normal()];
            double effect = levels.Select((level, k) => level[row] < 0 ? 0 : effects[k][level[row]]).Sum();
            double days = Math.Exp(3 + 0.5 * x[row][1] + effect + 0.8 * Math.Log(-Math.Log(source.Uniform())));
            spells[row] = (row % 6) switch
            {
                0 => Spell.Running(days / 2),
                1 => Spell.Ended(days, days / 3),
                2 => Spell.EndedBetween(0.9 * days, 1.2 * days),
                3 => Spell.EndedBefore(1.5 * days),
                _ => Spell.Ended(days),
            };
        }

        return new(["(Intercept)", "size"], x, [.. spells], [.. groups.Select((g, k) => Group(g.Name, levels[k]))],
            [.. spells.Select((_, row) => row % 7 == 0 ? 0.5 : 1)]);
    }

    // Levels numbered as they are first met.
    private static GroupColumn Group(string name, int[] level)
    {
        int[] met = [.. level.Where(l => l >= 0).Distinct()];
        var index = met.Select((l, i) => (l, i)).ToDictionary(pair => pair.l, pair => pair.i);
        return new(name, [.. met.Select((_, i) => $"{name} {i}")], [.. level.Select(l => l < 0 ? -1 : index[l])]);
    }

    // Against the largest of them: small ones are differences of large ones.
    private static void AssertNear(IEnumerable<double> expected, IEnumerable<double> actual, double relative = 1e-9)
    {
        double[] all = [.. expected], others = [.. actual];
        Assert.Equal(all.Length, others.Length);
        double tolerance = relative * all.Max(Math.Abs);
        Assert.All(all.Zip(others), pair => Assert.Equal(pair.First, pair.Second, tolerance));
    }
}
