using System.Globalization;
using System.Text.Json;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>Reads ReferenceData/aft, whose README names the sources.</summary>
internal static class AftReference
{
    private static readonly string Folder = Path.Combine(AppContext.BaseDirectory, "ReferenceData", "aft");

    public static JsonElement Answers(string file)
    {
        using JsonDocument document = JsonDocument.Parse(File.ReadAllText(Path.Combine(Folder, file)));
        return document.RootElement.Clone();
    }

    public static AcceleratedFailureData Episodes(string name)
    {
        (string[] header, string[][] rows) = Table(name);
        return new AcceleratedFailureData(
            [.. header.Skip(3)],
            [.. rows.Select(row => row.Skip(3).Select(Number).ToArray())],
            [.. rows.Select(row => row[2] == "1"
                ? Spell.Ended(Number(row[1]), Number(row[0]))
                : Spell.Running(Number(row[1]), Number(row[0])))],
            [],
            null);
    }

    public static AcceleratedFailureData Intervals(bool weighted)
    {
        (_, string[][] rows) = Table("interval");
        return new AcceleratedFailureData(
            ["(Intercept)", "width", "painted"],
            [.. rows.Select(row => new[] { 1, Number(row[3]), Number(row[4]) })],
            [.. rows.Select(row => row[0] switch
            {
                "ended" => Spell.Ended(Number(row[1])),
                "running" => Spell.Running(Number(row[1])),
                "before" => Spell.EndedBefore(Number(row[2])),
                _ => Spell.EndedBetween(Number(row[1]), Number(row[2])),
            })],
            [],
            weighted ? [.. rows.Select(row => Number(row[5]))] : null);
    }

    public static double[][] NewRows(string name) =>
        [.. Table(name + "-new").Rows.Select(row => row.Select(Number).ToArray())];

    public static double[] Numbers(this JsonElement element, string property) =>
        [.. element.GetProperty(property).EnumerateArray().Select(number => number.GetDouble())];

    public static double[][] Matrix(this JsonElement element, string property) =>
        [.. element.GetProperty(property).EnumerateArray().Select(row => row.EnumerateArray().Select(number => number.GetDouble()).ToArray())];

    public static double Number(this JsonElement element, string property) => element.GetProperty(property).GetDouble();

    private static (string[] Header, string[][] Rows) Table(string name)
    {
        string[][] lines = [.. File.ReadLines(Path.Combine(Folder, name + ".csv")).Select(line => line.Split(',').Select(cell => cell.Trim('"')).ToArray())];
        return (lines[0], lines[1..]);
    }

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
