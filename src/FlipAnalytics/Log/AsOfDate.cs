using System.Globalization;
using System.Text;

using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>The date up to which facts count, and why it is not today where it is not.</summary>
/// <param name="Date">The as-of date.</param>
/// <param name="Sentence">A line for the reader of a report; null where the date is what they would expect.</param>
public sealed record AsOfDate(DateOnly Date, string? Sentence)
{
    /// <summary>Days after which a silent log is one that was left alone, not a market that died.</summary>
    public const int LongestSilenceInDays = 45;

    /// <summary>The sentence in lines of a terminal, each ending in a line feed; null where there is none.</summary>
    public string? Lines => Sentence is null ? null : new StringBuilder().AppendWrapped("", "", Sentence).ToString();

    /// <summary>
    /// The date asked for; else today if the log's last fact up to today is at most
    /// <see cref="LongestSilenceInDays"/> days old or there is none; else the date of that fact.
    /// </summary>
    /// <param name="log">The whole log.</param>
    /// <param name="today">Today, given by the caller.</param>
    /// <param name="requested">The date asked for; null for the rule.</param>
    public static AsOfDate Choose(SalesLog log, DateOnly today, DateOnly? requested)
    {
        ArgumentNullException.ThrowIfNull(log);
        if (requested is { } date)
            return new(date, null);
        if (log.LastFactUpTo(today) is not { } last)
            return new(today, null);
        int days = today.DayNumber - last.DayNumber;
        return days <= LongestSilenceInDays
            ? new(today, null)
            : new(last, string.Create(
                CultureInfo.InvariantCulture,
                $"As of {last:yyyy-MM-dd}, the last entry in the log, {days} days ago. {IfNothingSold(log.AsOf(last), days)}"));
    }

    /// <summary>What the silence hides: pieces that were still here have been here longer, if they are here still.</summary>
    private static string IfNothingSold(SalesLog log, int silence)
    {
        int[] onSale =
        [
            .. log.Pieces.Where(piece => piece is { State: PieceState.OnSale, ListedOn: not null })
                .Select(piece => log.Date.DayNumber - piece.ListedOn!.Value.DayNumber).Order(),
        ];
        int inTheWorkshop = log.Pieces.Count(piece => piece.State == PieceState.InTheWorkshop);
        int middle = onSale.Length == 0 ? 0 : onSale[(onSale.Length - 1) / 2];
        string unsold = (onSale.Length, inTheWorkshop) switch
        {
            (0, 0) => "",
            (0, _) => string.Create(CultureInfo.InvariantCulture,
                $": {Counted(inTheWorkshop, "piece")} in the workshop {(inTheWorkshop == 1 ? "has" : "have")} waited {silence} days longer"),
            (1, _) => string.Create(CultureInfo.InvariantCulture,
                $": the piece on sale has then been there for {middle + silence} days, not {middle}"),
            _ => string.Create(CultureInfo.InvariantCulture,
                $": the middle one of {onSale.Length} on sale has then been there for {middle + silence} days, not {middle}"),
        };
        return $"If nothing has sold since, add --as-of today{unsold}.";
    }
}
