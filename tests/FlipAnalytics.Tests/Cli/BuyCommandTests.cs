using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace FlipAnalytics.Tests;

public sealed partial class BuyCommandTests
{
    private static readonly string Demo = House.Repository.PathOf("data-demo");

    [Fact]
    public void The_first_command_of_the_readme_prints_a_decision()
    {
        string command = House.Repository.Read("README.md").Split('\n')
            .First(line => line.Contains("--project src/FlipAnalytics.Cli -- buy", StringComparison.Ordinal));
        string[] arguments = command[(command.IndexOf("-- buy", StringComparison.Ordinal) + 3)..].Trim().Split(' ');

        FlipRun run = Flip.Run(arguments);

        Assert.Equal(0, run.ExitCode);
        Assert.Matches("^(BUY|HAGGLE|LEAVE)", run.Output);
        Assert.Contains("most to pay", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_fits_a_screen_of_a_hundred_columns_and_forty_lines()
    {
        string[] lines = Flip.Run("buy", "--log", Demo, "--type", "dresser", "--condition", "damaged", "--sticker-price", "90")
            .Output.Split('\n');

        Assert.InRange(lines.Length, 10, 40);
        Assert.All(lines, line => Assert.InRange(line.Length, 0, 100));
    }

    [Fact]
    public void The_steps_on_the_page_add_up_to_the_most_to_pay()
    {
        string output = Flip.Run("buy", "--log", Demo, "--type", "desk", "--sticker-price", "60").Output;

        int sum = Step().Matches(output)
            .Sum(m => (m.Groups[1].Value == "-" ? -1 : 1) * int.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture));

        Match total = Total().Match(output);
        Assert.Equal(int.Parse(total.Groups[1].Value, CultureInfo.InvariantCulture), sum);
    }

    [Fact]
    public void The_json_has_the_fields_that_other_programs_read()
    {
        FlipRun run = Flip.Run("buy", "--log", Demo, "--type", "dresser", "--width", "48", "--color", "sage", "--sticker-price", "90", "--json");
        using JsonDocument json = JsonDocument.Parse(run.Output);
        JsonElement root = json.RootElement;
        JsonElement candidate = root.GetProperty("candidates")[0];

        Assert.Equal("2026-03-31", root.GetProperty("as_of").GetString());
        Assert.Equal("USD", root.GetProperty("currency").GetString());
        Assert.Equal(15, root.GetProperty("target_wage").GetDecimal());
        Assert.Equal("buy", candidate.GetProperty("verdict").GetString());
        Assert.Equal(90, candidate.GetProperty("sticker_price").GetDecimal());
        foreach (string name in new[] { "ceiling", "ceiling_cautious", "ceiling_break_even", "chance_of_target_wage", "wage_at_sticker", "guess_share" })
            Assert.Equal(JsonValueKind.Number, candidate.GetProperty(name).ValueKind);
        foreach (string name in new[] { "sale_price", "hours", "supplies", "days_on_market" })
        {
            JsonElement range = candidate.GetProperty(name);
            Assert.True(range.GetProperty("low").GetDecimal() < range.GetProperty("median").GetDecimal(), name);
            Assert.True(range.GetProperty("median").GetDecimal() < range.GetProperty("high").GetDecimal(), name);
            Assert.Equal(0.8m, range.GetProperty("level").GetDecimal());
            Assert.True(range.TryGetProperty("mean", out _), name);
        }

        JsonElement[] waterfall = [.. candidate.GetProperty("waterfall").EnumerateArray()];
        Assert.Equal("sale price", waterfall[0].GetProperty("item").GetString());
        Assert.Equal(
            candidate.GetProperty("ceiling").GetDecimal(),
            waterfall.SkipLast(1).Sum(step => step.GetProperty("amount").GetDecimal()));
        JsonElement sale = candidate.GetProperty("comparables")[0];
        foreach (string name in new[] { "id", "sold_on", "sale_price", "days_on_market", "distance" })
            Assert.True(sale.TryGetProperty(name, out _), name);
        Assert.True(candidate.GetProperty("cautions").GetArrayLength() > 0);
        Assert.Equal(JsonValueKind.Array, candidate.GetProperty("notes").ValueKind);
    }

    [Fact]
    public void The_same_call_prints_the_same_bytes_in_another_country_and_time_zone()
    {
        using LogFolder folder = new();
        folder.With("store.csv", "id,type,width,color,sticker_price\nA,desk,48,sage,60.50\nB,nightstand,,navy,25\n");
        string[] call = ["buy", "--log", Demo, "--candidates", Path.Combine(folder.Path, "store.csv"), "--json", "--as-of", "2026-03-31"];

        FlipRun here = Flip.Run(call);
        FlipRun there = Flip.RunIn(
            [("LANG", "de_DE.UTF-8"), ("LC_ALL", "de_DE.UTF-8"), ("TZ", "Asia/Tokyo"), ("DOTNET_PROCESSOR_COUNT", "1")], call);

        Assert.Equal(0, here.ExitCode);
        Assert.Equal(here.Output, there.Output);
    }

    [Fact]
    public void A_log_of_types_and_prices_alone_is_enough()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "type,bought_price,sold_price\ndresser,40,310\ndresser,35,280\ndesk,20,190\ndesk,25,\n");

