using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Follows the figures of a kept span, from what was kept to what they are, one changed fact after another.</summary>
/// <param name="kept">What was kept.</param>
/// <param name="keptLog">The log that its facts tell of.</param>
/// <param name="lineOf">Where a record of that log stood in the files.</param>
/// <param name="report">The report now.</param>
/// <param name="log">The log now, as of its date.</param>
internal sealed class QuarterKeptComparison(
    QuarterKept kept, SalesLog keptLog, Func<LogRecords, object, int> lineOf, QuarterReport report, SalesLog log)
{
    // Reckoning a span anew takes time in proportion to the rows; so many rows in all keep the answer within seconds.
    private const int RowsToReckon = 300_000;
    private const int FewestReckonings = 8;
    private const int MostReckonings = 300;

    private readonly List<(QuarterKeptCause Cause, Figures Before, Figures After)> parts = [];
    private int reckoningsLeft;

    public QuarterSinceKept Compare(string file)
    {
        reckoningsLeft = Math.Clamp(
            RowsToReckon / Math.Max(1, QuarterKeptFacts.Tables.Sum(of => of.In(log).Length)), FewestReckonings, MostReckonings);
        // Nothing on the page is later than its date: what was kept later is looked at as of that date too.
        bool isEarlier = log.Date < kept.AsOf;
        SalesLog then = isEarlier ? keptLog.AsOf(log.Date) : keptLog;
        SalesLog sameDay = log.Date > kept.AsOf ? log.AsOf(kept.AsOf) : log;
        Figures reckoned = FiguresOf(then);
        Figures first = isEarlier ? reckoned : new(kept.Figures);
        QuarterKeptSteps edits = new(then, sameDay, lineOf, kept.Settings.ChangesTo(log.Workshop));
        QuarterKeptSteps later = new(sameDay with { Date = log.Date }, log, null, []);

        Note(QuarterKeptWords.Reckoning, first, reckoned);
        Figures edited = Follow(edits, reckoned, isLater: false);
        Figures onThatDay = Note(QuarterKeptWords.Sharing, edited, FiguresOf(sameDay));
        Figures onThisDay = sameDay.Date == log.Date ? onThatDay
            : Note(QuarterKeptWords.LaterDay(log.Date), onThatDay, FiguresOf(later.After(0)));
        Figures known = Follow(later, onThisDay, isLater: true);
        Figures now = new(QuarterKeptFigures.Of(report));
        Note(QuarterKeptWords.Sharing, known, now);
        return new(
            file, kept.AsOf, log.Date, null, LinesOf(first, now),
            edits.Changes.Sum(change => change.Count), later.Changes.Sum(change => change.Count));
    }

    private Figures FiguresOf(SalesLog some) => new(QuarterKeptFigures.Of(some, report.Period));

    private Figures Note(QuarterKeptCause cause, Figures before, Figures after)
    {
        if (!before.Equals(after))
            parts.Add((cause, before, after));
        return after;
    }

    private Figures Follow(QuarterKeptSteps steps, Figures before, bool isLater)
    {
        int count = steps.Changes.Length;
        Figures after = count == 0 ? before : FiguresOf(steps.After(count));
        Split(0, count, before, after);
        return after;

        // Halves between which no figure moves are not looked into.
        void Split(int low, int high, Figures start, Figures end)
        {
            if (start.Equals(end))
                return;
            if (high - low == 1 || reckoningsLeft-- <= 0)
            {
                parts.Add((QuarterKeptWords.Of([.. steps.Changes[low..high]], isLater, report.Workshop), start, end));
                return;
            }

            int middle = (low + high) / 2;
            Figures half = FiguresOf(steps.After(middle));
            Split(low, middle, start, half);
            Split(middle, high, half, end);
        }
    }

    private ImmutableArray<QuarterLineSinceKept> LinesOf(Figures first, Figures now) =>
    [
        .. now.All.Concat(first.All).DistinctBy(figure => (figure.Part, figure.Line))
            .Where(figure => first[figure] != now[figure])
            .Select(figure => new QuarterLineSinceKept(
                figure.Part, figure.Line, figure.Unit, first[figure], now[figure], now[figure] - first[figure],
                [
                    .. parts.Where(part => part.Before[figure] != part.After[figure])
                        .Select(part => part.Cause with { Amount = part.After[figure] - part.Before[figure] })
                        .GroupBy(cause => (cause.Why, cause.Text))
                        .Select(same => same.First() with { Amount = same.Sum(cause => cause.Amount) }),
                ])),
    ];

    /// <summary>The figures of a span by line; a line that is not there is 0.</summary>
    private sealed class Figures(ImmutableArray<QuarterKeptFigure> all) : IEquatable<Figures>
    {
        private readonly Dictionary<(string, string), decimal?> amounts = all
            .DistinctBy(figure => (figure.Part, figure.Line))
            .ToDictionary(figure => (figure.Part, figure.Line), figure => figure.Amount);

        public ImmutableArray<QuarterKeptFigure> All => all;

        public decimal? this[QuarterKeptFigure figure] =>
            amounts.TryGetValue((figure.Part, figure.Line), out decimal? amount) ? amount : 0;

        public bool Equals(Figures? other) =>
            other is not null && all.Concat(other.All).All(figure => this[figure] == other[figure]);

        public override bool Equals(object? obj) => Equals(obj as Figures);

        public override int GetHashCode() => all.Length;
    }
}
