namespace FlipAnalytics.Statistics;

/// <summary>
/// First and second derivatives of the profiled deviance in log γ, and its slope where a ratio is zero. With
/// T = ΛZ'PZΛ and t = ΛZ'Py by blocks of terms,
/// <code>∂d/∂log γₖ = tr Tₖₖ − M tₖ'tₖ/Q,  ∂²d = −‖Tⱼₖ‖² + 2M tⱼ'Tⱼₖtₖ/Q − M (tⱼ'tⱼ)(tₖ'tₖ)/Q² (+ ∂d/∂log γₖ if j = k)</code>
/// where Q = y'Py + ν₀s₀². Where σ² is held, M/Q is 1/σ² and the last term falls away. The ordinary likelihood has ΛZ'W⁻¹ZΛ in place of T in the trace and the norm; Searle,
/// Casella and McCulloch (1992), Variance Components, chapter 6.
/// </summary>
internal sealed class DevianceSlopes
{
    private readonly ProfiledDeviance _deviance;
    private readonly ReducedCrossProducts _data;
    private readonly int _p;
    private readonly double[] _lowerInverse;
    private readonly double[] _row;
    private readonly double[] _fixedRow;
    private readonly int[] _termOf;

    public DevianceSlopes(ProfiledDeviance deviance)
    {
        _deviance = deviance;
        _data = deviance.Data;
        _p = _data.FixedCount;
        int q = _data.DrawCount;
        int terms = _data.Terms.Length;
        _lowerInverse = new double[q * q];
        Inverse = new double[q * q];
        FixedPart = new double[q * _p];
        _row = new double[q];
        _fixedRow = new double[_p];
        Response = new double[q];
        _termOf = new int[q];
        for (int k = 0; k < terms; k++)
        {
            _termOf.AsSpan(_data.Offsets[k].._data.Offsets[k + 1]).Fill(k);
        }

        Score = new double[terms];
        Hessian = new double[terms * terms];
        ExpectedInformation = new double[terms * terms];
        _traces = new double[terms];
        _squares = new double[terms];
        _norms = new double[terms * terms];
        _forms = new double[terms * terms];
    }

    private readonly double[] _traces;
    private readonly double[] _squares;
    private readonly double[] _norms;
    private readonly double[] _forms;

    /// <summary>∂d/∂log γ, 0 for a ratio at zero.</summary>
    public double[] Score { get; }

    /// <summary>∂²d/∂log γ ∂log γ'.</summary>
    public double[] Hessian { get; }

    /// <summary>Its expectation, never negative definite: ‖Tⱼₖ‖² − tr Tⱼⱼ tr Tₖₖ/M.</summary>
    public double[] ExpectedInformation { get; }

    /// <summary>H⁻¹ for the active columns.</summary>
    public double[] Inverse { get; }

    /// <summary>ΛZ'W⁻¹X for the active columns, by columns of X: entry (c, a) at c · active + a.</summary>
    public double[] FixedPart { get; }

    /// <summary>t = ΛZ'Py for the active columns.</summary>
    public double[] Response { get; }

    /// <summary>Takes the derivatives at the deviance's last evaluation.</summary>
    public void Update()
    {
        int m = _deviance.ActiveCount;
        RowMajorCholesky.InvertLower(_deviance.Factor, m, _lowerInverse, _deviance.DiagonalCount);
        RowMajorCholesky.InverseFromLower(_lowerInverse, m, Inverse, _deviance.DiagonalCount);
        UpdateFixedPart(m);
        SumBlocks(m);
        Combine();
    }

    /// <summary>∂d/∂γₖ at γₖ = 0 relative to the size of its two parts: below 0 means the term wants in.</summary>
    public double BoundarySlope(int term)
    {
        int m = _deviance.ActiveCount;
        int q = _data.DrawCount;
        int width = _p + 1;
        double trace = 0;
        double square = 0;
        for (int j = _data.Offsets[term]; j < _data.Offsets[term + 1]; j++)
        {
            for (int a = 0; a < m; a++)
            {
                _row[a] = _deviance.Scale[a] * _data.ZZ[(j * q) + _deviance.Active[a]];
            }

            RowMajorCholesky.SolveLower(_deviance.Factor, m, _row);
            double own = _data.ZZ[(j * q) + j] - VectorKernel.Dot(_row.AsSpan(0, m), _row.AsSpan(0, m));
            _data.ZXe.AsSpan(j * width, _p).CopyTo(_fixedRow);
            double response = _data.ZXe[(j * width) + _p];
            for (int a = 0; a < m; a++)
            {
                ReadOnlySpan<double> reduced = _deviance.Reduced.Slice(a * width, width);
                VectorKernel.AddScaled(_fixedRow, -_row[a], reduced[.._p]);
                response -= _row[a] * reduced[_p];
            }

            response -= VectorKernel.Dot(_fixedRow, _deviance.Shift);
            RowMajorCholesky.SolveLower(_deviance.Information, _p, _fixedRow);
            trace += own - (_deviance.Restricted ? VectorKernel.Dot(_fixedRow, _fixedRow) : 0);
            square += response * response;
        }

        double gain = square / _deviance.ResidualVariance;
        return trace + gain > 0 ? (trace - gain) / (trace + gain) : 0;
    }

