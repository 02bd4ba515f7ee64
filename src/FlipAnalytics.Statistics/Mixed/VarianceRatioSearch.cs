namespace FlipAnalytics.Statistics;

/// <summary>
/// Minimises the profiled deviance over γ ≥ 0: Newton steps in log γ, the expected information where the curvature is
/// not positive, halved until the deviance falls. A ratio that dwindles is set to exactly 0 when that is no worse, and
/// comes back if the slope at 0 is negative (the Karush–Kuhn–Tucker condition).
/// </summary>
internal sealed class VarianceRatioSearch
{
    private const double FirstRatio = 1;
    private const double SecondRatio = 0.1;

    /// <summary>γ times a term's largest Σw in a level beyond which W⁻¹ has no digits left.</summary>
    private const double LargestInformation = 1e10;

    private readonly ProfiledDeviance _deviance;
    private readonly DevianceSlopes _slopes;
    private readonly BoundarySlope _boundary;
    private readonly MixedModelOptions _options;
    private readonly double[] _largest;
    private readonly double[] _mean;
    private int _iterations;

    public VarianceRatioSearch(ProfiledDeviance deviance, DevianceSlopes slopes)
    {
        _deviance = deviance;
        _slopes = slopes;
        _boundary = new BoundarySlope(deviance);
        _options = deviance.Options;
        double[][] sums = deviance.Data.DrawWeights;
        _largest = [.. sums.Select(term => term.DefaultIfEmpty(0).Max())];
        _mean = [.. sums.Select(term => term.DefaultIfEmpty(0).Average())];
    }

    private sealed record Candidate(double[] Ratios, double Value, ConvergenceReason Reason);

    /// <summary>Finds the ratios and leaves deviance and slopes evaluated there.</summary>
    /// <param name="near">Ratios thought to be near, null for none.</param>
    public MixedModelConvergence Run(double[]? near = null)
    {
        Candidate best = WithoutIdleTerms(Descend(near is null
            ? Start(FirstRatio)
            : [.. near.Select((ratio, k) => _deviance.HeldRatioOf(k) ?? ratio)]));
        if (best.Reason is ConvergenceReason.IterationLimit or ConvergenceReason.RatioAtUpperLimit
            || Enumerable.Range(0, best.Ratios.Length).Any(k => best.Ratios[k] == 0 && MayLeaveZero(k)))
        {
            double[] second = Start(SecondRatio);
            for (int k = 0; k < second.Length; k++)
            {
                second[k] = best.Ratios[k] > 0 && best.Reason == ConvergenceReason.SmallScore
                    ? best.Ratios[k]
                    : second[k];
            }

            Candidate other = WithoutIdleTerms(Descend(second));
            best = IsBetter(other, best) ? other : best;
        }

        _deviance.Evaluate(best.Ratios);
        _slopes.Update();
        return new(_iterations, LargestScore(best.Ratios), best.Reason);
    }

    /// <summary>
    /// A stationary point beats a runaway ratio however low the deviance there: levels that can reproduce the response
    /// make the likelihood unbounded.
    /// </summary>
    private static bool IsBetter(Candidate other, Candidate best)
    {
        bool otherIsProper = other.Reason != ConvergenceReason.RatioAtUpperLimit;
        bool bestIsProper = best.Reason != ConvergenceReason.RatioAtUpperLimit;
        return otherIsProper == bestIsProper
            ? other.Value < best.Value - Rounding(best.Value)
            : otherIsProper;
    }

    private bool IsHeld(int k) => _deviance.HeldRatioOf(k) is not null;

    private bool MayLeaveZero(int k) => !IsHeld(k) && _largest[k] > 0;

    private bool MayBecomeZero(int k) => !IsHeld(k) && _options.PriorOf(k) is null;

    private double UpperLimit(int k) => LargestInformation / Math.Max(_largest[k], 1e-10);

    private static double Rounding(double value) => 1e-9 + (1e-13 * Math.Abs(value));

    private double[] Start(double ratio)
    {
        double[] start = new double[_deviance.Data.Terms.Length];
        for (int k = 0; k < start.Length; k++)
        {
            start[k] = _deviance.HeldRatioOf(k) ?? (_options.PriorOf(k) is { } prior
                ? Math.Exp(prior.LogMean)
                : _largest[k] > 0 ? Math.Min(ratio, UpperLimit(k)) : 0);
        }

        return start;
    }

