using System.Text.Json;
using System.Text.RegularExpressions;
using FlipAnalytics.Notebooks;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>The notebooks run from top to bottom in one process, on the invented log and on quite another one.</summary>
[Collection("notebooks")]
public sealed partial class NotebookRunTests(ExecutedNotebooks executed) : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("flip-notebook-").FullName;

    public static TheoryData<string> All() => new(NotebookFiles.All().Select(entry => entry.Name));

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void TheNotebooksOfTheRepositoryAreListedWithTheirQuestion() => Assert.Equal(
        [
            ("00-start", "What is in my log, and what would make it better?"),
            ("01-sourcing", "What is the most I can pay for this piece?"),
        ],
        NotebookFiles.All().Take(2).Select(entry => (entry.Name, entry.Title)));

    [Theory]
    [MemberData(nameof(All))]
    public async Task ANotebookRunsOnTheInventedLog(string name)
    {
        NotebookRun run = await executed.Run(ExecutedNotebooks.Demo, name);
        AssertWhole(run);
        Assert.Contains("As of 2026-04-02.", File.ReadAllText(run.Page), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(All))]
    public async Task ANotebookRunsOnALogOfAnotherSizeInYenAndCentimetres(string name)
    {
        Assert.Empty(SalesLogReader.Read(executed.FolderOf(ExecutedNotebooks.Yen)).Problems);
        NotebookRun run = await executed.Run(ExecutedNotebooks.Yen, name);
        AssertWhole(run);
        Assert.DoesNotContain("USD", Images().Replace(File.ReadAllText(run.Page), ""), StringComparison.Ordinal);
    }

    [Fact]
    public async Task TheMoneyAndTheLengthsOfALogAreNamed()
    {
        NotebookRun run = await Run("01-sourcing", new()
        {
            ["logFolder"] = executed.FolderOf(ExecutedNotebooks.Yen),
            ["type"] = "dresser",
            ["sticker-price"] = "61",
            ["condition"] = "sound",
        });
        string page = File.ReadAllText(run.Page);
        Assert.Contains("in JPY</caption>", page, StringComparison.Ordinal);
        Assert.Contains("width, cm</th>", page, StringComparison.Ordinal);
        Assert.Contains("stickerPrice = 61m;", page, StringComparison.Ordinal);
        Assert.Contains("condition = FlipAnalytics.Condition.Sound;", page, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(All))]
    public async Task ALogWithoutASaleIsNoError(string name)
    {
        NotebookRun run = await executed.Run(ExecutedNotebooks.NoSale, name);
        AssertWhole(run);
    }

    [Fact]
    public async Task AFailingCellEndsTheRunWithItsNumberAndMessageAndKeepsWhatWasShown()
    {
        NotebookRun run = await NotebookRunner.RunAsync(Broken(), folder, NoParameters, _ => { });
        Assert.Equal(new FailedCell(2, "no paint left"), run.Failure);
        NotebookText written = NotebookText.Read(run.Notebook);
        Assert.Empty(NotebookSchema.Faults(File.ReadAllText(run.Notebook)));
        NotebookCell[] cells = [.. written.Code];
        Assert.Contains("sanded", cells[0].Outputs!.Value.ToString(), StringComparison.Ordinal);
        Assert.Contains("no paint left", cells[1].Outputs!.Value.ToString(), StringComparison.Ordinal);
        Assert.Empty(cells[2].Outputs!.Value.EnumerateArray());
        Assert.Contains("no paint left", File.ReadAllText(run.Page), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("colr", "sage", "no parameter 'colr': did you mean color?")]
    [InlineData("width", "1,5", "width needs a number with a point")]
    [InlineData("condition", "fine", "condition needs one of sound, worn, damaged")]
    public async Task AParameterThatDoesNotFitIsRefusedWithItsRemedy(string name, string text, string expected)
    {
        var refusal = await Assert.ThrowsAsync<NotebookException>(() => Run("01-sourcing", new() { [name] = text }));
        Assert.Contains(expected, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task ANotebookIsNeverOverwrittenByItsOwnRun()
    {
        string path = Broken();
        string before = File.ReadAllText(path);
        await Assert.ThrowsAsync<NotebookException>(() =>
            NotebookRunner.RunAsync(path, Path.GetDirectoryName(path)!, NoParameters, _ => { }));
        Assert.Equal(before, File.ReadAllText(path));
    }

    [Fact]
    public async Task APageIsWrittenAgainWhileNobodyChangedIt()
    {
        string path = Broken();
        NotebookRun run = await NotebookRunner.RunAsync(path, folder, NoParameters, _ => { });
        await NotebookRunner.RunAsync(path, folder, NoParameters, _ => { });
        foreach (string file in new[] { run.Page, run.Notebook })
        {
            string written = File.ReadAllText(file);
            File.WriteAllText(file, written.Replace("sanded", "sanded well", StringComparison.Ordinal));
            List<string> cells = [];
            var refusal = await Assert.ThrowsAsync<FileRefusedException>(() => NotebookRunner.RunAsync(path, folder, NoParameters, cells.Add));
            Assert.StartsWith($"{file} is there already", refusal.Message, StringComparison.Ordinal);
            Assert.Empty(cells);
            Assert.Contains("sanded well", File.ReadAllText(file), StringComparison.Ordinal);
            await NotebookRunner.RunAsync(path, folder, NoParameters, _ => { }, replaces: true);
            Assert.Equal(written, File.ReadAllText(file));
        }
    }

    [Fact]
    public async Task APageLetsNothingRunAndFetchesNothing()
    {
        NotebookRun run = await NotebookRunner.RunAsync(Broken(), folder, NoParameters, _ => { });
        string head = File.ReadAllText(run.Page).Split("</head>")[0];
        Assert.Contains(
            "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'; img-src data:; ",
            head, StringComparison.Ordinal);
        Assert.True(head.IndexOf("Content-Security-Policy", StringComparison.Ordinal) < head.IndexOf("<style>", StringComparison.Ordinal));
    }

    private static Dictionary<string, string> NoParameters => [];

    private Task<NotebookRun> Run(string name, Dictionary<string, string> parameters) =>
        NotebookRunner.RunAsync(NotebookFiles.Find(name), folder, parameters, _ => { });

    private string Broken()
    {
        string path = Path.Combine(Directory.CreateDirectory(Path.Combine(folder, "own")).FullName, "broken.ipynb");
        File.WriteAllText(path, """
            {"cells": [
              {"cell_type": "code", "execution_count": null, "id": "a", "metadata": {}, "outputs": [], "source": "Console.WriteLine(\"sanded\");"},
              {"cell_type": "code", "execution_count": null, "id": "b", "metadata": {}, "outputs": [], "source": "throw new InvalidOperationException(\"no paint left\");"},
              {"cell_type": "code", "execution_count": null, "metadata": {}, "outputs": [], "source": "Console.WriteLine(\"painted\");"}],
             "metadata": {"kernelspec": {"display_name": ".NET (C#)", "language": "C#", "name": ".net-csharp"}},
             "nbformat": 4, "nbformat_minor": 5}
            """);
        return path;
    }

    private static void AssertWhole(NotebookRun run)
    {
        Assert.Null(run.Failure);
        NotebookText written = NotebookText.Read(run.Notebook);
        Assert.Empty(NotebookSchema.Faults(File.ReadAllText(run.Notebook)));
        Assert.Equal(
            Enumerable.Range(1, written.Code.Count() - 1),
            written.Code.Where(cell => !cell.Tags.Contains("jupyter")).Select(cell => cell.ExecutionCount!.Value.GetInt32()));

        string page = File.ReadAllText(run.Page);
        Assert.DoesNotContain("class=\"error\">", page, StringComparison.Ordinal);
        Assert.DoesNotMatch(NeedsMoreThanItself(), page);
        Assert.All(Sources().Matches(page), match =>
        {
            Assert.StartsWith("data:image/png;base64,", match.Groups["source"].Value, StringComparison.Ordinal);
            byte[] picture = Convert.FromBase64String(match.Groups["source"].Value["data:image/png;base64,".Length..]);
            Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G'], picture.Take(4));
        });
        Assert.All(Images().Matches(page), match => Assert.Matches("alt=\"[^\"]+\"", match.Value));
        int pictures = written.Code.Sum(cell => cell.Outputs!.Value.EnumerateArray().Count(HasPicture));
        Assert.Equal(pictures, Images().Count(page));
    }

    private static bool HasPicture(JsonElement output) =>
        output.TryGetProperty("data", out JsonElement data) && data.TryGetProperty("image/png", out _);

    /// <summary>What runs, or is fetched from elsewhere when the page is opened; pictures are looked at on their own.</summary>
    [GeneratedRegex("<(script|link|iframe|object|embed|base|form)\\b|<[^>]+ on[a-z]+=|url\\(|@import|srcset=", RegexOptions.IgnoreCase)]
    private static partial Regex NeedsMoreThanItself();

    [GeneratedRegex("(src|href)=\"(?<source>[^\"]*)\"")]
    private static partial Regex Sources();

    [GeneratedRegex("<img [^>]*>")]
    private static partial Regex Images();
}
