using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Words that a look at their letters tells apart are no slips of each other.</summary>
public sealed class LetterMaskTests
{
    private static readonly Gen<string[]> Words = Gen.Char["abno1é"].Array[0, 7].Select(letters => new string(letters)).Array[1, 3];

    [Fact]
    public void NoTwoWordsWithinSlipsAreToldApart() => Gen.Select(Words, Words).Sample((one, other) =>
        WordSlips.Between(one, other) is null || LetterMask.Of(one).MayBeSlipOf(LetterMask.Of(other)));

    [Theory]
    [InlineData("mauve", "mouve", true)]
    [InlineData("dresser", "drseser", true)]
    [InlineData("dresser", "dressers", true)]
    [InlineData("white", "green", false)]
    [InlineData("oak", "ash", false)]
    public void AWordAndItsSlip(string word, string other, bool may) =>
        Assert.Equal(may, LetterMask.Of([word]).MayBeSlipOf(LetterMask.Of([other])));
}
