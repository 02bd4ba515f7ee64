using System.Diagnostics;
using System.Runtime.InteropServices;
using FlipAnalytics.Statistics;

namespace FlipAnalytics.Benchmarks;

/// <summary>Reads a generated log and fits the three models of R/fit_log.R, with the same report.</summary>
internal static class ThreeFits
{
    // Rows whose indicator columns are spelt out at a time for the least-squares sums.
    private const int BlockRows = 8192;

    public static void Run(string path, int repeats)
    {
        GeneratedLog log = Timed("read", repeats, () => GeneratedLog.Read(path));
        KeyedNumbers.Say("rows", log.Rows);

        LinearFit least = Timed("lm", repeats, () => LeastSquaresOf(log));
        foreach (Coefficient coefficient in least.Coefficients)
            KeyedNumbers.Say($"lm.{coefficient.Name}", coefficient.Estimate);
        KeyedNumbers.Say("lm.sigma", least.Sigma);

        MixedModelFit mixed = Timed("mixed", repeats, () => MixedOf(log));
        foreach (MixedCoefficient coefficient in mixed.Coefficients)
            KeyedNumbers.Say($"mixed.{coefficient.Name}", coefficient.Estimate);
        foreach (RandomTermEstimate term in mixed.Terms)
            KeyedNumbers.Say($"mixed.sd.{term.Name}", Math.Sqrt(term.Variance));
        KeyedNumbers.Say("mixed.sd.residual", Math.Sqrt(mixed.ResidualVariance));
        KeyedNumbers.Say("mixed.criterion", mixed.MinusTwoLogLikelihood);

        AcceleratedFailureFit weibull = Timed("weibull", repeats, () => WeibullOf(log));
        foreach (FailureTimeCoefficient coefficient in weibull.Coefficients)
            KeyedNumbers.Say($"weibull.{coefficient.Name}", coefficient.Estimate);
        KeyedNumbers.Say("weibull.scale", weibull.Scale);
        KeyedNumbers.Say("weibull.loglikelihood", weibull.LogLikelihood);
        KeyedNumbers.Say("peak.megabytes", Process.GetCurrentProcess().PeakWorkingSet64 / 1048576.0);
    }

    private static T Timed<T>(string name, int repeats, Func<T> fit)
    {
        double first = 0;
        double fastest = double.PositiveInfinity;
        double processor = double.PositiveInfinity;
        T? result = default;
        for (int i = 0; i < repeats; i++)
        {
            TimeSpan before = Environment.CpuUsage.TotalTime;
            long start = Stopwatch.GetTimestamp();
            result = fit();
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            first = i == 0 ? seconds : first;
            fastest = Math.Min(fastest, seconds);
            processor = Math.Min(processor, (Environment.CpuUsage.TotalTime - before).TotalSeconds);
        }

        KeyedNumbers.Say($"first.{name}", first);
        KeyedNumbers.Say($"fastest.{name}", fastest);
        KeyedNumbers.Say($"processor.{name}", processor);
        return result!;
    }

    private static LinearFit LeastSquaresOf(GeneratedLog log)
    {
        string[] numbers = ["log_volume", "hours", "condition"];
        CategoryColumn type = log.Category("type");
        CategoryColumn color = log.Category("color");
        var sums = new CrossProducts(
            [.. numbers, .. type.Levels.Skip(1).Select(l => $"type:{l}"), .. color.Levels.Skip(1).Select(l => $"color:{l}")]);
        double[][] indicators = [.. Enumerable.Range(0, type.Levels.Length + color.Levels.Length - 2).Select(_ => new double[Math.Min(BlockRows, log.Rows)])];
        for (int from = 0; from < log.Rows; from += BlockRows)
        {
            int count = Math.Min(BlockRows, log.Rows - from);
            foreach (double[] column in indicators)
                Array.Clear(column);
            for (int i = 0; i < count; i++)
            {
                if (type.Index[from + i] is int t and > 0)
                    indicators[t - 1][i] = 1;
                if (color.Index[from + i] is int c and > 0)
                    indicators[type.Levels.Length + c - 2][i] = 1;
            }

            sums.Add(
                [
                    .. numbers.Select(n => (ReadOnlyMemory<double>)log.Number(n).AsMemory(from, count)),
                    .. indicators.Select(column => (ReadOnlyMemory<double>)column.AsMemory(0, count)),
                ],
                log.Number("log_price").AsMemory(from, count));
        }

        return sums.Fit();
    }

    private static MixedModelFit MixedOf(GeneratedLog log)
    {
        double[] volume = log.Number("log_volume");
        double[] hours = log.Number("hours");
        double[] condition = log.Number("condition");
        double[] price = log.Number("log_price");
        CategoryColumn[] terms = [log.Category("type"), log.Category("color"), log.Category("month")];
        var builder = new MixedModelDataBuilder(
            ["(Intercept)", "log_volume", "hours", "condition"], terms.Select(t => t.AsRandomTerm), keepRows: false);
        Span<double> x = [1, 0, 0, 0];
        Span<int> levels = stackalloc int[terms.Length];
        for (int row = 0; row < price.Length; row++)
        {
            x[1] = volume[row];
            x[2] = hours[row];
            x[3] = condition[row];
            for (int k = 0; k < terms.Length; k++)
                levels[k] = terms[k].Index[row];
            builder.Add(x, levels, price[row]);
        }

        return MixedModel.Fit(builder.Build());
    }

    private static AcceleratedFailureFit WeibullOf(GeneratedLog log)
    {
        double[] ratio = log.Number("log_ratio");
        double[] condition = log.Number("condition");
        double[] days = log.Number("days");
        double[] sold = log.Number("sold");
        var x = new double[log.Rows][];
        var spells = new Spell[log.Rows];
        for (int row = 0; row < x.Length; row++)
        {
            x[row] = [1, ratio[row], condition[row]];
            spells[row] = sold[row] == 1 ? Spell.Ended(days[row]) : Spell.Running(days[row]);
        }

        var data = new AcceleratedFailureData(
            ["(Intercept)", "log_ratio", "condition"], x, ImmutableCollectionsMarshal.AsImmutableArray(spells), [], null)
        {
            Categories = [log.Category("color").AsGroup],
        };
        return AcceleratedFailure.Fit(data, new());
    }
}
