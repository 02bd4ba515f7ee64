namespace FlipAnalytics.Statistics.Tests;

/// <summary>Descriptions print as sentences, and what does not fit the data is named with what was found and expected.</summary>
public sealed class ModelDescriptionTests
{
    private static readonly Term.Intercept Constant = new();
    private static readonly Term.Category Color = new("color");
    private static readonly Term.Transformed LogVolume = new("volume", Transformation.Log);

    private static readonly DataColumns Sales = DataColumns.Empty
        .With("price", [120, 80, 200, 95, 150, 110])
        .With("volume", [0.5, 0.3, 0.9, double.NaN, 0.6, 0.4])
        .With("hours", [3.0, 2, 6, 4, double.NaN, 5])
        .With("color", ["white", "navy", "sage", "white", "navy", "sage"])
        .With("finish", ["wax", null, "wax", "", "wax", "wax"])
        .With("room", new string?[6]);

    public static TheoryData<ModelDescription, string> Sentences => new()
    {
        {
            new(new("price", Transformation.Log), Constant, LogVolume, new Term.Number("condition"), new Term.Number("hours"),
                new Term.RandomIntercept("type"), new Term.RandomIntercept("color")),
            "log price on log volume, condition and hours, with random intercepts of type and color"
        },
        { new(new("yield"), Constant, new Term.RandomIntercept("batch")), "yield on a constant, with a random intercept of batch" },
        { new(new("mpg"), Constant, new Term.Number("wt")), "mpg on wt" },
        {
            new(new("gas"), Constant, new Term.Category("insul", "Before"), new Term.Interaction(Color, new Term.Number("temp")))
            {
                WeightColumn = "w",
            },
            "gas on insul (against Before) and color × temp, weighted by w"
        },
        {
            new(new("price"), new Term.Transformed("age", Transformation.Square), new Term.RandomIntercept("type"),
                new Term.RandomWalk("month")),
            "price on age squared, without an intercept, with a random intercept of type and a random walk over month"
        },
    };

    [Theory, MemberData(nameof(Sentences))]
    public void A_description_prints_itself_as_a_sentence(ModelDescription description, string sentence) =>
        Assert.Equal(sentence, description.ToString());

    [Fact]
    public void Rows_with_gaps_are_left_out_and_reported_with_every_missing_column()
    {
        DesignMatrix design = new ModelDescription(new("price"), Constant, LogVolume, new Term.Number("hours"), new Term.RandomIntercept("finish"))
            .Design(Sales);

        Assert.Equal([0, 2, 5], design.Rows.AsEnumerable());
        Assert.Equal(
            ["row 1: 'finish' is missing", "row 3: 'volume', 'finish' are missing", "row 4: 'hours' is missing"],
            design.LeftOut.Select(row => row.ToString()));
        Assert.Equal([120, 200, 110], design.ResponseValues.AsEnumerable());
        Assert.Equal([Math.Log(0.5), Math.Log(0.9), Math.Log(0.4)], design.Columns[1].Values.ToArray());
    }

    [Fact]
    public void The_base_level_may_be_chosen()
    {
        DesignMatrix design = new ModelDescription(new("price"), Constant, new Term.Category("color", "sage")).Design(Sales);

        Assert.Equal(["(Intercept)", "colornavy", "colorwhite"], design.ColumnNames.AsEnumerable());
        Assert.Equal("sage", design.Categories.Single().BaseLevel);
        Assert.Equal([0, 1, 0, 0, 1, 0], design.Columns[1].Values.ToArray());
    }

    [Fact]
    public void An_interaction_of_two_categories_runs_through_the_left_one_fastest_as_in_R()
    {
        // The interaction columns of R 4.2.2, model.matrix(~ color * size).
        DataColumns data = DataColumns.Empty
            .With("y", [1.0, 2, 3, 4, 5, 6, 7, 8, 9])
            .With("color", ["a", "b", "c", "a", "b", "c", "a", "b", "c"])
            .With("size", ["l", "l", "l", "m", "m", "m", "s", "s", "s"]);
        DesignMatrix design = new ModelDescription(new("y"), Constant, new Term.Interaction(Color, new Term.Category("size")))
            .Design(data);

        Assert.Equal(
            ["(Intercept)", "colorb:sizem", "colorc:sizem", "colorb:sizes", "colorc:sizes"], design.ColumnNames.AsEnumerable());
        Assert.Equal([0, 0, 0, 0, 0, 1, 0, 0, 0], design.Columns[2].Values.ToArray());
    }

