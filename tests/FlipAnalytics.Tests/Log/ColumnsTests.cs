namespace FlipAnalytics.Tests;

public sealed class ColumnsTests
{
    [Theory]
    [InlineData(
        "pieces.csv",
        "id, type, title, count, width, depth, height, material, condition, color, finish, source, trip, lot, bought_on, sticker_price, bought_price, expected_price, ready_on, listed_on, asking_price, sold_on, sold_price, sales_tax, commission, channel, fees, delivery_charged, delivery_cost, hours, supplies_cost, left_on, left_as, notes")]
    [InlineData("asking.csv", "id, date, price")]
    [InlineData("hours.csv", "id, date, task, hours")]
    [InlineData("supplies.csv", "item, kind, bought_on, quantity, unit, price, coverage, coverage_unit")]
    [InlineData("uses.csv", "id, date, item, quantity, unit, coats, area")]
    [InlineData("counts.csv", "date, item, quantity, unit, notes")]
    [InlineData("trips.csv", "trip, date, distance, hours, other_cost, purpose, id, notes")]
    [InlineData("tools.csv", "item, bought_on, price, salvage, life_pieces, life_months")]
    [InlineData("overheads.csv", "month, item, amount, channel")]
    [InlineData("moves.csv", "date, from, to, cost, notes")]
    [InlineData("money.csv", "date, kind, id, amount, notes")]
    [InlineData("returns.csv", "id, returned_on, refund, sales_tax, sold_on, sold_price, fees, delivery_charged, delivery_cost, cost, notes")]
    [InlineData("colors.csv", "color, family, hex")]
    public void The_tables_of_the_log_have_their_columns_in_this_order(string file, string columns) =>
        Assert.Equal(
            columns,
            string.Join(", ", Columns.Tables.Single(table => table.File == file).Columns.Select(column => column.Name)));

    [Fact]
    public void Every_column_says_what_it_means_in_a_sentence_and_every_number_its_unit()
    {
        Assert.All(Columns.Tables, table => Assert.EndsWith(".", table.Adds, StringComparison.Ordinal));
        foreach (LogColumn column in Columns.Tables.SelectMany(table => table.Columns))
        {
            Assert.EndsWith(".", column.Meaning, StringComparison.Ordinal);
            Assert.Equal(
                column.Kind is ColumnKind.Number or ColumnKind.Money or ColumnKind.WholeNumber,
                column.Unit is not null);
            Assert.Equal(column.Kind == ColumnKind.Word, !column.Words.IsEmpty);
        }
    }

    [Fact]
    public void The_words_are_those_of_the_trade()
    {
        Assert.Equal<string>(["sound", "worn", "damaged"], Columns.Pieces["condition"].Words);
        Assert.Equal<string>(["kept", "given", "scrapped", "broken", "parts", "stolen"], Columns.Pieces["left_as"].Words);
        Assert.Equal<string>(
            ["sourcing", "cleaning", "repair", "stripping", "sanding", "priming", "painting", "topcoat", "hardware", "photos", "listing", "selling", "delivery", "other"],
            Columns.Hours["task"].Words);
    }

    [Fact]
    public void A_column_that_is_not_there_is_named_with_those_that_are()
    {
        ArgumentException refusal = Assert.Throws<ArgumentException>(() => Columns.Colors["shade"]);

        Assert.Contains(
            "colors.csv has no column 'shade'; it has color, family, hex", refusal.Message, StringComparison.Ordinal);
    }
}
