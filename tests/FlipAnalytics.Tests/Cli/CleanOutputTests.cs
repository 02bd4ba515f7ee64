using System.Globalization;
using System.Text;
using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary>What a log, its settings or the options hold never reaches a terminal, a table or a picture raw.</summary>
[Collection("console")]
public sealed class CleanOutputTests : IDisposable
{
    private const string Bad = "\u001b[31m\u202e\u200b\u2028\u0085\u009b";

    private readonly LogFolder folder = new();

    public CleanOutputTests()
    {
        folder.With("pieces.csv", $"""
            id,type,title,bought_on,bought_price,listed_on,sold_on,sold_price,color,channel,hours,notes,own{Bad}
            P{Bad}1,de{Bad}sk,"a {Bad} desk
            of two lines",2026-01-02,10,2026-01-09,2026-02-01,120,sage{Bad},on{Bad}line,6,{Bad},{Bad}
            P2,desk,b,2026-01-03,15,2026-01-10,2026-02-09,110,sage,online,7,,
            P3,"ch
            est",{new string('x', 900_000)},2026-01-03,20,2026-01-12,2026-02-19,140,blue,online,8,,
            P4,chest{Bad},=c{Bad},2026-01-03,20,2026-01-12,,,blue,online,,,
            P6,desk,,2026-01-03,20,2026-01-12,2026-02-20,130,blue,online,8,,
            P7,desk,,2026-01-03,20,2026-01-12,2026-02-21,150,sage,online,8,,
            P5,desk,bad number,2026-01-03,{Bad},2026-01-12,,,blue,online,,,

            """);
        folder.With("overheads.csv", $"month,item,amount\n2026-01,re{Bad}nt,30\n");
        folder.With("workshop.toml", "name = \"\\u001b\\u202eshop\"\nsymbol = \"\\u200b$\"\n[fees.\"on\\u202eline\"]\nrate = 0.1\n[\"gu\\u001bess\"]\nx = 1\n");
    }

    public static TheoryData<string> Verbs => new(
        "check --all", "buy --type desk --all", "colors --all", "wages --all", "wages --by color", "wages --explain P1", "quarter 2026-Q1 --all",
        "quarter 2026-Q1 --explain overhead", "year 2026 --all", "fit --model price --all", $"buy --type {Bad}dezk", $"wages --explain {Bad}", $"quarter {Bad}",
        $"colors --by {Bad}", $"{Bad}", $"buy --{Bad}", $"buy --type desk --hours {Bad}", $"buy --type desk --candidates {Bad}", $"fit --model {Bad}");

    public void Dispose() => folder.Dispose();

    [Theory]
    [MemberData(nameof(Verbs))]
    public void NoVerbShowsThemInTextOrJson(string verb)
    {
        foreach (string json in new[] { "", " --json" })
        {
            FlipRun run = FlipHere.Run([
                .. (verb + json).Split(' '), "--log", folder.Path, .. verb.StartsWith("check", StringComparison.Ordinal) ? Array.Empty<string>() : ["--as-of", "2026-03-31"]]);
            AssertClean(run.Output);
            AssertClean(run.Error);
            Assert.DoesNotContain("inside flip", run.Error, StringComparison.Ordinal);
            Assert.InRange(run.Output.Length, 0, json.Length > 0 ? 2_000_000 : 60_000);
            if (json.Length > 0 && run.Output.Length > 0)
                JsonDocument.Parse(run.Output).Dispose();
        }
    }

    [Theory]
    [InlineData("buy --candidates list.csv --tables OUT")]
    [InlineData("wages --tables OUT")]
    [InlineData("quarter 2026-Q1 --tables OUT")]
    [InlineData("year 2026 --out OUT")]
    [InlineData("year 2026 --journal OUT/a.journal")]
    [InlineData("fit --model price --plain --design OUT/a.csv")]
    [InlineData("colors --plot OUT/a.svg")]
    [InlineData("wages --plot OUT/a.svg")]
    [InlineData("quarter 2026-Q1 --plot OUT/a.svg")]
    [InlineData("check --plot OUT/a.svg")]
    public void NoFileHoldsThem(string command)
    {
        folder.With("list.csv", $"id,type,my{Bad} notes\nA{Bad},desk,\"x{Bad}\ny\"\n");
        string into = Path.Combine(folder.Path, "out");
        FlipRun run = FlipHere.Run([
            .. command.Split(' ').Select(word => word.Replace("OUT", into, StringComparison.Ordinal).Replace("list.csv", Path.Combine(folder.Path, "list.csv"), StringComparison.Ordinal)),
            "--log", folder.Path, .. command.StartsWith("check", StringComparison.Ordinal) ? Array.Empty<string>() : ["--as-of", "2026-03-31"]]);
        Assert.DoesNotContain("inside flip", run.Error, StringComparison.Ordinal);
        Assert.True(Directory.Exists(into), run.Error);
        string[] files = Directory.GetFiles(into);
        Assert.NotEmpty(files);
        // The lines of an SVG begin with tabs, which no text of it holds.
        Assert.All(files, file => AssertClean(File.ReadAllText(file).Replace("\t", file.EndsWith(".svg", StringComparison.Ordinal) ? "" : "\t", StringComparison.Ordinal)));
    }

    [Fact]
    public void AWordCopiedWithSignsThatCannotBeSeenIsTheWord()
    {
        using LogFolder log = new();
        LogReading reading = log.With("pieces.csv", "type,bought_price,sold_price,sold_on\ndesk,10,90,2026-02-01\n\u200bde\ufeffsk,10,90,\u202d2026-02-01\u202c\n").Read();
        Assert.Empty(reading.Problems);
        Assert.Single(reading.Log!.Pieces.Select(piece => piece.Type).Distinct());
        Assert.Equal(new DateOnly(2026, 2, 1), reading.Log.Pieces[1].SoldOn);
    }

    [Fact]
    public void ANameOfAPageIsRefusedAndATypeOfNothingButHiddenSignsIsMissing()
    {
        LogReading reading = LogFolder.ReadPieces($"type,bought_price\n{new string('x', 201)},5\n\u200b\u202e,5\n{new string('x', 200)},5\n");
        Assert.Equal(
            [(2, "a name or a word or two, of at most 200 characters"), (3, "type in every row")],
            reading.Problems.Select(problem => (problem.Row!.Value, problem.Expected)));
        Assert.Single(reading.Log!.Pieces);
        FlipRun run = FlipHere.Run("buy", "--type", new string('x', 201), "--log", folder.Path);
        Assert.Equal(2, run.ExitCode);
        Assert.StartsWith("--type needs a name or a word or two, of at most 200 characters; found 'xxx", run.Error, StringComparison.Ordinal);
    }

    private static void AssertClean(string text) => Assert.DoesNotContain(
        text.EnumerateRunes(),
        sign => sign.Value is not '\n' && Rune.GetUnicodeCategory(sign) is UnicodeCategory.Control or UnicodeCategory.Format
            or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator);
}
