namespace FlipAnalytics.Statistics.Tests;

/// <summary>Little data, odd data and wrong data.</summary>
public sealed class AcceleratedFailureTroubleTests
{
    private static readonly AcceleratedFailureOptions Believing = new()
    {
        CoefficientPriors = [new NormalPrior(3, 1), new NormalPrior(0, 0.5)],
        LogScalePrior = new NormalPrior(-0.2, 0.3),
        LogGroupVariancePriors = [new NormalPrior(Math.Log(0.1), 1)],
    };

    public static TheoryData<FailureDistribution, int> FewEnds()
    {
        var cases = new TheoryData<FailureDistribution, int>();
        foreach (FailureDistribution distribution in Enum.GetValues<FailureDistribution>())
        {
            for (int ends = 0; ends <= 3; ends++)
            {
                cases.Add(distribution, ends);
            }
        }

        return cases;
    }

    [Theory]
    [MemberData(nameof(FewEnds))]
    public void WithPriorsAnyNumberOfSalesGivesAnEstimate(FailureDistribution distribution, int ends)
    {
        Spell[] spells = [.. Enumerable.Range(0, 8).Select(row => row < ends ? Spell.Ended(4 + 9 * row) : Spell.Running(10 + 12 * row))];
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(Data(spells), Believing with { Distribution = distribution });
        Assert.Equal(ends, fit.EventCount);
        Assert.All(fit.Coefficients, coefficient => Assert.InRange(coefficient.StandardError, 1e-3, 1.01));
        Assert.InRange(fit.Coefficients[0].Estimate, 2, 7);
    }

    [Fact]
    public void OneSpellStillRunningRaisesTheBeliefAboutDurations()
    {
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(Data([Spell.Running(200)]), Believing);
        Assert.True(fit.Coefficients[0].Estimate > 3.5);
        Assert.True(fit.Coefficients[0].StandardError < 1);
    }

    [Fact]
    public void APriorAtAHundredthOfAStandardErrorHoldsItsCoefficient()
    {
        AcceleratedFailureData data = new SyntheticSpells(3).Draw(60, [0, 0], 0.7, 70) with { Groups = [] };
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(
            data, new AcceleratedFailureOptions { CoefficientPriors = [null, new NormalPrior(-2, 1e-4)] });
        Assert.Equal(-2, fit.Coefficients[1].Estimate, 1e-3);
        Assert.Equal(1e-4, fit.Coefficients[1].StandardError, 1e-7);
    }

