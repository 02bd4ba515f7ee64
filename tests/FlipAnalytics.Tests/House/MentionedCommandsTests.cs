using System.CommandLine;
using System.Text.RegularExpressions;
using FlipAnalytics.Cli;

namespace FlipAnalytics.Tests.House;

/// <summary>What a text tells the owner to type can be typed: every verb and option named anywhere exists.</summary>
public sealed partial class MentionedCommandsTests
{
    // After these words "flip" is the thing that was bought and sold, not the command.
    private static readonly string[] Nouns = ["each", "every", "the", "a", "one", "per", "middle", "of", "no", "this", "that"];

    // What follows the thing in a sentence, where none of the words above stands before it.
    private static readonly string[] OfTheThing = ["lost", "paid", "carries", "left", "leaves", "with", "pay", "pays", "works"];

    private static readonly Dictionary<string, string[]> Verbs = Program.Parse([]).RootCommandResult.Command.Subcommands.ToDictionary(
        verb => verb.Name, verb => OptionsOf(verb).Append("--help").ToArray());

    [Fact]
    public void EveryVerbThatATextNamesExists()
    {
        (string Where, string Verb)[] named = [.. Texts().SelectMany(text => VerbsIn(text.Text).Select(verb => (text.Where, verb)))];
        Assert.InRange(named.Length, 60, int.MaxValue);
        Assert.Empty(named.Where(mention => !Verbs.ContainsKey(mention.Verb)).Select(mention => $"{mention.Where}: flip {mention.Verb}"));
    }

    [Fact]
    public void EveryOptionBehindAVerbIsOneOfIt()
    {
        (string Where, string Verb, string Option)[] named =
        [
            .. from text in Texts()
               from Match call in Call().Matches(text.Text)
               where Verbs.ContainsKey(call.Groups["verb"].Value)
               from Match option in AnyOption().Matches(call.Groups["rest"].Value)
               select (text.Where, call.Groups["verb"].Value, option.Value),
        ];
        Assert.InRange(named.Length, 20, int.MaxValue);
        Assert.Empty(named.Where(mention => !Verbs[mention.Verb].Contains(mention.Option))
            .Select(mention => $"{mention.Where}: flip {mention.Verb} {mention.Option}"));
    }

    [Fact]
    public void EveryOptionThatAMessageNamesExists()
    {
        // What flip notebook hands to dotnet is no option of ours.
        HashSet<string> known = [.. Verbs.Values.SelectMany(options => options), "--project", "--configuration"];
        // Options of dotnet and Jupyter stand in the sentences that name those.
        var unknown =
            from text in Texts()
            from line in text.Text.Split('\n')
            where !line.Contains("dotnet", StringComparison.Ordinal) && !line.Contains("jupyter", StringComparison.OrdinalIgnoreCase)
            from Match option in AnyOption().Matches(line)
            where !known.Contains(option.Value)
            select $"{text.Where}: {option.Value}";
        Assert.Empty(unknown);
    }

    [Fact]
    public void AVerbAndAnOptionThatDoNotExistAreCaught()
    {
        Assert.Equal(["record"], VerbsIn("begin one with flip record, what each flip paid"));
        Assert.DoesNotContain("record", Verbs.Keys);
        Assert.DoesNotContain("--price", Verbs["buy"]);
        Assert.Equal("--sticker-price 90`", Call().Match("`flip buy --sticker-price 90`").Groups["rest"].Value.Trim());
    }

    private static IEnumerable<string> OptionsOf(Command verb) =>
        verb.Options.SelectMany(option => option.Aliases.Append(option.Name)).Concat(verb.Subcommands.SelectMany(OptionsOf));

    private static IEnumerable<string> VerbsIn(string text) =>
        from Match mention in Mention().Matches(text)
        let before = mention.Groups["before"].Value.Trim().ToLowerInvariant()
        let verb = mention.Groups["verb"].Value
        where !Nouns.Contains(before) && !OfTheThing.Contains(verb)
        select verb;

    // Documents as they are; of the sources only what stands in quotes.
    private static IEnumerable<(string Where, string Text)> Texts() =>
    [
        .. new[] { "README.md", "DEVELOPERS.md" }.Select(file => (file, Repository.Read(file))),
        .. new DirectoryInfo(Repository.PathOf("notebooks")).EnumerateFiles("*.ipynb").Select(file => (file.Name, File.ReadAllText(file.FullName))),
        .. Repository.Sources("src").Select(file => (file.Name, string.Join('\n', Quoted().Matches(File.ReadAllText(file.FullName)).Select(text => text.Value)))),
    ];

    [GeneratedRegex("(?<before>\\w+[ \"`]*)?\\bflip (?<verb>[a-z]+)")]
    private static partial Regex Mention();

    [GeneratedRegex("\\bflip (?<verb>[a-z]+)(?<rest>[^\\n\".,;]*)")]
    private static partial Regex Call();

    [GeneratedRegex("(?<![\\w-])--[a-z][a-z-]*")]
    private static partial Regex AnyOption();

    [GeneratedRegex("\"(?:[^\"\\\\\\n]|\\\\.)*\"")]
    private static partial Regex Quoted();
}
