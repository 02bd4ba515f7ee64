namespace FlipAnalytics;

/// <summary>Where a cost comes from: which row of which file, by which rule.</summary>
/// <param name="File">File of the log, such as <c>supplies.csv</c>.</param>
/// <param name="Row">Line of the file; null where the cost rests on no single line.</param>
/// <param name="Rule">How the amount follows from the line: a sentence.</param>
public sealed record CostOrigin(string File, int? Row, string Rule);

/// <summary>What a cost is for.</summary>
public enum CostKind
{
    /// <summary>What was paid for the piece.</summary>
    Purchase,

    /// <summary>What was used up on it.</summary>
    Supplies,

    /// <summary>Wear of tools.</summary>
    Tools,

    /// <summary>Its share of the outing that brought it home.</summary>
    Trip,

    /// <summary>Its share of costs of no single piece, fruitless outings included.</summary>
    Overhead,

    /// <summary>What delivery to the buyer cost the workshop.</summary>
    Delivery,

    /// <summary>What the selling channel kept.</summary>
    Fees,
}

/// <summary>What the lines of one cost have in common: the shares of a rent, of a can, of an outing.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="What">A few words for the owner.</param>
/// <param name="Origin">Where it comes from.</param>
internal sealed record CostSource(CostKind Kind, string What, CostOrigin Origin)
{
    public DateOnly? Until { get; init; }

    public string? Channel { get; init; }
}

/// <summary>One cost, with its trail. A large log has millions, so each holds no more than its day, its amount and what it is of.</summary>
public readonly record struct CostLine
{
    private readonly CostSource source;

    /// <summary>A cost.</summary>
    /// <param name="kind">What it is for.</param>
    /// <param name="date">Day it arose, or the first of the days; null where the log does not say.</param>
    /// <param name="amount">Amount in the workshop's currency; below zero where a cost is taken back.</param>
    /// <param name="what">A few words for the owner.</param>
    /// <param name="origin">Where it comes from.</param>
    public CostLine(CostKind kind, DateOnly? date, decimal amount, string what, CostOrigin origin)
        : this(new(kind, what, origin), date, amount)
    {
    }

    internal CostLine(CostSource source, DateOnly? date, decimal amount) => (this.source, Date, Amount) = (source, date, amount);

    /// <summary>What it is for.</summary>
    public CostKind Kind => source.Kind;

    /// <summary>Day it arose, or the first of the days; null where the log does not say.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>Amount in the workshop's currency; below zero where a cost is taken back.</summary>
    public decimal Amount { get; init; }

    /// <summary>A few words for the owner.</summary>
    public string What => source.What;

    /// <summary>Where it comes from.</summary>
    public CostOrigin Origin
    {
        get => source.Origin;
        init => source = source with { Origin = value };
    }

    /// <summary>
    /// Last of the days over which it arises evenly, such as the end of the month that a rent is for; not before
    /// <see cref="Date"/>. Null where all of it arises on <see cref="Date"/>.
    /// </summary>
    public DateOnly? Until
    {
        get => source.Until;
        init => source = source with { Until = value };
    }

    /// <summary>The channel that a rent is for, such as a booth; null for a cost of the whole workshop.</summary>
    public string? Channel
    {
        get => source.Channel;
        init => source = source with { Channel = value };
    }

    /// <summary>
    /// What of it has arisen by the evening of a day: amount × days so far / days in all, rounded once, and multiplied before it
    /// is divided, so that half a cent is one. All of it where no day is known, for then it arose before everything.
    /// </summary>
    /// <param name="day">The day.</param>
    /// <param name="currency">Currency to round to.</param>
    public decimal ArisenBy(DateOnly day, Currency currency)
    {
        ArgumentNullException.ThrowIfNull(currency);
        if (Date is not { } first || day >= (Until ?? first))
            return Amount;
        int days = day.DayNumber - first.DayNumber + 1;
        return days <= 0 ? 0 : currency.Round(Amount * days / (Until!.Value.DayNumber - first.DayNumber + 1));
    }

    /// <summary>What of it arises after the evening of a day.</summary>
    /// <param name="day">The day.</param>
    /// <param name="currency">Currency to round to.</param>
    public decimal ArisesAfter(DateOnly day, Currency currency) => Amount - ArisenBy(day, currency);

    /// <summary>
    /// What of it arises from a day to another: the difference of what has arisen by their evenings, so spans that join add
    /// up to it. Nothing where no day is known.
    /// </summary>
    /// <param name="from">First day.</param>
    /// <param name="to">Last day, not before the first.</param>
    /// <param name="currency">Currency to round to.</param>
    public decimal Within(DateOnly from, DateOnly to, Currency currency) =>
        Date is not { } first || first > to || (Until ?? first) < from ? 0
        : ArisenBy(to, currency) - (first < from ? ArisenBy(from.AddDays(-1), currency) : 0);
}

/// <summary>A cost that a piece has but the log does not tell; it is unknown, not zero.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="What">What is missing: a sentence.</param>
public sealed record CostGap(CostKind Kind, string What);
