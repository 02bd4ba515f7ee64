namespace FlipAnalytics.Statistics.Tests;

/// <summary>Runs the examples of src/FlipAnalytics.Statistics/README.md: each stands between markers in a test, and must be the
/// same text as in the README and print what the README says it prints.</summary>
public abstract class ReadmeExample
{
    private const string Using = "using FlipAnalytics.Statistics;";

    private static readonly string Root = FindRoot();
    private static readonly string[] Readme =
        File.ReadAllLines(Path.Combine(Root, "src", "FlipAnalytics.Statistics", "README.md"));

    /// <summary>Stands in for the console, so that an example reads as in a program.</summary>
    protected StringWriter Console { get; } = new() { NewLine = "\n" };

    /// <summary>Compares code and output with the README's section of that heading.</summary>
    protected void ProveSection(string heading, string file)
    {
        int section = Array.IndexOf(Readme, "## " + heading);
        Assert.True(section >= 0, $"The README has no section '{heading}'.");
        string program = Block(section, "```csharp");
        Assert.Equal(program, Using + "\n\n" + Code(heading, file));
        Assert.Equal(Block(section, "```text"), Console.ToString().TrimEnd('\n'));
    }

    /// <summary>Headings of all sections with a program.</summary>
    protected static IEnumerable<string> SectionsWithPrograms() => Readme.Index()
        .Where(line => line.Item == "```csharp")
        .Select(line => Readme[..line.Index].Last(text => text.StartsWith("## ", StringComparison.Ordinal))[3..]);

    /// <summary>The lines between the markers, less the indentation of a method's body.</summary>
    private static string Code(string heading, string file)
    {
        string[] lines = File.ReadAllLines(
            Path.Combine(Root, "tests", "FlipAnalytics.Statistics.Tests", "Examples", file + ".cs"));
        int from = Array.FindIndex(lines, line => line.Trim() == $"// Example: {heading}");
        int to = Array.FindIndex(lines, Math.Max(from, 0), line => line.Trim() == "// End of example");
        Assert.True(from >= 0 && to > from, $"{file}.cs has no example '{heading}'.");
        return string.Join('\n', lines[(from + 1)..to].Select(line => line.Length >= 8 ? line[8..] : line));
    }

    private static string Block(int section, string fence)
    {
        int from = Array.IndexOf(Readme, fence, section);
        int to = Array.IndexOf(Readme, "```", from);
        return string.Join('\n', Readme[(from + 1)..to]);
    }

    private static string FindRoot()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "FlipAnalytics.sln")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException("The tests must run inside the repository.");
    }
}
