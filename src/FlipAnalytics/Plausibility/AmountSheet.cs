using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>
/// The amounts of a table, each held against what the rest of the log expects of it: by itself within its group, and beside
/// other amounts of its row. What a row's amounts are worth together is a sum of terms; a slip in one of them is what would
/// make that sum much larger if it were mended.
/// </summary>
internal sealed class AmountSheet(string file)
{
    /// <summary>How much likelier a mend must make a row before it is worth a look.</summary>
    public const double LeastGain = 4;

    // Without a likely mend, an amount must be wilder still.
    private const double NoMendRarity = 3.5;

    private readonly List<AmountRow> rows = [];
    private readonly Dictionary<string, TermFamily> families = [];

    /// <summary>Adds a row and says under which number.</summary>
    public int Add(int line)
    {
        rows.Add(new(line, [], []));
        return rows.Count - 1;
    }

    /// <summary>Adds an amount to the last row; nothing for one that is unknown or zero.</summary>
    /// <returns>Its number, or null.</returns>
    public int? Cell(string column, decimal? value, ImmutableArray<AmountSlip> slips)
    {
        if (value is not { } known || Crossing.Log(known) is not { } log)
            return null;
        AmountRow row = rows[^1];
        row.Cells.Add(new(column, known, log, slips));
        return row.Cells.Count - 1;
    }

    /// <summary>Expects the logarithm of an amount, less that of another and an offset, to be as in the rest of its group.</summary>
    public void Expect(string family, double within, double between, string? group, int? cell, int? less = null, double offset = 0)
    {
        if (cell is not { } plus)
            return;
        if (!families.TryGetValue(family, out TermFamily? known))
            families.Add(family, known = new(within, between));
        AmountRow row = rows[^1];
        double value = row.Cells[plus].Log - (less is { } minus ? row.Cells[minus].Log : 0) - offset;
        known.Values.Add(value);
        known.Groups.Add(group ?? "");
        row.Terms.Add(new(plus, less, known, known.Values.Count - 1));
    }

    /// <summary>Amounts that a mend would make much likelier, at most one a row; all of a row's lengths may slip at once.</summary>
    /// <param name="together">Columns that slip together, such as all lengths of a piece in another unit.</param>
    public IEnumerable<LogFinding> Findings(params string[] together)
    {
        foreach (TermFamily family in families.Values)
            family.Predict();
        // No mend can gain more than all that a row loses as it stands, so most rows need no second look.
        foreach (AmountRow row in rows.Where(row => row.Terms.Sum(Lost) >= LeastGain))
        {
            var best = Hypotheses(row, together).MaxBy(h => h.Gain);
            if (best is { Gain: >= LeastGain })
                yield return best.Finding(file, row);
        }
    }

    private static IEnumerable<Hypothesis> Hypotheses(AmountRow row, string[] together)
    {
        List<Term> terms = row.Terms;
        for (int c = 0; c < row.Cells.Count; c++)
        {
            if (Lost(terms, [c]) < LeastGain)
                continue;
            foreach (AmountSlip slip in row.Cells[c].Slips)
                yield return new([c], slip, Gain(terms, [c], Math.Log(slip.Factor)) - slip.Rarity);
            double removed = terms.Where(t => t.Touches(c)).Sum(t => LogDensity(1) - LogDensity(t.Standardised(0)));
            yield return new([c], null, removed - NoMendRarity);
        }

        int[] all = [.. Enumerable.Range(0, row.Cells.Count).Where(c => together.Contains(row.Cells[c].Column))];
        if (all.Length < 2 || Lost(terms, all) < LeastGain)
            yield break;
        foreach (AmountSlip slip in row.Cells[all[0]].Slips)
            yield return new(all, slip, Gain(terms, all, Math.Log(slip.Factor)) - slip.Rarity);
    }

    // What an amount costs its row as it stands.
    private static double Lost(Term term) => -LogDensity(term.Standardised(0));

    private static double Lost(List<Term> terms, int[] cells) => terms.Where(term => cells.Any(term.Touches)).Sum(Lost);

    private static double Gain(List<Term> terms, int[] cells, double log)
    {
        double gain = 0;
        foreach (Term term in terms)
        {
            double move = (cells.Contains(term.Plus) ? -log : 0) + (term.Minus is { } m && cells.Contains(m) ? log : 0);
            if (move != 0)
                gain += LogDensity(term.Standardised(move)) - LogDensity(term.Standardised(0));
        }

        return gain;
    }

    // Student's t with four degrees of freedom, up to a constant: prices have long tails.
    private static double LogDensity(double z) => -2.5 * Math.Log(1 + (z * z / 4));

    private sealed record AmountRow(int Line, List<AmountCell> Cells, List<Term> Terms);

    private sealed record AmountCell(string Column, decimal Value, double Log, ImmutableArray<AmountSlip> Slips);

    private sealed class TermFamily(double within, double between)
    {
        private GroupedPrediction? prediction;

        public List<double> Values { get; } = [];

        public List<string> Groups { get; } = [];

        public void Predict() => prediction = new(Values, Groups, within, between);

        public double Centre(int value) => prediction!.Centre(value);

        public double Spread(int value) => prediction!.Spread(value);
    }

    private sealed record Term(int Plus, int? Minus, TermFamily Family, int Index)
    {
        public bool Touches(int cell) => Plus == cell || Minus == cell;

        public double Standardised(double move) =>
            (Family.Values[Index] + move - Family.Centre(Index)) / Family.Spread(Index);
    }

    private sealed record Hypothesis(int[] Cells, AmountSlip? Slip, double Gain)
    {
        public LogFinding Finding(string file, AmountRow row)
        {
            AmountCell cell = row.Cells[Cells[0]];
            // What the term that disagrees most expects of the amount.
            Term worst = row.Terms.Where(t => Cells.Any(t.Touches)).MaxBy(t => Math.Abs(t.Standardised(0)))!;
            double excess = worst.Standardised(0) * worst.Family.Spread(worst.Index);
            double usual = Math.Exp(cell.Log - (worst.Plus == Cells[0] ? excess : -excess));
            string also = Cells.Length == 1 ? "" : $" The same goes for {string.Join(" and ", Cells.Skip(1).Select(c => row.Cells[c].Column))}.";
            return new(
                file,
                row.Line,
                cell.Column,
                LogFinding.Text(cell.Value),
                $"about {LogFinding.Text(Rounded(usual))} by the rest of your log",
                Slip is { } slip
                    ? $"If {slip.Words}, write {LogFinding.Text(Rounded((double)cell.Value / slip.Factor, 3))}; if it is right, leave it.{also}"
                    : "Correct it, or leave it if it is right.",
                Gain);
        }

        private static decimal Rounded(double value, int digits = 2)
        {
            double unit = Math.Pow(10, Math.Floor(Math.Log10(value)) - digits + 1);
            return Crossing.Rounded(Math.Round(value / unit) * unit, 12);
        }
    }
}
