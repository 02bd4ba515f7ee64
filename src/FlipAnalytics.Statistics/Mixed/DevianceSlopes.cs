namespace FlipAnalytics.Statistics;

/// <summary>
/// First and second derivatives of the profiled deviance in log γ. With T = ΛZ'PZΛ and t = ΛZ'Py by blocks of terms,
/// <code>∂d/∂log γₖ = tr Tₖₖ − M tₖ'tₖ/Q,  ∂²d = −‖Tⱼₖ‖² + 2M tⱼ'Tⱼₖtₖ/Q − M (tⱼ'tⱼ)(tₖ'tₖ)/Q² (+ ∂d/∂log γₖ if j = k)</code>
/// where Q = y'Py + ν₀s₀². Where σ² is held, M/Q is 1/σ² and the last term falls away. The ordinary likelihood has
/// ΛZ'W⁻¹ZΛ in place of T in the trace and the norm; Searle, Casella and McCulloch (1992), Variance Components, chapter 6.
/// </summary>
internal sealed class DevianceSlopes
{
    private readonly ProfiledDeviance _deviance;
    private readonly InformationSums _sums;
    private readonly double[] _squares;
    private readonly double[] _forms;
    private readonly double[] _vectors;
    private readonly double[] _product;

    public DevianceSlopes(ProfiledDeviance deviance)
    {
        _deviance = deviance;
        int terms = deviance.Ratios.Length;
        Inverse = new BorderedInverse(deviance.Factor);
        _sums = new InformationSums(Inverse, terms);
        Score = new double[terms];
        Hessian = new double[terms * terms];
        ExpectedInformation = new double[terms * terms];
        _squares = new double[terms];
        _forms = new double[terms * terms];
        _vectors = new double[terms * deviance.Factor.BorderSize];
        _product = new double[deviance.Factor.BorderSize];
    }

    /// <summary>∂d/∂log γ, 0 for a ratio at zero.</summary>
    public double[] Score { get; }

    /// <summary>∂²d/∂log γ ∂log γ'.</summary>
    public double[] Hessian { get; }

    /// <summary>Its expectation, never negative definite: ‖Tⱼₖ‖² − tr Tⱼⱼ tr Tₖₖ/M.</summary>
    public double[] ExpectedInformation { get; }

    /// <summary>The inverse of Henderson's matrix.</summary>
    public BorderedInverse Inverse { get; }

    /// <summary>Takes the derivatives at the deviance's last evaluation.</summary>
    public void Update()
    {
        Inverse.Update();
        _sums.Update(_deviance.Restricted ? Inverse.Joint : Inverse.WithKnownCoefficients());
        SumForms();
        Combine();
    }

    /// <summary>
    /// t'T t by pairs of terms. With T = I − blockdiag(A⁻¹, 0) − UJU' and U = [−VD; I], what is needed of U is gₖ = Uₖ'tₖ.
    /// </summary>
    private void SumForms()
    {
        BorderedFactor factor = _deviance.Factor;
        BorderedLayout layout = factor.Products.Layout;
        int terms = Score.Length;
        int size = factor.BorderSize;
        Array.Clear(_squares);
        Array.Clear(_forms);
        Array.Clear(_vectors);
        for (int c = 0; c < layout.BlockCount; c++)
        {
            AddBlock(c);
        }

        for (int k = 0; k < terms; k++)
        {
            if (layout.HasBlocks[k])
            {
                Span<double> vector = _vectors.AsSpan(k * size, size);
                layout.ToDraws(vector);
                for (int i = 0; i < size; i++)
                {
                    vector[i] *= factor.BorderScales[i];
                }
            }
        }

        for (int b = 0; b < layout.BorderCount; b++)
        {
            int k = layout.BorderTerms[b];
            double solution = Inverse.BorderSolution[b];
            _squares[k] += solution * solution;
            _vectors[(k * size) + b] += solution;
        }

        for (int k = 0; k < terms; k++)
        {
            _forms[(k * terms) + k] += _squares[k];
            for (int i = 0; i < size; i++)
            {
                _product[i] = VectorKernel.Dot(Inverse.Joint.AsSpan(i * size, size), _vectors.AsSpan(k * size, size));
            }

            for (int l = 0; l < terms; l++)
            {
                _forms[(l * terms) + k] -= VectorKernel.Dot(_product, _vectors.AsSpan(l * size, size));
            }
        }
    }

    private void AddBlock(int block)
    {
        BorderedProducts products = _deviance.Factor.Products;
        int first = products.Layout.BlockStarts[block];
        int size = products.Size(block);
        int width = products.Width(block);
        int stride = _deviance.Factor.BorderSize;
        ReadOnlySpan<int> touched = products.Touched(block);
        ReadOnlySpan<double> inverse = Inverse.Blocks.AsSpan(products.SquareOf(block));
        for (int a = 0; a < size; a++)
        {
            int k = products.Layout.BlockTerms[first + a];
            double solution = Inverse.BlockSolution[first + a];
            _squares[k] += solution * solution;
            ReadOnlySpan<double> row = Inverse.Rows.AsSpan(products.RowsOf(block)).Slice(a * width, width - 1);
            Span<double> vector = _vectors.AsSpan(k * stride, stride);
            for (int x = 0; x < touched.Length; x++)
            {
                vector[touched[x]] -= solution * row[x];
            }

            VectorKernel.AddScaled(vector[products.Layout.BorderCount..], -solution, row[touched.Length..]);
            for (int b = 0; b < size; b++)
            {
                int l = products.Layout.BlockTerms[first + b];
                _forms[(k * Score.Length) + l] -= solution * inverse[(a * size) + b] * Inverse.BlockSolution[first + b];
            }
        }
    }

    private void Combine()
    {
        int terms = Score.Length;
        double precision = 1 / _deviance.ResidualVariance;
        double profiled = _deviance.HeldResidualVariance is null ? 1 / _deviance.TotalDegreesOfFreedom : 0;
        for (int k = 0; k < terms; k++)
        {
            Score[k] = _sums.Traces[k] - (precision * _squares[k]);
            for (int l = 0; l < terms; l++)
            {
                int at = (k * terms) + l;
                Hessian[at] = -_sums.Norms[at] + (precision
                    * ((2 * _forms[at]) - (profiled * precision * _squares[k] * _squares[l])));
                ExpectedInformation[at] = _sums.Norms[at] - (profiled * _sums.Traces[k] * _sums.Traces[l]);
            }

            Hessian[(k * terms) + k] += Score[k];
            if (_deviance.Options.PriorOf(k) is { } prior)
            {
                double variance = prior.LogStandardDeviation * prior.LogStandardDeviation;
                Score[k] += 2 * (Math.Log(_deviance.Ratios[k]) - prior.LogMean) / variance;
                Hessian[(k * terms) + k] += 2 / variance;
                ExpectedInformation[(k * terms) + k] += 2 / variance;
            }
        }
    }
}
