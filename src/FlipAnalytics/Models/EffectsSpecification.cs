using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A mild expectation of a slope before any sale is seen: normal with this mean and standard deviation.</summary>
internal readonly record struct SlopePrior(double Mean, double StandardDeviation);

/// <summary>
/// A mild expectation of the spread of a group's effects: the middle guess of its standard deviation on the log scale.
/// </summary>
internal readonly record struct SpreadPrior(double StandardDeviation);

/// <summary>Which terms the model of a log amount has and what is expected of them before the log speaks.</summary>
internal sealed record EffectsSpecification
{
    /// <summary>What is modelled, in words, such as "sale price".</summary>
    public required string Response { get; init; }

    public required SlopePrior Count { get; init; }

    public required SlopePrior Size { get; init; }

    public required SlopePrior Worn { get; init; }

    public required SlopePrior Damaged { get; init; }

    /// <summary>Null leaves the hours out.</summary>
    public SlopePrior? Hours { get; init; }

    /// <summary>
    /// What the hours that a type takes tell of the type: a predictor at the level of the group, so that a rare type
    /// leans on types of like work (Gelman and Hill, 2007, Data Analysis Using Regression and Multilevel/Hierarchical
    /// Models, ch. 12, from memory). Null leaves it out.
    /// </summary>
    public SlopePrior? TypeHours { get; init; }

    /// <summary>Null leaves the season out.</summary>
    public SlopePrior? Season { get; init; }

    public required SpreadPrior Type { get; init; }

    /// <summary>Null leaves colour families out.</summary>
    public SpreadPrior? Family { get; init; }

    /// <summary>Null leaves colours out.</summary>
    public SpreadPrior? Colour { get; init; }

    public required SpreadPrior Finish { get; init; }

    /// <summary>Null leaves materials out.</summary>
    public SpreadPrior? Material { get; init; }

    /// <summary>Names of groups to leave out, to see what pieces are beyond all but those.</summary>
    public ImmutableArray<string> LeftOut { get; init; } = [];

    /// <summary>One more group, looked at on request; null for none.</summary>
    public Func<PieceFacts, string>? Further { get; init; }

    /// <summary>Spread of the level's step from month to month; null holds the level still.</summary>
    public SpreadPrior? MonthlyDrift { get; init; }

    /// <summary>How such an amount is written down wrongly.</summary>
    public ImmutableArray<AmountSlip> Slips { get; init; } = AmountSlip.Money;

    /// <summary>Expected standard deviation of what the terms leave unexplained.</summary>
    public required double Residual { get; init; }

    /// <summary>How many observations the expectation of the residual is worth.</summary>
    public double ResidualWeight { get; init; } = 4;

    /// <summary>How sure the expected spreads are: standard deviation of the log of the variance ratio.</summary>
    public double SpreadUncertainty { get; init; } = 1.2;

    /// <summary>Names of the fixed terms with their expectations, the intercept first and without one.</summary>
    public ImmutableArray<(string Name, SlopePrior? Prior)> FixedTerms
    {
        get
        {
            var terms = ImmutableArray.CreateBuilder<(string, SlopePrior?)>();
            terms.Add((TermNames.Intercept, null));
            terms.Add((TermNames.Count, Count));
            terms.Add((TermNames.Size, Size));
            terms.Add((TermNames.Worn, Worn));
            terms.Add((TermNames.Damaged, Damaged));
            if (Hours is { } hours)
                terms.Add((TermNames.Hours, hours));
            if (TypeHours is { } typeHours)
                terms.Add((TermNames.TypeHours, typeHours));
            if (Season is { } season)
            {
                terms.Add((TermNames.SeasonSine, season));
                terms.Add((TermNames.SeasonCosine, season));
            }

            return terms.ToImmutable();
        }
    }
}

/// <summary>Names of terms and groups, as reports print them.</summary>
internal static class TermNames
{
    public const string Intercept = "intercept";
    public const string Count = "log count";
    public const string Size = "log size over type";
    public const string Worn = "condition worn";
    public const string Damaged = "condition damaged";
    public const string Hours = "log hours over usual";
    public const string TypeHours = "log hours of the type";
    public const string SeasonSine = "season sine";
    public const string SeasonCosine = "season cosine";
    public const string Asking = "log asking over expected price";

    public const string Type = "type";
    public const string Family = "color family";
    public const string Colour = "color";
    public const string Finish = "finish";
    public const string Material = "material";
    public const string Month = "month";

    /// <summary>A group that is looked at on request.</summary>
    public const string Further = "further";

    /// <summary>The level of those whose colour or finish was not recorded: the row still counts.</summary>
    public const string NotRecorded = "not recorded";
}
