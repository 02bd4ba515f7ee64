using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Hours of one kind of work.</summary>
/// <param name="Task">What was done; null where the log does not say.</param>
/// <param name="OnPieces">Whether they were on pieces; if not, on outings or on what serves all pieces.</param>
/// <param name="IsBench">Whether they count as work at the bench: hours on a piece without a task do.</param>
/// <param name="Hours">Hours.</param>
public sealed record TaskHours(WorkTask? Task, bool OnPieces, bool IsBench, decimal Hours);

/// <summary>What all hours of the log went into.</summary>
/// <param name="Tasks">Kinds of work, most hours first.</param>
public sealed record HoursByTask(ImmutableArray<TaskHours> Tasks)
{
    private const int Digits = 2;

    /// <summary>All hours.</summary>
    public decimal All => Tasks.Sum(task => task.Hours);

    /// <summary>Hours at the bench.</summary>
    public decimal AtTheBench => Tasks.Where(task => task.IsBench).Sum(task => task.Hours);

    /// <summary>Hours outside the bench: sourcing, photos, listing, selling, delivery and other.</summary>
    public decimal Outside => All - AtTheBench;

    /// <summary>Share of all hours outside the bench, 0 to 1; null without hours.</summary>
    public decimal? ShareOutside => All > 0 ? Outside / All : null;

    /// <summary>Hours on pieces without a task; they count as work at the bench.</summary>
    public decimal OnPiecesWithoutTask =>
        Tasks.Where(task => task is { OnPieces: true, Task: null }).Sum(task => task.Hours);

    /// <summary>
    /// The hours of a log by task. Where <c>pieces.csv</c> states more hours for a piece than its entries have, the rest
    /// has no task; where it states fewer, its entries are scaled down to them.
    /// </summary>
    /// <param name="log">The log.</param>
    /// <param name="hours">Its hours.</param>
    public static HoursByTask Of(SalesLog log, HoursLedger hours)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(hours);
        Dictionary<(int Task, bool OnPieces), decimal> sums = [];
        ILookup<string, HoursEntry> entries = log.Hours.Where(entry => entry.PieceId is not null)
            .ToLookup(entry => entry.PieceId!, StringComparer.OrdinalIgnoreCase);
        for (int i = 0; i < log.Pieces.Length; i++)
        {
            if (hours.Pieces[i].Bench is not { } bench)
                continue;
            HoursEntry[] own = [.. entries[log.Pieces[i].Id]];
            decimal written = own.Sum(entry => entry.Hours);
            ImmutableArray<decimal> parts = written > bench
                ? Shares.InProportion(bench, [.. own.Select(entry => entry.Hours)], Digits)
                : [.. own.Select(entry => entry.Hours)];
            for (int k = 0; k < own.Length; k++)
                Add(own[k].Task, true, parts[k]);
            Add(null, true, bench - parts.Sum());
        }

        foreach (GeneralHours general in hours.Outings.Concat(hours.General))
            Add(general.Task, false, general.Hours);
        return new(
        [
            .. sums.Where(sum => sum.Value != 0)
                .Select(sum => new TaskHours(
                    sum.Key.Task < 0 ? null : (WorkTask)sum.Key.Task,
                    sum.Key.OnPieces,
                    IsBench(sum.Key.Task < 0 ? null : (WorkTask)sum.Key.Task, sum.Key.OnPieces),
                    sum.Value))
                .OrderByDescending(task => task.Hours).ThenBy(task => task.Task).ThenBy(task => task.OnPieces),
        ]);

        void Add(WorkTask? task, bool onPieces, decimal amount)
        {
            var key = (task is { } known ? (int)known : -1, onPieces);
            sums[key] = sums.GetValueOrDefault(key) + amount;
        }
    }

    private static bool IsBench(WorkTask? task, bool onPieces) => task switch
    {
        null => onPieces,
        WorkTask.Cleaning or WorkTask.Repair or WorkTask.Stripping or WorkTask.Sanding or WorkTask.Priming
            or WorkTask.Painting or WorkTask.Topcoat or WorkTask.Hardware => true,
        _ => false,
    };
}
