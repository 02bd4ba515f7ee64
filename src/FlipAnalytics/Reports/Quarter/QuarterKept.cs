using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json.Serialization;

namespace FlipAnalytics;

/// <summary>A span's figures as they were on a day, with the facts they rest on.</summary>
/// <param name="About">What this file is, for whoever opens it.</param>
/// <param name="Format">Version of this form.</param>
/// <param name="Span">Name of the span, such as 2026-Q1.</param>
/// <param name="From">Its first day.</param>
/// <param name="To">Its last day.</param>
/// <param name="AsOf">Date up to which facts were known.</param>
/// <param name="Currency">ISO 4217 code.</param>
/// <param name="Settings">Costing method, units, rates and fees.</param>
/// <param name="Figures">The figures.</param>
/// <param name="MadeOf">What each line is made of, to read; comparing rests on the facts.</param>
/// <param name="Facts">The rows of the log behind them.</param>
/// <param name="Fingerprint">SHA-256 over all of the above but the first line, in lower-case hexadecimal digits.</param>
public sealed record QuarterKept(
    string About,
    int Format,
    string Span,
    DateOnly From,
    DateOnly To,
    DateOnly AsOf,
    string Currency,
    QuarterKeptSettings Settings,
    ImmutableArray<QuarterKeptFigure> Figures,
    ImmutableArray<QuarterKeptParts> MadeOf,
    ImmutableArray<QuarterKeptTable> Facts,
    string Fingerprint)
{
    /// <summary>The form that is written here.</summary>
    public const int CurrentFormat = 1;

    /// <summary>What is kept of a report.</summary>
    /// <param name="report">The report.</param>
    /// <param name="log">The log it was made of, as of its date.</param>
    public static QuarterKept Of(QuarterReport report, SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(report);
        ArgumentNullException.ThrowIfNull(log);
        QuarterKept kept = new(
            $"{report.Period.Name} as it was. flip quarter {report.Period.Name} says whether it still holds. Do not edit: the fingerprint would tell.",
            CurrentFormat,
            report.Period.Name,
            report.Period.From,
            report.Period.To,
            report.AsOf,
            report.Workshop.Currency.Code,
            QuarterKeptSettings.Of(log.Workshop),
            QuarterKeptFigures.Of(report),
            QuarterKeptParts.Of(report, log),
            QuarterKeptFacts.Write(log),
            "");
        return kept with { Fingerprint = kept.FingerprintOfFacts() };
    }

    /// <summary>The span.</summary>
    [JsonIgnore]
    public ReportPeriod Period => ReportPeriod.Of(From, To);

    /// <summary>
    /// SHA-256 (FIPS 180-4) over figures and facts. Each text goes in after its length, numbers without zeros behind them and
    /// days as ISO 8601, so that neither culture nor the layout of the file changes it.
    /// </summary>
    public string FingerprintOfFacts()
    {
        StringBuilder text = new();
        Add(Format, Span, From, To, AsOf, Currency, Settings.Costing, Settings.LengthUnit, Settings.DistanceUnit);
        foreach (MileageRate rate in Settings.Mileage)
            Add("mileage", rate.From, rate.Rate);
        foreach (QuarterKeptFee fee in Settings.Fees)
            Add("fee", fee.Channel, fee.Rate, fee.Fixed);
        foreach (QuarterKeptFigure figure in Figures)
            Add("figure", figure.Part, figure.Line, figure.Unit, figure.Amount);
        foreach (QuarterKeptParts line in MadeOf)
        {
            Add("line", line.Line, line.Total);
            foreach (string part in line.Parts)
                Add(part);
        }

        foreach (QuarterKeptTable table in Facts)
        {
            Add("table", table.File, table.Columns);
            foreach (string row in table.Rows)
                Add(row);
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text.ToString())));

        void Add(params ReadOnlySpan<object?> parts)
        {
            foreach (object? part in parts)
            {
                string canonical = part switch
                {
                    null => "unknown",
                    decimal number => number.Trimmed().ToString(CultureInfo.InvariantCulture),
                    DateOnly day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
                    IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
                    _ => part.ToString()!,
                };
                text.Append(CultureInfo.InvariantCulture, $"{canonical.Length}:{canonical}\n");
            }
        }
    }
}

[JsonSerializable(typeof(QuarterKept))]
internal sealed partial class QuarterKeptJsonContext : JsonSerializerContext
{
    public static QuarterKeptJsonContext Readable { get; } = new(JsonStyle.Options());
}
