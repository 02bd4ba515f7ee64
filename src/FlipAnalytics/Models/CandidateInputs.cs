using System.Collections.Immutable;
using System.Globalization;

namespace FlipAnalytics;

/// <summary>Holds what is stated of a candidate within what the log can tell, and says so.</summary>
internal static class CandidateInputs
{
    private static readonly string[] DimensionNames = ["width", "depth", "height"];

    /// <summary>What the models take the candidate for.</summary>
    public static PieceFacts Facts(FittedModels models, Candidate candidate) =>
        models.Rows.Size.Held(PieceFacts.Of(candidate, models.Log));

    /// <summary>What was made of each thing stated, where the owner would not expect it.</summary>
    public static ImmutableArray<InputNote> Notes(FittedModels models, Candidate candidate, CandidateLaws laws)
    {
        PieceFacts stated = PieceFacts.Of(candidate, models.Log);
        PieceFacts held = models.Rows.Size.Held(stated);
        return
        [
            .. Count(candidate, stated, held),
            .. Dimensions(models, candidate, stated, held),
            .. Words(models, candidate),
            .. Amount("hours", "take", candidate.Hours, laws.Hours),
            .. Amount("supplies", "need", candidate.Supplies, laws.Supplies),
            .. Amount("sale price", "bring", candidate.SalePrice, laws.Price),
        ];
    }

    private static IEnumerable<InputNote> Count(Candidate candidate, PieceFacts stated, PieceFacts held)
    {
        if (held.LogCount < stated.LogCount)
        {
            yield return new("count", InputTreatment.Held, Text(
                $"A count of {candidate.Count} is beyond any set your log knows of: {Math.Exp(held.LogCount):0} is taken. Check it."));
        }
    }

    private static IEnumerable<InputNote> Dimensions(
        FittedModels models, Candidate candidate, PieceFacts stated, PieceFacts held)
    {
        for (int d = 0; d < TypicalSize.Dimensions; d++)
        {
            if (stated.LogDimensions[d] is not { } log)
                continue;
            string name = DimensionNames[d];
            if (models.Rows.Size.Usual(candidate.Type, d) is not { } usual)
            {
                yield return new(name, InputTreatment.Ignored,
                    $"The {name} changes nothing in the price yet: no {candidate.Type} in your log has one on record.");
            }
            else if (held.LogDimensions[d] is { } taken && taken != log)
            {
                yield return new(name, InputTreatment.Held, Text($"A {name} of {Math.Exp(log):0.#} is {Times(log - usual)} ")
                    + Text($"the usual one of such a piece: {Math.Exp(taken):0.#} is taken. Check the unit."));
            }
        }
    }

    private static IEnumerable<InputNote> Words(FittedModels models, Candidate candidate)
    {
        if (models.Price is not { } price || candidate.SalePrice is not null)
            yield break;
        foreach (var (name, word) in new[]
            { ("finish", candidate.Finish), ("color", candidate.Colour), ("material", candidate.Material) })
        {
            if (word is not null && !price.Knows(name, word))
            {
                yield return new(name, InputTreatment.Ignored,
                    $"The {name} {word} changes nothing in the price yet: none of your sales has it.");
            }
        }
    }

    private static IEnumerable<InputNote> Amount(string name, string verb, decimal? stated, LogPrediction? law)
    {
        if (law is null || Crossing.Log(stated) is not { } log)
            yield break;
        double off = log - law.Mean;
        if (Math.Abs(off) > 3 * Math.Sqrt(law.Variance))
        {
            yield return new(name, InputTreatment.Unusual, Text($"Your {name} of {stated} {(name == "hours" ? "are" : "is")} ")
                + $"{Times(off)} what such pieces {verb} by your log: check the unit.");
        }
    }

    private static string Times(double log) => log > 0
        ? Text($"{Math.Exp(log):0.#} times")
        : Text($"one part in {Math.Exp(-log):0.#} of");

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
