namespace FlipAnalytics.Tests.Notebooks;

/// <summary>A missing program is never passed over in silence.</summary>
public sealed class OutsideProgramTests
{
    private static readonly OutsideProgram Absent = new(["no-such-program"], "Install it.");

    [Fact]
    public void ATestWithoutItsProgramIsLeftOutAndSaysWhatToInstall() =>
        Assert.Equal("Install it.", Absent.ReasonToSkipWith("/bin", null));

    [Fact]
    public void WhereNothingMayBeLeftOutItRunsAndFailsWithTheSameSentence()
    {
        Assert.Null(Absent.ReasonToSkipWith("/bin", "1"));
        Assert.Equal("Install it.", Assert.Throws<FileNotFoundException>(() => Absent.Path).Message);
    }

    [Fact]
    public void ATestWithItsProgramRuns()
    {
        string folder = Directory.CreateTempSubdirectory("flip-program-").FullName;
        File.WriteAllText(Path.Combine(folder, "no-such-program"), "");
        Assert.Null(Absent.ReasonToSkipWith(folder, null));
        Directory.Delete(folder, recursive: true);
    }
}
