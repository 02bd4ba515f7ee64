using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A piece's share of the work of a period, or of the days on sale in it.</summary>
/// <param name="Index">Place of the piece in the log.</param>
/// <param name="Weight">
/// Hours; for a piece whose hours are unknown the average of those known, or 1 where none is. By time on sale: days.
/// </param>
/// <param name="LastDay">Its last day of work, or on sale, in the period; null where unknown.</param>
internal sealed record WorkShare(int Index, decimal Weight, DateOnly? LastDay);

/// <summary>
/// Which pieces were worked on when. Dated entries of <c>hours.csv</c> count on their days, scaled to the piece's total
/// where <c>pieces.csv</c> states one; a piece without them counts on the day it was ready, else listed, else sold.
/// </summary>
internal sealed class WorkCalendar
{
    private readonly DateOnly[] days;
    private readonly WorkShare[] dated;
    private readonly WorkShare[] undated;
    private readonly Dictionary<DateOnly, ImmutableArray<WorkShare>> months = [];
    private readonly ImmutableArray<DateOnly?> workDays;
    private readonly ImmutableArray<bool> worked;

    public WorkCalendar(SalesLog log)
    {
        Hours = BenchHours.ByPiece(log);
        decimal usual = Hours.Count == 0 ? 1 : Hours.Values.Average();
        usual = usual == 0 ? 1 : usual;
        ILookup<string, HoursEntry> entries = log.Hours.Where(entry => entry.PieceId is not null)
            .ToLookup(entry => entry.PieceId!, StringComparer.OrdinalIgnoreCase);
        ILookup<string, DateOnly?> uses = log.Uses.Where(use => use.PieceId is not null).ToLookup(
            use => use.PieceId!, use => use.Date, StringComparer.OrdinalIgnoreCase);

        List<WorkShare> all = [];
        var ends = ImmutableArray.CreateBuilder<DateOnly?>();
        var touched = ImmutableArray.CreateBuilder<bool>();
        for (int i = 0; i < log.Pieces.Length; i++)
        {
            Piece piece = log.Pieces[i];
            HoursEntry[] own = [.. entries[piece.Id].Where(entry => entry.Date is not null && entry.Hours > 0)];
            bool isWorked = Hours.ContainsKey(piece.Id) || uses.Contains(piece.Id)
                || piece.ReadyOn is not null || piece.ListedOn is not null || piece.AskingPrice is not null
                || piece.IsSold;
            DateOnly? day = piece.ReadyOn ?? piece.ListedOn ?? piece.SoldOn
                ?? own.Max(entry => entry.Date) ?? uses[piece.Id].Max() ?? piece.LeftOn ?? piece.BoughtOn;
            touched.Add(isWorked);
            ends.Add(day);
            if (!isWorked)
                continue;
            decimal total = Hours.GetValueOrDefault(piece.Id, usual);
            decimal written = own.Sum(entry => entry.Hours);
            if (written > 0)
                all.AddRange(own.Select(entry => new WorkShare(i, entry.Hours * total / written, entry.Date)));
            else
                all.Add(new(i, total, day));
        }

        dated = [.. all.Where(work => work.LastDay is not null).OrderBy(work => work.LastDay)];
        days = [.. dated.Select(work => work.LastDay!.Value)];
        undated = [.. all.Where(work => work.LastDay is null)];
        workDays = ends.ToImmutable();
        worked = touched.ToImmutable();
    }

    /// <summary>Hands-on hours by piece id, as <see cref="BenchHours"/> gives them.</summary>
    public IReadOnlyDictionary<string, decimal> Hours { get; }

    /// <summary>Whether the log shows any work on a piece.</summary>
    public bool IsWorked(int index) => worked[index];

    /// <summary>Day the work on a piece was done, as nearly as the log tells; null where it tells nothing.</summary>
    public DateOnly? WorkDay(int index) => workDays[index];

    /// <summary>The pieces worked on from a day to before another, in the order of the log.</summary>
    /// <param name="from">First day.</param>
    /// <param name="before">Day after the last.</param>
    /// <param name="withUndated">Whether work without any day on record counts too.</param>
    public ImmutableArray<WorkShare> Between(DateOnly from, DateOnly before, bool withUndated = false)
    {
        int first = FirstOn(from);
        ReadOnlySpan<WorkShare> period = dated.AsSpan(first..Math.Max(first, FirstOn(before)));
        WorkShare[] works = withUndated ? [.. undated, .. period] : [.. period];
        // By piece, then by day: both in one number, for a comparison of records takes several times as long.
        Array.Sort(Array.ConvertAll(works, work => ((long)work.Index << 32) | (uint)(work.LastDay?.DayNumber ?? 0)), works);
        var shares = ImmutableArray.CreateBuilder<WorkShare>(works.Length);
        foreach (WorkShare work in works)
        {
            if (shares.Count > 0 && shares[^1].Index == work.Index)
                shares[^1] = new(work.Index, shares[^1].Weight + work.Weight, work.LastDay);
            else
                shares.Add(work);
        }

        return shares.DrainToImmutable();
    }

    /// <summary>The pieces worked on in a month.</summary>
    /// <param name="month">Any day of the month.</param>
    public ImmutableArray<WorkShare> In(DateOnly month)
    {
        DateOnly first = new(month.Year, month.Month, 1);
        if (!months.TryGetValue(first, out ImmutableArray<WorkShare> pieces))
        {
            pieces = Between(first, first is { Year: 9999, Month: 12 } ? DateOnly.MaxValue : first.AddMonths(1));
            months.Add(first, pieces);
        }

        return pieces;
    }

    // Place of the first dated work on or after a day.
    private int FirstOn(DateOnly day)
    {
        int low = 0;
        int high = days.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            (low, high) = days[middle] < day ? (middle + 1, high) : (low, middle);
        }

        return low;
    }
}
