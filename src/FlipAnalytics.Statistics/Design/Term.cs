using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>
/// One term of a model, a value that can be built, compared and printed before there are data. Columns it makes are
/// named as R's <c>model.matrix</c> names them.
/// </summary>
public abstract record Term
{
    private Term()
    {
    }

    internal virtual bool IsRandom => false;

    internal abstract ImmutableArray<string> Columns { get; }

    internal abstract string Words { get; }

    /// <summary>The term within a sentence.</summary>
    public sealed override string ToString() => Words;

    private static string Checked(string column) => !string.IsNullOrWhiteSpace(column)
        ? column
        : throw new ArgumentException($"A term needs the name of a column, not '{column}'.", nameof(column));

    /// <summary>The constant: a column of ones, "(Intercept)".</summary>
    public sealed record Intercept : Term
    {
        internal override ImmutableArray<string> Columns => [];

        internal override string Words => "a constant";
    }

    /// <summary>A column of numbers as it is.</summary>
    /// <param name="Column">The column's name in the data.</param>
    public sealed record Number(string Column) : Term
    {
        /// <summary>The column's name in the data.</summary>
        public string Column { get; } = Checked(Column);

        internal override ImmutableArray<string> Columns => [Column];

        internal override string Words => Column;
    }

    /// <summary>A column of numbers after a transformation.</summary>
    /// <param name="Column">The column's name in the data.</param>
    /// <param name="By">What is done to it.</param>
    public sealed record Transformed(string Column, Transformation By) : Term
    {
        /// <summary>The column's name in the data.</summary>
        public string Column { get; } = Checked(Column);

        internal override ImmutableArray<string> Columns => [Column];

        internal override string Words => By.WordsFor(Column);
    }

    /// <summary>
    /// A column of text with fixed effects in treatment coding: a 0/1 column for every level but the base, whose effect
    /// is 0, named column and level together ("cylc6").
    /// </summary>
    /// <param name="Column">The column's name in the data.</param>
    /// <param name="BaseLevel">The level the others are compared with; null for the first in ordinal order.</param>
    public sealed record Category(string Column, string? BaseLevel = null) : Term
    {
        /// <summary>The column's name in the data.</summary>
        public string Column { get; } = Checked(Column);

        internal override ImmutableArray<string> Columns => [Column];

        internal override string Words => BaseLevel is null ? Column : $"{Column} (against {BaseLevel})";
    }

    /// <summary>
    /// Products of every column of one term with every column of another ("a:b", the left one's columns running
    /// fastest). It does not bring the two terms themselves.
    /// </summary>
    /// <param name="Left">A fixed term that is not the intercept.</param>
    /// <param name="Right">A fixed term that is not the intercept.</param>
    public sealed record Interaction(Term Left, Term Right) : Term
    {
        /// <summary>The term whose columns run fastest.</summary>
        public Term Left { get; } = Factor(Left);

        /// <summary>The other term.</summary>
        public Term Right { get; } = Factor(Right);

        internal override ImmutableArray<string> Columns => [.. Left.Columns, .. Right.Columns];

        internal override string Words => $"{Left.Words} × {Right.Words}";

        private static Term Factor(Term term)
        {
            ArgumentNullException.ThrowIfNull(term);
            return term is Intercept || term.IsRandom
                ? throw new ArgumentException(
                    $"An interaction is made of numbers, transformed numbers, categories and their interactions, not of {term}.")
                : term;
        }
    }

    /// <summary>Level effects of a column of text, drawn from one normal distribution and shrunk towards 0.</summary>
    /// <param name="Column">The column's name in the data.</param>
    public sealed record RandomIntercept(string Column) : Term
    {
        /// <summary>The column's name in the data.</summary>
        public string Column { get; } = Checked(Column);

        internal override bool IsRandom => true;

        internal override ImmutableArray<string> Columns => [Column];

        internal override string Words => $"a random intercept of {Column}";
    }

    /// <summary>A random walk over the values of a column of numbers, 0 at the first position.</summary>
    /// <param name="Column">The column of positions, in any one unit.</param>
    /// <param name="Positions">
    /// Where the walk may be seen, strictly increasing; empty for the distinct values in the data. Every row must lie at
    /// one of them.
    /// </param>
    public sealed record RandomWalk(string Column, ImmutableArray<double> Positions = default) : Term
    {
        /// <summary>The column's name in the data.</summary>
        public string Column { get; } = Checked(Column);

        internal override bool IsRandom => true;

        internal override ImmutableArray<string> Columns => [Column];

        internal override string Words => $"a random walk over {Column}";
    }
}
