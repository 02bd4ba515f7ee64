using System.Globalization;

namespace FlipAnalytics;

/// <summary>A number or date that can be, but is so far out of line with the rest of the log that a slip is likelier.</summary>
/// <param name="File">File name, such as pieces.csv.</param>
/// <param name="Row">Line of the file.</param>
/// <param name="Column">Column name.</param>
/// <param name="Found">What the file says.</param>
/// <param name="Usual">What the rest of the log expects, to be read after "expected".</param>
/// <param name="Mend">The likely mend, as a sentence.</param>
/// <param name="Gain">
/// How much likelier the row is with the mend than as it stands: the difference of log likelihoods. Damage grows with it.
/// </param>
public sealed record LogFinding(
    string File, int Row, string Column, string Found, string Usual, string Mend, double Gain)
{
    /// <summary>Something to look at, in the words of a problem.</summary>
    public LogProblem AsProblem() => new(Severity.Warning, File, Row, Column, Found, Usual, Mend);

    /// <summary>Place in the log of the piece that the row is of; null for a row of none.</summary>
    internal int? PlaceIn(SalesLog log)
    {
        string? id = File == Columns.Pieces.File ? log.Pieces.FirstOrDefault(piece => piece.Row == Row)?.Id
            : File == Columns.Asking.File ? log.AskingPrices.FirstOrDefault(change => change.Row == Row)?.PieceId
            : File == Columns.Hours.File ? log.Hours.FirstOrDefault(entry => entry.Row == Row)?.PieceId
            : File == Columns.Uses.File ? log.Uses.FirstOrDefault(use => use.Row == Row)?.PieceId
            : null;
        for (int i = 0; id is not null && i < log.Pieces.Length; i++)
        {
            if (string.Equals(log.Pieces[i].Id, id, StringComparison.OrdinalIgnoreCase))
                return i;
        }

        return null;
    }

    internal static string Text(decimal number) => number.ToString("0.############", CultureInfo.InvariantCulture);

    internal static string Text(DateOnly date) => date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
