using System.Text;
using System.Text.Json;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>What a folder holds of a kept span: the kept span, why there is none that can be used, or neither.</summary>
/// <param name="Kept">The kept span; null where there is none or where it cannot be used.</param>
/// <param name="Trouble">Why a file that is there cannot be used and what to do: a sentence or two; null where all is well.</param>
public sealed record QuarterKeptReading(QuarterKept? Kept, string? Trouble);

/// <summary>
/// Kept spans as files of their own, <c>kept/2026-Q1.json</c> beside the log. Reading a log does not look into that folder, and
/// keeping touches no file of the log.
/// </summary>
public static class QuarterKeptFile
{
    /// <summary>Folder beside the files of the log.</summary>
    public const string Folder = "kept";

    private const int LargestFile = 256_000_000;

    /// <summary>File of a span, seen from the folder of the log.</summary>
    /// <param name="period">The span.</param>
    public static string NameOf(ReportPeriod period)
    {
        ArgumentNullException.ThrowIfNull(period);
        return $"{Folder}/{period.Name}.json";
    }

    /// <summary>Why a span is not kept, in a sentence with what to do instead; null where it may be.</summary>
    /// <param name="report">The report.</param>
    /// <param name="logFolder">Folder of the log.</param>
    /// <param name="replaces">Whether a span that is kept already may be replaced.</param>
    public static string? Refusal(QuarterReport report, string logFolder, bool replaces)
    {
        ArgumentNullException.ThrowIfNull(report);
        string name = report.Period.Name;
        if (report.IsPart)
        {
            return Invariant(
                $"{name} is not kept: it ends on {report.Period.To:yyyy-MM-dd}, and facts are known up to {report.AsOf:yyyy-MM-dd} only. Keep it when it is over; if nothing more is to come, add --as-of {report.Period.To:yyyy-MM-dd}.");
        }

        if (replaces || !File.Exists(PathOf(logFolder, report.Period)))
            return null;
        string when = Read(logFolder, report.Period).Kept is { } kept ? Invariant($", as of {kept.AsOf:yyyy-MM-dd}") : "";
        return $"{name} is kept already{when} ({NameOf(report.Period)}), and a kept {report.Period.Noun} stays as it was; to replace it for good, add --force. Without --keep, flip quarter {name} says what has changed since.";
    }

    /// <summary>Writes what is kept: in full beside its final name first, and moved there when complete.</summary>
    /// <param name="kept">What is kept.</param>
    /// <param name="logFolder">Folder of the log.</param>
    /// <exception cref="IOException">Writing fails.</exception>
    public static void Write(QuarterKept kept, string logFolder)
    {
        ArgumentNullException.ThrowIfNull(kept);
        byte[] text = Encoding.UTF8.GetBytes(JsonStyle.Text(kept, QuarterKeptJsonContext.Readable.QuarterKept));
        // What was kept before has been refused by now, or may be replaced.
        OutputFiles.Write([OutputFile.Judged(PathOf(logFolder, kept.Period), text)], replaces: true);
    }

    /// <summary>Reads what was kept of a span.</summary>
    /// <param name="logFolder">Folder of the log.</param>
    /// <param name="period">The span.</param>
    public static QuarterKeptReading Read(string logFolder, ReportPeriod period)
    {
        ArgumentNullException.ThrowIfNull(period);
        string path = PathOf(logFolder, period);
        string name = NameOf(period);
        if (!File.Exists(path))
            return new(null, null);
        try
        {
            byte[] bytes = PlainFile.Read(path, LargestFile) ?? [];
            ReadOnlySpan<byte> text = bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(3) : bytes;
            if (FormatOf(text) is { } format and not QuarterKept.CurrentFormat)
            {
                return new(null, Invariant(
                    $"{name} is of format {format}, and this program reads format {QuarterKept.CurrentFormat}: use the newer program that wrote it. Nothing is compared."));
            }

            if (JsonSerializer.Deserialize(text, QuarterKeptJsonContext.Readable.QuarterKept) is not { } kept || IsLacking(kept))
                return Broken("a part of it is missing");
            if (kept.Fingerprint != kept.FingerprintOfFacts())
                return Broken("its fingerprint does not fit the facts in it");
            return kept.From == period.From && kept.To == period.To ? new(kept, null)
                : Broken($"it tells of {kept.Span}, not of {period.Name}");
        }
        catch (JsonException e)
        {
            return Broken(e.LineNumber is { } line ? Invariant($"line {line + 1} cannot be read") : "it cannot be read");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return new(null, $"{name} cannot be opened ({e.Message}), so nothing is compared; check that you may read it.");
        }

        QuarterKeptReading Broken(string why) => new(null,
            $"{name} was edited or damaged since it was kept: {why}. Nothing is compared; put a copy of it back, or keep the {period.Noun} anew with --keep --force.");
    }

    private static string PathOf(string logFolder, ReportPeriod period) =>
        Path.Combine(logFolder, Folder, $"{period.Name}.json");

    // A newer form may look otherwise in every other place.
    private static int? FormatOf(ReadOnlySpan<byte> text)
    {
        Utf8JsonReader reader = new(text);
        using var document = JsonDocument.ParseValue(ref reader);
        return document.RootElement.ValueKind == JsonValueKind.Object
            && document.RootElement.TryGetProperty("format", out JsonElement format)
            && format.ValueKind == JsonValueKind.Number && format.TryGetInt32(out int number) ? number : null;
    }

    private static bool IsLacking(QuarterKept kept) =>
        kept is { Span: null } or { Currency: null } or { Settings: null } or { Fingerprint: null } or { Figures.IsDefault: true } or { Facts.IsDefault: true }
            or { MadeOf.IsDefault: true }
        || kept.To < kept.From
        || kept.Settings is { Costing: null } or { LengthUnit: null } or { DistanceUnit: null } or { Mileage.IsDefault: true } or { Fees.IsDefault: true }
        || kept.Settings.Fees.Any(fee => fee is not { Channel: not null })
        || kept.Settings.Mileage.Any(rate => rate is null)
        || kept.Figures.Any(figure => figure is not { Part: not null, Line: not null, Unit: not null })
        || kept.MadeOf.Any(line => line is not { Line: not null, Parts.IsDefault: false } || line.Parts.Any(part => part is null))
        || kept.Facts.Any(table => table is not { File: not null, Columns: not null, Rows.IsDefault: false }
            || table.Rows.Any(row => row is null));
}