        FlipRun run = Flip.Run("buy", "--log", folder.Path, "--type", "dresser", "--sticker-price", "30");

        Assert.Equal(0, run.ExitCode);
        Assert.Matches("^(BUY|HAGGLE|LEAVE)", run.Output);
        Assert.Contains("No target wage is set", run.Output, StringComparison.Ordinal);
        Assert.Contains("no cost of supplies", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void An_empty_log_with_three_guesses_answers_and_says_that_it_is_guess()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "type,bought_price,sold_price\n").With("workshop.toml", """
            target_wage = 15
            [guess.dresser]
            sale_price = { low = 250, likely = 340, high = 480 }
            hours = { low = 7, likely = 10, high = 14 }
            supplies = [20, 30, 45]
            [guess.desk]
            sale_price = [150, 210, 300]
            [guess.nightstand]
            sale_price = [80, 120, 180]
            """);

        FlipRun run = Flip.Run("buy", "--log", folder.Path, "--type", "dresser", "--sticker-price", "40");
        using JsonDocument json = JsonDocument.Parse(
            Flip.Run("buy", "--log", folder.Path, "--type", "dresser", "--json").Output);

        Assert.Equal(0, run.ExitCode);
        Assert.Matches("^(BUY|HAGGLE|LEAVE)", run.Output);
        Assert.Contains("All of the sale price is guess", run.Output, StringComparison.Ordinal);
        Assert.Equal(1, json.RootElement.GetProperty("candidates")[0].GetProperty("guess_share").GetDecimal());
    }

    [Fact]
    public void An_empty_log_without_guesses_says_what_would_help()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "type,bought_price,sold_price\n");

        FlipRun run = Flip.Run("buy", "--log", folder.Path, "--type", "dresser", "--sticker-price", "40");

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("log a sale", run.Output.ReplaceLineEndings(" "), StringComparison.Ordinal);
        Assert.Contains("[guess.dresser]", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--width", "12,5")]
    [InlineData("--sticker-price", "1e3")]
    [InlineData("--condition", "fair")]
    [InlineData("--as-of", "31.03.2026")]
    [InlineData("--count", "0")]
    [InlineData("--chance", "1")]
    [InlineData("--plot", "picture.gif")]
    public void An_option_that_makes_no_sense_is_a_problem_in_the_command(string option, string value)
    {
        FlipRun run = Flip.Run("buy", "--log", Demo, "--type", "desk", option, value);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(option, run.ErrorLines[0], StringComparison.Ordinal);
        Assert.Contains(value, run.ErrorLines[0], StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public void A_candidate_that_cannot_be_read_is_named_and_the_others_are_answered()
    {
        using LogFolder folder = new();
        folder.With("store.csv", "id,type,width\nA,desk,wide\nB,desk,48\nC,desk,50\n");

        FlipRun run = Flip.Run("buy", "--log", Demo, "--candidates", Path.Combine(folder.Path, "store.csv"));

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("store.csv line 2, width: found 'wide'", run.Error, StringComparison.Ordinal);
        Assert.Contains("B desk", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Pieces_set_aside_are_counted_below_the_answer_with_the_reason_and_in_the_json()
    {
        using LogFolder folder = new();
        string file = Path.Combine(folder.Path, "store.csv");
        folder.With("store.csv", "id,type,width\nA,desk,wide\nB,desk,48\nC,,50\n");

        string text = Flip.Run("buy", "--log", Demo, "--candidates", file).Output.ReplaceLineEndings(" ");
        JsonElement aside = JsonDocument.Parse(Flip.Run("buy", "--log", Demo, "--candidates", file, "--json").Output)
            .RootElement.GetProperty("set_aside");

        Assert.Contains("2 pieces of the file set aside and not answered. The first: store.csv line 2, width: found 'wide',", text, StringComparison.Ordinal);
        Assert.Equal([2, 4], aside.EnumerateArray().Select(row => row.GetProperty("row").GetInt32()));
    }

    [Fact]
    public void The_owners_own_columns_stay_with_each_piece_in_their_order_and_ours_follow()
    {
        using LogFolder folder = new();
        string file = Path.Combine(folder.Path, "store.csv");
        folder.With("store.csv", "Aisle,id,type,seller,sticker_price,,note\n3,A,Desks,\"North, East\",40,x,=1+1\n,B,dresser,,30,,\n");
        string tables = Path.Combine(folder.Path, "answers");

        FlipRun run = Flip.Run("buy", "--log", Demo, "--candidates", file, "--tables", tables);
        JsonElement own = JsonDocument.Parse(Flip.Run("buy", "--log", Demo, "--candidates", file, "--json").Output)
            .RootElement.GetProperty("candidates")[0].GetProperty("own_columns");
        string[] lines = File.ReadAllLines(Path.Combine(tables, "candidates.csv"));

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("A desk; Aisle 3; seller North, East;", run.Output, StringComparison.Ordinal);
        Assert.Equal(["Aisle", "seller", "column 6", "note"], own.EnumerateArray().Select(cell => cell.GetProperty("column").GetString()));
        Assert.Equal(["3", "North, East", "x", "=1+1"], own.EnumerateArray().Select(cell => cell.GetProperty("text").GetString()));
        Assert.StartsWith("Aisle,id,type,seller,sticker_price,column 6,note,answer_type,verdict,ceiling,", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("3,A,Desks,\"North, East\",40,x,'=1+1,desk,buy,", lines[1], StringComparison.Ordinal);
        Assert.StartsWith(",B,dresser,,30,,,dresser,buy,", lines[2], StringComparison.Ordinal);
    }

    [Fact]
    public void A_plot_of_the_decision_is_written()
    {
        using LogFolder folder = new();
        string path = Path.Combine(folder.Path, "decision.png");

        Assert.Equal(0, Flip.Run("buy", "--log", Demo, "--type", "desk", "--plot", path).ExitCode);

        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], File.ReadAllBytes(path)[..4]);
    }

    [GeneratedRegex(@"^  ([ +-]) (?:sale price|channel fees|delivery|supplies|hours|storage|money tied up) +(\d+)", RegexOptions.Multiline)]
    private static partial Regex Step();

    [GeneratedRegex(@"^  = most to pay +(-?\d+)$", RegexOptions.Multiline)]
    private static partial Regex Total();
}