    private void UpdateFixedPart(int m)
    {
        int width = _p + 1;
        Array.Clear(FixedPart);
        Array.Clear(Response);
        for (int a = 0; a < m; a++)
        {
            ReadOnlySpan<double> inverseRow = _lowerInverse.AsSpan(a * m, a + 1);
            ReadOnlySpan<double> reduced = _deviance.Reduced.Slice(a * width, width);
            for (int c = 0; c < _p; c++)
            {
                VectorKernel.AddScaled(FixedPart.AsSpan(c * m, a + 1), reduced[c], inverseRow);
            }

            VectorKernel.AddScaled(Response.AsSpan(0, a + 1), reduced[_p], inverseRow);
        }

        for (int c = 0; c < _p; c++)
        {
            VectorKernel.AddScaled(Response.AsSpan(0, m), -_deviance.Shift[c], FixedPart.AsSpan(c * m, m));
        }
    }

    private void SumBlocks(int m)
    {
        int terms = Score.Length;
        Array.Clear(_traces);
        Array.Clear(_squares);
        Array.Clear(_norms);
        Array.Clear(_forms);
        Span<double> row = _row.AsSpan(0, m);
        for (int a = 0; a < m; a++)
        {
            int k = _termOf[_deviance.Active[a]];
            Inverse.AsSpan(a * m, m).CopyTo(row);
            row[a] -= 1;
            if (!_deviance.Restricted)
            {
                _traces[k] -= row[a];
                AddByTerm(row, row, 1, _norms.AsSpan(k * terms, terms));
            }

            for (int c = 0; c < _p; c++)
            {
                _fixedRow[c] = FixedPart[(c * m) + a];
            }

            // (X'W⁻¹X)⁻¹ times this row of ΛZ'W⁻¹X
            RowMajorCholesky.SolveLower(_deviance.Information, _p, _fixedRow);
            RowMajorCholesky.SolveLowerTransposed(_deviance.Information, _p, _fixedRow);
            for (int c = 0; c < _p; c++)
            {
                VectorKernel.AddScaled(row, _fixedRow[c], FixedPart.AsSpan(c * m, m));
            }

            if (_deviance.Restricted)
            {
                _traces[k] -= row[a];
                AddByTerm(row, row, 1, _norms.AsSpan(k * terms, terms));
            }

            AddByTerm(row, Response.AsSpan(0, m), -Response[a], _forms.AsSpan(k * terms, terms));
            _squares[k] += Response[a] * Response[a];
        }
    }

    private void AddByTerm(ReadOnlySpan<double> row, ReadOnlySpan<double> other, double factor, Span<double> sums)
    {
        int start = 0;
        foreach (int l in _deviance.TermOrder)
        {
            int length = _deviance.Ratios[l] > 0 ? _data.Offsets[l + 1] - _data.Offsets[l] : 0;
            sums[l] += factor * VectorKernel.Dot(row.Slice(start, length), other.Slice(start, length));
            start += length;
        }
    }

    private void Combine()
    {
        int terms = Score.Length;
        double precision = 1 / _deviance.ResidualVariance;
        double profiled = _deviance.HeldResidualVariance is null ? 1 / _deviance.TotalDegreesOfFreedom : 0;
        for (int k = 0; k < terms; k++)
        {
            Score[k] = _traces[k] - (precision * _squares[k]);
            for (int l = 0; l < terms; l++)
            {
                int at = (k * terms) + l;
                Hessian[at] = -_norms[at] + (precision
                    * ((2 * _forms[at]) - (profiled * precision * _squares[k] * _squares[l])));
                ExpectedInformation[at] = _norms[at] - (profiled * _traces[k] * _traces[l]);
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
