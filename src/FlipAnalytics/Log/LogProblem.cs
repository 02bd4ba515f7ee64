using System.Globalization;

namespace FlipAnalytics;

/// <summary>How bad a problem is.</summary>
public enum Severity
{
    /// <summary>Worth a look; what was read is used as it stands.</summary>
    Warning,

    /// <summary>Something could not be used and was set aside.</summary>
    Error,
}

/// <summary>Something in the log that needs the owner's eye.</summary>
/// <param name="Severity">How bad it is.</param>
/// <param name="File">File name, such as pieces.csv.</param>
/// <param name="Row">Line of the file, 1 for the header; null where the whole file is meant.</param>
/// <param name="Column">Column name; null where the whole row is meant.</param>
/// <param name="Found">What the file says; null where something is missing.</param>
/// <param name="Expected">What is expected, to be read after "expected".</param>
/// <param name="Remedy">What to do, as a sentence.</param>
public sealed record LogProblem(
    Severity Severity,
    string File,
    int? Row,
    string? Column,
    string? Found,
    string Expected,
    string Remedy)
{
    /// <summary>One line: where, what was found, what is expected, what to do.</summary>
    public override string ToString()
    {
        string place = File
            + (Row is { } row ? $" line {row.ToString(CultureInfo.InvariantCulture)}" : "")
            + (Column is { } column ? $", {column}" : "");
        string found = Found is { } text ? $"found '{text}', expected {Expected}" : $"expected {Expected}";
        return $"{place}: {found}. {Remedy}";
    }
}
