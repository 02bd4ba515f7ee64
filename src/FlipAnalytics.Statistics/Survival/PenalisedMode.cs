using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>Finds where log-likelihood plus normal log-priors is greatest: Newton with the observed information,
/// damped where that is not positive definite and halved where the step does not improve
/// (Nocedal and Wright, Numerical Optimization, section 3.4).</summary>
internal sealed class PenalisedMode
{
    private const int MostIterations = 200;

    // Squared lengths of the Newton step in standard errors. Below the first the step is taken and squares the remaining
    // error; but the information, whose determinant the group variances rest on, is computed afresh unless below the second.
    private const double SmallDecrement = 1e-16;
    private const double TinyDecrement = 1e-22;

    // log σ beyond this means that σ is on its way to zero or infinity.
    private const double FarLogScale = 10;

    private readonly FailureLikelihood likelihood;
    private readonly ImmutableArray<string> coefficientNames;
    private readonly double[] priorMean;
    private readonly double[] priorPrecision;
    private readonly LinearPrior? linear;
    private readonly ScaleFloor? floor;
    private double[] gradient;
    private double[] trialGradient;
    private double[] trialInformation;
    private readonly double[] step;
    private readonly double[] trial;
    private int flatAt;

    internal PenalisedMode(
        FailureLikelihood likelihood, ImmutableArray<string> coefficientNames, double[] start, double[] priorMean, double[] priorPrecision,
        LinearPrior? linear, ScaleFloor? floor)
    {
        this.coefficientNames = coefficientNames;
        this.likelihood = likelihood;
        this.priorMean = priorMean;
        this.priorPrecision = priorPrecision;
        this.linear = linear;
        this.floor = floor;
        int size = likelihood.ParameterCount;
        Parameters = [.. start];
        gradient = new double[size];
        trialGradient = new double[size];
        Information = new double[likelihood.Layout.Length];
        trialInformation = new double[likelihood.Layout.Length];
        step = new double[size];
        trial = new double[size];
        Factor = new CurvatureFactor(likelihood.Layout, 0, likelihood.Layout.BorderCount - size + likelihood.FreeSize);
    }

    internal FailureLikelihood Likelihood => likelihood;

    /// <summary>(β, u, log σ) at the mode.</summary>
    internal double[] Parameters { get; }

    /// <summary>Log-likelihood at the mode, without priors.</summary>
    internal double LogLikelihood { get; private set; }

    /// <summary>Log-likelihood less half the squared distances from the prior means in prior standard deviations.</summary>
    internal double Penalised { get; private set; }

    /// <summary>Minus second derivatives of <see cref="Penalised"/>, in the likelihood's layout.</summary>
    internal double[] Information { get; private set; }

    internal CurvatureFactor Factor { get; }

    internal int Iterations { get; private set; }

    /// <summary>Squared length of the last step in standard errors.</summary>
    internal double Decrement { get; private set; }

    /// <summary>Sets the variance of a group's effects.</summary>
    internal void SetGroupVariance(int group, double variance) =>
        Array.Fill(priorPrecision, 1 / variance, likelihood.GroupStarts[group],
            likelihood.GroupStarts[group + 1] - likelihood.GroupStarts[group]);

    internal void Maximise()
    {
        EvaluateHere();
        for (int widening = 0; likelihood.ScaleIsFree && widening < 5 && !double.IsFinite(Penalised); widening++)
        {
            // An error so many scales out that its probability underflows: begin with a wider scale.
            Parameters[likelihood.LogScaleIndex]++;
            EvaluateHere();
        }

        if (!double.IsFinite(Penalised))
        {
            throw new NoEstimateException(
                "The likelihood cannot be computed at the starting values; a covariate or a prior is out of all proportion. Rescale it.");
        }

        bool polished = false;
        for (int iteration = 0; iteration < MostIterations; iteration++)
        {
            bool damped = FindStep();
            if (Decrement < SmallDecrement)
            {
                if (damped)
                {
                    throw Undetermined();
                }

                TakeStep();
                if (polished || Decrement < TinyDecrement)
                {
                    return;
                }

                EvaluateHere();
                polished = true;
                continue;
            }

            Iterations++;
            if (!TryImprove())
            {
                return;
            }

            RefuseRunawayScale();
        }

        throw new NoEstimateException(
            $"No maximum was found in {MostIterations} Newton steps; the last was {Math.Sqrt(Decrement)} standard errors long. Give priors, or rescale or leave out columns.");
    }

    private void EvaluateHere()
    {
        LogLikelihood = likelihood.Evaluate(Parameters, gradient, Information);
        Penalised = Penalise(Parameters, LogLikelihood, gradient, Information);
    }

