using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>From the takings of the flips with a known profit to that profit.</summary>
/// <param name="Flips">How many flips.</param>
/// <param name="Takings">Sale prices and delivery charges.</param>
/// <param name="Purchases">Prices paid.</param>
/// <param name="Supplies">Supplies.</param>
/// <param name="Fees">Selling fees.</param>
/// <param name="Delivery">Delivery.</param>
/// <param name="Outings">Shares of outings.</param>
/// <param name="Tools">Shares of the wear of tools.</param>
/// <param name="Overhead">Shares of overhead.</param>
/// <param name="FullProfit">The full profits of the flips, added up.</param>
public sealed record ProfitReconciliation(
    int Flips, decimal Takings, decimal Purchases, decimal Supplies, decimal Fees, decimal Delivery, decimal Outings,
    decimal Tools, decimal Overhead, decimal FullProfit)
{
    /// <summary>Takings less all costs less the profit: always 0.</summary>
    public decimal Difference =>
        Takings - Purchases - Supplies - Fees - Delivery - Outings - Tools - Overhead - FullProfit;

    internal static ProfitReconciliation Of(IEnumerable<FlipWage> flips)
    {
        FlipWage[] known = [.. flips.Where(flip => flip.FullProfit is not null)];
        return new(
            known.Length,
            known.Sum(flip => flip.Takings!.Value),
            known.Sum(flip => flip.Purchase!.Value),
            known.Sum(flip => flip.Supplies),
            known.Sum(flip => flip.Fees),
            known.Sum(flip => flip.Delivery),
            known.Sum(flip => flip.Outings),
            known.Sum(flip => flip.Tools),
            known.Sum(flip => flip.Overhead),
            known.Sum(flip => flip.FullProfit!.Value));
    }
}

/// <summary>Where the hours of the log are.</summary>
/// <param name="CountedFlips">On the flips of this report that have a wage or could have one: profit and hours known.</param>
/// <param name="OtherFlips">On other flips of this report, and on flips outside its period.</param>
/// <param name="UnsoldPieces">On pieces not sold, or gone without a sale.</param>
/// <param name="NotShared">On no piece: work in months in which no piece was worked on.</param>
/// <param name="WrittenTwice">Sourcing that is both in <c>hours.csv</c> and in <c>trips.csv</c>, which counts once.</param>
/// <param name="Written">All hours as they are written down.</param>
public sealed record HoursReconciliation(
    decimal CountedFlips, decimal OtherFlips, decimal UnsoldPieces, decimal NotShared, decimal WrittenTwice, decimal Written)
{
    /// <summary>What is written down less where it is: always 0.</summary>
    public decimal Difference => Written - CountedFlips - OtherFlips - UnsoldPieces - NotShared - WrittenTwice;

    internal static HoursReconciliation Of(SalesLog log, HoursLedger hours, IEnumerable<FlipWage> flips)
    {
        var counted = flips.Where(flip => flip.Counts).Select(flip => flip.Id).ToHashSet(StringComparer.OrdinalIgnoreCase);
        decimal onCounted = 0;
        decimal onOthers = 0;
        decimal onUnsold = 0;
        for (int i = 0; i < log.Pieces.Length; i++)
        {
            decimal all = (hours.Pieces[i].Bench ?? 0) + hours.Pieces[i].Outside;
            if (counted.Contains(log.Pieces[i].Id))
                onCounted += all;
            else if (log.Pieces[i].IsSold)
                onOthers += all;
            else
                onUnsold += all;
        }

        return new(
            onCounted, onOthers, onUnsold,
            hours.General.Where(general => !general.IsShared).Sum(general => general.Hours),
            Twice(log, hours),
            hours.Pieces.Sum(piece => piece.Bench ?? 0)
                + log.Trips.Sum(trip => Math.Max(0, trip.Hours ?? 0))
                + log.Hours.Where(entry => entry.PieceId is null).Sum(entry => entry.Hours));
    }

    /// <summary>On each day the lesser of its outings' hours and its entries for sourcing.</summary>
    internal static decimal Twice(SalesLog log, HoursLedger hours)
    {
        var outings = hours.Outings.Concat(hours.General)
            .Where(general => general is { Task: WorkTask.Sourcing, Date: not null } && general.Origin.File == Columns.Trips.File)
            .GroupBy(general => general.Date!.Value)
            .ToDictionary(day => day.Key, day => day.Sum(general => general.Hours));
        return log.Hours
            .Where(entry => entry is { PieceId: null, Task: WorkTask.Sourcing, Date: not null })
            .GroupBy(entry => entry.Date!.Value)
            .Sum(day => Math.Min(day.Sum(entry => entry.Hours), outings.GetValueOrDefault(day.Key)));
    }
}

/// <summary>The groups of a grouping against the total.</summary>
/// <param name="By">What the flips are grouped by.</param>
/// <param name="Flips">Flips in the groups less flips in the total.</param>
/// <param name="FullProfit">Full profit of the groups less that of the total.</param>
/// <param name="Hours">Hours of the groups less those of the total.</param>
public sealed record GroupReconciliation(WageGroupBy By, int Flips, decimal FullProfit, decimal Hours)
{
    /// <summary>Sum of the absolute differences: always 0.</summary>
    public decimal Difference => Math.Abs(Flips) + Math.Abs(FullProfit) + Math.Abs(Hours);

