using System.Collections.Immutable;
using MathNet.Numerics.Distributions;

namespace FlipAnalytics;

/// <summary>Gathers from a log the observations that the models of sale price, hours and supplies rest on.</summary>
internal sealed class AmountRows
{
    private readonly SalesLog log;
    private readonly IReadOnlyDictionary<string, decimal> hours;
    private readonly SuppliesSpent supplies;

    public AmountRows(SalesLog log)
    {
        this.log = log;
        hours = BenchHours.ByPiece(log);
        supplies = new(log);
        Facts = WildSizes.SetAside(
            log.Pieces.ToDictionary(p => p.Id, p => PieceFacts.Of(p, log, Hours(p)), StringComparer.OrdinalIgnoreCase));
        Size = new([.. Facts.Values]);
        Sizes = Facts.ToDictionary(f => f.Key, f => Size.Of(f.Value), StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>What each piece is, by id.</summary>
    public IReadOnlyDictionary<string, PieceFacts> Facts { get; }

    public TypicalSize Size { get; }

    /// <summary>Relative log size of each piece with the variance that unrecorded dimensions leave in it, by id.</summary>
    public IReadOnlyDictionary<string, (double Value, double Variance)> Sizes { get; }

    /// <summary>Hours of a piece whose work is done; null for one still on the bench or without a record.</summary>
    public decimal? Hours(Piece piece) =>
        IsFinished(piece) && hours.TryGetValue(piece.Id, out decimal total) && total > 0 ? total : null;

    // What left before it was ready took only part of the work.
    private static bool IsFinished(Piece piece) =>
        piece.IsSold || piece.ReadyOn is not null || piece.ListedOn is not null || piece.AskingPrice is not null;

    public ImmutableArray<EffectsRow> HoursRows()
    {
        ImmutableArray<EffectsRow> own =
        [
            .. log.Pieces.Where(p => Facts[p.Id].LogHours is not null)
                .Select(p => Logged(p, Facts[p.Id].LogHours!.Value, p.SoldOn ?? p.ReadyOn ?? p.ListedOn)),
            .. Guesses(guess => guess.Hours, Expectations.Hours.Residual),
        ];
        var known = own.Select(r => r.Facts.Type).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return
        [
            .. own,
            .. TradeHours.All().Where(usual => !known.Contains(usual.Type))
                .Select(usual => Typical(RowOrigin.CommonPractice, usual.Type, usual.LogHours, TradeHours.Weight)),
        ];
    }

    public ImmutableArray<EffectsRow> SuppliesRows()
    {
        // A piece still on the bench may take more.
        (Piece Piece, double Cost)[] costed =
        [
            .. from piece in log.Pieces
               where IsFinished(piece)
               let cost = supplies.On(piece)
               where cost is not null
               select (piece, Crossing.Number(cost.Value)),
        ];
        // A piece that needed nothing counts as a twentieth of the median of those that needed something: the log of
        // nothing does not exist.
        double[] spent = [.. costed.Select(p => p.Cost).Where(cost => cost > 0)];
        double floor = spent.Length == 0 ? 1e-3 : Median(spent) / 20;
        return
        [
            .. costed.Select(p => Logged(
                p.Piece, Math.Log(Math.Max(floor, p.Cost)), p.Piece.SoldOn ?? p.Piece.ReadyOn ?? p.Piece.ListedOn)),
            .. Guesses(guess => guess.Supplies, Expectations.Supplies.Residual),
        ];
    }

    public ImmutableArray<EffectsRow> PriceRows() =>
    [
        .. log.Pieces.Where(p => p.SoldPrice > 0).Select(p => Logged(p, Crossing.Log(p.SoldPrice)!.Value, p.SoldOn)),
        .. Guesses(guess => guess.SalePrice, Expectations.SalePrice.Residual),
    ];

    /// <summary>
    /// The log of a guess's middle and the standard deviation of its log: 8 in 10 lie between low and high.
    /// </summary>
    public static (double Middle, double Spread) LogGuess(ThreePointGuess guess)
    {
        double low = Crossing.Log(guess.Low) ?? Crossing.Log(guess.Likely)!.Value - 1;
        double high = Crossing.Log(guess.High)!.Value;
        double spread = (high - low) / (2 * Normal.InvCDF(0, 1, 0.9));
        return (Crossing.Log(guess.Likely)!.Value, Math.Max(spread, 0.05));
    }

    /// <summary>
    /// A guess speaks of what is typical, so it weighs as two sales when its range is as wide as single pieces scatter;
    /// less the wider it is, and never as much as four, since a sure guess may be off as a whole.
    /// </summary>
    public static double GuessWeight(double spread, double residual) =>
        4 * residual * residual / (residual * residual + spread * spread);

    private IEnumerable<EffectsRow> Guesses(Func<TypeGuess, ThreePointGuess?> choose, double residual) =>
        from entry in log.Workshop.Guesses.OrderBy(g => g.Key, StringComparer.OrdinalIgnoreCase)
        let guess = choose(entry.Value)
        where guess is not null && guess.Likely > 0
        let middle = LogGuess(guess)
        select Typical(RowOrigin.OwnersGuess, entry.Key, middle.Middle, GuessWeight(middle.Spread, residual));

    private EffectsRow Logged(Piece piece, double response, DateOnly? date) =>
        new(RowOrigin.Log, Facts[piece.Id], response, Sizes[piece.Id], (0, 0), 0, date, 1, piece.Id);

    private static EffectsRow Typical(RowOrigin origin, string type, double response, double weight) =>
        new(origin, new() { Type = type, LogDimensions = [null, null, null] }, response, (0, 0), (0, 0), 0, null, weight);

    private static double Median(double[] values)
    {
        Array.Sort(values);
        return (values[(values.Length - 1) / 2] + values[values.Length / 2]) / 2;
    }
}