    [Fact]
    public void WithNothingSoldAndNoPriorsItSaysWhyThereIsNoEstimate()
    {
        var refused = Assert.Throws<NoEstimateException>(() => AcceleratedFailure.Fit(
            Data([Spell.Running(3), Spell.Running(9)]), new AcceleratedFailureOptions()));
        Assert.Contains("None of the 2 spells has ended", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(FailureDistribution.Weibull)]
    [InlineData(FailureDistribution.Lognormal)]
    [InlineData(FailureDistribution.LogLogistic)]
    [InlineData(FailureDistribution.Exponential)]
    public void ACovariateThatOnlyUnsoldPiecesHaveIsNamedOrHeldByAPrior(FailureDistribution distribution)
    {
        double[][] x = [.. Enumerable.Range(0, 20).Select(row => new double[] { 1, row % 4 == 0 ? 1 : 0 })];
        Spell[] spells = [.. Enumerable.Range(0, 20).Select(row => row % 4 == 0 ? Spell.Running(30 + row) : Spell.Ended(3 + row))];
        AcceleratedFailureData data = Data(spells) with { X = x, Groups = [] };
        var options = new AcceleratedFailureOptions { Distribution = distribution };
        var refused = Assert.Throws<NoEstimateException>(() => AcceleratedFailure.Fit(data, options));
        Assert.Contains("'size'", refused.Message, StringComparison.Ordinal);
        AcceleratedFailureFit held = AcceleratedFailure.Fit(data, options with { CoefficientPriors = [null, new NormalPrior(0, 1)] });
        Assert.InRange(held.Coefficients[1].Estimate, 0.2, 4);
    }

    [Fact]
    public void DurationsThatTheCovariatesReproduceExactlyLeaveNoScale()
    {
        var refused = Assert.Throws<NoEstimateException>(() => AcceleratedFailure.Fit(
            Data([Spell.Ended(5), Spell.Ended(9)]) with { X = [[1, 0], [1, 1]], Groups = [] }, new AcceleratedFailureOptions()));
        Assert.Contains("scale", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void AColumnThatRepeatsEarlierOnesIsDroppedAndTheRestIsAsWithoutIt()
    {
        AcceleratedFailureData data = new SyntheticSpells(9).Draw(70, [0, 0], 0.7, 70) with { Groups = [] };
        AcceleratedFailureFit plain = AcceleratedFailure.Fit(data, new AcceleratedFailureOptions());
        AcceleratedFailureData repeated = data with
        {
            CoefficientNames = ["(Intercept)", "size in inches", "size", "nothing"],
            X = [.. data.X.Select(row => new[] { 1, row[1], 3 - 2.54 * row[1], 0 })],
        };
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(repeated, new AcceleratedFailureOptions());
        Assert.Equal<string>(["size", "nothing"], fit.DroppedColumns.ToArray());
        Assert.Equal(plain.Coefficients[1].Estimate, fit.Coefficients[1].Estimate, 1e-10);
        Assert.Equal(plain.Predict([1, 2]).Location, fit.Predict([1, 2, 99, 99]).Location, 1e-10);
    }

    [Fact]
    public void ColumnsOfVeryDifferentUnitsAreAllKept()
    {
        AcceleratedFailureData data = new SyntheticSpells(9).Draw(70, [0, 0], 0.7, 70) with { Groups = [] };
        AcceleratedFailureFit plain = AcceleratedFailure.Fit(data, new AcceleratedFailureOptions());
        AcceleratedFailureFit dayNumbers = AcceleratedFailure.Fit(
            data with { X = [.. data.X.Select(row => new[] { 1, 739000 + 300 * row[1] })] }, new AcceleratedFailureOptions());
        Assert.Equal(plain.Coefficients[1].Estimate, 300 * dayNumbers.Coefficients[1].Estimate, 1e-6);
        Assert.Equal(plain.LogLikelihood, dayNumbers.LogLikelihood, 1e-7);
    }

    [Fact]
    public void OutliersBeyondAllProportionStillConverge()
    {
        AcceleratedFailureData data = new SyntheticSpells(4).Draw(100, [0, 0], 0.5, 1000) with { Groups = [] };
        Spell[] spells = [.. data.Spells];
        spells[0] = Spell.Ended(1e9);
        spells[1] = Spell.Ended(1e-9);
        foreach (FailureDistribution distribution in Enum.GetValues<FailureDistribution>())
        {
            AcceleratedFailureFit fit = AcceleratedFailure.Fit(
                data with { Spells = [.. spells] }, new AcceleratedFailureOptions { Distribution = distribution });
            Assert.True(fit.Convergence.LastStep < 1e-7);
        }
    }

    [Fact]
    public void WrongDataAreNamedByRowAndColumn()
    {
        AcceleratedFailureData data = Data([Spell.Ended(3), Spell.Ended(9)]);
        AssertRefused("no rows", data with { X = [] });
        AssertRefused("Row 1, column 'size'", data with { X = [[1, 2], [1, double.NaN]] });
        AssertRefused("Row 0 of the design has 1 values", data with { X = [[1], [1, 2]] });
        AssertRefused("Row 1 has an empty spell", data with { Spells = [Spell.Ended(3), default] });
        AssertRefused("2 design rows, 1 spells", data with { Spells = [Spell.Ended(3)] });
        AssertRefused("Row 0: weight -1", data with { Weights = [-1, 1] });
        AssertRefused("All weights are zero", data with { Weights = [0, 0] });
        AssertRefused("level index 7", data with { Groups = [data.Groups[0] with { Level = [0, 7] }] });
        AssertRefused("name of its own", data with { CoefficientNames = ["a", "a"] });
    }

    [Fact]
    public void PriorsThatDoNotMatchTheColumnsAreRefused() => Assert.Contains("CoefficientPriors has 1 entries but there are 2",
        Assert.Throws<ArgumentException>(() => AcceleratedFailure.Fit(
            Data([Spell.Ended(3)]), new AcceleratedFailureOptions { CoefficientPriors = [null] })).Message, StringComparison.Ordinal);

    private static void AssertRefused(string part, AcceleratedFailureData data) => Assert.Contains(part,
        Assert.Throws<ArgumentException>(() => AcceleratedFailure.Fit(data, new AcceleratedFailureOptions())).Message, StringComparison.Ordinal);

    private static AcceleratedFailureData Data(Spell[] spells) => new(
        ["(Intercept)", "size"],
        [.. spells.Select((_, row) => new[] { 1, 0.3 * (row % 3) - 0.2 })],
        [.. spells],
        [new GroupColumn("colour", ["white", "navy"], [.. spells.Select((_, row) => row % 2)])],
        null);
}
