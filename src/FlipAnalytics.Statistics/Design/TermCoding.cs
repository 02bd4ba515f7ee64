namespace FlipAnalytics.Statistics;

/// <summary>A design column and how it is made from data, the rows fitted or new ones.</summary>
internal sealed record CodedColumn(string Name, Func<DataColumns, double[]> Values);

/// <summary>Fixed terms turned into columns.</summary>
internal static class TermCoding
{
    /// <summary>The categories a term consists of.</summary>
    public static IEnumerable<Term.Category> CategoriesOf(Term term) => term switch
    {
        Term.Category category => [category],
        Term.Interaction product => [.. CategoriesOf(product.Left), .. CategoriesOf(product.Right)],
        _ => [],
    };

    /// <summary>The columns of a fixed term.</summary>
    public static CodedColumn[] Code(Term term, IReadOnlyDictionary<Term.Category, CategoryLevels> levels) => term switch
    {
        Term.Intercept => [new(Regressor.InterceptName, data => Ones(data.RowCount))],
        Term.Number number => [new(number.Column, data => data.NumbersOf(number.Column))],
        Term.Transformed transformed =>
        [
            new(
                transformed.By.NameOf(transformed.Column),
                data => transformed.By.Apply(transformed.Column, data)),
        ],
        Term.Category category =>
        [
            .. levels[category].OtherLevels.Select(level =>
                new CodedColumn(category.Column + level, data => levels[category].Indicator(level, data))),
        ],
        Term.Interaction product =>
        [
            .. Code(product.Right, levels).SelectMany(right => Code(product.Left, levels).Select(left =>
                new CodedColumn($"{left.Name}:{right.Name}", data => Products(left.Values(data), right.Values(data))))),
        ],
        _ => throw new ArgumentException($"{term} is not a fixed term.", nameof(term)),
    };

    private static double[] Ones(int rows)
    {
        double[] ones = new double[rows];
        Array.Fill(ones, 1);
        return ones;
    }

    private static double[] Products(double[] left, double[] right) => [.. left.Zip(right, (a, b) => a * b)];
}
