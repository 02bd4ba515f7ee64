using System.Collections.Immutable;

namespace FlipAnalytics.Statistics;

/// <summary>A response and the terms that explain it, stated before there are data. It prints itself as a sentence.</summary>
public sealed class ModelDescription
{
    /// <summary>States a model.</summary>
    /// <param name="response">What is explained.</param>
    /// <param name="terms">Fixed and random terms, in the order of the columns to come; no intercept unless it is among them.</param>
    /// <exception cref="ArgumentException">No fixed term, or a term given twice.</exception>
    public ModelDescription(Response response, params ReadOnlySpan<Term> terms)
    {
        ArgumentNullException.ThrowIfNull(response);
        Response = response;
        Terms = [.. terms];
        if (Terms.Any(term => term is null))
        {
            throw new ArgumentException("A term is null; leave it out.", nameof(terms));
        }

        if (Terms.All(term => term.IsRandom))
        {
            throw new ArgumentException("A model needs a fixed term; give at least Term.Intercept.", nameof(terms));
        }

        Term? twice = Terms.GroupBy(term => term).FirstOrDefault(group => group.Count() > 1)?.Key;
        if (twice is not null)
        {
            throw new ArgumentException($"The model has the term '{twice}' twice; give each term once.", nameof(terms));
        }
    }

    /// <summary>What is explained.</summary>
    public Response Response { get; }

    /// <summary>The terms, in the order given.</summary>
    public ImmutableArray<Term> Terms { get; }

    /// <summary>The column of weights, null for equal ones: precisions, or for durations how often a row counts.</summary>
    public string? WeightColumn { get; init; }

    /// <summary>
    /// Works the terms out on data. Complete-case rule: a row without a value in any column the model names (response,
    /// weight and terms, fixed and random) is left out and reported in <see cref="DesignMatrix.LeftOut"/>; levels are those
    /// of the rows that remain.
    /// </summary>
    /// <exception cref="ArgumentException">An unknown column or one of the other kind, no complete row, a category with
    /// fewer than two levels or without its base level, or a value that cannot be transformed.</exception>
    public DesignMatrix Design(DataColumns data) => new(this, data, withResponse: true);

    /// <summary>Fits by least squares; see <see cref="LeastSquares"/>.</summary>
    /// <exception cref="ArgumentException">As <see cref="Design"/>; random terms; or data that least squares cannot fit.</exception>
    public DescribedLeastSquares FitLeastSquares(DataColumns data, LeastSquaresOptions? options = null)
    {
        Refuse(term => term.IsRandom, "Least squares has no random terms", "Use FitMixed");
        DesignMatrix design = Design(data);
        return new(
            LeastSquares.Fit(design.Columns, design.ResponseValues.AsSpan(), design.Weights.AsSpan(), options), design);
    }

    /// <summary>Fits as a linear mixed model; see <see cref="MixedModel"/>.</summary>
    /// <exception cref="ArgumentException">As <see cref="Design"/>.</exception>
    /// <exception cref="MixedModelException">Rows that no mixed model can be fitted to.</exception>
    public DescribedMixedModel FitMixed(DataColumns data, MixedModelOptions? options = null)
    {
        DesignMatrix design = Design(data);
        var rows = MixedModelData.From(
            design.ColumnNames,
            design.FixedRows,
            [.. design.RandomColumns.Select(column => column.Term)],
            [.. design.RandomColumns.Select(column => column.Level.ToArray())],
            [.. design.ResponseValues],
            design.Weights.IsEmpty ? null : [.. design.Weights]);
        return new(MixedModel.Fit(rows, options), design);
    }

    /// <summary>Fits durations; see <see cref="AcceleratedFailure"/>. The response names what the spells measure and is
    /// its logarithm.</summary>
    /// <param name="data">The columns of the terms.</param>
    /// <param name="spells">The durations, one a row of the data.</param>
    /// <param name="options">Law and priors; plain maximum likelihood when null.</param>
    /// <exception cref="ArgumentException">As <see cref="Design"/>; a response that is not a logarithm; a random walk; or
    /// another number of spells than rows.</exception>
    /// <exception cref="NoEstimateException">The likelihood has no maximum at finite values.</exception>
    public DescribedAcceleratedFailure FitAcceleratedFailure(
        DataColumns data, ImmutableArray<Spell> spells, AcceleratedFailureOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(data);
        Refuse(term => term is Term.RandomWalk, "A duration model has no random walk", "Leave it out");
        if (Response.By != Transformation.Log)
        {
            throw new ArgumentException(
                $"A duration model explains the logarithm of the duration, not '{Response}'; describe the response as Transformation.Log.");
        }

        if (spells.IsDefault || spells.Length != data.RowCount)
        {
            throw new ArgumentException(
                $"There are {(spells.IsDefault ? 0 : spells.Length)} spells for {data.RowCount} rows; give one a row.", nameof(spells));
        }

        var design = new DesignMatrix(this, data, withResponse: false);
        var durations = new AcceleratedFailureData(
            design.ColumnNames,
            design.FixedRows,
            [.. design.Rows.Select(row => spells[row])],
            [.. design.RandomColumns.Select(column =>
                new GroupColumn(column.Term.Name, column.Term.Levels, [.. column.Level]))],
            design.Weights.IsEmpty ? null : [.. design.Weights]);
        return new(AcceleratedFailure.Fit(durations, options ?? new AcceleratedFailureOptions()), design);
    }

    /// <summary>
    /// The model as a sentence: "log price on log volume, condition and hours, with random intercepts of type and color".
    /// </summary>
    public override string ToString()
    {
        bool hasIntercept = Terms.Any(term => term is Term.Intercept);
        string[] words = [.. Terms.Where(term => !term.IsRandom && term is not Term.Intercept).Select(term => term.Words)];
        string[] intercepts = [.. Terms.OfType<Term.RandomIntercept>().Select(term => term.Column)];
        string[] random =
        [
            .. intercepts.Length == 1
                ? [$"a random intercept of {intercepts[0]}"]
                : intercepts.Length > 1 ? [$"random intercepts of {Listing.Joined(intercepts)}"] : Array.Empty<string>(),
            .. Terms.OfType<Term.RandomWalk>().Select(term => term.Words),
        ];
        return $"{Response} on {(words.Length == 0 ? "a constant" : Listing.Joined(words))}"
            + (hasIntercept ? "" : ", without an intercept")
            + (random.Length == 0 ? "" : $", with {Listing.Joined(random)}")
            + (WeightColumn is null ? "" : $", weighted by {WeightColumn}");
    }

    private void Refuse(Func<Term, bool> kind, string reason, string remedy)
    {
        if (Terms.FirstOrDefault(kind) is { } term)
        {
            throw new ArgumentException($"{reason}, but the model has {term}. {remedy}.");
        }
    }
}
