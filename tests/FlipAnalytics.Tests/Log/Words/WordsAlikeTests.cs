using System.Collections.Immutable;
using System.Text.Json;

namespace FlipAnalytics.Tests;

public sealed class WordsAlikeTests
{
    [Fact]
    public void Spellings_of_one_word_are_read_as_one_and_the_check_says_which_and_where()
    {
        LogReading reading = Read(
            "type,bought_price,color,channel\ndresser,1,gray,online\nDressers,1,grey,on-line\nDRESSER,1,Grey,on line\nside chair,1,off-white,fair\nside-chairs,1,off white,fair\n");

        Assert.Equal((string[])["dresser", "dresser", "dresser", "side chair", "side chair"], reading.Log!.Pieces.Select(piece => piece.Type));
        Assert.Equal(["gray", "gray", "gray", "off-white", "off-white"], reading.Log.Pieces.Select(piece => piece.Colour));
        Assert.Equal(3, reading.Log.Pieces.Count(piece => piece.Channel == "online"));
        Assert.Equal(
            [
                "Read as one color: gray (1), grey (2; pieces.csv lines 3, 4).",
                "Read as one color: off-white (1), off white (1; pieces.csv line 6).",
                "Read as one type: dresser (2), Dressers (1; pieces.csv line 3).",
                "Read as one type: side chair (1), side-chairs (1; pieces.csv line 6).",
                "Read as one channel: online (1), on-line (1; pieces.csv line 3), on line (1; pieces.csv line 4).",
            ],
            [.. LogCheck.Of(reading).SimilarWords]);
    }

