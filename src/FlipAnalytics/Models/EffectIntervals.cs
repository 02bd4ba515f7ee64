using System.Collections.Immutable;
using MathNet.Numerics.Distributions;

namespace FlipAnalytics;

/// <summary>The shrunk effect of one level, in percent.</summary>
/// <param name="Name">The level, such as a colour.</param>
/// <param name="Count">Logged pieces it rests on.</param>
/// <param name="Estimate">Change against the average level, in percent; above −100.</param>
/// <param name="Low">Lower end of its range.</param>
/// <param name="High">Upper end of its range.</param>
public sealed record EffectInterval(string Name, int Count, double Estimate, double Low, double High);

/// <summary>What the levels of a group do to an amount, everything else being equal.</summary>
/// <param name="Response">The amount in words, such as sale price.</param>
/// <param name="Group">What is compared in words, such as color.</param>
/// <param name="Level">Chance that a range holds, 0 to 1.</param>
/// <param name="Rows">The levels, largest estimate first.</param>
public sealed record EffectIntervals(string Response, string Group, double Level, ImmutableArray<EffectInterval> Rows)
{
    private const double RangeLevel = 0.95;

    /// <summary>The effects of types, colours or finishes in a fitted model; no rows where the model does not have them.</summary>
    /// <param name="models">The fitted models.</param>
    /// <param name="model">Which of them.</param>
    /// <param name="group">Types, colours or finishes.</param>
    public static EffectIntervals Of(FittedModels models, ModelName model, PieceTrait group)
    {
        ArgumentNullException.ThrowIfNull(models);
        string name = group switch
        {
            PieceTrait.Type => TermNames.Type,
            PieceTrait.Color => TermNames.Colour,
            PieceTrait.Finish => TermNames.Finish,
            _ => "",
        };
        double z = Normal.InvCDF(0, 1, (1 + RangeLevel) / 2);
        var counts = Facts(models, model).GroupBy(facts => LevelOf(facts, group), StringComparer.OrdinalIgnoreCase)
            .ToDictionary(level => level.Key, level => level.Count(), StringComparer.OrdinalIgnoreCase);
        return new(ModelFitting.Words(model), name, RangeLevel,
            [
                .. from level in Levels(models, model, name)
                   where level.Name != TermNames.NotRecorded
                   orderby level.Effect descending, level.Name
                   select new EffectInterval(
                       level.Name, counts.GetValueOrDefault(level.Name), Percent(level.Effect),
                       Percent(level.Effect - z * level.Deviation), Percent(level.Effect + z * level.Deviation)),
            ]);
    }

    private static IEnumerable<(string Name, double Effect, double Deviation)> Levels(
        FittedModels models, ModelName model, string group) => model == ModelName.Days
        ? models.Days.Fit?.Groups.Where(g => g.Name == group)
            .SelectMany(g => g.Levels, (_, l) => (l.Level, l.Effect, l.StandardError)) ?? []
        : models.Amount(model)?.Fit.Terms.Where(t => t.Name == group)
            .SelectMany(t => t.Levels, (_, l) => (l.Level, l.Effect, Math.Sqrt(l.ConditionalVariance))) ?? [];

    private static IEnumerable<PieceFacts> Facts(FittedModels models, ModelName model) => model == ModelName.Days
        ? models.Days.Rows.Where(r => r.PieceId is not null).DistinctBy(r => r.PieceId).Select(r => r.Facts)
        : models.Amount(model)?.Rows.Where(r => r.Origin == RowOrigin.Log).Select(r => r.Facts) ?? [];

    private static string LevelOf(PieceFacts facts, PieceTrait group) => group switch
    {
        PieceTrait.Type => facts.Type,
        PieceTrait.Color => facts.Colour,
        _ => facts.Finish,
    } ?? TermNames.NotRecorded;

    private static double Percent(double effect) => 100 * (Math.Exp(effect) - 1);
}
