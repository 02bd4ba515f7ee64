using System.Text;

namespace FlipAnalytics.Tests;

/// <summary>However broken the input, the command ends in a message with place and mend, and no stack trace.</summary>
public sealed class BrokenInputTests
{
    private const string Header = "id,type,bought_on,bought_price,listed_on,sold_on,sold_price\n";

    public static TheoryData<string, string> BrokenPieces => new()
    {
        { "a wrong date", Header + "P1,desk,2025-02-30,10,,,\n" },
        { "a date of another kind", Header + "P1,desk,02/03/2025,10,,,\n" },
        { "text in a number", Header + "P1,desk,2025-02-03,ten,,,\n" },
        { "an id twice", Header + "P1,desk,2025-02-03,10,,,\nP1,desk,2025-02-04,12,,,\n" },
        { "sold before it was listed", Header + "P1,desk,2025-02-03,10,2025-03-01,2025-02-20,90\n" },
        { "semicolons for commas", Header.Replace(',', ';') + "P1;desk;2025-02-03;10;;;\n" },
        { "decimal commas", Header + "P1,desk,2025-02-03,\"10,50\",,,\n" },
        { "an empty file", "" },
        { "a quote that never closes", Header + "P1,\"desk,2025-02-03,10,,,\nP2,desk,2025-02-03,10,,,\n" },
        { "too many cells", Header + "P1,desk,2025-02-03,10,,,,,,\n" },
    };

    [Theory]
    [MemberData(nameof(BrokenPieces))]
    public void A_broken_table_is_a_problem_in_the_data(string what, string pieces)
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", pieces);

        AssertDataProblem(what, Flip.Run("check", "--log", folder.Path));
    }

    [Fact]
    public void A_missing_file_is_a_problem_in_the_data()
    {
        using LogFolder folder = new();

        AssertDataProblem("no pieces.csv", Flip.Run("check", "--log", folder.Path));
        AssertDataProblem("no pieces.csv", Flip.Run("buy", "--log", folder.Path, "--type", "desk"));
        AssertDataProblem("no folder", Flip.Run("fit", "--log", Path.Combine(folder.Path, "no"), "--model", "price"));
    }

    [Fact]
    public void The_wrong_encoding_is_a_problem_in_the_data()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", Encoding.Latin1.GetBytes(Header + "P1,chaise longue dorée,2025-02-03,10,,,\n"));

        AssertDataProblem("Latin-1", Flip.Run("check", "--log", folder.Path));
    }

    [Fact]
    public void A_directory_in_place_of_a_file_is_a_problem_in_the_data()
    {
        using LogFolder folder = new();
        Directory.CreateDirectory(Path.Combine(folder.Path, "pieces.csv"));

        AssertDataProblem("a directory", Flip.Run("check", "--log", folder.Path));
    }

    [Fact]
    public void A_line_of_fifty_megabytes_is_a_problem_in_the_data()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", Header + "P1," + new string('x', 50_000_000) + ",,10,,,\n");

        AssertDataProblem("a 50 MB line", Flip.Run("check", "--log", folder.Path));
    }

    [Fact]
    public void A_broken_settings_file_is_a_problem_in_the_data()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", Header + "P1,desk,2025-02-03,10,,,\n").With("workshop.toml", "target_wage = \"much\"\n");

        AssertDataProblem("workshop.toml", Flip.Run("check", "--log", folder.Path));
    }

    [Fact]
    public void An_answer_is_still_given_where_only_some_rows_are_broken()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "type,bought_price,sold_price\ndesk,10,200\ndesk,ten,210\n");

        FlipRun run = Flip.Run("buy", "--log", folder.Path, "--type", "desk", "--sticker-price", "20");

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("pieces.csv line 3, bought_price: found 'ten'", run.Error, StringComparison.Ordinal);
        Assert.Contains("most to pay", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Words_that_are_no_command_are_a_problem_in_the_command()
    {
        Assert.Equal(2, Flip.Run("sell").ExitCode);
        Assert.Equal(2, Flip.Run("fit", "--log", "data-demo").ExitCode);
        Assert.Equal(2, Flip.Run("fit", "--log", "data-demo", "--model", "price", "--design", "d.csv").ExitCode);
        Assert.Equal(2, Flip.Run("demo", "data-demo").ExitCode);
    }

    private static void AssertDataProblem(string what, FlipRun run)
    {
        Assert.True(run.ExitCode == 1, $"{what}: ended with {run.ExitCode}");
        Assert.NotEmpty(run.ErrorLines);
        Assert.All(run.ErrorLines, line => Assert.EndsWith(".", line, StringComparison.Ordinal));
        Assert.DoesNotContain("   at ", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", run.Error, StringComparison.Ordinal);
    }
}
