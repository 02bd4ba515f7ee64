using System.Text.RegularExpressions;

namespace FlipAnalytics.Tests.House;

/// <summary>A file that the guide for contributors names is there, under the name it gives.</summary>
public sealed partial class NamedFilesTests
{
    private static readonly string[] Roots = ["", "src/FlipAnalytics", "src/FlipAnalytics/Costing", "src/FlipAnalytics/Reports/Quarter"];

    [Fact]
    public void Every_source_file_that_the_guide_names_exists()
    {
        string[] named = [.. SourceFiles().Matches(Repository.Read("DEVELOPERS.md")).Select(match => match.Groups[1].Value).Distinct()];
        Assert.True(named.Length > 60, $"Only {named.Length} files are named; the guide is not read as it is written.");
        string[] missing = [.. named.Where(file => !IsThere(file))];
        Assert.Empty(missing);
    }

    // Some passages speak of one folder only, such as the conventions of the books.
    private static bool IsThere(string file) =>
        Roots.Any(root => File.Exists(Repository.PathOf([.. $"{root}/{file}".Split('/', StringSplitOptions.RemoveEmptyEntries)])))
        || (!file.Contains('/') && Repository.Sources("src").Concat(Repository.Sources("tests")).Any(source => source.Name == file));

    [GeneratedRegex(@"`([\w./]+\.cs)`")]
    private static partial Regex SourceFiles();
}
