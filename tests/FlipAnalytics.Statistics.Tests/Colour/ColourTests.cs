using CsCheck;
using static FlipAnalytics.Statistics.Tests.ReferenceCase;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Against the published pairs and R (ReferenceData/colour), by hand, and by laws.</summary>
public sealed class ColourTests
{
    private static readonly Gen<LabColour> Colours = Gen.Select(
        Gen.Double[0, 100], Gen.Double[-100, 100], Gen.Double[-100, 100], (l, a, b) => new LabColour(l, a, b));

    [Fact]
    public void The_34_published_pairs_differ_as_published()
    {
        ReferenceCase reference = new("colour/01_ciede2000_34");
        LabColour[] ones = Read(reference, "1"), others = Read(reference, "2");
        Assert.Equal(34, ones.Length);
        double[] found = [.. ones.Zip(others, ColourDifference.Ciede2000)];
        AssertClose(reference.At("published"), found, 0, 5e-5, "published");
        AssertClose(reference.At("full_precision"), found, 0, 1e-12, "in full");
        AssertClose(reference.At("reversed_order"), others.Zip(ones, ColourDifference.Ciede2000), 0, 1e-12, "reversed");
    }

    [Fact]
    public void Hexadecimal_colours_and_their_differences_are_R_s()
    {
        ReferenceCase reference = new("colour/02_hex_to_lab");
        LabColour[] colours = [.. reference.Text("hex").Select(LabColour.FromHex)];
        foreach (var (i, line) in reference.At("lab").EnumerateArray().Index())
            AssertClose(line, [colours[i].Lightness, colours[i].A, colours[i].B], 0, 1e-9, $"row {i}");
        foreach (var (i, line) in reference.At("ciede2000_all_pairs").EnumerateArray().Index())
            AssertClose(line, colours.Select(other => ColourDifference.Ciede2000(colours[i], other)), 0, 1e-9, $"row {i}");
    }

    [Fact]
    public void The_difference_is_symmetric_and_none_to_itself() => Gen.Select(Colours, Colours).Sample((one, other) =>
    {
        Assert.Equal(0, ColourDifference.Ciede2000(one, one));
        double difference = ColourDifference.Ciede2000(one, other);
        Assert.InRange(difference, 0, 200);
        Assert.Equal(difference, ColourDifference.Ciede2000(other, one), 1e-9);
    });

    [Fact]
    public void Lightness_chroma_and_hue_lead_back_to_the_colour() => Colours.Sample(colour =>
    {
        LabColour back = LabColour.FromLch(colour.Lightness, colour.Chroma, colour.Hue);
        Assert.InRange(colour.Hue, 0, 360);
        Assert.Equal(colour.A, back.A, 1e-10);
        Assert.Equal(colour.B, back.B, 1e-10);
    });

    [Theory]
    [InlineData("#FFFFFF", "fff")]
    [InlineData("#1133aa", "#13A")]
    public void Short_forms_and_small_letters_are_read(string one, string other) =>
        Assert.Equal(LabColour.FromHex(one), LabColour.FromHex(other));

    [Theory]
    [InlineData("sage")]
    [InlineData("#12345")]
    [InlineData("")]
    [InlineData("##123456")]
    [InlineData("#+12345")]
    public void What_is_no_colour_is_refused_with_an_example(string text) =>
        Assert.Contains("#9CAF88", Assert.Throws<FormatException>(() => LabColour.FromHex(text)).Message, StringComparison.Ordinal);

    /// <summary>Arrows at 350° and 10°: mean 0°, length cos 10°. With weights 3 and 1 at 0° and 90°: atan(1/3).</summary>
    [Fact]
    public void Hues_are_averaged_round_the_circle()
    {
        MeanHue across = MeanHue.Of([350, 10]);
        Assert.Equal(1, Math.Cos(across.Degrees!.Value * Math.PI / 180), 1e-12);
        Assert.Equal(Math.Cos(10 * Math.PI / 180), across.Concentration, 1e-12);
        Assert.Equal(Math.Atan(1.0 / 3) * 180 / Math.PI, MeanHue.Of([0, 90], [3, 1]).Degrees!.Value, 1e-12);
        Assert.Null(MeanHue.Of([0, 120, 240]).Degrees);
        Assert.Null(MeanHue.Of([45, 225]).Degrees);
        Assert.Throws<ArgumentException>(() => MeanHue.Of([]));
        Assert.Throws<ArgumentException>(() => MeanHue.Of([1, 2], [1]));
        Assert.Throws<ArgumentException>(() => MeanHue.Of([1, 2], [0, 0]));
        Assert.Throws<ArgumentException>(() => MeanHue.Of([1, double.NaN]));
    }

    private static LabColour[] Read(ReferenceCase reference, string which)
    {
        double[] l = reference.Numbers("L" + which), a = reference.Numbers("a" + which), b = reference.Numbers("b" + which);
        return [.. l.Select((lightness, i) => new LabColour(lightness, a[i], b[i]))];
    }
}
