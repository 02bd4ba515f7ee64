using System.Text;

namespace FlipAnalytics.Tests;

/// <summary>One way of writing files: complete or not at all, and nothing of the owner's replaced unasked.</summary>
public sealed class OutputFilesTests : IDisposable
{
    private readonly LogFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void OnAFullDiskTheOldFileStaysAndNoStumpIsLeft()
    {
        string old = Old("answer.svg", "as it was");
        IOException error = Assert.Throws<IOException>(() => OutputFiles.Stage([(old, Bytes("a new picture"))], path => new FullDisk(path)));
        Assert.Equal("as it was", File.ReadAllText(old));
        Assert.Equal([old], Directory.GetFileSystemEntries(folder.Path));
        Assert.StartsWith($"{old} could not be written, and what was there before is as it was (No space left", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void WhereTheSecondOfTwoFilesDoesNotFitTheFirstIsNotReplacedEither()
    {
        string first = Old("a.csv", "as it was");
        string second = Path.Combine(folder.Path, "new", "deep", "b.csv");
        int opened = 0;
        Assert.Throws<IOException>(() => OutputFiles.Stage(
            [(first, Bytes("new")), (second, Bytes("new"))],
            path => ++opened == 1 ? new FileStream(path, FileMode.CreateNew) : new FullDisk(path)));
        Assert.Equal("as it was", File.ReadAllText(first));
        Assert.Equal([first], Directory.GetFileSystemEntries(folder.Path));
    }

    [Fact]
    public void WhatAKilledRunLeftBehindIsReplacedAndNotWrittenInto()
    {
        string mine = Old("mine.txt", "as it was");
        string stump = Path.Combine(folder.Path, ".a.csv.flip-unfinished");
        File.CreateSymbolicLink(stump, mine);
        string path = Path.Combine(folder.Path, "a.csv");
        OutputFiles.Write([OutputFile.Table(path, Bytes("x\n1\n"))]);
        Assert.Equal("as it was", File.ReadAllText(mine));
        Assert.Equal("x\n1\n", File.ReadAllText(path));
        Assert.False(Path.Exists(stump));
    }

    [Theory]
    [InlineData("pieces.csv")]
    [InlineData("Pieces.CSV")]
    [InlineData("hours.csv")]
    [InlineData("money.csv")]
    [InlineData("workshop.toml")]
    [InlineData("colors.csv. .")]
    public void AFileWithTheNameOfAFileOfALogIsNeverWritten(string name)
    {
        string path = Old(name, "as it was");
        FileRefusedException refusal = Assert.Throws<FileRefusedException>(
            () => OutputFiles.Write([OutputFile.Table(path, Bytes("as it was"))], replaces: true));
        Assert.Equal($"{path} has the name of a file of a log, which is never written over: name another file.", refusal.Message);
        Assert.Equal("as it was", File.ReadAllText(path));
        Assert.NotNull(OutputFiles.Refusal(Path.Combine(folder.Path, "none", name), _ => true, replaces: true));
    }

    [Fact]
    public void ALinkToAFileOfALogIsNeverWrittenThrough()
    {
        string log = Old("pieces.csv", "as it was");
        string near = Path.Combine(folder.Path, "near.csv");
        string far = Path.Combine(folder.Path, "far.csv");
        File.CreateSymbolicLink(near, "pieces.csv");
        File.CreateSymbolicLink(far, near);
        foreach (string link in new[] { near, far })
        {
            Assert.Equal(
                $"{link}, a link to {log}, has the name of a file of a log, which is never written over: name another file.",
                OutputFiles.Refusal(link, _ => true, replaces: true));
        }
    }

    [Fact]
    public void AnyOtherLinkStaysALinkAndTheFileBehindItIsReplaced()
    {
        string target = Old("real.csv", "x\nold\n");
        string link = Path.Combine(folder.Path, "link.csv");
        File.CreateSymbolicLink(link, "real.csv");
        OutputFiles.Write([OutputFile.Table(link, Bytes("x\nnew\n"))]);
        Assert.Equal("real.csv", new FileInfo(link).LinkTarget);
        Assert.Equal("x\nnew\n", File.ReadAllText(target));
    }

    [Fact]
    public void ATableIsReplacedByTheSameTableAndByNoOther()
    {
        string path = Old("figures.csv", "month,profit\n2026-01,5\n");
        OutputFiles.Write([OutputFile.Table(path, Bytes("month,profit\n2026-02,6\n"))]);
        OutputFile other = OutputFile.Table(path, Bytes("month,loss\n2026-02,6\n"));
        FileRefusedException refusal = Assert.Throws<FileRefusedException>(() => OutputFiles.Write([other]));
        Assert.Equal(
            $"{path} is there already, and was not written by flip, or changed since: name another file, or add --force to replace it.",
            refusal.Message);
        Assert.Equal("month,profit\n2026-02,6\n", File.ReadAllText(path));
        OutputFiles.Write([other], replaces: true);
        Assert.Equal("month,loss\n2026-02,6\n", File.ReadAllText(path));
    }

    [Fact]
    public void WhereOneOfSeveralFilesMayNotBeReplacedNoneIs()
    {
        string own = Old("a.csv", "x\n1\n");
        string other = Old("b.csv", "my notes\n");
        Assert.Throws<FileRefusedException>(() => OutputFiles.Write(
            [OutputFile.Table(own, Bytes("x\n2\n")), OutputFile.Table(other, Bytes("x\n2\n"))]));
        Assert.Equal("x\n1\n", File.ReadAllText(own));
    }

    [Fact]
    public void AMarkedFileIsKnownUntilAByteOfItChanges()
    {
        string path = Path.Combine(folder.Path, "page.html");
        OutputFiles.Write([OutputFile.Marked(path, $"<p>5</p><!-- {OwnMark.Place} -->")]);
        OutputFiles.Write([OutputFile.Marked(path, $"<p>6</p><!-- {OwnMark.Place} -->")]);
        Assert.StartsWith("<p>6</p>", File.ReadAllText(path), StringComparison.Ordinal);
        File.WriteAllText(path, File.ReadAllText(path).Replace('6', '7'));
        Assert.Throws<FileRefusedException>(() => OutputFiles.Write([OutputFile.Marked(path, $"<p>8</p><!-- {OwnMark.Place} -->")]));
        Assert.StartsWith("<p>7</p>", File.ReadAllText(path), StringComparison.Ordinal);
    }

    [Fact]
    public void WordsOfTheOwnersThatLookLikeTheMarkDoNotUpsetIt()
    {
        byte[] page = OwnMark.Sealed(Bytes($"<p>{OwnMark.Place} Written by flip: abc</p><!-- {OwnMark.Place} -->"));
        Assert.True(OwnMark.IsOn(page));
        Assert.False(OwnMark.IsOn(Bytes("Written by flip: abc")));
        Assert.False(OwnMark.IsOn(Bytes($"<!-- {OwnMark.Place} -->")));
    }

    [Fact]
    public void AFolderOrADeviceIsNoPlaceForAFile()
    {
        Assert.EndsWith("is a folder: name a file in it.", OutputFiles.Refusal(folder.Path, _ => true, replaces: true), StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows())
            Assert.Equal("/dev/null is no ordinary file: name a file in a folder of yours.", OutputFiles.Refusal("/dev/null", _ => true, replaces: true));
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    private string Old(string name, string text) => Path.Combine(folder.With(name, text).Path, name);

    // Takes some bytes, then says what a full disk says.
    private sealed class FullDisk(string path) : FileStream(path, FileMode.CreateNew)
    {
        public override void Write(ReadOnlySpan<byte> buffer)
        {
            base.Write(buffer[..(buffer.Length / 2)]);
            base.Flush();
            throw new IOException("No space left on device");
        }
    }
}
