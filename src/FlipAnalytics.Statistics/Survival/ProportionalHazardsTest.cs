using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>Columns that stand for one question, such as the levels of a colour.</summary>
/// <param name="Name">What the term is called.</param>
/// <param name="Columns">Names of its columns.</param>
public sealed record CoxTerm(string Name, ImmutableArray<string> Columns);

/// <summary>The test of one term.</summary>
/// <param name="Name">The term.</param>
/// <param name="Test">That its coefficients do not change with time.</param>
public sealed record TermTest(string Name, ChiSquaredTest Test);

/// <summary>Whether coefficients stay the same over time: the score test of adding x g(t) to the model, with
/// g(t) = 1 − Ŝ(t−) of the Kaplan–Meier curve of all rows, less its mean over the endings. Grambsch and Therneau (1994),
/// Biometrika 81, 515–526, in the exact form of R's <c>cox.zph</c> since 3.0.</summary>
/// <param name="Terms">One a term.</param>
/// <param name="Global">All terms together.</param>
public sealed record ProportionalHazardsTest(ImmutableArray<TermTest> Terms, ChiSquaredTest Global)
{
    /// <summary>Tests a fit.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="terms">Columns to test together; null tests each by itself. Dropped columns are ignored.</param>
    /// <exception cref="ArgumentException">A term names no column of the fit.</exception>
    /// <exception cref="NoEstimateException">All endings fell on one time, or too few to see a change.</exception>
    public static ProportionalHazardsTest Of(CoxFit fit, IReadOnlyList<CoxTerm>? terms = null)
    {
        ArgumentNullException.ThrowIfNull(fit);
        terms ??= [.. fit.Coefficients.Select(coefficient => new CoxTerm(coefficient.Name, [coefficient.Name]))];
        int width = fit.Coefficients.Length;
        (double[] score, double[] information) = Extended(fit);
        return new(
            [.. terms.Select(term => new TermTest(term.Name, Test(Columns(fit, term), score, information, width)))],
            Test([.. Enumerable.Range(0, width)], score, information, width));
    }

    private static int[] Columns(CoxFit fit, CoxTerm term)
    {
        string? unknown = term.Columns.FirstOrDefault(name => !fit.DesignColumns.Contains(name));
        int[] columns = [.. term.Columns.Select(name => fit.Coefficients.ToList().FindIndex(c => c.Name == name)).Where(j => j >= 0)];
        return unknown is null && columns.Length > 0 ? columns : throw new ArgumentException(
            $"Term '{term.Name}' names {(unknown is null ? "only dropped columns" : $"'{unknown}', which is no column of the fit")}; the fit has {string.Join(", ", fit.Coefficients.Select(c => $"'{c.Name}'"))}.");
    }

    /// <summary>Slope and information, at γ = 0, of the model with xᵀβ + g(t) xᵀγ; the slope in β is 0 there.</summary>
    private static (double[] Score, double[] Information) Extended(CoxFit fit)
    {
        CoxRows rows = fit.Rows;
        int width = rows.Width;
        Func<double, double> g = TimeScale(rows.Times);
        double[] score = new double[width], information = new double[4 * width * width];
        double[] risks = CoxLikelihood.Risks(rows, rows.LinearPredictors(fit.Estimates));
        RiskSweep.Run(rows, risks, 2, risk =>
        {
            double scale = g(risk.Time);
            for (int i = risk.First; i < risk.First + risk.EndingCount; i++)
            {
                for (int j = 0; j < width; j++)
                    score[j] += scale * rows.Weight[i] * rows.Row(i)[j];
            }
            foreach ((double weight, double gone) in risk.Terms(fit.Ties))
                AddTerm(risk, weight, gone, scale, score, information);
        });
        return (score, information);
    }

    private static void AddTerm(RiskSet risk, double weight, double gone, double scale, double[] score, double[] information)
    {
        int width = score.Length;
        double total = risk.All[0] - gone * risk.Ending[0];
        double[] mean = new double[width];
        int at = 1 + width;
        for (int j = 0; j < width; j++)
        {
            mean[j] = (risk.All[1 + j] - gone * risk.Ending[1 + j]) / total;
            score[j] -= scale * weight * mean[j];
            for (int k = 0; k <= j; k++, at++)
            {
                double covariance = weight * ((risk.All[at] - gone * risk.Ending[at]) / total - mean[j] * mean[k]);
                Add(information, width, j, k, covariance, scale);
                if (k < j)
                    Add(information, width, k, j, covariance, scale);
            }
        }
    }

    private static void Add(double[] information, int width, int j, int k, double covariance, double scale)
    {
        information[j * 2 * width + k] += covariance;
        information[(j + width) * 2 * width + k] += scale * covariance;
        information[j * 2 * width + k + width] += scale * covariance;
        information[(j + width) * 2 * width + k + width] += scale * scale * covariance;
    }

    private static Func<double, double> TimeScale(SurvivalTime[] times)
    {
        List<double> stops = [];
        List<double> before = [];
        double survival = 1, sum = 0;
        int events = 0;
        foreach (RiskRow row in RiskTable.Of(times))
        {
            stops.Add(row.Time);
            before.Add(1 - survival);
            sum += row.Ended * (1 - survival);
            events += row.Ended;
            survival *= 1 - (double)row.Ended / row.AtRisk;
        }
        double mean = sum / events;
        return time => before[stops.BinarySearch(time)] - mean;
    }

    private static ChiSquaredTest Test(int[] tested, double[] score, double[] information, int width)
    {
        int[] used = [.. Enumerable.Range(0, width), .. tested.Select(j => j + width)];
        int size = used.Length;
        double[] matrix = new double[size * size];
        for (int a = 0; a < size; a++)
        {
            for (int b = 0; b < size; b++)
                matrix[a * size + b] = information[used[a] * 2 * width + used[b]];
        }
        ScaledCholesky factor = new(size);
        if (!factor.TryFactor(matrix, size, 0))
            throw new NoEstimateException(
                "The endings do not show whether coefficients change with time: they fell on too few different times. Wait for more.");
        double[] slope = [.. used.Select(j => j < width ? 0 : score[j - width])];
        double[] solved = [.. slope];
        factor.Solve(solved);
        return ChiSquaredTest.Of(slope.Zip(solved, (u, s) => u * s).Sum(), tested.Length);
    }
}
