using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace FlipAnalytics.Tests;

/// <summary>Logs, candidates and answers that the tests of models and decisions share.</summary>
internal static class Workbench
{
    private static readonly JsonSerializerOptions Options = new()
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    public static readonly ImmutableArray<(ModelName Model, Estimator Estimator, bool Plain)> Fits =
    [
        .. from model in Enum.GetValues<ModelName>()
           from estimator in Enum.GetValues<Estimator>()
           from plain in estimator == Estimator.Ols ? [true] : new[] { false, true }
           select (model, estimator, plain),
    ];

    /// <summary>A generated log as of its last day.</summary>
    public static SalesLog Demo(int flips, ulong seed) => DemoLog.Generate(flips, seed).Log;

    public static ImmutableArray<PurchaseDecision> Decide(
        SalesLog log, IReadOnlyList<Candidate> candidates, PurchaseTerms? terms = null) =>
        new MostToPay(FittedModels.Of(log), terms ?? new()).Decide(candidates);

    public static PurchaseDecision Decide(SalesLog log, Candidate candidate, PurchaseTerms? terms = null) =>
        new MostToPay(FittedModels.Of(log), terms ?? new()).Decide(candidate);

    public static Candidate Dresser { get; } = new() { Id = "C1", Type = "dresser", StickerPrice = 40 };

    /// <summary>A candidate with everything known that the owner can see.</summary>
    public static Candidate MeasuredDresser { get; } = Dresser with
    {
        Count = 1,
        Width = 58,
        Depth = 18,
        Height = 33,
        Condition = Condition.Worn,
        Colour = "sage",
        Finish = "satin",
    };

    /// <summary>A candidate that no hours, supplies or sale price need be estimated for.</summary>
    public static Candidate StatedDresser { get; } =
        MeasuredDresser with { Hours = 8, Supplies = 30, SalePrice = 260 };

    public static ImmutableArray<Candidate> Various { get; } =
    [
        Dresser,
        MeasuredDresser,
        StatedDresser,
        new() { Id = "C2", Type = "side chair", Count = 4, StickerPrice = 60, Condition = Condition.Damaged },
        new() { Id = "C3", Type = "grandfather clock", Colour = "teal", Hours = 3 },
        StatedDresser with { Id = "C5", Hours = 0, Supplies = 0, SalePrice = 0 },
        new() { Id = "C4", Type = "nightstand", Width = 20, Supplies = 0, Colour = "white" },
    ];

    /// <summary>A record as text, every field of it, so that two can be compared.</summary>
    public static string Text<T>(T record) => JsonSerializer.Serialize(record, Options);

    /// <summary>What a fit says: its report, or the sentence why there is none.</summary>
    public static string FitOrSentence(SalesLog log, (ModelName Model, Estimator Estimator, bool Plain) fit)
    {
        try
        {
            return Text(ModelFitting.Fit(log, fit.Model, fit.Estimator, fit.Plain));
        }
        catch (NotEnoughDataException e)
        {
            return e.Message;
        }
    }
}
