using System.Collections.Immutable;
using CsCheck;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>What every model tells of a fit, so that one law can be tested on all.</summary>
/// <param name="LogLikelihood">At its maximum.</param>
/// <param name="Fitted">xᵀb of every row; of a Cox regression less its mean, as its zero is arbitrary.</param>
/// <param name="Estimates">By column.</param>
/// <param name="Dropped">Columns left out.</param>
internal sealed record ModelFit(
    double LogLikelihood, double[] Fitted, Dictionary<string, double> Estimates, string[] Dropped);

/// <summary>Sixty pieces with a log price, days on market, a size, one of three finishes and one of six types, drawn from
/// known models by a fixed generator, and the four regressions on any columns of them.</summary>
internal sealed class FourModels
{
    private const int RowCount = 60, TypeCount = 6;

    private FourModels(double[][] columns, double[] logPrices, SurvivalTime[] times, int[] types)
    {
        (Size, Noise, Finish) = (columns[0], columns[1], columns[2]);
        (LogPrices, Times, Types) = (logPrices, times, types);
    }

    public static Gen<FourModels> Any { get; } = Gen.UInt.Select(Draw);

    /// <summary>The names of the models, for a theory.</summary>
    public static TheoryData<string> Names { get; } = ["least squares", "mixed model", "accelerated failure", "cox"];

    public double[] Size { get; private init; }

    public double[] Noise { get; private init; }

    /// <summary>0, 1 or 2.</summary>
    public double[] Finish { get; private init; }

    public double[] LogPrices { get; private init; }

    public SurvivalTime[] Times { get; private init; }

    public int[] Types { get; private init; }

    /// <summary>Columns of 0 and 1 for all finishes but the base.</summary>
    public Regressor[] Finishes(int baseLevel) =>
    [
        .. Enumerable.Range(0, 3).Where(level => level != baseLevel).Select(level =>
            new Regressor($"finish {level}", Finish.Select(finish => finish == level ? 1.0 : 0).ToArray())),
    ];

    public Regressor SizeColumn(double shift = 0) => new("log size", Size.Select(size => size + shift).ToArray());

    /// <summary>The same pieces with every price times exp(shift).</summary>
    public FourModels WithPricesShifted(double shift) => new([Size, Noise, Finish], [.. LogPrices.Select(y => y + shift)], Times, Types);

    /// <summary>The same pieces in another order.</summary>
    public FourModels Reordered()
    {
        int[] order = [.. Enumerable.Range(0, RowCount).Select(i => i * 37 % RowCount)];
        T[] Take<T>(T[] values) => [.. order.Select(i => values[i])];
        return new([Take(Size), Take(Noise), Take(Finish)], Take(LogPrices), Take(Times), Take(Types));
    }

    public ModelFit Fit(string model, params Regressor[] columns) => model switch
    {
        "least squares" => LeastSquaresOf(columns),
        "mixed model" => MixedOf(columns),
        "accelerated failure" => AcceleratedFailureOf(columns),
        _ => CoxOf(columns),
    };

    private static FourModels Draw(uint seed)
    {
        SyntheticSpells source = new(seed);
        double[] effects = [.. Enumerable.Range(0, TypeCount).Select(_ => 0.4 * source.Normal())];
        double[][] columns = [new double[RowCount], new double[RowCount], new double[RowCount]];
        double[] prices = new double[RowCount];
        var times = new SurvivalTime[RowCount];
        int[] types = new int[RowCount];
        for (int i = 0; i < RowCount; i++)
        {
            types[i] = i % TypeCount;
            (columns[0][i], columns[1][i], columns[2][i]) = (source.Normal(), source.Normal(), (int)(3 * source.Uniform()));
            prices[i] = 5 + 0.4 * columns[0][i] + 0.2 * columns[2][i] + effects[types[i]] + 0.3 * source.Normal();
            // Whole days, so that there are ties.
            double days = Math.Ceiling(Math.Exp(3 + 0.3 * columns[0][i] + 0.8 * Math.Log(-Math.Log(source.Uniform()))));
            double seen = Math.Ceiling(60 * source.Uniform());
            times[i] = new(Math.Min(days, seen), days <= seen);
        }
        return new(columns, prices, times, types);
    }

    private static double[] Predictor(Regressor[] columns, Dictionary<string, double> estimates) =>
    [
        .. Enumerable.Range(0, RowCount).Select(i =>
            columns.Sum(column => estimates.TryGetValue(column.Name, out double b) ? b * column.Values.Span[i] : 0)),
    ];

    private static double[][] Rows(Regressor[] columns) =>
        [.. Enumerable.Range(0, RowCount).Select(i => columns.Select(column => column.Values.Span[i]).ToArray())];

    private static Regressor[] WithIntercept(Regressor[] columns) => [Regressor.Intercept(RowCount), .. columns];

    private ModelFit LeastSquaresOf(Regressor[] columns)
    {
        LinearFit fit = LeastSquares.Fit(WithIntercept(columns), LogPrices);
        var estimates = fit.Coefficients.ToDictionary(b => b.Name, b => b.Estimate);
        return new(fit.LogLikelihood, Predictor(WithIntercept(columns), estimates), estimates, [.. fit.DroppedColumns]);
    }

    private ModelFit MixedOf(Regressor[] columns)
    {
        Regressor[] all = WithIntercept(columns);
        RandomTerm type = RandomTerm.Exchangeable("type", [.. Enumerable.Range(0, TypeCount).Select(k => $"type {k}")]);
        // Ordinary likelihood, which alone is comparable between different columns.
        MixedModelFit fit = MixedModel.Fit(
            MixedModelData.From([.. all.Select(column => column.Name)], Rows(all), [type], [Types], LogPrices),
            new MixedModelOptions { Criterion = LikelihoodCriterion.Ml });
        var estimates = fit.Coefficients.ToDictionary(b => b.Name, b => b.Estimate);
        return new(fit.LogLikelihood, Predictor(all, estimates), estimates, [.. fit.DroppedColumns]);
    }

    private ModelFit AcceleratedFailureOf(Regressor[] columns)
    {
        Regressor[] all = WithIntercept(columns);
        ImmutableArray<Spell> spells = [.. Times.Select(time => time.Ended ? Spell.Ended(time.Stop) : Spell.Running(time.Stop))];
        AcceleratedFailureFit fit = AcceleratedFailure.Fit(
            new([.. all.Select(column => column.Name)], Rows(all), spells, [], null), new AcceleratedFailureOptions());
        var estimates = fit.Coefficients.ToDictionary(b => b.Name, b => b.Estimate);
        return new(fit.LogLikelihood, Predictor(all, estimates), estimates, [.. fit.DroppedColumns]);
    }

    private ModelFit CoxOf(Regressor[] columns)
    {
        CoxFit fit = CoxRegression.Fit(columns, Times);
        var estimates = fit.Coefficients.ToDictionary(b => b.Name, b => b.Estimate);
        double[] predictor = Predictor(columns, estimates);
        double mean = predictor.Average();
        return new(fit.LogLikelihood, [.. predictor.Select(value => value - mean)], estimates, [.. fit.DroppedColumns]);
    }
}
