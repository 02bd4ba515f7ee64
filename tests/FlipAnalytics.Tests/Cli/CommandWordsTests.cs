using System.CommandLine;
using FlipAnalytics.Cli;

namespace FlipAnalytics.Tests;

public sealed class CommandWordsTests
{
    [Theory]
    [InlineData("colours", "flip has no 'colours': did you mean flip colors?")]
    [InlineData("Buy", "flip has no 'Buy': did you mean flip buy?")]
    [InlineData("qarter", "flip has no 'qarter': did you mean flip quarter?")]
    [InlineData("quaters", "flip has no 'quaters': did you mean flip quarter?")]
    [InlineData("wage", "flip has no 'wage': did you mean flip wages?")]
    [InlineData("price", "flip has no 'price': did you mean flip buy?")]
    [InlineData("notebok", "flip has no 'notebok': did you mean flip notebook?")]
    [InlineData("dresser", "flip has no 'dresser': it has check, buy, colors, wages, quarter, year, fit, notebook and demo.")]
    [InlineData("", "flip has no '': it has check, buy, colors, wages, quarter, year, fit, notebook and demo.")]
    [InlineData("notebook|lst", "flip notebook has no 'lst': did you mean flip notebook list?")]
    [InlineData("buy|--sticker|40", "flip buy has no option --sticker: did you mean --sticker-price?")]
    [InlineData("buy|--sticker=40", "flip buy has no option --sticker: did you mean --sticker-price?")]
    [InlineData("buy|--price|40", "flip buy has no option --price: did you mean --sticker-price?")]
    [InlineData("buy|--cost|40", "flip buy has no option --cost: did you mean --sticker-price?")]
    [InlineData("buy|--sell-price|40", "flip buy has no option --sell-price: did you mean --sale-price?")]
    [InlineData("buy|--sticker_price|40", "flip buy has no option --sticker_price: did you mean --sticker-price?")]
    [InlineData("buy|--StickerPrice|40", "flip buy has no option --StickerPrice: did you mean --sticker-price?")]
    [InlineData("buy|-type|desk", "flip buy has no option -type: did you mean --type?")]
    [InlineData("buy|--tpye|desk", "flip buy has no option --tpye: did you mean --type?")]
    [InlineData("buy|--colours|sage", "flip buy has no option --colours: did you mean --color?")]
    [InlineData("buy|--wood|oak", "flip buy has no option --wood: did you mean --material?")]
    [InlineData("buy|--target-wage|20", "flip buy has no option --target-wage: did you mean --wage?")]
    [InlineData("buy|--lgo|x", "flip buy has no option --lgo: did you mean --log?")]
    [InlineData("buy|--zigzag|1", "flip buy has no option --zigzag.")]
    [InlineData("colors|--type|desk", "flip colors has no option --type: did you mean --for?")]
    [InlineData("colors|--group-by|type", "flip colors has no option --group-by: did you mean --by?")]
    [InlineData("wages|--quarter|2026-Q1", "flip wages has no option --quarter: did you mean --period?")]
    [InlineData("quarter|--period|2026-Q1", "flip quarter has no option --period: SPAN stands alone, as in flip quarter 2026-Q1.")]
    [InlineData("taxes", "flip has no 'taxes': did you mean flip year?")]
    [InlineData("year|--period|2025", "flip year has no option --period: YEAR stands alone, as in flip year 2025.")]
    [InlineData("demo|--flip|3", "flip demo has no option --flip: did you mean --flips?")]
    [InlineData("fit|--modle|price", "flip fit has no option --modle: did you mean --model?")]
    [InlineData("check|--picture|a.png", "flip check has no option --picture: did you mean --plot?")]
    [InlineData("notebook|run|01-sourcing|--date|2026-03-31", "flip notebook run has no option --date: did you mean --as-of?")]
    [InlineData("--log|my-log|buy|--type|desk", "--log comes after the verb: flip buy --log my-log.")]
    [InlineData("--type|desk", "--type comes after the verb, such as flip buy --type.")]
    [InlineData("buy|--type|side|chair",
        "flip buy does not know what 'chair' is for: a value follows its option, and one of several words needs quotes, such as --type \"side chair\".")]
    [InlineData("buy|--type", "--type needs a value, such as --type dresser.")]
    [InlineData("buy|--type|a|--type|b", "--type is there 2 times: give it once.")]
    [InlineData("buy|--type|", "--type needs a value, such as --type dresser.")]
    [InlineData("buy|--type|desk|--color|  ", "--color needs a value, such as --color sage.")]
    [InlineData("wages|--log|", "--log needs a value, such as --log my-log.")]
    [InlineData("wages|--explain|", "--explain needs a value, such as --explain P0012.")]
    [InlineData("buy|--type|desk|--width|", "--width needs a number with a point, such as 12.5, more than zero, at most 100,000; found ''.")]
    [InlineData("buy|--type|desk|--condition|wron", "--condition needs one of sound, worn, damaged; found 'wron': did you mean worn?")]
    [InlineData("colors|--by|chanel", "--by needs one of color, type, finish, source, channel; found 'chanel': did you mean channel?")]
    [InlineData("fit|--model|prise", "--model needs one of price, days, hours, supplies; found 'prise': did you mean price?")]
    [InlineData("fit|--model|1", "--model needs one of price, days, hours, supplies; found '1'.")]
    [InlineData("", "Say what to do: flip check, buy, colors, wages, quarter, year, fit, notebook or demo.", false)]
    [InlineData("notebook", "Say what to do: flip notebook list or run.")]
    [InlineData("demo", "flip demo needs a FOLDER.")]
    public void A_slip_in_a_call_is_answered_by_the_word_that_was_meant_in_one_line(string call, string expected, bool hasWords = true)
    {
        string[] words = hasWords ? call.Split('|') : [];

        Assert.Equal(expected, Assert.Single(CommandWords.Problems(Program.Parse(words))));
    }

