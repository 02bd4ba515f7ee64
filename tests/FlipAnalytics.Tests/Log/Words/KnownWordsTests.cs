namespace FlipAnalytics.Tests;

public sealed class KnownWordsTests
{
    private static readonly KnownWords Log = new(
        ["dresser", "nightstand", "chest of drawers", "side chair", "coffee table", "dining table", "bookcase", "desk", "bench",
            "gray", "off-white", "dusty blue", "online", "charity shop", "shelf"]);

    [Theory]
    [InlineData("Dresser", "dresser")]
    [InlineData("dressers", "dresser")]
    [InlineData(" night stand", "nightstand")]
    [InlineData("night-stands", "nightstand")]
    [InlineData("chests of drawers", "chest of drawers")]
    [InlineData("SIDE CHAIRS", "side chair")]
    [InlineData("benches", "bench")]
    [InlineData("shelves", "shelf")]
    [InlineData("book cases", "bookcase")]
    [InlineData("grey", "gray")]
    [InlineData("off white", "off-white")]
    [InlineData("offwhite", "off-white")]
    [InlineData("on-line", "online")]
    [InlineData("Charity Shops", "charity shop")]
    public void Number_case_spaces_hyphens_and_spelling_make_no_other_word(string written, string meant)
    {
        WordMatch match = Log.Find(written);

        Assert.Equal((WordFit.SameWord, meant), (match.Fit, match.Words.Single()));
    }

    [Theory]
    [InlineData("dreser", "dresser")]
    [InlineData("drseser", "dresser")]
    [InlineData("dressser", "dresser")]
    [InlineData("nigthstand", "nightstand")]
    [InlineData("nighstands", "nightstand")]
    [InlineData("chest of drawrs", "chest of drawers")]
    [InlineData("cofee table", "coffee table")]
    [InlineData("bokcase", "bookcase")]
    [InlineData("dsek", "desk")]
    [InlineData("onlne", "online")]
    [InlineData("charety shop", "charity shop")]
    [InlineData("dusty bleu", "dusty blue")]
    [InlineData("dress", "dresser")]
    [InlineData("nights", "nightstand")]
    public void A_slip_of_the_pen_is_seen(string written, string meant)
    {
        WordMatch match = Log.Find(written);

        Assert.Equal((WordFit.Resembles, meant), (match.Fit, match.Choice));
    }

    [Theory]
    [InlineData("wardrobe")]
    [InlineData("chair")]
    [InlineData("disk drive")]
    [InlineData("oak")]
    [InlineData("stool")]
    [InlineData("dusty pink")]
    [InlineData("4")]
    [InlineData("?")]
    public void A_word_like_none_is_new(string written) => Assert.Equal(WordFit.New, Log.Find(written).Fit);

    [Fact]
    public void A_new_word_names_those_that_share_a_part_with_it()
    {
        Assert.Equal("coffee table or dining table", Log.Find("table").Choice);
        Assert.Equal("side chair", Log.Find("oak side chair").Choice);
        Assert.Empty(Log.Find("wardrobe").Words);
    }

    [Fact]
    public void Numbers_are_never_a_slip_of_one_another() =>
        Assert.Equal(WordFit.New, new KnownWords(["drawer unit 4", "P0151"]).Find("drawer unit 5").Fit);

    [Fact]
    public void Of_three_hundred_words_of_the_trade_none_is_taken_for_another()
    {
        Assert.InRange(FurnitureWords.Types.Length, 100, 200);
        foreach (string[] words in FurnitureWords.Lists)
        {
            for (int i = 0; i < words.Length; i++)
            {
                WordMatch match = new KnownWords(words.Where((_, place) => place != i)).Find(words[i]);
                Assert.True(match.Fit == WordFit.New, $"{words[i]} is taken for {match.Choice}");
            }
        }
    }
}
