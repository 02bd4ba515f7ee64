using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FlipAnalytics;

/// <summary>A generated log with the truth behind it.</summary>
public sealed record DemoLogResult
{
    /// <summary>The log, as of its last day.</summary>
    public required SalesLog Log { get; init; }

    /// <summary>The market it was drawn from, with the levels that were drawn.</summary>
    internal DemoMarket Truth { get; init; } = DemoMarket.Standard;

    /// <summary>How many pieces were bought.</summary>
    public required int Flips { get; init; }

    /// <summary>The seed it was drawn with.</summary>
    public required ulong Seed { get; init; }
}

/// <summary>
/// Makes the log of an invented one-person workshop in an invented town, from a known truth, so that what the models
/// find can be held against it. The same arguments give the same log on every machine.
/// </summary>
public static class DemoLog
{
    private const string TruthFile = "truth.json";

    private static readonly DemoTruthJson Truth = new(new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        WriteIndented = true,
        NewLine = "\n",
        // Quotes and plus signs stay readable: the file is never put into a web page.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter<Condition>(JsonNamingPolicy.SnakeCaseLower) },
    });

    /// <summary>The last day of every demo log: 2026-03-31.</summary>
    public static DateOnly LastDay { get; } = new(2026, 3, 31);

    /// <summary>
    /// The first day of a demo log. Its months grow as the square root of the pieces bought, so that a longer log is a
    /// busier one too: 14 months for 30, 30 for 150 (five pieces a month), 43 for 300, 78 for 1,000, never more than 84.
    /// </summary>
    /// <param name="flips">Pieces bought, zero or more.</param>
    public static DateOnly FirstDay(int flips)
    {
        int months = (int)Math.Clamp(Math.Ceiling(30 * Math.Sqrt(flips / 150.0)), 2, 84);
        return LastDay.AddDays(1).AddMonths(-months);
    }

    /// <summary>Makes a log.</summary>
    /// <param name="flips">Pieces bought, from 0 to 100,000; some are still unsold on the last day.</param>
    /// <param name="seed">Any number; the same gives the same log.</param>
    public static DemoLogResult Generate(int flips, ulong seed) => Generate(flips, seed, DemoMarket.Standard);

    /// <summary>Makes a log of a market of one's own, the levels of which are drawn anew.</summary>
    internal static DemoLogResult Generate(int flips, ulong seed, DemoMarket market)
    {
        if (flips is < 0 or > 100_000)
        {
            throw new ArgumentOutOfRangeException(
                nameof(flips), flips, "A demo log has from 0 to 100,000 flips; choose a number in that range.");
        }
        DateOnly first = FirstDay(flips);
        DemoMarket truth = WithLevels(market, first, seed);
        DemoOutings outings = DemoOutings.Plan(flips, first, LastDay, seed);
        ImmutableArray<DemoEntry> entries =
        [
            .. outings.Finds.Select((find, index) =>
                DemoEntry.Of(DemoLife.Of(truth, seed, index, find), truth, LastDay, seed)),
        ];
        DemoSuppliesBook supplies = DemoSuppliesBook.Write(entries, first, LastDay, seed);
        return new()
        {
            Truth = truth,
            Flips = flips,
            Seed = seed,
            Log = new()
            {
                Date = LastDay,
                Workshop = DemoTables.Workshop(truth),
                Pieces = [.. entries.Select(entry => entry.Piece)],
                AskingPrices =
                [
                    .. entries
                        .Where(entry => !entry.Life.LeftUnready)
                        .SelectMany(entry => entry.Life.Cuts)
                        .Where(cut => cut.Date <= LastDay)
                        .OrderBy(cut => cut.Date),
                ],
                Hours = DemoHoursBook.Write(entries, first, LastDay, seed),
                Supplies = supplies.Purchases,
                Uses = supplies.Uses,
                Trips = outings.Trips,
                Tools = DemoTables.Tools(first, LastDay),
                Overheads = DemoTables.Overheads(first, LastDay),
                Colours = DemoTables.Colours(truth),
            },
        };
    }

    /// <summary>Why a demo log cannot be written into a folder, in a sentence; null where it can.</summary>
    /// <param name="folder">The folder; it need not exist.</param>
    public static string? Refusal(string folder)
    {
        if (SalesLogWriter.ExistingFile(folder) is { } known)
            return $"There is a log in {folder} already ({Path.GetFileName(known)}): name another folder.";
        return Path.Exists(Path.Combine(folder, TruthFile)) ? $"{folder} holds a file {TruthFile} already: name another folder." : null;
    }

    /// <summary>Writes the log and <c>truth.json</c>, what it was generated from; all files or none.</summary>
    /// <param name="result">A generated log.</param>
    /// <param name="folder">The folder; made if it does not exist.</param>
    /// <exception cref="FileRefusedException">The folder holds a log or a <c>truth.json</c> already.</exception>
    /// <exception cref="IOException">Writing fails.</exception>
    public static void Write(DemoLogResult result, string folder)
    {
        ArgumentNullException.ThrowIfNull(result);
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        if (Refusal(folder) is { } refusal)
            throw new FileRefusedException(refusal);
        OutputFiles.WriteLog(SalesLogWriter.Files(result.Log, folder)
            .Append((Path.Combine(folder, TruthFile), Encoding.UTF8.GetBytes(TruthJson(result)))));
    }

    private static string TruthJson(DemoLogResult result)
    {
        var document = new DemoTruthDocument(
            "Generated by a program: the workshop, the town, the pieces and the sales are invented. "
                + "This file holds the truth that the log was drawn from.",
            result.Flips, result.Seed, FirstDay(result.Flips), LastDay, DemoTruthText.Formulas, result.Truth);
        return JsonSerializer.Serialize(document, Truth.DemoTruthDocument) + "\n";
    }

    private static DemoMarket WithLevels(DemoMarket market, DateOnly first, ulong seed)
    {
        DemoDraws draws = new(seed, DemoStream.Drift);
        int months = (LastDay.Year - first.Year) * 12 + LastDay.Month - first.Month + 1;
        double[] levels = new double[months + 1];
        for (int month = 1; month <= months; month++)
            levels[month] = Math.Round(levels[month - 1] + market.LevelStep * draws.Normal(), 4);
        return market with { FirstMonth = first, MonthlyLevels = [.. levels] };
    }
}
