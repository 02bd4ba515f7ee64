using System.Text.RegularExpressions;

namespace FlipAnalytics.Tests.House;

/// <summary>Color is spelt one way in every text that the owner reads; names in code may be spelt either way.</summary>
public sealed partial class OneSpellingTests
{
    // Lists of words that owners may write, in either spelling.
    private static readonly string[] WordLists = ["WordForm.cs", "ColourFamily.cs"];

    [Fact]
    public void No_text_of_the_library_or_the_command_spells_color_otherwise()
    {
        foreach (FileInfo file in Repository.Sources("src").Where(file => !WordLists.Contains(file.Name)))
        {
            foreach (string line in File.ReadLines(file.FullName).Where(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal)))
            {
                foreach (Match text in Texts().Matches(line))
                {
                    string said = Holes().Replace(text.Value, "");
                    Assert.False(Word().IsMatch(said) && said != "\"--colour\"", $"{Repository.Relative(file)}: {said}");
                }
            }
        }
    }

    [Fact]
    public void Nor_does_a_readme_or_a_notebook()
    {
        foreach (string path in new[] { "README.md", "DEVELOPERS.md", "src/FlipAnalytics.Statistics/README.md" }
            .Concat(Directory.EnumerateFiles(Repository.PathOf("notebooks"), "*.ipynb")))
        {
            foreach (Match word in Prose().Matches(File.ReadAllText(Repository.PathOf(path))))
                Assert.Fail($"{path}: {word.Value}");
        }
    }

    [GeneratedRegex("\"(?:[^\"\\\\]|\\\\.)*\"")]
    private static partial Regex Texts();

    [GeneratedRegex(@"\{[^{}]*\}")]
    private static partial Regex Holes();

    [GeneratedRegex(@"\b[Cc]olours?\b(?![.(])")]
    private static partial Regex Word();

    // A word by itself; not a name in code (ColourFamily, `colour`, Colour = color).
    [GeneratedRegex(@"(?<![`\w./])[Cc]olou?rs?(?<=our|ours)(?!\w|`| =|/)")]
    private static partial Regex Prose();
}
