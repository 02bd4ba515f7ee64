using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using CsCheck;
using FlipAnalytics.Notebooks;
using FlipAnalytics.Plots;

namespace FlipAnalytics.Tests;

/// <summary>A wage called by the same name is the same number in every text, document, page and plot about the same span.</summary>
public sealed partial class WageIsWageTests
{
    private const int Logs = 150;

    [Fact]
    public void The_full_wage_and_the_wage_of_a_span_are_one_number_each_wherever_they_stand()
    {
        int plots = 0;
        Gen.Select(QuarterLaws.Cases, Gen.Bool).Sample(
            (given, isQuarter) =>
            {
                using LogFolder folder = new();
                SalesLogWriter.Write(given.Log, folder.Path, overwrite: true);
                SalesLog log = folder.Read().Log!.AsOf(given.Log.Date);
                ReportPeriod period = isQuarter ? ReportPeriod.QuarterOf(given.From) : ReportPeriod.Of(given.From, given.To);
                var wages = WagesReport.Of(log, period);
                var quarter = QuarterReport.Of(log, period);
                string[] places =
                [
                    WagesText.Render(wages), WagesText.Render(wages, all: true), WagesHtml.Answer(wages).Html,
                    QuarterText.Render(quarter), QuarterText.Render(quarter, all: true), QuarterHtml.Answer(quarter).Html,
                ];
                (string Name, decimal Wage)[][] found =
                [
                    .. places.Select(text => Named(text)),
                    InDocument(WagesJson.Render(wages), period, log), InDocument(QuarterJson.Render(quarter), period, log),
                ];
                (string Name, decimal Wage)[] onPlots =
                    [.. new[] { WagePlot.Of(wages), QuarterPlot.Of(quarter) }.SelectMany(plot => Named(plot.Title))];
                plots += onPlots.Length;

                string span = WageBridgeText.SpanWageName(period);
                Assert.All(found, place => Assert.Equal(
                    wages.Bridge is null ? [] : [WageBridgeText.FullWageName, span],
                    place.Select(wage => wage.Name).Distinct().Order(StringComparer.Ordinal)));
                Assert.Equal(
                    wages.Bridge is null ? [] : [WageBridgeText.FullWageName, span],
                    found.SelectMany(place => place).Concat(onPlots).Distinct().Select(wage => wage.Name).Order(StringComparer.Ordinal));
            },
            iter: Logs, threads: 1);
        Assert.True(plots > Logs / 30, $"{plots} wages on plots");
    }

    [Fact]
    public void Both_commands_tell_the_same_wages()
    {
        string demo = House.Repository.PathOf("data-demo");
        foreach (string span in new[] { "2025-Q1", "2025", "2026-02" })
        {
            var wages = Named(Flip.Run("wages", "--period", span, "--log", demo).Output).ToHashSet();
            Assert.Equal(2, wages.Count);
            Assert.Superset(wages, Named(Flip.Run("quarter", span, "--log", demo, "--all").Output).ToHashSet());
        }
    }

    [Fact]
    public void Another_number_under_the_same_name_is_caught() => Assert.Equal(
        [("wage of the quarter", -2.10m), ("full wage", 17.81m), ("full wage", 1020.31m)],
        Named("paid $17.81 an hour (full wage:\n all) <td>what they carry (full wage)</td><td>8.00</td><td>2</td><td>1,020.31</td>\n  an hour (wage of the quarter)  -2.10  3.00"));

    private static (string Name, decimal Wage)[] Named(string text)
    {
        string line = Spaces().Replace(Tags().Replace(Row().Replace(text, ";"), " "), " ");
        return
        [
            .. Row().Matches(text).Concat(Before().Matches(line)).Concat(InATable().Matches(line))
                .Where(match => match.Groups["wage"].Value != "-")
                .Select(match => (match.Groups["name"].Value, Number(match.Groups["wage"].Value))),
        ];
    }

    private static (string Name, decimal Wage)[] InDocument(string document, ReportPeriod period, SalesLog log)
    {
        using JsonDocument json = JsonDocument.Parse(document);
        return
        [
            .. new[] { ("full_wage", WageBridgeText.FullWageName), ("span_wage", WageBridgeText.SpanWageName(period)) }
                .Select(field => (field.Item2, json.RootElement.GetProperty(field.Item1)))
                .Where(field => field.Item2.ValueKind == JsonValueKind.Number)
                .Select(field => (field.Item1, log.Workshop.Currency.Round(field.Item2.GetDecimal()))),
        ];
    }

    private static decimal Number(string text) => decimal.Parse(text.Replace("$", "", StringComparison.Ordinal), NumberStyles.Number, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"(?<wage>-?\$?\d[\d,]*(\.\d+)?) an hour \((?<name>full wage|wage of the \w+)")]
    private static partial Regex Before();

    // A row of profit and loss: the first column is the span, the others are earlier ones.
    [GeneratedRegex(@"^  an hour( of the pieces sold)? \((?<name>full wage|wage of the \w+)\) {2,}(?<wage>\S+)[^\n]*$", RegexOptions.Multiline)]
    private static partial Regex Row();

    [GeneratedRegex(@"(they carry \(|= )(?<name>full wage|wage of the \w+)\)? -?\d[\d,]*(\.\d+)? -?\d[\d,]*(\.\d+)? (?<wage>-?\d[\d,]*(\.\d+)?)")]
    private static partial Regex InATable();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();
}
