using System.Xml.Linq;

namespace FlipAnalytics.Tests.House;

/// <summary>Statistics ← FlipAnalytics ← Plots ← {Notebooks, Cli}: no project refers back, nor the last two to each other.</summary>
public sealed class ReferenceDirectionTests
{
    private static readonly Dictionary<string, string[]> MayReferTo = new()
    {
        ["FlipAnalytics.Statistics"] = [],
        ["FlipAnalytics"] = ["FlipAnalytics.Statistics"],
        ["FlipAnalytics.Plots"] = ["FlipAnalytics", "FlipAnalytics.Statistics"],
        ["FlipAnalytics.Notebooks"] = ["FlipAnalytics.Plots", "FlipAnalytics", "FlipAnalytics.Statistics"],
        ["FlipAnalytics.Cli"] = ["FlipAnalytics.Plots", "FlipAnalytics", "FlipAnalytics.Statistics"],
    };

    [Fact]
    public void EveryProjectOfTheSourceHasItsPlace() => Assert.Equal(
        MayReferTo.Keys.Order(StringComparer.Ordinal),
        new DirectoryInfo(Repository.PathOf("src")).EnumerateDirectories()
            .Where(folder => folder.EnumerateFiles("*.csproj").Any())
            .Select(folder => folder.Name)
            .Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("FlipAnalytics.Statistics")]
    [InlineData("FlipAnalytics")]
    [InlineData("FlipAnalytics.Plots")]
    [InlineData("FlipAnalytics.Notebooks")]
    [InlineData("FlipAnalytics.Cli")]
    public void AProjectRefersOnlyToThoseBeforeIt(string project) =>
        Assert.Empty(References(Repository.Read("src", project, project + ".csproj")).Except(MayReferTo[project]));

    /// <summary>It is large, and whoever asks what to pay should not wait for it to be fetched and built.</summary>
    [Fact]
    public void OnlyTheNotebooksBringTheNotebookEngine() => Assert.Equal(
        ["FlipAnalytics.Notebooks"],
        MayReferTo.Keys.Where(project => Repository.Read("src", project, project + ".csproj") is var text
            && (text.Contains("Microsoft.DotNet.Interactive", StringComparison.Ordinal)
                || text.Contains("Microsoft.Data.Analysis", StringComparison.Ordinal))));

    [Fact]
    public void TheTestsOfTheStatisticsReferToTheStatisticsAlone() => Assert.Equal(
        ["FlipAnalytics.Statistics"],
        References(Repository.Read(
            "tests", "FlipAnalytics.Statistics.Tests", "FlipAnalytics.Statistics.Tests.csproj")));

    [Fact]
    public void AReferenceIsReadFromEitherKindOfSlash() => Assert.Equal(
        ["A.B", "C"],
        References("""
            <Project><ItemGroup>
              <ProjectReference Include="../A.B/A.B.csproj" /><ProjectReference Include="..\C\C.csproj" />
            </ItemGroup></Project>
            """));

    private static IEnumerable<string> References(string project) => XDocument.Parse(project)
        .Descendants("ProjectReference")
        .Select(reference => reference.Attribute("Include")!.Value.Replace('\\', '/'))
        .Select(path => Path.GetFileNameWithoutExtension(path)!);
}
