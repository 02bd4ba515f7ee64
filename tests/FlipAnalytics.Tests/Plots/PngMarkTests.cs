using System.Text;
using FlipAnalytics.Plots;
using SkiaSharp;

namespace FlipAnalytics.Tests.Plots;

/// <summary>A picture that flip drew is known as such, and still a picture.</summary>
public sealed class PngMarkTests
{
    private static readonly byte[] Picture = Dot();

    [Fact]
    public void TheCheckOfAChunkIsThatOfTheSpecification() =>
        // The check value of this code, CRC-32/ISO-HDLC in the catalogue of parametrised CRC algorithms.
        Assert.Equal(0xCBF43926, PngMark.Code("123456789"u8));

    [Fact]
    public void AMarkedPictureIsAPictureAndKnownUntilAByteChanges()
    {
        byte[] marked = PngMark.Sealed(Picture);
        Assert.True(PngMark.IsOn(marked));
        Assert.False(PngMark.IsOn(Picture));
        using SKBitmap shown = SKBitmap.Decode(marked);
        Assert.Equal((3, 2), (shown.Width, shown.Height));
        int end = marked.AsSpan().LastIndexOf("tEXt"u8);
        Assert.Equal("Software\0Written by flip: ", Encoding.ASCII.GetString(marked, end + 4, 26));
        for (int place = 0; place < marked.Length - 16; place += 7)
        {
            byte[] changed = [.. marked];
            changed[place] ^= 1;
            Assert.False(PngMark.IsOn(changed), $"byte {place}");
        }
    }

    [Fact]
    public void WhatIsNoPictureCarriesNoMark()
    {
        Assert.False(PngMark.IsOn(Array.Empty<byte>()));
        Assert.False(PngMark.IsOn("my notes, in a file of this name"u8.ToArray()));
    }

    private static byte[] Dot()
    {
        using var bitmap = new SKBitmap(3, 2);
        using SKData data = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