    internal static GroupReconciliation Of(WageGrouping grouping, WageSum total) => new(
        grouping.By,
        grouping.Groups.Sum(group => group.Sum.Flips) - total.Flips,
        grouping.Groups.Sum(group => group.Sum.FullProfit + group.Sum.FullProfitWithoutHours)
            - total.FullProfit - total.FullProfitWithoutHours,
        grouping.Groups.Sum(group => group.Sum.AllHours) - total.AllHours);
}

/// <summary>Where the costs of one kind are, from the files to the last cent.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Flips">On flips of this report with a known profit.</param>
/// <param name="WithoutProfit">On flips of this report whose profit is unknown.</param>
/// <param name="OtherPieces">On pieces not sold, gone without a sale, or sold outside the period.</param>
/// <param name="AllPieces">On all pieces, by the books.</param>
/// <param name="NoPiece">
/// On no piece: it fell into months without work, or into the month the log ends in, without work so far; of supplies, it was wasted
/// or missing at a count.
/// </param>
/// <param name="StillHere">In cans and in tools.</param>
/// <param name="InFiles">As the books take it from the files, driving at the mileage rate; <see cref="FileReconciliation"/> holds the rows against it.</param>
/// <param name="Stated">What <c>pieces.csv</c> states for supplies beyond what was taken from cans or found missing in them.</param>
/// <param name="StillToArise">The part of <paramref name="NoPiece"/> that falls on days after the date of the log: no idle month yet.</param>
public sealed record CostReconciliation(
    CostKind Kind, decimal Flips, decimal WithoutProfit, decimal OtherPieces, decimal AllPieces, decimal NoPiece,
    decimal StillHere, decimal InFiles, decimal Stated, decimal StillToArise)
{
    /// <summary>On no piece, for the days that it fell on are over and their month saw no work, or a channel had nothing for sale.</summary>
    public decimal Idle => Kind == CostKind.Supplies ? 0 : NoPiece - StillToArise;

    /// <summary>What of <see cref="Idle"/> is rent of a channel, such as a booth, that had nothing for sale.</summary>
    public decimal IdleRent { get; init; }

    /// <summary>On no piece, for it was wasted, or missing at a count.</summary>
    public decimal Lost => Kind == CostKind.Supplies ? NoPiece : 0;

    /// <summary>What the files hold and state less all that it went into: always 0.</summary>
    public decimal Difference => InFiles + Stated - Flips - WithoutProfit - OtherPieces - NoPiece - StillHere;

    internal static ImmutableArray<CostReconciliation> Of(CostBook book, IReadOnlyCollection<FlipWage> flips)
    {
        var here = flips.Select(flip => flip.Id).ToHashSet(StringComparer.OrdinalIgnoreCase);
        ILookup<CostKind, CostLine> others = book.Pieces.Where(piece => !here.Contains(piece.Piece.Id))
            .SelectMany(piece => piece.Lines).ToLookup(line => line.Kind);
        return
        [
            .. Enum.GetValues<CostKind>().Select(kind => new CostReconciliation(
                kind,
                flips.Where(flip => flip.FullProfit is not null).Sum(flip => flip.Cost(kind)),
                flips.Where(flip => flip.FullProfit is null).Sum(flip => flip.Cost(kind)),
                others[kind].Sum(line => line.Amount),
                book.Total(kind).OnPieces, book.Total(kind).Unassigned, book.Total(kind).Left, book.Total(kind).Spent,
                book.Total(kind).Stated,
                book.OverheadsUnshared.Concat(book.ToolsIdle).Where(line => line.Kind == kind)
                    .Sum(line => line.ArisesAfter(book.Date, book.Currency)))
            {
                IdleRent = book.OverheadsUnshared.Where(line => line.Kind == kind && line.Channel is not null)
                    .Sum(line => line.ArisenBy(book.Date, book.Currency)),
            }),
        ];
    }
}

/// <summary>All sums of a report that must agree, each with its difference.</summary>
/// <param name="Profit">From takings to full profit.</param>
/// <param name="Hours">From the hours of flips to all hours of the log.</param>
/// <param name="Groups">Each grouping against the total.</param>
/// <param name="Costs">Each kind of cost against the books.</param>
/// <param name="Files">The books against the rows of each file.</param>
public sealed record WagesReconciliation(
    ProfitReconciliation Profit,
    HoursReconciliation Hours,
    ImmutableArray<GroupReconciliation> Groups,
    ImmutableArray<CostReconciliation> Costs,
    ImmutableArray<FileReconciliation> Files)
{
    /// <summary>Sum of all absolute differences: always 0.</summary>
    public decimal Difference => Math.Abs(Profit.Difference) + Math.Abs(Hours.Difference)
        + Groups.Sum(group => group.Difference) + Costs.Sum(cost => Math.Abs(cost.Difference))
        + Files.Sum(file => Math.Abs(file.Difference));
}
