using System.Collections.Immutable;

namespace FlipAnalytics.Tests.Decisions;

public sealed class CautionsTests
{
    [Theory]
    [InlineData("crib")]
    [InlineData("Drop-side cot")]
    [InlineData("baby cribs")]
    public void ACribComesFirstAsNotToBuyBy16Cfr1219And1220(string type)
    {
        Caution first = For(type)[0];
        Assert.Equal("cribs", first.Topic);
        Assert.Contains("16 CFR 1219 and 1220", first.Source, StringComparison.Ordinal);
        Assert.StartsWith("Do not buy", first.Text, StringComparison.Ordinal);
        Assert.True(first.When.HasFlag(CautionTime.Buying));
    }

    [Fact]
    public void APlainNightstandGetsALeadReminderPestsAndRecallsOnly() =>
        Assert.Equal(["lead", "pests", "recalls"], Topics(For("nightstand")));

    [Fact]
    public void APlainTableGetsALeadReminderAndRecallsOnly() =>
        Assert.Equal(["lead", "recalls"], Topics(For("coffee table")));

    [Theory]
    [InlineData(26.9, LengthUnit.Inch, false)]
    [InlineData(27, LengthUnit.Inch, true)]
    [InlineData(68.5, LengthUnit.Centimetre, false)]
    [InlineData(68.58, LengthUnit.Centimetre, true)]
    public void ClothingStorageTipsOverFrom27InchesBy16Cfr1261(double height, LengthUnit unit, bool expected) =>
        Assert.Equal(expected, Has16Cfr1261(Cautions.For(
            new() { Type = "dresser", Height = (decimal)height, LengthUnit = unit })));

    [Fact]
    public void ClothingStorageOfUnknownHeightIsCautionedBy16Cfr1261() => Assert.True(Has16Cfr1261(For("armoire")));

    [Fact]
    public void AChestTooSmallToEnclose3Point2CubicFeetIsNoClothingStorageUnitBy16Cfr1261() =>
        Assert.False(Has16Cfr1261(Cautions.For(
            new() { Type = "chest of drawers", Width = 16, Depth = 12, Height = 28 })));

    [Fact]
    public void ABookcaseIsOutside16Cfr1261AndKeepsTheAnchorNoteOfGoodPractice()
    {
        ImmutableArray<Caution> cautions = For("bookcase");
        Assert.False(Has16Cfr1261(cautions));
        Assert.Equal(SourceStatus.CommonPractice, cautions.Single(c => c.Topic == "tip-over").Status);
    }

    [Fact]
    public void ADiningTableDoesNotTip() => Assert.DoesNotContain(
        "tip-over", Topics(Cautions.For(new() { Type = "dining table", Height = 30 })));

    [Theory]
    [InlineData("antique", true)]
    [InlineData("solid 1950s piece", true)]
    [InlineData("made in 1962", true)]
    [InlineData("a '60s classic", true)]
    [InlineData("mid-century modern", true)]
    [InlineData("Victorian", true)]
    [InlineData("made in 1995", false)]
    [InlineData("60 in wide", false)]
    [InlineData("modern", false)]
    public void PaintOlderThan1978IsLeadSuspectBy16Cfr1303(string notes, bool suspect)
    {
        Caution lead = Cautions.For(new() { Type = "desk", Notes = notes }).Single(c => c.Topic == "lead");
        Assert.Contains("16 CFR 1303", lead.Source, StringComparison.Ordinal);
        Assert.Equal(suspect, lead.When.HasFlag(CautionTime.Buying));
    }

    [Theory]
    [InlineData("blanket chest")]
    [InlineData("toy box")]
    [InlineData("cedar chest")]
    [InlineData("chest")]
    public void AChestWithALidNeedsItsLatchOffByTheCpscReleaseOf2014(string type) =>
        Assert.Contains(For(type), c => c.Topic == "chests with latches"
            && c.Source.Contains("CPSC release of 5 March 2014", StringComparison.Ordinal));

    [Fact]
    public void AChestOfDrawersHasNoLid() => Assert.DoesNotContain("chests with latches", Topics(For("chest of drawers")));

