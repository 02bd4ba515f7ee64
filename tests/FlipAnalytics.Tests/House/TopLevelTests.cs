namespace FlipAnalytics.Tests.House;

/// <summary>The top level of the repository stays as DEVELOPERS.md shows it.</summary>
public sealed class TopLevelTests
{
    private static readonly string[] Rooms =
        ["README.md", "DEVELOPERS.md", "FlipAnalytics.sln", "LICENSE", "src", "tests", "notebooks", "data-demo"];

    [Fact]
    public void NothingElseStandsAtTheTop() => Assert.Empty(
        Strays(Repository.Root.EnumerateFileSystemInfos().Select(entry => entry.Name)));

    [Theory]
    [InlineData("README.md")]
    [InlineData("DEVELOPERS.md")]
    [InlineData("FlipAnalytics.sln")]
    [InlineData("LICENSE")]
    [InlineData("src")]
    [InlineData("tests")]
    public void ARoomIsThere(string name) => Assert.True(Path.Exists(Repository.PathOf(name)), name);

    [Fact]
    public void AStrayFileIsCaught() => Assert.Equal(
        ["global.json", "docs"],
        Strays(["README.md", ".editorconfig", "Directory.Build.props", "global.json", "docs", "artifacts", "src"]));

    private static IEnumerable<string> Strays(IEnumerable<string> names) => names.Where(name =>
        !Rooms.Contains(name)
        && !name.StartsWith('.')
        && !(name.StartsWith("Directory.", StringComparison.Ordinal) && name.EndsWith(".props", StringComparison.Ordinal))
        && !Repository.IsMadeByBuilding(name));
}
