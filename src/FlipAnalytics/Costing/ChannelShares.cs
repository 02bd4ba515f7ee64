using System.Collections.Immutable;

using static System.FormattableString;
using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>
/// Who shares the cost of a channel, such as a booth, in a month: the pieces for sale there, by their days on sale in it, first
/// and last day included. Where no days are known, those sold there in the month, equally. Where there are none, nobody.
/// </summary>
/// <param name="Pieces">The pieces, in the order of the log; none where the month was idle.</param>
/// <param name="Rule">How they share: a sentence.</param>
/// <remarks>
/// Common practice: a booth is paid for the room that pieces take up while they wait, whether or not they sell. Days run from the
/// first listing, else from the day the work was done; from the purchase only where a price shows that it was offered at all. They
/// end with the sale, the leaving or the day of the books, and go on from the day a piece came back. A piece that ended on a day
/// that is not written down has no known days.
/// </remarks>
internal sealed record ChannelShares(ImmutableArray<WorkShare> Pieces, string Rule)
{
    /// <summary>Those who share the cost of a channel in a month.</summary>
    /// <param name="log">The log, as of its date.</param>
    /// <param name="undone">By piece, the rows of <c>returns.csv</c> with which it came back, by day.</param>
    /// <param name="channel">The channel; case does not count.</param>
    /// <param name="month">First day of the month.</param>
    public static ChannelShares Of(
        SalesLog log, ImmutableArray<ImmutableArray<SaleReturn>> undone, string channel, DateOnly month)
    {
        DateOnly last = month.LastOfMonth() < log.Date ? month.LastOfMonth() : log.Date;
        var onSale = ImmutableArray.CreateBuilder<WorkShare>();
        var sold = ImmutableArray.CreateBuilder<WorkShare>();
        for (int i = 0; i < log.Pieces.Length; i++)
        {
            Piece piece = log.Pieces[i];
            if (!string.Equals(piece.Channel, channel, StringComparison.OrdinalIgnoreCase))
                continue;
            DateOnly? soldThere = undone[i].Select(back => back.SoldOn).Append(piece.SoldOn)
                .LastOrDefault(day => day >= month && day <= last);
            if (soldThere is not null)
                sold.Add(new(i, 1, soldThere));
            if (OfferedOn(piece, !undone[i].IsEmpty) is not { } offered || piece.LastDayOnMarket(log.Date) is not { } ended)
                continue;
            int days = 0;
            DateOnly? lastThere = null;
            foreach (var (begun, left) in Stays(offered, undone[i], ended))
            {
                DateOnly from = begun < month ? month : begun;
                DateOnly to = left < last ? left : last;
                if (from <= to)
                    (days, lastThere) = (days + to.DayNumber - from.DayNumber + 1, to);
            }

            if (days > 0)
                onSale.Add(new(i, days, lastThere));
        }

        if (onSale.Count > 0)
        {
            return new(onSale.ToImmutable(), Invariant(
                $"Shared by days on sale in {month:yyyy-MM} over {Counted(onSale.Count, "piece")} of channel {channel}."));
        }

        return sold.Count > 0
            ? new(sold.ToImmutable(), Invariant(
                $"Shared equally over {Counted(sold.Count, "piece")} of channel {channel} sold in {month:yyyy-MM}: their days on sale are not known."))
            : new([], Invariant($"No piece of channel {channel} was for sale in {month:yyyy-MM}."));
    }

    // A piece that came back is for sale until a sale that was undone, and again from the day of the return; no day counts twice.
    private static IEnumerable<(DateOnly Begun, DateOnly Left)> Stays(
        DateOnly offered, ImmutableArray<SaleReturn> undone, DateOnly ended)
    {
        DateOnly begun = offered;
        foreach (SaleReturn back in undone)
        {
            DateOnly sold = back.SoldOn!.Value;
            yield return (begun, sold);
            DateOnly again = back.ReturnedOn > sold ? back.ReturnedOn : sold.AddDays(1);
            begun = again > begun ? again : begun;
        }

        yield return (begun, ended);
    }

    private static DateOnly? OfferedOn(Piece piece, bool cameBack) =>
        piece.ListedOn ?? piece.ReadyOn ?? (piece.IsSold || cameBack || piece.AskingPrice is not null ? piece.BoughtOn : null);
}