    [Fact]
    public void ASofaMeetsTheUsAndTheUkFireRulesBy16Cfr1640AndSi1988No1324()
    {
        ImmutableArray<Caution> cautions = For("sofa");
        Assert.Contains(cautions, c => c.Jurisdiction == "US" && c.Source.Contains("16 CFR 1640", StringComparison.Ordinal));
        Assert.Contains(cautions, c => c.Jurisdiction == "UK" && c.Source.Contains("SI 1988/1324", StringComparison.Ordinal));
        Assert.Contains(cautions, c => c.Topic == "upholstery tags" && c.Jurisdiction == "US states");
        Assert.Contains(cautions, c => c.Topic == "pests" && c.When == CautionTime.Buying);
    }

    [Fact]
    public void AMattressIsBestLeftAloneByStateLaw() => Assert.Equal("mattresses", For("mattress")[0].Topic);

    [Fact]
    public void ABunkBedIsMarkedAsFromMemoryFor16Cfr1213() =>
        Assert.Equal(SourceStatus.FromMemory, For("bunk bed").Single(c => c.Topic == "bunk beds").Status);

    [Theory]
    [InlineData(Condition.Damaged, true)]
    [InlineData(Condition.Sound, false)]
    public void BrokenNurseryFurnitureIsNotSoldByTheCpscResaleAnswers(Condition condition, bool expected) =>
        Assert.Equal(expected, Topics(Cautions.For(new() { Type = "high chair", Condition = condition }))
            .Contains("nursery furniture"));

    [Theory]
    [InlineData("table lamp", true)]
    [InlineData("lamp table", false)]
    public void ALampIsTestedByTheTradingStandardsLeafletAndALampTableIsNoLamp(string type, bool expected) =>
        Assert.Equal(expected, Topics(For(type)).Contains("electrics"));

    [Theory]
    [InlineData("danish oil", "rags")]
    [InlineData("dark stain", "rags")]
    [InlineData("shellac", "solvents")]
    public void TheFinishBringsItsFireCautionByFireMarshalsAndNfpa30(string finish, string topic) =>
        Assert.Contains(topic, Topics(Cautions.For(new() { Type = "table", Finish = finish })));

    [Fact]
    public void AWaterStainIsNoFinish() => Assert.DoesNotContain(
        "rags", Topics(Cautions.For(new() { Type = "table", Notes = "water stain on top" })));

    [Fact]
    public void StrippingBringsTheMethyleneChlorideRuleOf40Cfr751() => Assert.Contains(
        Cautions.For(new() { Type = "table", Notes = "needs stripping" }),
        c => c.Source.Contains("40 CFR 751", StringComparison.Ordinal));

    [Fact]
    public void OakMakesDustAndAWalnutColourDoesNotByNiosh()
    {
        Assert.Contains("wood dust", Topics(Cautions.For(new() { Type = "desk", Material = "oak" })));
        Assert.DoesNotContain("wood dust", Topics(Cautions.For(new() { Type = "desk", Colour = "walnut" })));
    }

    [Fact]
    public void EveryCautionNamesASourceAPlaceAndSomeoneToAskOrALabel() => Assert.All(
        CautionsOfManyPieces(),
        caution =>
        {
            Assert.NotEqual(CautionTime.None, caution.When);
            Assert.NotEqual("", caution.Source);
            Assert.Matches("US|UK|EU|all", caution.Jurisdiction);
            Assert.Matches("[Aa]sk|label|CPSC|OSHA|standard", caution.Text);
            Assert.True(caution.Text.Count(sign => sign == '.') <= 4, caution.Text);
        });

    [Fact]
    public void ALengthOfZeroIsRefusedWithTheRemedy()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => new CautionQuery { Type = "desk", Height = 0 });
        Assert.Contains("leave it out", error.Message, StringComparison.Ordinal);
    }

    private static ImmutableArray<Caution> For(string type) => Cautions.For(new() { Type = type });

    private static string[] Topics(ImmutableArray<Caution> cautions) => [.. cautions.Select(c => c.Topic)];

    private static bool Has16Cfr1261(ImmutableArray<Caution> cautions) =>
        cautions.Any(c => c.Source.Contains("16 CFR 1261", StringComparison.Ordinal));

    private static IEnumerable<Caution> CautionsOfManyPieces() =>
        new[] { "crib", "mattress", "bunk bed", "chest", "sofa", "lamp", "bookcase", "armoire", "kitchen cabinet" }
            .SelectMany(type => Cautions.For(new()
            {
                Type = type,
                Material = "oak and plywood",
                Finish = "oil and shellac",
                Notes = "1950s, stripped, converted, musty, insulation",
            }));
}
