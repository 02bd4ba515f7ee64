namespace FlipAnalytics.Tests.House;

/// <summary>One concept, one file: a source file has at most 300 lines.</summary>
public sealed class FileLengthTests
{
    private const int MostLines = 300;

    /// <summary>Files that may be longer, each with its reason; none so far.</summary>
    private static readonly string[] Exceptions = [];

    [Theory]
    [InlineData("src")]
    [InlineData("tests")]
    public void ASourceFileHasAtMost300Lines(string folder) => Assert.Empty(
        from file in Repository.Sources(folder)
        let name = Repository.Relative(file)
        let lines = File.ReadLines(file.FullName).Count()
        where lines > MostLines && !Exceptions.Contains(name)
        select $"{name} has {lines} lines");
}
