using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Which model to fit.</summary>
public enum ModelName
{
    /// <summary>Log sale price.</summary>
    Price,

    /// <summary>Days on market.</summary>
    Days,

    /// <summary>Log hands-on hours.</summary>
    Hours,

    /// <summary>Log cost of supplies.</summary>
    Supplies,
}

/// <summary>How to fit it.</summary>
public enum Estimator
{
    /// <summary>Random effects by restricted maximum likelihood; for days shrunk effects.</summary>
    Mixed,

    /// <summary>Ordinary least squares with types and colours as categories.</summary>
    Ols,
}

/// <summary>A fixed term of a fitted model.</summary>
/// <param name="Name">Its name, the same as its column in the design.</param>
/// <param name="Estimate">Change of the log per unit.</param>
/// <param name="StandardError">Standard error of the estimate.</param>
public sealed record FitTerm(string Name, double Estimate, double StandardError);

/// <summary>The effect of one level of a group.</summary>
/// <param name="Level">The level, such as a type or a colour.</param>
/// <param name="Effect">Shrunk effect on the log.</param>
/// <param name="StandardError">Conditional standard deviation of the effect given the data and the variances.</param>
public sealed record FitLevel(string Level, double Effect, double StandardError);

/// <summary>A group of random effects.</summary>
/// <param name="Group">Its name, such as type.</param>
/// <param name="Variance">Variance of its effects.</param>
/// <param name="Levels">Its levels.</param>
public sealed record FitGroup(string Group, double Variance, ImmutableArray<FitLevel> Levels);

/// <summary>A row that pulls hard on a least-squares fit.</summary>
/// <param name="Id">The piece.</param>
/// <param name="CooksDistance">Cook's distance.</param>
/// <param name="StudentizedResidual">Externally studentised residual.</param>
public sealed record InfluentialPiece(string Id, double CooksDistance, double StudentizedResidual);

/// <summary>What textbooks print beside a least-squares fit.</summary>
/// <param name="RSquared">Share of the variance explained.</param>
/// <param name="AdjustedRSquared">The same, adjusted for the number of terms.</param>
/// <param name="Sigma">Residual standard deviation.</param>
/// <param name="F">F statistic of all terms but the intercept; null where there are none.</param>
/// <param name="PValue">Its p-value.</param>
/// <param name="Aic">Akaike's criterion.</param>
/// <param name="Bic">Schwarz's criterion.</param>
/// <param name="BreuschPaganPValue">p-value of the studentised Breusch–Pagan test of unequal variance; null where no term varies.</param>
/// <param name="ConditionNumber">Condition number of the design.</param>
/// <param name="SmearingFactor">Duan's smearing factor.</param>
/// <param name="MostInfluential">The rows with the largest Cook's distance.</param>
public sealed record FitDiagnostics(
    double RSquared, double AdjustedRSquared, double Sigma, double? F, double? PValue, double Aic, double Bic,
    double? BreuschPaganPValue, double ConditionNumber, double SmearingFactor,
    ImmutableArray<InfluentialPiece> MostInfluential);

/// <summary>The data as fitted, a row an observation.</summary>
/// <param name="Columns">Column names.</param>
/// <param name="Rows">Cells; numbers read back to the same double.</param>
public sealed record DesignTable(ImmutableArray<string> Columns, ImmutableArray<ImmutableArray<string>> Rows);

/// <summary>A fitted model as <c>flip fit</c> shows it.</summary>
public sealed record FitReport
{
    /// <summary>Which model.</summary>
    public required ModelName Model { get; init; }

    /// <summary>How it was fitted.</summary>
    public required Estimator Estimator { get; init; }

    /// <summary>Whether it leaves out what outside software cannot fit.</summary>
    public required bool Plain { get; init; }

    /// <summary>The log's date.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>Number of observations from the log.</summary>
    public required int N { get; init; }

    /// <summary>The model in words.</summary>
    public required string Formula { get; init; }

    /// <summary>Fixed terms.</summary>
    public required ImmutableArray<FitTerm> Terms { get; init; }

    /// <summary>Groups of random effects.</summary>
    public ImmutableArray<FitGroup> Random { get; init; } = [];

    /// <summary>Residual variance of the log; null for the days model.</summary>
    public double? ResidualVariance { get; init; }

    /// <summary>Log-likelihood, on the constants of lme4 and of R's survival package.</summary>
    public required double LogLikelihood { get; init; }

    /// <summary>REML or ML.</summary>
    public required string Criterion { get; init; }

    /// <summary>Distribution of the days; null for the other models.</summary>
    public string? Distribution { get; init; }

    /// <summary>Scale of log days; null for the other models.</summary>
    public double? Scale { get; init; }

    /// <summary>Standard error of the log of the scale; null for the other models.</summary>
    public double? LogScaleStandardError { get; init; }

    /// <summary>Columns left out because others determine them.</summary>
    public ImmutableArray<string> DroppedTerms { get; init; } = [];

    /// <summary>Whether the search for the best values settled; where it did not, they are near, not final.</summary>
    public bool Converged { get; init; } = true;

    /// <summary>Diagnostics of least squares; null for the other estimator.</summary>
    public FitDiagnostics? Diagnostics { get; init; }

    /// <summary>The data as fitted; null where outside software could not refit them.</summary>
    public DesignTable? Design { get; init; }
}
