using System.Globalization;
using System.Text.Json;

namespace FlipAnalytics.Statistics.Tests;

/// <summary>The reference cases of ReferenceData/ols and ReferenceData/lmm as tables and descriptions.</summary>
internal static class DescribedReference
{
    private static readonly Term.Intercept Constant = new();
    private static readonly string[] TextColumns =
        ["cyl", "type", "origin", "cut", "color", "clarity", "insul", "plate", "sample", "batch", "colour"];

    public static ModelDescription DescriptionOf(string name) => name switch
    {
        "ols/01_mtcars" => new(new("mpg"), Constant, Number("wt"), Number("hp"), Category("cyl")),
        "ols/02_cars93_log_price" => new(
            LogOf("price"), Constant, Log("power"), Log("weight"), Number("mpg_city"), Category("type"), Category("origin")),
        "ols/03_boston" => new(
            LogOf("medv"), Constant, Number("crim"), Number("zn"), Number("indus"), Number("chas"), Square("nox"),
            Square("rm"), Number("age"), Log("dis"), Log("rad"), Number("tax"), Number("ptratio"), Log("lstat")),
        "ols/04_diamonds_price" => new(
            LogOf("price"), Constant, Log("carat"), Category("cut"), Category("color"), Category("clarity"), Number("depth")),
        "ols/05_aliased_columns" => new(
            new("price"), Constant, Number("width"), Number("depth"), Category("type"), Number("width_inches_twice"),
            Number("desk_flag")),
        "ols/06_weighted" => new(
            new("gas"), Constant, Category("insul"), Number("temp"), new Term.Interaction(Category("insul"), Number("temp")))
        {
            WeightColumn = "w",
        },
        "lmm/01_penicillin" => new(new("diameter"), Constant, Random("plate"), Random("sample")),
        "lmm/02_dyestuff" or "lmm/03_dyestuff2_zero" => new(new("yield"), Constant, Random("batch")),
        "lmm/04_furniture_rare_levels" or "lmm/05_furniture_zero_colour" => new(
            LogOf("price"), Constant, Log("size"), Number("hours"), Number("condition"), Random("type"), Random("colour")),
        _ => new(
            LogOf("sold_price"), Constant, Log("volume"), Number("condition"), Number("hours"), Log("count"),
            Random("type"), Random("color")),
    };

    /// <summary>The case's rows, an empty cell missing.</summary>
    public static DataColumns DataOf(ReferenceCase reference, ModelDescription description) => Table(
        description,
        withResponse: true,
        name => [.. reference.Text(name).Select(cell => cell.Length == 0 ? double.NaN : double.Parse(cell, CultureInfo.InvariantCulture))],
        reference.Text);

    /// <summary>The rows to predict.</summary>
    public static DataColumns NewRowsOf(ReferenceCase reference, ModelDescription description)
    {
        JsonElement rows = reference.At("new_rows");
        return Table(
            description,
            withResponse: false,
            name => ReferenceCase.Numbers(rows.GetProperty(name)),
            name => ReferenceCase.Names(rows.GetProperty(name)));
    }

    private static DataColumns Table(
        ModelDescription description, bool withResponse, Func<string, double[]> numbers, Func<string, string[]> texts)
    {
        DataColumns data = DataColumns.Empty;
        IEnumerable<string> names = description.Terms.SelectMany(ColumnsOf);
        if (withResponse)
        {
            names = names.Append(description.Response.Column).Concat(description.WeightColumn is { } w ? [w] : []);
        }

        foreach (string name in names.Distinct())
        {
            data = TextColumns.Contains(name) ? data.With(name, texts(name))
                : name == "volume" ? data.With(name, Volume(numbers("width"), numbers("depth"), numbers("height")))
                : data.With(name, numbers(name));
        }

        return data;
    }

    // Cubic metres from centimetres.
    private static IEnumerable<double> Volume(double[] width, double[] depth, double[] height) =>
        width.Select((w, i) => w * depth[i] * height[i] / 1e6);

    private static string[] ColumnsOf(Term term) => term switch
    {
        Term.Number number => [number.Column],
        Term.Transformed transformed => [transformed.Column],
        Term.Category category => [category.Column],
        Term.RandomIntercept random => [random.Column],
        Term.Interaction product => [.. ColumnsOf(product.Left), .. ColumnsOf(product.Right)],
        _ => [],
    };

    private static Response LogOf(string column) => new(column, Transformation.Log);

    private static Term.Number Number(string column) => new(column);

    private static Term.Transformed Log(string column) => new(column, Transformation.Log);

    private static Term.Transformed Square(string column) => new(column, Transformation.Square);

    private static Term.Category Category(string column) => new(column);

    private static Term.RandomIntercept Random(string column) => new(column);
}
