using System.Collections.Concurrent;
using System.Collections.Immutable;
using MathNet.Numerics.Distributions;

namespace FlipAnalytics;

/// <summary>
/// What a log would tell of a type after some more sales of it, or of anything: the models of sale price and hours are
/// fitted again with invented sales, spread around what is expected now as the models say that single pieces are.
/// </summary>
internal sealed class MoreSales(FittedModels models)
{
    private static readonly ImmutableArray<int> Counts = [1, 2, 3, 4, 5, 6, 8, 10, 15, 20];

    // Halving what so many sales leave open takes more of them than anyone would wait for.
    private const int MostSales = 40;

    // The same for every number of invented sales.
    private readonly Lazy<ImmutableArray<EffectsRow>> priceRows = new(models.PriceRows);
    private readonly Lazy<ImmutableArray<EffectsRow>> hoursRows = new(models.Rows.HoursRows);

    private readonly ConcurrentDictionary<(string Type, bool OfAnything, int Count), (EffectsModel Price, EffectsModel Hours)> fits = new();

    /// <summary>
    /// The fewest more sales after which a width is at most half of what it is now; null where twenty are too few or no sale
    /// price is known at all.
    /// </summary>
    /// <param name="candidate">The piece in the store.</param>
    /// <param name="laws">What the models expect of it now.</param>
    /// <param name="ofAnything">Whether each of the sales is of a type of its own, or all of the candidate's type.</param>
    /// <param name="widthOf">The width that these laws lead to.</param>
    public int? ToHalve(Candidate candidate, CandidateLaws laws, bool ofAnything, Func<CandidateLaws, double> widthOf)
    {
        if (models.Price is null || models.Price.Rows.Count(row => row.Origin == RowOrigin.Log) > MostSales)
            return null;
        double half = widthOf(laws) / 2;
        foreach (int count in Counts)
        {
            if (widthOf(After(candidate, laws, ofAnything, count)) <= half)
                return count;
        }

        return null;
    }

    private CandidateLaws After(Candidate candidate, CandidateLaws laws, bool ofAnything, int count)
    {
        PieceFacts facts = CandidateInputs.Facts(models, candidate);
        DesignValues now = models.ValuesOf(facts, models.Log.Date, 0);
        double size = models.Rows.Size.Of(facts).Variance;
        var (price, hours) = fits.GetOrAdd(
            (candidate.Type.ToUpperInvariant(), ofAnything, count), _ => Fitted(candidate.Type, ofAnything, count));
        return laws with
        {
            Price = laws.Price! with
            {
                VarianceOfMean = price.Predict(now with { Date = models.SaleDate }, size, Unstated.NoMore).VarianceOfMean,
            },
            Hours = laws.Hours with { VarianceOfMean = hours.Predict(now, size, Unstated.NoLess).VarianceOfMean },
        };
    }

    private (EffectsModel Price, EffectsModel Hours) Fitted(string type, bool ofAnything, int count) => (
        EffectsModel.TryFit(
            Expectations.SalePrice, priceRows.Value.AddRange(Invented(models.Price!, models.SaleDate, type, ofAnything, count)))!,
        EffectsModel.TryFit(
            Expectations.Hours, hoursRows.Value.AddRange(Invented(models.Hours, models.Log.Date, type, ofAnything, count)))!);

    private IEnumerable<EffectsRow> Invented(EffectsModel model, DateOnly date, string type, bool ofAnything, int count)
    {
        for (int i = 0; i < count; i++)
        {
            var facts = new PieceFacts { Type = ofAnything ? $"\0another type {i}" : type, LogDimensions = [null, null, null] };
            DesignValues values = models.ValuesOf(facts, date, 0);
            double spread = model.Fit.ResidualVariance + (ofAnything ? model.Fit.Terms.First(term => term.Name == TermNames.Type).Variance : 0);
            double place = Normal.InvCDF(0, Math.Sqrt(spread), (i + 0.5) / count);
            yield return new(
                RowOrigin.Log, facts, model.Predict(values, 0).Mean + place, (0, 0), (0, 0), values.TypeHours, date, 1,
                $"\0invented {i}");
        }
    }
}