    public static TheoryData<string, Term[], string> Troubles => new()
    {
        { "price", [Constant, new Term.Number("width")], "There is no column 'width'; the data have 'price', 'volume', 'hours', 'color', 'finish', 'room'." },
        { "cost", [Constant], "There is no column 'cost'; the data have 'price'" },
        { "price", [Constant, new Term.Number("color")], "Column 'color' holds text where numbers are expected" },
        { "price", [Constant, new Term.Category("hours")], "Column 'hours' holds numbers where text is expected" },
        { "color", [Constant], "Column 'color' holds text where numbers are expected" },
        { "price", [Constant, new Term.Category("finish")], "Category 'finish' has only the level 'wax' in the rows fitted; it needs two or more" },
        { "price", [Constant, new Term.Category("room")], "None of the 6 rows is complete: 'room' is missing in 6." },
        { "price", [Constant, new Term.Category("color", "teal")], "has no level 'teal' to compare with; the rows fitted have 'navy', 'sage', 'white'." },
        { "price", [Constant, new Term.RandomWalk("hours", [2, 3, 4, 5])], "'hours' is 6 in row 2 (counting from 0), where the random walk has no position; it has '2', '3', '4', '5'" },
        { "price", [Constant, new Term.Number("colornavy"), Color], "There is no column 'colornavy'" },
    };

    [Theory, MemberData(nameof(Troubles))]
    public void What_does_not_fit_the_data_is_named_with_what_was_found(string response, Term[] terms, string message)
    {
        var description = new ModelDescription(new(response), terms);
        ArgumentException trouble = Assert.Throws<ArgumentException>(() => description.Design(Sales));
        Assert.Contains(message, trouble.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_logarithm_of_zero_names_column_row_and_remedy()
    {
        DataColumns data = DataColumns.Empty.With("price", [double.NaN, 4, 0]);
        ArgumentException trouble = Assert.Throws<ArgumentException>(
            () => new ModelDescription(new("price", Transformation.Log), Constant).Design(data));
        Assert.Contains("'price' is 0 in row 2 (counting from 0), but the logarithm needs numbers above 0", trouble.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void New_rows_with_an_unknown_category_level_or_a_gap_are_named()
    {
        DescribedLeastSquares described = new ModelDescription(new("price"), Constant, LogVolume, Color)
            .FitLeastSquares(Sales);

        ArgumentException level = Assert.Throws<ArgumentException>(
            () => described.Predict(DataColumns.Empty.With("volume", [1.0, 1]).With("color", ["navy", "teal"])));
        Assert.Contains(
            "Row 1 (counting from 0): 'color' is 'teal', a level the fit never saw; it knows 'navy', 'sage', 'white'.",
            level.Message, StringComparison.Ordinal);
        ArgumentException gap = Assert.Throws<ArgumentException>(
            () => described.Predict(DataColumns.Empty.With("volume", [double.NaN]).With("color", ["navy"])));
        Assert.Contains("row 0: 'volume' is missing", gap.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_random_level_never_seen_or_not_given_is_unseen()
    {
        DescribedMixedModel described = new ModelDescription(new("price"), Constant, new Term.RandomIntercept("color"))
            .FitMixed(Sales, new() { HeldRatios = [0.5] });

        var predictions = described.Predict(DataColumns.Empty.With("color", ["teal", null, "sage"]));
        MixedPrediction unseen = described.Fit.Predict([1], [LevelRef.Unseen]);
        Assert.Equal([unseen, unseen, described.Fit.Predict([1], [LevelRef.Known(1)])], predictions.AsEnumerable());
        Assert.NotEqual(unseen.Mean, predictions[2].Mean);
    }

    [Fact]
    public void Terms_that_make_no_model_are_refused_before_there_are_data()
    {
        Refused("needs a fixed term", () => new ModelDescription(new("price"), new Term.RandomIntercept("type")));
        Refused("'log volume' twice", () => new ModelDescription(new("price"), Constant, LogVolume, LogVolume));
        Refused("not of a constant", () => new Term.Interaction(Constant, Color));
        Refused("not of a random intercept of type", () => new Term.Interaction(Color, new Term.RandomIntercept("type")));
        Refused("needs the name of a column", () => new Term.Number(" "));
        Refused("Use FitMixed", () => new ModelDescription(new("price"), Constant, new Term.RandomIntercept("color")).FitLeastSquares(Sales));
        Refused("explains the logarithm", () => new ModelDescription(new("price"), Constant).FitAcceleratedFailure(Sales, []));
        Refused("has no random walk", () => new ModelDescription(
            new("price", Transformation.Log), Constant, new Term.RandomWalk("hours")).FitAcceleratedFailure(Sales, []));
        Refused("0 spells for 6 rows", () => new ModelDescription(
            new("price", Transformation.Log), Constant).FitAcceleratedFailure(Sales, []));
        Refused("has 2 rows where 'price' has 6", () => Sales.With("depth", [1.0, 2]));
        Refused("There is a column 'price' already", () => Sales.With("price", [1.0]));
        Refused("is Infinity", () => DataColumns.Empty.With("price", [double.PositiveInfinity]));

        static void Refused(string message, Func<object> make) =>
            Assert.Contains(message, Assert.ThrowsAny<ArgumentException>(make).Message, StringComparison.Ordinal);
    }
}
