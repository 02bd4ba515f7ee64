using System.Globalization;
using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>
/// Numbers have the same limits wherever they are written, each refusal names what was found and the range, and no number that is
/// let in goes wrong further on.
/// </summary>
[Collection("console")]
public sealed class NumberLimitsTests : IDisposable
{
    private const string InsideError = "Something went wrong inside flip";

    private static readonly (string Option, NumberRange Range)[] Options =
    [
        ("--hours", NumberRange.Hours.AboveZero), ("--supplies", NumberRange.Money), ("--sale-price", NumberRange.Money.AboveZero),
        ("--sticker-price", NumberRange.Money), ("--wage", NumberRange.Money), ("--width", NumberRange.Length),
        ("--depth", NumberRange.Length), ("--height", NumberRange.Length), ("--chance", NumberRange.Chance),
    ];

    private readonly LogFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("--hours", "1000000000000", "more than zero, at most 100,000")]
    [InlineData("--hours", "0.0000000000000000000000000001", "more than zero, at most 100,000, and not below 0.001")]
    [InlineData("--sale-price", "100000000000000", "more than zero, at most 999,999,999,999")]
    [InlineData("--wage", "10000000000000000000000000000", "zero or more, at most 999,999,999,999")]
    [InlineData("--wage", "99999999999999999999999999999999", "zero or more, at most 999,999,999,999")]
    [InlineData("--chance", "0.9999", "from 0.01 to 0.99")]
    public void AnOptionBeyondItsRangeIsRefusedWithTheRange(string option, string value, string range)
    {
        FlipRun run = FlipHere.Run("buy", "--log", ASmallLog().Path, "--type", "desk", option, value);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        string example = option == "--chance" ? "0.75" : "12.5";
        Assert.Equal($"{option} needs a number with a point, such as {example}, {range}; found '{value}'.", run.ErrorLines[0]);
    }

    [Theory]
    [InlineData("--type", "")]
    [InlineData("--type", "  ")]
    [InlineData("--as-of", "9999-12-31")]
    [InlineData("--as-of", "0001-01-01")]
    public void AValueThatSaysNothingIsRefused(string option, string value)
    {
        FlipRun run = FlipHere.Run([
            "buy", "--log", ASmallLog().Path, .. option == "--type" ? Array.Empty<string>() : ["--type", "desk"], option, value]);
        Assert.Equal((2, ""), (run.ExitCode, run.Output));
        Assert.StartsWith($"{option} needs ", run.ErrorLines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void ATargetWageOfATrillionIsRefusedForItsSize()
    {
        FlipRun run = FlipHere.Run("check", "--log", ASmallLog().With("workshop.toml", "target_wage = 1000000000000\n").Path);
        Assert.Equal(
            "workshop.toml line 1, target_wage: found '1000000000000', expected zero or more, at most 999,999,999,999. Correct it; the default is used until then.\n",
            run.Error);
    }

    [Fact]
    public void AnOptionACellASettingAndACandidateOfOneKindHaveTheSameLimits()
    {
        foreach (string hours in new[] { "100000", "100001", "0.001", "0.0009" })
        {
            bool fits = hours is "100000" or "0.001";
            using LogFolder log = new();
            log.With("pieces.csv", $"type,bought_price,sold_price,hours\ndesk,5,90,{hours}\n");
            log.With("workshop.toml", $"[guess.desk]\nhours = [{hours}, {hours}, {hours}]\n");
            log.With("list.csv", $"type,hours\ndesk,{hours}\n");
            LogReading reading = log.Read();
            Assert.Equal(fits ? 0 : 2, reading.Problems.Length == 0 ? 0 : reading.Problems.Select(problem => problem.File).Distinct().Count());
            Assert.Equal(fits, CandidateReader.Read(Path.Combine(log.Path, "list.csv"), new()).Problems.IsEmpty);
            Assert.Equal(fits ? 0 : 2, FlipHere.Run("buy", "--log", ASmallLog().Path, "--type", "desk", "--hours", hours).ExitCode);
        }
    }

    [Fact]
    public void NoOptionWithinOrBeyondTheLimitsGoesWrongInside() => Gen.Select(Written.Array[Options.Length], Gen.Bool.Array[Options.Length])
        .Sample(
            (numbers, given) =>
            {
                string[] call = ["buy", "--log", ASmallLog().Path, "--type", "desk", .. Options
                    .SelectMany((option, i) => given[i] ? new[] { option.Option, numbers[i] } : [])];
                FlipRun run = FlipHere.Run(call);
                Assert.DoesNotContain(InsideError, run.Error, StringComparison.Ordinal);
                int refused = Options.Where((option, i) => given[i] && !(decimal.TryParse(numbers[i], CultureInfo.InvariantCulture, out decimal number) && option.Range.Holds(number))).Count();
                Assert.True((refused > 0 ? 2 : 0) == run.ExitCode, $"{string.Join(' ', call)}\n{run.Error}");
            },
            iter: 150, threads: 1);

    [Fact]
    public void NoCellOrSettingWithinOrBeyondTheLimitsGoesWrongInside() => Gen.Select(Written.Array[40], Gen.Int[0, Verbs.Length - 1])
        .Sample(
            (numbers, verb) =>
            {
                using LogFolder log = new();
                string N(int i) => numbers[i];
                log.With("pieces.csv", $"""
                    id,type,count,width,depth,height,bought_on,sticker_price,bought_price,listed_on,asking_price,sold_on,sold_price,fees,delivery_charged,delivery_cost,hours,supplies_cost
                    A,desk,{N(0)},{N(1)},{N(2)},{N(3)},2026-01-02,{N(4)},{N(5)},2026-01-09,{N(6)},2026-02-01,{N(7)},{N(8)},{N(9)},{N(10)},{N(11)},{N(12)}
                    B,desk,,{N(13)},20,30,2026-01-03,,{N(14)},2026-01-10,,2026-02-09,{N(15)},,,,{N(16)},
                    C,desk,1,48,20,30,2026-01-03,20,10,2026-01-10,120,2026-02-09,110,,,,6,
                    D,chest,1,40,20,30,2026-01-03,20,{N(17)},2026-01-10,{N(18)},,,,,,,

                    """);
                log.With("hours.csv", $"id,date,task,hours\nA,2026-01-05,sanding,{N(19)}\n,2026-01-06,other,{N(20)}\n");
                log.With("supplies.csv", $"item,bought_on,quantity,unit,price,coverage,coverage_unit\nsage,2026-01-01,{N(21)},quart,{N(22)},{N(23)},ft2/quart\n");
                log.With("uses.csv", $"id,date,item,quantity,unit,coats,area\nA,2026-01-05,sage,{N(24)},quart,,\nB,2026-01-05,sage,,,{N(25)},{N(26)}\nC,2026-01-06,sage,,,{N(27)},\n");
                log.With("counts.csv", $"date,item,quantity,unit\n2026-02-20,sage,{N(28)},quart\n");
                log.With("trips.csv", $"trip,date,distance,hours,other_cost\nT1,2026-01-02,{N(29)},{N(30)},{N(31)}\n");
                log.With("tools.csv", $"item,bought_on,price,salvage,life_pieces,life_months\nsander,2026-01-01,{N(32)},{N(33)},{N(34)},\nclamp,2026-01-01,{N(32)},,,{N(35)}\n");
                log.With("overheads.csv", $"month,item,amount\n2026-01,rent,{N(36)}\n");
                log.With("workshop.toml", $"target_wage = {N(37)}\nhours_per_week = {N(38)}\n[fees.online]\nrate = 0.1\nfixed = {N(39)}\n[guess.desk]\nsale_price = [{N(37)}, {N(37)}, {N(38)}]\nhours = [{N(38)}, {N(39)}, {N(39)}]\ndays = [1, {N(37)}, {N(37)}]\n");
                FlipRun run = FlipHere.Run([.. Verbs[verb].Split(' '), "--as-of", "2026-03-31", "--log", log.Path]);
                Assert.False(run.Error.Contains(InsideError, StringComparison.Ordinal), $"{Verbs[verb]}\n{run.Error}\n{string.Join(' ', numbers)}");
            },
            iter: 250, threads: 1);

    private static readonly string[] Verbs =
    [
        "buy --type desk", "buy --type desk --json", "colors", "wages", "wages --json", "quarter 2026-Q1", "quarter 2026-Q1 --json", "year 2026 --all",
        "fit --model price", "fit --model days", "fit --model hours", "fit --model supplies", "fit --model price --estimator ols", "check", "wages --explain A",
        "quarter 2026-Q1 --explain profit",
    ];

    // Ordinary ones, the ends of the ranges and what lies just beyond, and any number of digits before and after the point.
    private static readonly Gen<string> Written = Gen.Frequency(
        (4, Gen.Int[1, 500].Select(number => number.ToString(CultureInfo.InvariantCulture))),
        (3, Gen.OneOf<string>(
            "0", "0.01", "0.001", "0.0001", "0.00009", "1", "168", "169", "1000", "1001", "10000", "100000", "100001", "10000000",
            "999999999999", "1000000000000", "0.0000000000000000000000000001", "79228162514264337593543950335")),
        (2, Gen.Select(Gen.Int[0, 28], Gen.Int[1, 9]).Select((zeros, digit) => zeros == 0 ? $"{digit}" : $"{digit}{new string('0', zeros)}")),
        (1, Gen.Select(Gen.Int[0, 27], Gen.Int[1, 9]).Select((zeros, digit) => $"0.{new string('0', zeros)}{digit}")));

    private LogFolder ASmallLog() => folder.With("pieces.csv", """
        id,type,width,bought_on,bought_price,listed_on,sold_on,sold_price,hours,supplies_cost
        A,desk,48,2026-01-02,10,2026-01-09,2026-02-01,120,6,11
        B,desk,40,2026-01-03,15,2026-01-10,2026-02-09,110,7,9
        C,chest,36,2026-01-03,20,2026-01-12,2026-02-19,140,8,14

        """);
}
