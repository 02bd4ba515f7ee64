using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>One stretch of days on the market at one asking price.</summary>
/// <param name="Origin">Where it comes from.</param>
/// <param name="Facts">What the piece is.</param>
/// <param name="Size">Relative log size, with the variance that unrecorded dimensions leave in it.</param>
/// <param name="Listed">Day of the first listing; null for a guess.</param>
/// <param name="Asking">Log of the asking price over the expected sale price; the average where either is unknown.</param>
/// <param name="Spell">The days.</param>
/// <param name="Weight">How many observations it counts as.</param>
/// <param name="PieceId">The piece, for observations from the log.</param>
internal sealed record DaysRow(
    RowOrigin Origin,
    PieceFacts Facts,
    (double Value, double Variance) Size,
    DateOnly? Listed,
    double Asking,
    Spell Spell,
    double Weight = 1,
    string? PieceId = null)
{
    public DesignValues Values => new(Facts, Size.Value, Listed, Asking: Asking);

    private const double ExpectedHabits = 5;

    /// <summary>Every row of a log and of the owner's guesses, with mean and variance of the first asking habit.</summary>
    public static (ImmutableArray<DaysRow> Rows, double AskingMean, double AskingVariance) All(
        FittedModels models, EffectsModel? price)
    {
        SalesLog log = models.Log;
        var changes = log.AskingPrices.ToLookup(a => a.PieceId, StringComparer.OrdinalIgnoreCase);
        var paths = log.Pieces
            .Select(p => (Piece: p, Expected: ExpectedLogPrice(models, price, p), Path: AskingPath.Of(p, changes[p.Id], log.Date)))
            .Where(p => !p.Path.IsEmpty).ToArray();
        double[] habits =
        [
            .. paths.Select(p => Crossing.Log(p.Piece.AskingPrice) - p.Expected)
                .Where(ratio => ratio is not null).Select(ratio => ratio!.Value),
        ];
        var ordinary = Winsorised.Ends(habits, Expectations.AskingHabitSpread, ExpectedHabits);
        habits = [.. habits.Select(ordinary.Hold)];
        double mean = habits.Length == 0 ? 0 : habits.Average();
        double variance = habits.Length < 2 ? 0 : habits.Sum(h => (h - mean) * (h - mean)) / (habits.Length - 1);

        var rows = ImmutableArray.CreateBuilder<DaysRow>();
        foreach (var (piece, expected, path) in paths)
        {
            PieceFacts facts = models.Rows.Facts[piece.Id];
            foreach (AskingEpisode episode in path)
            {
                Spell spell = episode.Sold
                    ? Spell.Ended(episode.Stop, episode.Start)
                    : Spell.Running(episode.Stop, episode.Start);
                rows.Add(new(RowOrigin.Log, facts, models.Rows.Sizes[piece.Id], piece.ListedOn,
                    episode.LogAsking - expected is { } asking ? ordinary.Hold(asking) : mean, spell, 1, piece.Id));
            }
        }

        rows.AddRange(Guesses(log.Workshop, mean));
        return (rows.ToImmutable(), mean, variance);
    }

    private static double? ExpectedLogPrice(FittedModels models, EffectsModel? price, Piece piece)
    {
        if (price is null)
            return null;
        PieceFacts facts = models.Rows.Facts[piece.Id];
        return price.PredictedWithout(piece.Id)
            ?? price.Predict(
                models.ValuesOf(facts, piece.ListedOn ?? models.Log.Date, models.RelativeHours(facts, piece.Id).Value), 0).Mean;
    }

    // Three points stand for a guess, lest the model take it for so many pieces that all sold on the same day: the tenth,
    // middle and ninetieth of a hundred count 0.3, 0.4 and 0.3 (Swanson's rule for the mean from those three, from memory).
    private static readonly (double NormalQuantile, double Share)[] GuessPoints =
        [(-1.2815515655446004, 0.3), (0, 0.4), (1.2815515655446004, 0.3)];

    private static IEnumerable<DaysRow> Guesses(Workshop workshop, double asking) =>
        from entry in workshop.Guesses.OrderBy(g => g.Key, StringComparer.OrdinalIgnoreCase)
        where entry.Value.Days is { Likely: > 0 }
        let guess = AmountRows.LogGuess(entry.Value.Days!)
        from point in GuessPoints
        select new DaysRow(
            RowOrigin.OwnersGuess,
            new() { Type = entry.Key, LogDimensions = [null, null, null] },
            (0, 0), null, asking,
            Spell.Ended(Math.Exp(guess.Middle + point.NormalQuantile * guess.Spread)),
            point.Share * AmountRows.GuessWeight(guess.Spread, Expectations.LogDays.StandardDeviation));
}
