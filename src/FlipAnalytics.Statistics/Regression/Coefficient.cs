namespace FlipAnalytics.Statistics;

/// <summary>One estimated coefficient.</summary>
/// <param name="Name">The name of its column.</param>
/// <param name="Estimate">b.</param>
/// <param name="StandardError">σ √((XᵀWX)⁻¹)ⱼⱼ; 0, or mere rounding, when the columns explain the
/// response exactly (<see cref="LinearFit.IsExact"/>).</param>
/// <param name="T">Estimate over standard error.</param>
/// <param name="P">P(|T| ≥ |t|) with the residual degrees of freedom.</param>
public sealed record Coefficient(string Name, double Estimate, double StandardError, double T, double P);

/// <summary>The F test that no column but the intercept matters.</summary>
/// <param name="F">Model mean square over residual mean square.</param>
/// <param name="NumeratorDegreesOfFreedom">Coefficients, the intercept not counted.</param>
/// <param name="DenominatorDegreesOfFreedom">Rows less coefficients.</param>
/// <param name="P">P(F ≥ f).</param>
public sealed record OverallTest(
    double F, int NumeratorDegreesOfFreedom, int DenominatorDegreesOfFreedom, double P);

/// <summary>How much a column's variance is inflated by its overlap with the others.</summary>
/// <param name="Name">The name of the column.</param>
/// <param name="Factor">1/(1 − R²) of the column on the others; 1 when it overlaps with none.</param>
public sealed record VarianceInflation(string Name, double Factor);
