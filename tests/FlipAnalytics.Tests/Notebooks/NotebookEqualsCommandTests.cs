using System.Globalization;
using System.Net;
using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using FlipAnalytics.Notebooks;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>Asked the same, a notebook and its command give the same answer. Both run in this process.</summary>
[Collection("notebooks")]
public sealed partial class NotebookEqualsCommandTests(ExecutedNotebooks executed) : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("flip-same-").FullName;

    // The day on which the shared runs take place.
    private static DateOnly Today { get; } = new(2026, 4, 2);

    public void Dispose() => Directory.Delete(folder, recursive: true);

    /// <summary>Log, notebook, settings; then the command with its options.</summary>
    public static TheoryData<string, string, string, string> Questions => new()
    {
        { "data-demo", "00-start", "", "check" },
        { "yen", "00-start", "", "check" },
        { "data-demo", "01-sourcing", "type=dresser", "buy --type dresser" },
        { "data-demo", "01-sourcing", "type=nightstand count=2 color=sage hours=6 sticker-price=40 wage=20", "buy --type nightstand --count 2 --color sage --hours 6 --sticker-price 40 --wage 20" },
        { "data-demo", "01-sourcing", "type=Dressers width=48 condition=worn chance=0.9 channel=market sticker-price=250", "buy --type Dressers --width 48 --condition worn --chance 0.9 --channel market --sticker-price 250" },
        { "yen", "01-sourcing", "type=dresser sticker-price=4000", "buy --type dresser --sticker-price 4000" },
        { "no-sale", "01-sourcing", "type=dresser sticker-price=40", "buy --type dresser --sticker-price 40" },
        { "data-demo", "02-colors", "", "colors" },
        { "data-demo", "02-colors", "by=Type", "colors --by type" },
        { "data-demo", "02-colors", "next-type=dresser", "colors --for dresser" },
        { "yen", "02-colors", "", "colors" },
        { "no-sale", "02-colors", "", "colors" },
        { "data-demo", "03-quarter", "", "quarter" },
        { "data-demo", "03-quarter", "span=2025-Q3", "quarter 2025-Q3" },
        { "yen", "03-quarter", "", "quarter" },
        { "data-demo", "04-wages", "", "wages" },
        { "data-demo", "04-wages", "span=2026-Q1", "wages --period 2026-Q1" },
        { "yen", "04-wages", "", "wages" },
        { "data-demo", "05-model-check", "", "fit --model price" },
        { "yen", "05-model-check", "", "fit --model price" },
        { "data-demo", "05-model-check", "model=Hours", "fit --model hours" },
    };

    [Theory]
    [MemberData(nameof(Questions))]
    public async Task The_notebook_says_what_the_command_says(string log, string name, string settings, string command)
    {
        string page = await Page(log, name, settings);
        Assert.Contains(FirstParagraph(Command(log, command)), page, StringComparison.Ordinal);
        if (name == "01-sourcing" && log != ExecutedNotebooks.NoSale)
            AssertSameSteps(page, log, Command(log, command + " --json"));
    }

    [Fact]
    public async Task An_example_is_shown_only_where_nothing_is_described_and_is_called_one()
    {
        const string Said = "No piece was described, so this is an example: P";
        Assert.Contains(Said, await Page("data-demo", "01-sourcing", ""), StringComparison.Ordinal);
        Assert.DoesNotContain(Said, await Page("data-demo", "01-sourcing", "type=desk"), StringComparison.Ordinal);
        NotebookRun untold = await Run("data-demo", "01-sourcing", "width=48");
        Assert.Contains("Say what it is", untold.Failure!.Message, StringComparison.Ordinal);
    }

    private static void AssertSameSteps(string page, string log, string json)
    {
        using JsonDocument answer = JsonDocument.Parse(json);
        JsonElement[] steps = [.. answer.RootElement.GetProperty("candidates")[0].GetProperty("waterfall").EnumerateArray()];
        Assert.True(steps.Length >= 4);
        int digits = log == ExecutedNotebooks.Yen ? 0 : 2;
        Assert.All(steps, step => Assert.Contains(
            $"{step.GetProperty("item").GetString()} {step.GetProperty("amount").GetDecimal().ToString("N" + digits, CultureInfo.InvariantCulture)} ",
            page, StringComparison.Ordinal));
    }

    private async Task<string> Page(string log, string name, string settings)
    {
        NotebookRun run = await Run(log, name, settings);
        Assert.Null(run.Failure);
        string page = File.ReadAllText(run.Page);
        // What a page says of itself, and its code, is no answer.
        return Spaces().Replace(WebUtility.HtmlDecode(Tags().Replace(Code().Replace(page, " "), " ")), " ");
    }

    private async Task<NotebookRun> Run(string log, string name, string settings)
    {
        if (settings.Length == 0)
            return await executed.Run(log, name);
        Dictionary<string, string> parameters = settings.Split(' ').Select(setting => setting.Split('='))
            .ToDictionary(pair => pair[0], pair => pair[1]);
        parameters["log-folder"] = executed.FolderOf(log);
        parameters["today"] = $"{Today:yyyy-MM-dd}";
        return await NotebookRunner.RunAsync(NotebookFiles.Find(name), folder, parameters, _ => { });
    }

    private string Command(string log, string command)
    {
        DateOnly asOf = AsOfDate.Choose(SalesLogReader.Read(executed.FolderOf(log)).Log!, Today, null).Date;
        string[] arguments = [.. command.Split(' '), "--log", executed.FolderOf(log), .. command == "check" ? [] : new[] { "--as-of", $"{asOf:yyyy-MM-dd}" }];
        TextWriter console = Console.Out;
        using var printed = new StringWriter();
        Console.SetOut(printed);
        try
        {
            Assert.Equal(0, Assembly.Load("flip").EntryPoint!.Invoke(null, [arguments]));
        }
        finally
        {
            Console.SetOut(console);
        }

        return printed.ToString();
    }

    /// <summary>The answer on one line: what was made of the words of the question, and the first paragraph.</summary>
    private static string FirstParagraph(string printed) =>
        Spaces().Replace(printed.TrimStart().Split("\n\n")[0].Split("\n  ")[0], " ").Trim();

    [GeneratedRegex("<style>.*?</style>|<details>.*?</details>", RegexOptions.Singleline)]
    private static partial Regex Code();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
