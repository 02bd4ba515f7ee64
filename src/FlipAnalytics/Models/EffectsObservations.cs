using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// The rows of a model of an amount as every fit of it sees them, whatever they weigh; prior observations of slopes come after
/// them.
/// </summary>
/// <param name="Design">What columns and levels stand for.</param>
/// <param name="X">The fixed columns of each row.</param>
/// <param name="ByTerm">For each random term the level of each row, −1 for none.</param>
internal sealed record EffectsObservations(EffectsDesign Design, double[][] X, int[][] ByTerm)
{
    /// <summary>The observations of some rows.</summary>
    public static EffectsObservations Of(EffectsSpecification specification, ImmutableArray<EffectsRow> rows)
    {
        EffectsDesign design = EffectsDesign.Of(specification, rows, plain: false);
        int[] priors = [.. specification.FixedTerms.Select((term, column) => term.Prior is null ? -1 : column).Where(column => column >= 0)];
        double[][] x =
        [
            .. rows.Select(r => design.Columns.Row(r.Values)),
            .. priors.Select(column => design.Columns.Names.Select((_, j) => j == column ? 1.0 : 0.0).ToArray()),
        ];
        return new(design, x, LevelsOf(rows, design, priors.Length));
    }

    /// <summary>For each random term the level of each row, then none for as many prior observations.</summary>
    public static int[][] LevelsOf(ImmutableArray<EffectsRow> rows, EffectsDesign design, int priors)
    {
        int[][] byTerm = [.. Enumerable.Range(0, design.TermCount).Select(_ => new int[rows.Length + priors])];
        foreach (int[] levels in byTerm)
            levels.AsSpan(rows.Length).Fill(-1);
        for (int i = 0; i < rows.Length; i++)
        {
            int[] own = design.Levels(rows[i]);
            for (int k = 0; k < own.Length; k++)
                byTerm[k][i] = own[k];
        }

        return byTerm;
    }
}