    [Theory]
    [InlineData("colors|--by|Colours")]
    [InlineData("colors|--by|channels")]
    [InlineData("buy|--type|desk|--condition|WORN")]
    [InlineData("buy|--type|desk|--colour|gray")]
    [InlineData("buy|--type|@home")]
    [InlineData("quarter|2026-Q1")]
    public void Case_number_and_spelling_make_no_problem(string call) =>
        Assert.Empty(CommandWords.Problems(Program.Parse(call.Split('|'))));

    [Fact]
    public void Every_option_of_every_verb_is_found_again_after_any_slip_of_one_letter()
    {
        (string[] Path, Command Verb)[] verbs = [.. Verbs([], Program.Parse([]).RootCommandResult.Command)];
        Assert.InRange(verbs.Length, 8, 30);
        foreach ((string[] path, Command verb) in verbs)
        {
            string[] names = [.. verb.Options.Select(option => option.Name).Where(name => name.Length > 6)];
            foreach (string name in names)
            {
                for (int i = 3; i < name.Length; i++)
                {
                    string slip = name.Remove(i, 1);
                    // --fore is as near to --for as to --force.
                    if (verb.Options.Any(other => other.Name != name && (other.Name == slip[..^1] || slip == other.Name)))
                        continue;
                    string problem = Assert.Single(CommandWords.Problems(Program.Parse([.. path, slip, "1"])));
                    Assert.Equal($"flip {string.Join(' ', path)} has no option {slip}: did you mean {name}?", problem);
                }
            }
        }
    }

    [Fact]
    public void Every_verb_is_found_again_after_any_slip_of_one_letter()
    {
        foreach (Command verb in Program.Parse([]).RootCommandResult.Command.Subcommands.Where(verb => verb.Name.Length > 3))
        {
            for (int i = 1; i < verb.Name.Length; i++)
            {
                string slip = verb.Name.Remove(i, 1);
                Assert.Equal(
                    $"flip has no '{slip}': did you mean flip {verb.Name}?",
                    Assert.Single(CommandWords.Problems(Program.Parse([slip]))));
            }
        }
    }

    [Fact]
    public void A_call_that_is_not_understood_ends_with_2_and_says_where_help_is()
    {
        FlipRun run = Flip.Run("buy", "--sticker", "40");

        Assert.Equal(2, run.ExitCode);
        Assert.Equal(["flip buy has no option --sticker: did you mean --sticker-price?", "See: flip buy --help"], run.ErrorLines);
        Assert.Empty(run.Output);
    }

    [Fact]
    public void An_option_is_never_taken_for_the_folder_of_a_new_log()
    {
        FlipRun run = Flip.Run("demo", "--flip");

        Assert.Equal(2, run.ExitCode);
        Assert.Equal("flip demo has no option --flip: did you mean --flips?", run.ErrorLines[0]);
        Assert.Equal(2, Flip.Run("demo", " ").ExitCode);
    }

    [Fact]
    public void The_name_of_a_notebook_and_of_its_setting_is_asked_about_too()
    {
        FlipRun name = Flip.Run("notebook", "run", "01-sorcing");
        FlipRun setting = Flip.Run("notebook", "run", "01-sourcing", "--log", House.Repository.PathOf("data-demo"), "-p", "colour=sage", "-p", "widht=4");

        Assert.Equal(2, name.ExitCode);
        Assert.StartsWith("There is no notebook '01-sorcing': did you mean 01-sourcing?", name.Error, StringComparison.Ordinal);
        Assert.Equal(2, setting.ExitCode);
        Assert.Contains("did you mean width?", setting.Error, StringComparison.Ordinal);
    }

    private static IEnumerable<(string[] Path, Command Verb)> Verbs(string[] path, Command command) =>
        command.Subcommands.Count == 0
            ? [(path, command)]
            : command.Subcommands.SelectMany(verb => Verbs([.. path, verb.Name], verb));
}