    [Fact]
    public void A_fee_and_a_guess_are_found_by_any_spelling_of_their_word()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "type,bought_price,channel\nDressers,1,on-line\n")
            .With("workshop.toml", "[fees.online]\nrate = 0.1\n[guess.dresser]\nsale_price = [1, 2, 3]\n");

        Piece piece = SalesLogReader.Read(folder.Path).Log!.Pieces[0];

        Assert.Equal(("dresser", "online"), (piece.Type, piece.Channel));
    }

    [Theory]
    [InlineData("source", "size 1.5", "size 15")]
    [InlineData("type", "shelf 1 1", "shelf 11")]
    [InlineData("color", "gray", "gray+")]
    [InlineData("color", "red/white", "red white")]
    [InlineData("id", "P-1", "P1")]
    [InlineData("lot", "barn", "barns")]
    [InlineData("type", "☼", "☺")]
    public void Names_numbers_and_signs_are_never_read_as_another(string column, string one, string other)
    {
        string type = column == "type" ? "" : "type,";
        string desk = column == "type" ? "" : "desk,";

        LogReading reading = Read($"{type}bought_price,{column}\n{desk}1,{one}\n{desk}1,{other}\n");

        Assert.DoesNotContain(LogCheck.Of(reading).WordsAlike, words => words.TakenAsOne);
        Assert.Equal(2, reading.Log!.Pieces.Select(piece => column switch
        {
            "source" => piece.Source,
            "type" => piece.Type,
            "color" => piece.Colour,
            "id" => piece.Id,
            _ => piece.Lot,
        }).Distinct().Count());
    }

    [Fact]
    public void A_slip_is_reported_once_with_its_lines_and_never_changed()
    {
        string rows = string.Concat(Enumerable.Repeat("dresser,1,gray,online\n", 9));
        LogReading reading = Read($"type,bought_price,color,channel\n{rows}dreser,1,garay,onlne\ndreser,1,gray,online\n");

        LogCheck check = LogCheck.Of(reading);

        Assert.Equal(2, reading.Log!.Pieces.Count(piece => piece.Type == "dreser"));
        Assert.Equal(
            [
                "Color that looks like one word written two ways: gray (10), garay (1; pieces.csv line 11). Each counts by itself until they are written alike.",
                "Type that looks like one word written two ways: dresser (9), dreser (2; pieces.csv lines 11, 12). Each counts by itself until they are written alike.",
                "Channel that looks like one word written two ways: online (10), onlne (1; pieces.csv line 11). Each counts by itself until they are written alike.",
            ],
            [.. check.SimilarWords]);
        Assert.StartsWith("11 pieces read, nothing to put right, 3 words to look at.", LogCheckText.Render(check), StringComparison.Ordinal);
        Assert.Equal((0, 0), (check.Errors, check.Warnings));
    }

    [Fact]
    public void The_json_of_the_check_has_the_words_with_their_counts_and_lines()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "type,bought_price\ndresser,1\ndresser,1\ndresser,1\ndreser,1\n");

        FlipRun run = Flip.Run("check", "--log", folder.Path, "--json");
        JsonElement alike = JsonDocument.Parse(run.Output).RootElement.GetProperty("words_alike")[0];

        Assert.Equal(0, run.ExitCode);
        Assert.Equal("type", alike.GetProperty("kind").GetString(), ignoreCase: true);
        Assert.False(alike.GetProperty("taken_as_one").GetBoolean());
        JsonElement slip = alike.GetProperty("words")[1];
        Assert.Equal(("dreser", 1), (slip.GetProperty("word").GetString(), slip.GetProperty("count").GetInt32()));
        Assert.Equal(5, slip.GetProperty("places")[0].GetProperty("row").GetInt32());
    }

    [Fact]
    public void Words_that_are_both_frequent_or_both_of_the_trade_are_two_words()
    {
        Assert.Empty(Alike(("brindle", 5), ("bridle", 4)));
        Assert.Empty(Alike(("chest", 40), ("cheval", 1), ("chair", 1)));
        Assert.Single(Alike(("brindle", 6), ("bridle", 2)));
        Assert.Single(Alike(("dresser", 1), ("dreser", 1)));
    }

    [Fact]
    public void In_a_log_with_every_word_of_the_trade_none_is_taken_for_another()
    {
        int most = FurnitureWords.Lists.Max(words => words.Length);
        string[] rows = [.. Enumerable.Range(0, most * most / 10).Select(i =>
            $"{At(FurnitureWords.Types, i)},1,{At(FurnitureWords.Colors, i * i)},{At(FurnitureWords.Finishes, i)},{At(FurnitureWords.Materials, i * i)},{At(FurnitureWords.Places, i)}")];

        LogReading reading = Read("type,bought_price,color,finish,material,source\n" + string.Join('\n', rows) + "\n");

        Assert.Empty(LogCheck.Of(reading).SimilarWords);

        static string At(string[] words, int place) => words[place % words.Length];
    }

    [Fact]
    public void A_use_of_a_supply_under_another_name_is_told_the_one_that_was_bought()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "id,type,bought_price\nP1,desk,1\n").With("supplies.csv", "item,price,quantity\nwhite paint,20,1\n")
            .With("uses.csv", "id,item,quantity\nP1,wite paint,0.5\n");

        LogProblem problem = Assert.Single(SalesLogReader.Read(folder.Path).Problems);

        Assert.StartsWith("If you mean white paint, write it so", problem.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void A_task_that_is_not_of_the_list_is_told_the_nearest()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "id,type,bought_price\nP1,desk,1\n").With("hours.csv", "id,task,hours\nP1,sandin,1\n");

        LogProblem problem = Assert.Single(SalesLogReader.Read(folder.Path).Problems);

        Assert.Equal("sandin", problem.Found);
        Assert.StartsWith("If you mean sanding, write it so.", problem.Remedy, StringComparison.Ordinal);
    }

    private static ImmutableArray<WordsAlike> Alike(params (string Word, int Times)[] words) => LogCheck.Of(Read(
        "type,bought_price\n" + string.Concat(words.SelectMany(word => Enumerable.Repeat($"{word.Word},1\n", word.Times))))).WordsAlike;

    private static LogReading Read(string pieces)
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", pieces);
        return SalesLogReader.Read(folder.Path);
    }
}
