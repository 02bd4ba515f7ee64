using System.Text.Json;

namespace FlipAnalytics.Tests;

public sealed class WordsTests
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    [Fact]
    public void A_plural_is_taken_as_the_word_of_the_log_and_the_first_line_says_so()
    {
        FlipRun plural = Flip.Run("buy", "--log", Demo, "--type", "dressers", "--sticker-price", "45");
        FlipRun singular = Flip.Run("buy", "--log", Demo, "--type", "dresser", "--sticker-price", "45");

        Assert.Equal(0, plural.ExitCode);
        Assert.Equal("No 'dressers' in your log; taken as dresser.\n\n" + singular.Output, plural.Output);
    }

    [Fact]
    public void The_notes_of_the_json_say_what_was_taken_for_what()
    {
        JsonElement root = Json("buy", "--log", Demo, "--type", "Night Stands", "--color", "off white", "--channel", "on-line");

        string[] notes = [.. root.GetProperty("candidates")[0].GetProperty("notes").EnumerateArray().Select(n => n.GetString()!)];
        Assert.Equal(
            ["No 'Night Stands' in your log; taken as nightstand.", "No 'off white' in your log yet; it has white."], notes[..2]);
        Assert.Equal("nightstand", root.GetProperty("candidates")[0].GetProperty("type").GetString());
        Assert.Equal(
            "No 'on-line' in your log; taken as online.",
            root.GetProperty("notes").EnumerateArray().Last().GetString());
    }

    [Theory]
    [InlineData("--type", "dreser", "No 'dreser' in your log: did you mean dresser? Say --new-type if it is a new kind.")]
    [InlineData("--color", "sgae", "No 'sgae' in your log: did you mean sage? Say --new-words if it is a new color.")]
    [InlineData("--finish", "stain", null)]
    [InlineData("--material", "mahagony", "No 'mahagony' in your log: did you mean mahogany? Say --new-words if it is a new material.")]
    [InlineData("--channel", "onlne", "No 'onlne' in your log: did you mean online? Say --new-words if it is a new channel.")]
    public void A_word_that_is_only_like_one_of_the_log_is_asked_about(string option, string word, string? question)
    {
        string[] call = ["buy", "--log", Demo, .. option == "--type" ? Array.Empty<string>() : ["--type", "dresser"], option, word];

        FlipRun run = Flip.Run(call);

        Assert.Equal(question is null ? 0 : 2, run.ExitCode);
        Assert.Equal(question is null ? [] : [question], run.ErrorLines);
        FlipRun meant = Flip.Run([.. call, "--new-type"]);
        Assert.Equal(0, meant.ExitCode);
        Assert.StartsWith($"No '{word}' in your log yet.\n", meant.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_word_like_none_of_the_log_is_answered_as_new()
    {
        FlipRun run = Flip.Run("buy", "--log", Demo, "--type", "wardrobe", "--sticker-price", "45");

        Assert.Equal(0, run.ExitCode);
        Assert.StartsWith("No 'wardrobe' in your log yet.\n", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_type_of_the_next_piece_to_paint_is_a_word_of_the_log_too()
    {
        FlipRun plural = Flip.Run("colors", "--log", Demo, "--for", "Nightstands");
        FlipRun slip = Flip.Run("colors", "--log", Demo, "--for", "nigthstand");

        Assert.StartsWith("No 'Nightstands' in your log; taken as nightstand.\n", plural.Output, StringComparison.Ordinal);
        Assert.Equal(2, slip.ExitCode);
        Assert.Contains("did you mean nightstand?", slip.Error, StringComparison.Ordinal);
        Assert.Equal(0, Flip.Run("colors", "--log", Demo, "--for", "nigthstand", "--new-type").ExitCode);
    }

    [Fact]
    public void A_list_of_candidates_goes_the_same_way_word_by_word()
    {
        using LogFolder folder = new();
        string file = Path.Combine(folder.Path, "store.csv");
        folder.With("store.csv", "id,type,color\nA,Desks,Grey-Blue\nB,dreser,sgae\nC,dresser,sage\n");

        FlipRun asked = Flip.Run("buy", "--log", Demo, "--candidates", file);
        FlipRun meant = Flip.Run("buy", "--log", Demo, "--candidates", file, "--new-type");

        Assert.Equal(2, asked.ExitCode);
        Assert.Equal(
            [
                "B: No 'dreser' in your log: did you mean dresser? Say --new-type if it is a new kind.",
                "B: No 'sgae' in your log: did you mean sage? Say --new-words if it is a new color.",
            ],
            asked.ErrorLines);
        Assert.Equal(0, meant.ExitCode);
        Assert.StartsWith("No 'Desks' in your log; taken as desk.", meant.Output, StringComparison.Ordinal);
    }

    private static JsonElement Json(params string[] call) =>
        JsonDocument.Parse(Flip.Run([.. call, "--json"]).Output).RootElement;
}
