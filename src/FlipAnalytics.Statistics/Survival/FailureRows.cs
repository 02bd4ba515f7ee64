using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace FlipAnalytics.Statistics;

/// <summary>The durations as the likelihood reads them: logarithms of times, one array a quantity.</summary>
internal sealed class FailureRows
{
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal FailureRows(ImmutableArray<Spell> spells, double[]? weights)
    {
        Kind = new SpellKind[spells.Length];
        LogStop = new double[spells.Length];
        Weight = weights;
        for (int row = 0; row < spells.Length; row++)
        {
            Spell spell = spells[row];
            Kind[row] = spell.Kind;
            LogStop[row] = Math.Log(spell.Stop);
            if (spell.Start > 0)
            {
                LogStart ??= Filled(spells.Length);
                LogStart[row] = Math.Log(spell.Start);
            }

            if (spell.Kind == SpellKind.EndedBetween)
            {
                LogLower ??= Filled(spells.Length);
                LogLower[row] = Math.Log(spell.Lower);
            }

            EndedCount += spell.Kind == SpellKind.Running || weights?[row] == 0 ? 0 : 1;
        }
    }

    internal SpellKind[] Kind { get; }

    /// <summary>Logarithm of the last time of the row.</summary>
    internal double[] LogStop { get; }

    /// <summary>Logarithm of the delayed entry, −∞ where there is none; null if no row has one.</summary>
    internal double[]? LogStart { get; }

    /// <summary>Logarithm of the lower limit of an interval; null if no row is one.</summary>
    internal double[]? LogLower { get; }

    internal double[]? Weight { get; }

    /// <summary>Rows that say that the spell ended, exactly or within limits.</summary>
    internal int EndedCount { get; }

    private static double[] Filled(int length)
    {
        var values = new double[length];
        Array.Fill(values, double.NegativeInfinity);
        return values;
    }
}
