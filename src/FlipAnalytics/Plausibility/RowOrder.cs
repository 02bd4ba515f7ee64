using System.Runtime.InteropServices;

namespace FlipAnalytics;

/// <summary>
/// Where a date should lie by the rows above and below it, in a table that is kept in order of its dates: most rows then
/// are no earlier than the one before.
/// </summary>
internal sealed class RowOrder
{
    // Rows on either side that a date is held against; their median is not moved by one wild neighbor.
    private const int Neighbours = 3;
    private const double LeastInOrder = 0.85;
    private const int FewestRows = 6;

    // A bill found late is written below those of its month.
    private const double Spread = 20;

    private readonly List<DateOnly> dates;
    private readonly bool isInOrder;

    public RowOrder(IEnumerable<DateOnly> dates)
    {
        this.dates = [.. dates];
        int steps = Math.Max(1, this.dates.Count - 1);
        int ordered = this.dates.Zip(this.dates.Skip(1), (a, b) => b >= a).Count(yes => yes);
        isInOrder = this.dates.Count >= FewestRows && ordered >= LeastInOrder * steps;
    }

    /// <summary>What a date is worth at a place of the table.</summary>
    public double Score(int place, DateOnly date) => isInOrder
        ? DateSheet.Off(Days(date, place), Spread) : 0;

    /// <summary>What is expected there, to be read after "expected"; null where the table has no order.</summary>
    public string? Expected(int place)
    {
        if (!isInOrder)
            return null;
        (DateOnly? from, DateOnly? to) = Around(place);
        return (from, to) switch
        {
            ({ } f, { } t) when f <= t => $"about {LogFinding.Text(f)} to {LogFinding.Text(t)}, as the rows above and below",
            ({ } f, null) => $"about {LogFinding.Text(f)} or later, as the rows above",
            (null, { } t) => $"about {LogFinding.Text(t)} or earlier, as the rows below",
            _ => null,
        };
    }

    private int Days(DateOnly date, int place)
    {
        (DateOnly? from, DateOnly? to) = Around(place);
        int before = from is { } f ? f.DayNumber - date.DayNumber : 0;
        int after = to is { } t ? date.DayNumber - t.DayNumber : 0;
        return Math.Max(0, Math.Max(before, after));
    }

    private (DateOnly? From, DateOnly? To) Around(int place) => (
        Middle(Math.Max(0, place - Neighbours), Math.Min(Neighbours, place)),
        Middle(place + 1, Math.Min(Neighbours, dates.Count - place - 1)));

    private DateOnly? Middle(int from, int count)
    {
        if (count <= 0)
            return null;
        Span<DateOnly> near = stackalloc DateOnly[Neighbours];
        near = near[..count];
        CollectionsMarshal.AsSpan(dates).Slice(from, count).CopyTo(near);
        near.Sort();
        return near[count / 2];
    }
}
