using System.Runtime.CompilerServices;

namespace FlipAnalytics.Statistics;

/// <summary>
/// The inverse of the curvature K = [A B′; B C], taken apart: A⁻¹ block by block, G = A⁻¹B′ and the inverse of S = C − BA⁻¹B′.
/// K⁻¹ is [A⁻¹ 0; 0 0] + U S⁻¹ U′ with U = [−G; I] (Golub and Van Loan, Matrix Computations, section 2.1.4), from which any
/// entry and any form a′K⁻¹b follow without the rest.
/// </summary>
internal sealed class CurvatureInverse
{
    private readonly CurvatureLayout layout;
    private readonly double[][] rest;
    private readonly double[] blocks;

    /// <param name="layout">Where the entries lie.</param>
    /// <param name="rest">S⁻¹.</param>
    /// <param name="factors">L and W of each block.</param>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal CurvatureInverse(CurvatureLayout layout, double[][] rest, double[] factors)
    {
        this.layout = layout;
        this.rest = rest;
        blocks = new double[factors.Length];
        foreach (CurvatureBlock block in layout.Blocks)
            Invert(block, factors);
    }

    private int BorderSquare => layout.BorderCount * layout.BorderCount;

    /// <summary>a′K⁻¹b for vectors of which few numbers are not zero, by parameter.</summary>
    internal double Form(ReadOnlySpan<(int Parameter, double Weight)> a, ReadOnlySpan<(int Parameter, double Weight)> b)
    {
        double sum = 0;
        List<(int Place, double Weight)> left = ToBorder(a), right = a == b ? left : ToBorder(b);
        foreach ((int place, double weight) in left)
        {
            foreach ((int other, double otherWeight) in right)
                sum += weight * otherWeight * rest[place][other];
        }

        foreach ((int parameter, double weight) in a)
        {
            if (layout.InBlock(parameter) is { } member)
                sum += weight * WithinBlock(member.Block, member.Place, b);
        }

        return sum;
    }

    /// <summary>One entry of K⁻¹.</summary>
    internal double Entry(int parameter, int other) => Form([(parameter, 1)], [(other, 1)]);

    /// <summary>The entries of K⁻¹ where K may have others than zero, in the layout of K; log σ's are zero where it is
    /// held.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal double[] InLayout()
    {
        var entries = new double[layout.Length];
        for (int i = 0; i < rest.Length; i++)
            rest[i].AsSpan(0, i + 1).CopyTo(entries.AsSpan(i * layout.BorderCount));
        foreach (CurvatureBlock block in layout.Blocks)
        {
            ReadOnlySpan<int> touched = layout.Touched(block);
            int used = Used(block);
            for (int i = 0; i < block.Size; i++)
            {
                ReadOnlySpan<double> g = Beside(block, i)[..used];
                Span<double> beside = entries.AsSpan(block.Beside + i * block.TouchedCount, used);
                for (int s = 0; s < used; s++)
                {
                    double[] row = rest[touched[s]];
                    double sum = 0;
                    for (int r = 0; r < used; r++)
                        sum += g[r] * row[touched[r]];
                    beside[s] = -sum;
                }

                for (int j = 0; j <= i; j++)
                {
                    ReadOnlySpan<double> other = Beside(block, j)[..used];
                    double sum = blocks[block.Own - BorderSquare + i * block.Size + j];
                    for (int s = 0; s < used; s++)
                        sum -= beside[s] * other[s];
                    entries[block.Own + i * block.Size + j] = sum;
                }
            }
        }

        return entries;
    }

    private int Used(CurvatureBlock block) =>
        rest.Length < layout.BorderCount ? block.TouchedCount - 1 : block.TouchedCount;

    private Span<double> Beside(CurvatureBlock block, int member) =>
        blocks.AsSpan(block.Beside - BorderSquare + member * block.TouchedCount, block.TouchedCount);

    // U′a: the border's own numbers, less G′ times those of each block.
    private List<(int Place, double Weight)> ToBorder(ReadOnlySpan<(int Parameter, double Weight)> a)
    {
        var places = new List<(int Place, double Weight)>(a.Length);
        double[]? sums = null;
        foreach ((int parameter, double weight) in a)
        {
            if (layout.InBlock(parameter) is not { } member)
            {
                places.Add((layout.InBorder(parameter), weight));
                continue;
            }

            sums ??= new double[rest.Length];
            ReadOnlySpan<double> g = Beside(member.Block, member.Place)[..Used(member.Block)];
            ReadOnlySpan<int> touched = layout.Touched(member.Block);
            for (int s = 0; s < g.Length; s++)
                sums[touched[s]] -= weight * g[s];
        }

        if (sums is null)
            return places;
        foreach ((int place, double weight) in places)
            sums[place] += weight;
        return [.. sums.Select((sum, place) => (place, sum)).Where(entry => entry.sum != 0)];
    }

    // A row of A⁻¹ times b.
    private double WithinBlock(CurvatureBlock block, int place, ReadOnlySpan<(int Parameter, double Weight)> b)
    {
        double sum = 0;
        foreach ((int parameter, double weight) in b)
        {
            if (layout.InBlock(parameter) is { } other && other.Block == block)
                sum += weight * blocks[block.Own - BorderSquare + place * block.Size + other.Place];
        }

        return sum;
    }

    // G = L⁻ᵀ W and A⁻¹ = L⁻ᵀ L⁻¹, from the last row up.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Invert(CurvatureBlock block, double[] factors)
    {
        int size = block.Size, own = block.Own - BorderSquare;
        for (int i = size - 1; i >= 0; i--)
        {
            Span<double> g = Beside(block, i);
            factors.AsSpan(block.Beside - BorderSquare + i * block.TouchedCount, block.TouchedCount).CopyTo(g);
            for (int k = i + 1; k < size; k++)
                VectorKernel.AddScaled(g, -factors[own + k * size + i], Beside(block, k));
            foreach (ref double entry in g)
                entry /= factors[own + i * size + i];
        }

        for (int column = 0; column < size; column++)
        {
            for (int i = 0; i < size; i++)
            {
                double y = i == column ? 1 : 0;
                for (int k = column; k < i; k++)
                    y -= factors[own + i * size + k] * blocks[own + k * size + column];
                blocks[own + i * size + column] = i < column ? 0 : y / factors[own + i * size + i];
            }

            for (int i = size - 1; i >= 0; i--)
            {
                double x = blocks[own + i * size + column];
                for (int k = i + 1; k < size; k++)
                    x -= factors[own + k * size + i] * blocks[own + k * size + column];
                blocks[own + i * size + column] = x / factors[own + i * size + i];
            }
        }
    }
}
