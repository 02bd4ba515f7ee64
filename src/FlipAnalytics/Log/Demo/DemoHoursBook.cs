using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Dated hours by task: those of a piece add up to its hours once it is listed; some are for no single piece.</summary>
internal static class DemoHoursBook
{
    public static ImmutableArray<HoursEntry> Write(
        ImmutableArray<DemoEntry> entries, DateOnly first, DateOnly last, ulong seed)
    {
        List<HoursEntry> rows = [];
        foreach (DemoEntry entry in entries.Where(entry => entry.HoursByTask))
        {
            DemoDraws draws = new(seed, DemoStream.HoursBook, entry.Life.Index);
            DateOnly until = entry.Life.LeftUnready && entry.Life.LeftOn < last ? entry.Life.LeftOn.Value : last;
            rows.AddRange(OnPiece(entry.Life, draws).Where(row => row.Date <= until));
        }
        rows.AddRange(General(first, last, new(seed, DemoStream.General)));
        return [.. rows.OrderBy(row => row.Date)];
    }

    private static List<HoursEntry> OnPiece(DemoLife life, DemoDraws draws)
    {
        (WorkTask Task, double Share)[] tasks =
        [
            (WorkTask.Cleaning, 0.08),
            (WorkTask.Repair, life.Facts.Condition switch
            {
                Condition.Sound => 0.03,
                Condition.Worn => 0.10,
                _ => 0.25,
            }),
            (WorkTask.Stripping, draws.Chance(0.2) ? 0.15 : 0),
            (WorkTask.Sanding, 0.2),
            (WorkTask.Priming, 0.12),
            (WorkTask.Painting, 0.28),
            (WorkTask.Topcoat, 0.12),
            (WorkTask.Hardware, 0.08),
            (WorkTask.Photos, 0.04),
            (WorkTask.Listing, 0.04),
        ];
        int quarters = (int)(DemoRounding.Quarters(life.Hours) * 4);
        int[] shares = Split(quarters, [.. tasks.Select(task => task.Share * Math.Exp(draws.Normal(0, 0.2)))]);
        int days = life.PaintedOn.DayNumber - life.Find.Date.DayNumber;
        List<HoursEntry> rows = [];
        for (int i = 0; i < tasks.Length; i++)
        {
            WorkTask task = tasks[i].Task;
            DateOnly date = task switch
            {
                WorkTask.Priming => life.PaintedOn,
                WorkTask.Painting => life.PaintedOn.AddDays(1),
                WorkTask.Topcoat => life.PaintedOn.AddDays(2),
                WorkTask.Hardware => life.ReadyOn,
                WorkTask.Photos or WorkTask.Listing => life.ListedOn,
                _ => life.Find.Date.AddDays(days * (i + 1) / 5),
            };
            if (shares[i] > 0)
                rows.Add(new(life.Id, date, task, shares[i] / 4m));
        }
        return rows;
    }

    private static IEnumerable<HoursEntry> General(DateOnly first, DateOnly last, DemoDraws draws)
    {
        for (DateOnly month = new(first.Year, first.Month, 1); month <= last; month = month.AddMonths(1))
        {
            decimal books = DemoRounding.Quarters(draws.Uniform(0.5, 1.5));
            decimal messages = DemoRounding.Quarters(draws.Uniform(1, 3));
            decimal stall = DemoRounding.Quarters(draws.Uniform(3.5, 5));
            // The books are done on the last day of the month, so that the log's last fact is of its last day.
            yield return new(null, month.AddMonths(1).AddDays(-1), WorkTask.Other, books);
            yield return new(null, month.AddDays(20), WorkTask.Selling, messages);
            if (month.Month is >= 4 and <= 10)
                yield return new(null, month.AddDays(13), WorkTask.Selling, stall);
        }
    }

    /// <summary>Whole parts in proportion to the shares that add up to the total: largest remainder.</summary>
    private static int[] Split(int total, double[] shares)
    {
        double sum = shares.Sum();
        double[] exact = [.. shares.Select(share => total * share / sum)];
        int[] parts = [.. exact.Select(part => (int)part)];
        int left = total - parts.Sum();
        foreach (int i in Enumerable.Range(0, shares.Length).OrderByDescending(i => exact[i] - parts[i]).Take(left))
            parts[i]++;
        return parts;
    }
}
