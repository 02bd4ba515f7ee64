using System.Globalization;
using System.Text;
using System.Text.Json;
using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Texts from outside are shown without what would upset a terminal, reorder a line or hide in a word.</summary>
public sealed class CleanTextTests
{
    private static readonly Gen<string> AnyText = Gen.Frequency(
        (3, Gen.Char[' ', '~'].Select(sign => sign.ToString())),
        (2, Gen.OneOf("\u001b[31m", "\u202e", "\u200b", "\u200d", "\ufeff", "\u2028", "\u0085", "\u009b", "\r\n", "\t", "\0", "\u2066", "\u00ad", "\ud83d\ude00", "\ud83d")),
        (1, Gen.Char.Select(sign => sign.ToString()))).List[0, 40].Select(string.Concat);

    [Theory]
    [InlineData("sage", "sage")]
    [InlineData("été – 日本 😀", "été – 日本 😀")]
    [InlineData("sa\u200bge\ufeff", "sage")]
    [InlineData("\u202eegas\u202c", "egas")]
    [InlineData("\u001b[31mred\u001b[0m", " [31mred [0m")]
    [InlineData("a\r\nb\tc\u2028d\u0085e\u009bf", "a  b c d e f")]
    [InlineData("\ud83d\udc69\u200d\ud83c\udfa8\ufe0f", "\ud83d\udc69\ud83c\udfa8")]
    public void ATextIsShownOnOneLineWithoutWhatCannotBeSeen(string text, string shown) => Assert.Equal(shown, CleanText.OnOneLine(text));

    [Fact]
    public void HalfASignIsShownAsOneThatCannotBeRead() => Assert.Equal("a\ufffdb", CleanText.OnOneLine("a\ud83db"));

    [Fact]
    public void NoSignOfWhatCannotBeShownIsLeftInAnyText() => AnyText.Sample(text =>
    {
        string line = CleanText.OnOneLine(text);
        Assert.DoesNotContain(line.EnumerateRunes(), IsHarmful);
        Assert.Equal(line, CleanText.OnOneLine(line));
        Assert.DoesNotContain(CleanText.Lines(text).EnumerateRunes(), sign => sign.Value != '\n' && IsHarmful(sign));
    });

    [Fact]
    public void AJsonDocumentSaysTheSameWithoutASignThatCannotBeShown() => AnyText.Sample(text =>
    {
        string whole = string.Concat(text.EnumerateRunes().Where(sign => sign != Rune.ReplacementChar));
        string json = CleanText.Json(JsonSerializer.Serialize(new[] { whole }, JsonStyle.Options()));
        Assert.DoesNotContain(json.EnumerateRunes(), sign => sign.Value != '\n' && IsHarmful(sign));
        Assert.Equal(whole, JsonSerializer.Deserialize<string[]>(json)![0]);
    });

    [Fact]
    public void ATitleOfAMegabyteIsCutWithAMark()
    {
        string shown = CleanText.Shown(new string('x', 1_000_000));
        Assert.Equal(203, shown.Length);
        Assert.EndsWith("xxx...", shown, StringComparison.Ordinal);
        Assert.Equal("short", CleanText.Shown("short"));
        Assert.Equal(new string('x', 199) + "...", CleanText.Shown(new string('x', 199) + "\ud83d\ude00 and on and on"));
    }

    [Fact]
    public void WhateverIsWrittenToATerminalIsClean()
    {
        using var terminal = new StringWriter();
        using var clean = new CleanWriter(terminal);
        clean.Write("a\u001bb\n");
        clean.Write('\u0007');
        clean.Write("\u202ec".AsSpan());
        clean.WriteLine("d\u200be");
        clean.Write("{0}", "f\u001b");
        using var message = new CleanWriter(terminal, isAMessageALine: true);
        message.WriteLine("g\nh");
        Assert.Equal("a b\n cde\nf g h\n", terminal.ToString());
    }

    private static bool IsHarmful(Rune sign) => Rune.GetUnicodeCategory(sign) is UnicodeCategory.Control or UnicodeCategory.Format
        or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate;
}