    /// <summary>Solves for the Newton step; true if the information had to be damped.</summary>
    private bool FindStep()
    {
        double damping = 0;
        while (!Factor.TryFactor(Information, damping))
        {
            flatAt = damping == 0 ? Factor.FailedParameter : flatAt;
            damping = damping == 0 ? 1e-3 : 10 * damping;
            if (damping > 1e9)
            {
                throw Undetermined();
            }
        }

        Span<double> free = step.AsSpan(0, likelihood.FreeSize);
        gradient.AsSpan(0, free.Length).CopyTo(free);
        Factor.Solve(free);
        Decrement = 0;
        for (int i = 0; i < free.Length; i++)
        {
            Decrement += free[i] * gradient[i];
        }

        return damping > 0;
    }

    private NoEstimateException Undetermined()
    {
        string what = flatAt < coefficientNames.Length ? $"coefficient of '{coefficientNames[flatAt]}'"
            : flatAt == likelihood.LogScaleIndex ? "log scale" : "group effects";
        return new NoEstimateException(
            $"The data do not determine the {what} given what comes before: the likelihood is flat there, as when all spells that tell it apart are still running, or all ended at some unknown time before a known one. Give a prior, or leave the column out.");
    }

    /// <summary>Moves up along the step; false when rounding leaves nothing to gain.</summary>
    private bool TryImprove()
    {
        // Never change the scale by more than a factor e at once: z and its exponential would leave all bounds.
        double logScaleStep = likelihood.ScaleIsFree ? Math.Abs(step[likelihood.LogScaleIndex]) : 0;
        double rounding = 1e-13 * (1 + Math.Abs(Penalised));
        for (double length = Math.Min(1, 1 / logScaleStep); length > 1e-12; length /= 2)
        {
            for (int i = 0; i < trial.Length; i++)
            {
                trial[i] = Parameters[i] + length * step[i];
            }

            double value = likelihood.Evaluate(trial, trialGradient, trialInformation);
            double penalised = Penalise(trial, value, trialGradient, trialInformation);
            if (penalised >= Penalised + 1e-4 * length * Decrement - rounding)
            {
                trial.CopyTo(Parameters.AsSpan());
                (gradient, trialGradient) = (trialGradient, gradient);
                (Information, trialInformation) = (trialInformation, Information);
                LogLikelihood = value;
                Penalised = penalised;
                return true;
            }
        }

        if (Decrement < 1e-8)
        {
            return false;
        }

        RefuseRunawayScale();
        throw new NoEstimateException(
            $"The search stopped {Math.Sqrt(Decrement)} standard errors from a maximum. Rescale the columns or give priors.");
    }

    private void TakeStep()
    {
        for (int i = 0; i < likelihood.FreeSize; i++)
        {
            Parameters[i] += step[i];
        }
    }

    private double Penalise(double[] at, double value, double[] slope, double[] information)
    {
        double penalty = 0;
        for (int i = 0; i < at.Length; i++)
        {
            double distance = at[i] - priorMean[i];
            penalty += priorPrecision[i] * distance * distance / 2;
            slope[i] -= priorPrecision[i] * distance;
            information[likelihood.Layout.Diagonal[i]] += priorPrecision[i];
        }

        if (linear is not null)
        {
            penalty += linear.Penalise(at, slope);
            linear.AddInformation(information, likelihood.Layout.BorderCount);
        }

        if (floor is { } least)
        {
            double logScale = at[likelihood.LogScaleIndex];
            penalty -= least.Value(logScale);
            slope[likelihood.LogScaleIndex] += least.Slope(logScale);
            AddFloor(logScale, information);
        }

        return value - penalty;
    }

    /// <summary>Adds what the floor of the scale tells to the information, which is no constant as that of normal priors.</summary>
    internal void AddFloor(double logScale, double[] information)
    {
        information[likelihood.Layout.Diagonal[likelihood.LogScaleIndex]] += floor?.Information(logScale) ?? 0;
    }

    private void RefuseRunawayScale()
    {
        double logScale = Parameters[likelihood.LogScaleIndex];
        if (logScale < -FarLogScale)
        {
            throw new NoEstimateException(
                "The scale has no estimate: the covariates reproduce every ended spell exactly, so the likelihood grows without bound as the scale goes to zero. Use fewer columns, more spells, or a floor of the scale.")
            {
                IsWithoutSpread = true,
            };
        }

        if (logScale > FarLogScale)
        {
            throw new NoEstimateException(
                "The scale has no estimate: the likelihood keeps growing as the scale goes to infinity. Use more spells or a prior on the log scale.");
        }
    }
}