    private Candidate Descend(double[] ratios)
    {
        double value = _deviance.Evaluate(ratios);
        for (int iteration = 0; iteration < _options.MaximumIterations; iteration++)
        {
            _iterations++;
            _slopes.Update();
            int[] free = Free(ratios);
            double[] step = NewtonDirection.Step(_slopes, free);
            double decrease = -free.Sum(k => step[k] * _slopes.Score[k]);
            if (LargestScore(ratios) <= _options.ScoreTolerance && decrease <= 1e-11)
            {
                Polish(ref ratios, ref value, step);
                if (!TryLeaveZero(ref ratios, ref value))
                {
                    return Ended(ratios, value, ConvergenceReason.SmallScore);
                }
            }
            else if (!TryBecomeZero(ref ratios, ref value, step) && !TryStep(ref ratios, ref value, step, decrease)
                && !TryLeaveZero(ref ratios, ref value))
            {
                return Ended(ratios, value, ConvergenceReason.NoFurtherDescent);
            }
        }

        return Ended(ratios, value, ConvergenceReason.IterationLimit);
    }

    private Candidate Ended(double[] ratios, double value, ConvergenceReason reason)
    {
        bool ranAway = Enumerable.Range(0, ratios.Length).Any(k => MayBecomeZero(k) && ratios[k] > UpperLimit(k) / 100);
        return new(ratios, value, ranAway ? ConvergenceReason.RatioAtUpperLimit : reason);
    }

    private bool AtUpperLimit(int k, double[] ratios) =>
        MayBecomeZero(k) && ratios[k] >= UpperLimit(k) * (1 - 1e-9) && _slopes.Score[k] <= 0 && ratios[k] > 0;

    private int[] Free(double[] ratios) =>
        [.. Enumerable.Range(0, ratios.Length).Where(k => !IsHeld(k) && ratios[k] > 0 && !AtUpperLimit(k, ratios))];

    private double LargestScore(double[] ratios) =>
        Free(ratios).Select(k => Math.Abs(_slopes.Score[k])).DefaultIfEmpty(0).Max();

    private double[] Moved(double[] ratios, double[] step, double length)
    {
        double[] moved = [.. ratios];
        for (int k = 0; k < moved.Length; k++)
        {
            if (step[k] != 0)
            {
                moved[k] = Math.Clamp(ratios[k] * Math.Exp(length * step[k]), double.Epsilon, UpperLimit(k));
            }
        }

        return moved;
    }

    private void Polish(ref double[] ratios, ref double value, double[] step)
    {
        double[] moved = Moved(ratios, step, 1);
        double reached = _deviance.Evaluate(moved);
        if (step.All(s => Math.Abs(s) < 1e-2) && reached <= value + Rounding(value))
        {
            (ratios, value) = (moved, reached);
        }
        else
        {
            _deviance.Evaluate(ratios);
        }

        _slopes.Update();
    }

    private bool TryStep(ref double[] ratios, ref double value, double[] step, double decrease)
    {
        for (double length = 1; length > 1e-8; length /= 2)
        {
            double[] moved = Moved(ratios, step, length);
            double reached = _deviance.Evaluate(moved);
            bool falls = reached <= value - (1e-4 * length * decrease);
            bool cannotTell = length == 1 && decrease < Rounding(value) && reached <= value + Rounding(value);
            if (falls || cannotTell)
            {
                (ratios, value) = (moved, reached);
                return true;
            }
        }

        _deviance.Evaluate(ratios);
        return false;
    }

    /// <summary>Sets a weak, shrinking ratio to zero if the deviance is lower there.</summary>
    private bool TryBecomeZero(ref double[] ratios, ref double value, double[] step)
    {
        bool tried = false;
        for (int k = 0; k < ratios.Length; k++)
        {
            if (step[k] < -0.7 && ratios[k] * _mean[k] < 0.5 && MayBecomeZero(k))
            {
                tried = true;
                double[] without = [.. ratios];
                without[k] = 0;
                double reached = _deviance.Evaluate(without);
                if (reached < value)
                {
                    (ratios, value) = (without, reached);
                    return true;
                }
            }
        }

        if (tried)
        {
            _deviance.Evaluate(ratios);
        }

        return false;
    }

    private bool TryLeaveZero(ref double[] ratios, ref double value)
    {
        for (int k = 0; k < ratios.Length; k++)
        {
            if (ratios[k] == 0 && MayLeaveZero(k) && _boundary.Of(k) < -1e-8)
            {
                for (double information = 1; information > 1e-8; information /= 10)
                {
                    double[] with = [.. ratios];
                    with[k] = information / _mean[k];
                    double reached = _deviance.Evaluate(with);
                    if (reached < value - Rounding(value))
                    {
                        (ratios, value) = (with, reached);
                        return true;
                    }
                }

                _deviance.Evaluate(ratios);
            }
        }

        return false;
    }

    /// <summary>Zeroes every ratio without which the criterion is as good: the simpler of two equal answers.</summary>
    private Candidate WithoutIdleTerms(Candidate found)
    {
        for (int k = 0; k < found.Ratios.Length; k++)
        {
            if (found.Ratios[k] > 0 && MayBecomeZero(k))
            {
                double[] without = [.. found.Ratios];
                without[k] = 0;
                if (_deviance.Evaluate(without) <= found.Value + (Rounding(found.Value) / 10))
                {
                    found = Descend(without);
                }
            }
        }

        return found;
    }
}
