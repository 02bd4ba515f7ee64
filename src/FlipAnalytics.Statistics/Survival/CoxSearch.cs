namespace FlipAnalytics.Statistics;

/// <summary>Newton's method on Cox's partial likelihood, which is concave; a step that loses likelihood is halved.</summary>
internal sealed class CoxSearch
{
    private const int MostIterations = 100, MostHalvings = 40;

    // Squared length of a Newton step in standard errors: 1e-10 of one is beyond what any reader sees.
    private const double Converged = 1e-20;

    // The likelihood stands still to 1e-12 while log hazards still move by 5 %: they are on their way to infinity.
    private const double StandsStill = 1e-12, StillMoving = 0.05;

    // As small a share of a column's information left by those before it is rounding.
    private const double Dependent = 1e-10;

    private CoxSearch(CoxLikelihood start, int width)
    {
        Null = Fitted = start;
        Coefficients = new double[width];
        Factor = new ScaledCholesky(width);
    }

    public CoxLikelihood Null { get; }

    public CoxLikelihood Fitted { get; private set; }

    public double[] Coefficients { get; private set; }

    /// <summary>Of the information at the estimate.</summary>
    public ScaledCholesky Factor { get; }

    /// <summary>uᵀI⁻¹u at β = 0.</summary>
    public double ScoreStatistic { get; private set; }

    public int Iterations { get; private set; }

    /// <summary>Length of the first step not worth taking, in standard errors.</summary>
    public double LastStep { get; private set; }

    /// <summary>Searches from β = 0, where the likelihood is known already.</summary>
    public static CoxSearch Run(CoxRows rows, TieMethod ties, string[] names, CoxLikelihood start)
    {
        CoxSearch search = new(start, rows.Width);
        double[] step = new double[rows.Width];
        double last = double.PositiveInfinity;
        for (; ; search.Iterations++)
        {
            if (!search.Factor.TryFactor(search.Fitted.Information, rows.Width, 0))
                throw Separated(rows, names, step);
            step = [.. search.Fitted.Score];
            search.Factor.Solve(step);
            double decrement = Math.Max(0, step.Zip(search.Fitted.Score, (s, u) => s * u).Sum());
            search.LastStep = Math.Sqrt(decrement);
            if (search.Iterations == 0)
                search.ScoreStatistic = decrement;
            if (decrement < StandsStill && Moves(rows, step).Max() > StillMoving)
                throw Separated(rows, names, step);
            if (decrement <= Converged || (decrement < StandsStill && decrement > last / 4))
                return search;
            if (search.Iterations == MostIterations || !search.TryStep(rows, ties, step))
                throw new NoEstimateException(
                    $"No maximum of Cox's likelihood was found in {search.Iterations} steps. Look for values out of all proportion among {Quoted(names)}.");
            last = decrement;
        }
    }

    /// <summary>The columns whose variation within the risk sets at β = 0 is not given by columns before them.</summary>
    public static int[] Independent(CoxRows rows, double[] information)
    {
        List<int> kept = [];
        List<double[]> factor = [];
        for (int j = 0; j < rows.Width; j++)
        {
            double own = information[j * rows.Width + j], rest = own;
            double[] line = new double[kept.Count + 1];
            for (int a = 0; a < kept.Count; a++)
            {
                double sum = information[j * rows.Width + kept[a]];
                for (int b = 0; b < a; b++)
                    sum -= line[b] * factor[a][b];
                line[a] = sum / factor[a][a];
                rest -= line[a] * line[a];
            }
            if (!(rest > Dependent * own && own > Dependent * Dependent * MeanSquare(rows, j)))
                continue;
            line[^1] = Math.Sqrt(rest);
            factor.Add(line);
            kept.Add(j);
        }
        return [.. kept];
    }

    private static double MeanSquare(CoxRows rows, int j)
    {
        double sum = rows.Means[j] * rows.Means[j] * rows.Count;
        for (int i = 0; i < rows.Count; i++)
            sum += rows.X[i * rows.Width + j] * rows.X[i * rows.Width + j];
        return sum / rows.Count;
    }

    private bool TryStep(CoxRows rows, TieMethod ties, double[] step)
    {
        double fraction = 1;
        for (int halving = 0; halving < MostHalvings; halving++, fraction /= 2)
        {
            double[] candidate = [.. Coefficients.Select((b, j) => b + fraction * step[j])];
            CoxLikelihood next = CoxLikelihood.At(rows, ties, candidate);
            if (next.LogLikelihood >= Fitted.LogLikelihood - 1e-12 * Math.Abs(Fitted.LogLikelihood))
            {
                (Coefficients, Fitted) = (candidate, next);
                return true;
            }
        }
        return false;
    }

    /// <summary>By how much a step changes the log hazard between the ends of each column.</summary>
    private static double[] Moves(CoxRows rows, double[] step)
    {
        double[] low = [.. rows.Row(0)], high = [.. rows.Row(0)];
        for (int i = 1; i < rows.Count; i++)
        {
            for (int j = 0; j < rows.Width; j++)
            {
                double x = rows.X[i * rows.Width + j];
                low[j] = Math.Min(low[j], x);
                high[j] = Math.Max(high[j], x);
            }
        }
        return [.. step.Select((value, j) => Math.Abs(value) * (high[j] - low[j]))];
    }

    private static NoEstimateException Separated(CoxRows rows, string[] names, double[] step)
    {
        double[] moves = Moves(rows, step);
        string[] culprits = [.. names.Where((_, j) => moves[j] >= moves.Max() / 4)];
        return new($"The likelihood grows without end with the coefficient of {Quoted(culprits)}: among those at risk together, those with the larger (or the smaller) value always ended first. Leave the column out, merge its level with another, or add rows.");
    }

    private static string Quoted(string[] names) => string.Join(" and ", names.Select(name => $"'{name}'"));
}
