using System.Text.RegularExpressions;

namespace FlipAnalytics.Tests.House;

/// <summary>
/// Results depend on the log alone: not on the clock, on chance, or on the machine's culture. Today's date enters in one
/// file of the command.
/// </summary>
public sealed partial class NoClockNoChanceTests
{
    private const string TheClock = "src/FlipAnalytics.Cli/Clock.cs";

    [Fact]
    public void TheSourceKnowsNoClockNoChanceAndNoCulture() => Assert.Empty(
        from file in Repository.Sources("src")
        where Repository.Relative(file) != TheClock
        from found in Found(File.ReadAllText(file.FullName))
        select $"{Repository.Relative(file)}: {found}");

    [Theory]
    [InlineData("var now = DateTime.Now;")]
    [InlineData("var now = DateTime.UtcNow;")]
    [InlineData("var now = DateTimeOffset.UtcNow;")]
    [InlineData("var day = DateTime.Today;")]
    [InlineData("var now = TimeProvider.System.GetLocalNow();")]
    [InlineData("var chance = new Random(1);")]
    [InlineData("var chance = new System.Random();")]
    [InlineData("var chance = Random.Shared;")]
    [InlineData("var id = Guid.NewGuid();")]
    [InlineData("var culture = CultureInfo.CurrentCulture;")]
    [InlineData("var culture = CultureInfo.CurrentUICulture;")]
    [InlineData("var zone = TimeZoneInfo.Local;")]
    public void APlantedOneIsCaught(string code) => Assert.Single(Found(code));

    [Theory]
    [InlineData("// DateTime.Now would peek")]
    [InlineData("string text = \"new Random(\";")]
    [InlineData("double todayIndex = 3;")]
    public void ACommentOrAStringIsNone(string code) => Assert.Empty(Found(code));

    private static IEnumerable<string> Found(string source) =>
        Forbidden().Matches(CSharpText.WithoutCommentsAndStrings(source)).Select(match => match.Value);

    [GeneratedRegex(@"\bDateTime(Offset)?\.(Now|UtcNow|Today)\b|\bTimeProvider\.System\b|\bnew\s+(System\.)?Random\s*\("
        + @"|\bRandom\.Shared\b|\bGuid\.NewGuid\b|\bCurrent(UI)?Culture\b|\bTimeZoneInfo\.Local\b")]
    private static partial Regex Forbidden();
}
