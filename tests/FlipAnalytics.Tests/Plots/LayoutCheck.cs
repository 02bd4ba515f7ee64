using System.Text.RegularExpressions;
using System.Xml.Linq;
using FlipAnalytics.Plots;
using SkiaSharp;

namespace FlipAnalytics.Tests.Plots;

/// <summary>What every picture has to keep to.</summary>
internal static partial class LayoutCheck
{
    /// <summary>
    /// No text overlaps another or leaves the picture, nothing is written that was not placed, and the picture can be
    /// saved both ways with its alternative text.
    /// </summary>
    public static void IsReadable(Figure figure)
    {
        Assert.Equal(700, figure.Width);
        Words[] texts = [.. figure.Texts];
        Assert.NotEmpty(texts);
        Assert.All(texts, text => Assert.True(
            text.Rect.Left >= 0 && text.Rect.Right <= figure.Width && text.Rect.Top >= 0 && text.Rect.Bottom <= figure.Height,
            $"'{text.Text}' leaves the picture of {figure.Width} by {figure.Height}: {text.Rect}"));
        for (int i = 0; i < texts.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                Assert.False(
                    texts[i].Overlaps(texts[j]),
                    $"'{texts[i].Text}' {texts[i].Rect} and '{texts[j].Text}' {texts[j].Rect} overlap.");
            }
        }

        Assert.False(string.IsNullOrWhiteSpace(figure.Title));
        Assert.StartsWith(figure.Title.TrimEnd('.'), figure.Alternative, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", figure.Alternative, StringComparison.Ordinal);
        Assert.DoesNotContain(texts, text => text.Text.Contains("NaN", StringComparison.Ordinal));
        WritesOnlyWhatWasPlaced(figure, texts);
        EachTextIsSeen(figure, texts);
    }

    /// <summary>The sentence of a picture without data: a title, a reason and no axes.</summary>
    public static string Sentence(Figure figure)
    {
        IsReadable(figure);
        string[] texts = [.. figure.Texts.Select(text => text.Text.ReplaceLineEndings(" "))];
        Assert.Equal(2, texts.Length);
        return texts[1];
    }

    private static void WritesOnlyWhatWasPlaced(Figure figure, Words[] texts)
    {
        XElement svg = XDocument.Parse(figure.Svg()).Root!;
        XNamespace names = svg.Name.Namespace;
        Assert.Equal("img", (string?)svg.Attribute("role"));
        Assert.Equal(figure.Title, (string?)svg.Element(names + "title"));
        Assert.Equal(figure.Alternative, (string?)svg.Element(names + "desc"));
        Assert.Equal(
            texts.SelectMany(text => text.Text.Split('\n')).Select(Letters).Order(StringComparer.Ordinal),
            svg.Descendants(names + "text").Select(text => Letters(text.Value)).Order(StringComparer.Ordinal));
        Assert.Equal("PNG"u8.ToArray(), figure.Png()[1..4]);
    }

    private static void EachTextIsSeen(Figure figure, Words[] texts)
    {
        using SKBitmap picture = SKBitmap.Decode(figure.Png());
        Assert.Equal((figure.Width, figure.Height), (picture.Width, picture.Height));
        Assert.All(texts, text => Assert.True(
            Enumerable.Range((int)text.Rect.Left, (int)text.Rect.Width + 1).Any(x =>
                Enumerable.Range((int)text.Rect.Top, (int)text.Rect.Height).Any(y => picture.GetPixel(x, y).Red < 128)),
            $"'{text.Text}' cannot be seen."));
    }

    private static string Letters(string text) => Space().Replace(text, "");

    [GeneratedRegex(@"\s")]
    private static partial Regex Space();
}
