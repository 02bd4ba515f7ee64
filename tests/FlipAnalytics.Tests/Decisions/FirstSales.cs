using System.Collections.Immutable;
using MathNet.Numerics.Distributions;

namespace FlipAnalytics.Tests;

/// <summary>
/// The first days of generated towns, each with prices, hours and a price level of its own: logs that hold the first few
/// sales, and offers whose true most to pay is known.
/// </summary>
internal static class FirstSales
{
    private const int OffersPerLog = 20;
    private const int FlipsToCome = 40;
    private const double LevelSpread = 0.4;
    private const double GuessError = 0.15;
    private const double Material = 0.2;

    /// <summary>A verdict beside the truth.</summary>
    /// <param name="IsAnswered">Whether there is a limit at all.</param>
    /// <param name="IsFirm">Whether a verdict is given.</param>
    /// <param name="IsWrong">
    /// Whether the limit and the true one lie on two sides of the sticker price, which is off the true one by more than a fifth of it.
    /// </param>
    /// <param name="IsWrongSide">The same, however little it is off.</param>
    public sealed record Judged(bool IsAnswered, bool IsFirm, bool IsWrong, bool IsWrongSide);

    /// <summary>A town's log with so many sales, with guesses of three types or none, and what is on offer that day.</summary>
    public static (SalesLog Log, ImmutableArray<DemoOffer> Offers) Of(int sales, bool guesses, ulong seed)
    {
        var draws = new Random((int)seed);
        double level = LevelSpread * Normal.Sample(draws, 0, 1);
        DemoMarket market = DemoMarket.Drawn(seed) with { Base = DemoMarket.Standard.Base + level };
        DemoLogResult demo = DemoLog.Generate(FlipsToCome, seed, market);
        SalesLog log = First(demo.Log, sales);
        double off = level + GuessError * Normal.Sample(draws, 0, 1);
        ImmutableDictionary<string, TypeGuess> guessed = guesses ? Scaled(log.Workshop.Guesses, Math.Exp(off)) : log.Workshop.Guesses.Clear();
        return (
            log with { Workshop = log.Workshop with { Guesses = guessed } },
            demo.Truth.Offers(OffersPerLog, 1000 + seed, log.Date));
    }

    /// <summary>What is said about the offers of a town, beside the truth.</summary>
    public static ImmutableArray<Judged> Judge(int sales, bool guesses, ulong seed)
    {
        var (log, offers) = Of(sales, guesses, seed);
        var decisions = new MostToPay(FittedModels.Of(log), new()).Decide([.. offers.Select(o => Candidate.Of(o.Seen))]);
        return
        [
            .. offers.Zip(decisions, (offer, decision) =>
            {
                double sticker = (double)offer.StickerPrice;
                bool wrongSide = decision.Ceiling >= offer.StickerPrice != sticker <= offer.AffordablePrice;
                return new Judged(
                    decision.Ceiling is not null, decision.Verdict != Verdict.CannotSayYet,
                    wrongSide && Math.Abs(sticker - offer.AffordablePrice) > Material * Math.Abs(offer.AffordablePrice), wrongSide);
            }),
        ];
    }

    // As on the day of its so-manieth sale; of several sales on one day only the first are in it.
    private static SalesLog First(SalesLog log, int sales)
    {
        DateOnly[] days = [.. log.Pieces.Where(p => p.SoldOn is not null).Select(p => p.SoldOn!.Value).Order()];
        SalesLog then = log.AsOf(sales == 0 ? days[0].AddDays(-1) : days[sales - 1]);
        return then with
        {
            Pieces =
            [
                .. then.Pieces.Where(p => !p.IsSold),
                .. then.Pieces.Where(p => p.IsSold).OrderBy(p => p.SoldOn).Take(sales),
            ],
        };
    }

    private static ImmutableDictionary<string, TypeGuess> Scaled(ImmutableDictionary<string, TypeGuess> guesses, double factor)
    {
        decimal Times(decimal amount) => decimal.Round(amount * (decimal)factor, 2);
        return guesses.ToImmutableDictionary(
            guess => guess.Key,
            guess => guess.Value with
            {
                SalePrice = new(
                    Times(guess.Value.SalePrice!.Low), Times(guess.Value.SalePrice.Likely), Times(guess.Value.SalePrice.High)),
            },
            StringComparer.OrdinalIgnoreCase);
    }
}
