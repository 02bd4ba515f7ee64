using System.Collections.Immutable;
using System.Text.Json;

using static FlipAnalytics.ColumnKind;

namespace FlipAnalytics;

/// <summary>
/// The column dictionary: every table and column of the log, once. Readers, writers and help take names, order, units
/// and meanings from here.
/// </summary>
public static class Columns
{
    internal const string LengthWords = "the workshop's length unit";
    internal const string CurrencyWords = "the workshop's currency";

    /// <summary><c>pieces.csv</c>: the only file that must be there.</summary>
    public static LogTable Pieces { get; } = new(
        "pieces.csv",
        "It is the log itself: what was bought, what it sold for and what is still here.",
        [
            new("id", Name, "Your own name for the piece, different for every row; without it the line number serves."),
            new("type", Label, "Kind of furniture in your own words, such as dresser.", IsRequired: true),
            new("title", Text, "A few words that tell the piece from others."),
            new(
                "count",
                WholeNumber,
                "How many items are sold as one, such as 4 for a set of chairs.",
                "items",
                Smallest.AboveZero),
            new("width", Number, "Width of one item.", LengthWords, Smallest.AboveZero),
            new("depth", Number, "Depth of one item.", LengthWords, Smallest.AboveZero),
            new("height", Number, "Height of one item.", LengthWords, Smallest.AboveZero),
            new("material", Label, "What it is made of, such as oak or pine."),
            Words<Condition>("condition", "How sound it was when you bought it."),
            new("color", Label, "Color you gave it, in your own word."),
            new("finish", Label, "Finish you gave it, such as satin or wax."),
            new("source", Label, "Where you found it, such as charity shop or roadside."),
            new("trip", Name, "Outing that brought it home; a name in trips.csv."),
            new("lot", Name, "A word that pieces bought together for one sum share; one of them has the sum as its price."),
            new("bought_on", Date, "Day you bought it."),
            Amount("sticker_price", "What the store asked.", Smallest.Zero),
            Amount("bought_price", "What you paid; 0 if it cost nothing.", Smallest.Zero) with { IsRequired = true },
            Amount("expected_price", "Your own guess of the sale price when you bought it.", Smallest.AboveZero),
            new("ready_on", Date, "Day the work on it was done."),
            new("listed_on", Date, "Day you first offered it; offering it again changes nothing here."),
            Amount("asking_price", "What you asked at first; later changes go into asking.csv.", Smallest.AboveZero),
            new("sold_on", Date, "Day it was sold.") { IsDeciding = true },
            Amount(
                "sold_price",
                "What the buyer paid for the piece, before fees and without a delivery charge.",
                Smallest.AboveZero) with
            {
                IsDeciding = true,
                Remedy = "If it was given away, empty sold_price and sold_on and write the day into left_on and given into left_as.",
            },
            Amount("sales_tax", "Sales tax the buyer paid on top of the sale price.", Smallest.Zero),
            new(
                "commission",
                Number,
                "For a piece that belongs to somebody else: your share of the sale price, such as 0.4.",
                "a share",
                Smallest.AboveZero)
            {
                IsDeciding = true,
                Remedy = "Write your share as a part of 1, such as 0.4 for 40 %; leave it empty for a piece of your own.",
            },
            new("channel", Label, "Where it was sold, or is for sale, such as online or market stall."),
            Amount("fees", "What the channel or payment service kept.", Smallest.Zero),
            Amount("delivery_charged", "What the buyer paid for delivery on top of the sale price.", Smallest.Zero),
            Amount("delivery_cost", "What delivery cost you.", Smallest.Zero),
            new("hours", Number, "All hands-on hours on it; drying time is not hours.", "hours", Smallest.Zero),
            Amount("supplies_cost", "Cost of what was used up on it.", Smallest.Zero),
            new("left_on", Date, "Day it left without being sold.") { IsDeciding = true },
            Words<LeftAs>("left_as", "How it left without being sold.") with { IsDeciding = true },
            new("notes", Text, "Anything else."),
        ]);

    /// <summary><c>asking.csv</c>: changes of asking prices.</summary>
    public static LogTable Asking { get; } = new(
        "asking.csv",
        "With your price cuts on record, how much a lower price speeds a sale can be told, and when to cut.",
        [
            new("id", Name, "The piece; an id of pieces.csv.", IsRequired: true),
            new("date", Date, "Day from which the price holds.", IsRequired: true),
            Amount("price", "The new asking price.", Smallest.AboveZero) with { IsRequired = true },
        ]);

    /// <summary><c>hours.csv</c>: hours worked.</summary>
    public static LogTable Hours { get; } = new(
        "hours.csv",
        "With hours by task, your wage counts all your time, and pieces without a total get one.",
        [
            new("id", Name, "The piece; empty for work on no single piece."),
            new("date", Date, "Day of the work."),
            Words<WorkTask>("task", "What you did."),
            new("hours", Number, "Hands-on hours.", "hours", Smallest.Zero, IsRequired: true),
        ]);

    /// <summary><c>supplies.csv</c>: purchases of what is used up.</summary>
    public static LogTable Supplies { get; } = new(
        "supplies.csv",
        "With what paint and the rest cost, each piece carries its supplies, and half-used cans are stock.",
        [
            new("item", Name, "Your own name for it; purchases of one item share it.", IsRequired: true),
            new("kind", Label, "What kind of thing it is, such as paint or abrasive."),
            new("bought_on", Date, "Day you bought it."),
            new("quantity", Number, "How much, in the unit beside it.", "the unit beside it", Smallest.AboveZero),
            new("unit", Label, "Unit of the quantity, such as quart, l or sheet."),
            Amount("price", "What you paid for the whole quantity.", Smallest.Zero) with { IsDeciding = true },
            new(
                "coverage",
                Number,
                "Area that one unit covers in one coat, by the label.",
                "the coverage unit",
                Smallest.AboveZero),
            new("coverage_unit", Label, "Unit of the coverage, such as ft2/quart."),
        ]);

    /// <summary><c>uses.csv</c>: uses of supplies on pieces, and waste.</summary>
    public static LogTable Uses { get; } = new(
        "uses.csv",
        "With what went onto which piece, supplies are charged to the pieces that used them, not spread evenly.",
        [
            new("id", Name, "The piece; empty for what went to waste, such as a can that dried up."),
            new("date", Date, "Day of the use."),
            new("item", Name, "What you used; an item of supplies.csv.", IsRequired: true),
            new(
                "quantity",
                Number,
                "Measured quantity, in the unit beside it.",
                "the unit beside it",
                Smallest.AboveZero),
            new("unit", Label, "Unit of the quantity."),
            new("coats", Number, "Number of coats, where you did not measure.", "coats", Smallest.AboveZero),
            new(
                "area",
                Number,
                "Area coated, where you did not measure.",
                "square feet, or square metres where lengths are in cm",
                Smallest.AboveZero),
        ]);

    /// <summary><c>counts.csv</c>: stock counts of supplies.</summary>
    public static LogTable Counts { get; } = new(
        "counts.csv",
        "With a count of what is left now and then, the value of your supplies is a fact, and what is missing is seen.",
        [
            new("date", Date, "Day of the count; what was used that day is off already.", IsRequired: true),
            new("item", Name, "What you counted; an item of supplies.csv.", IsRequired: true),
            new(
                "quantity",
                Number,
                "What is left, in the unit beside it, or the word empty; rows of one item and day add up.",
                "the unit beside it",
                Smallest.Zero,
                IsRequired: true) { WordForNone = "empty" },
            new("unit", Label, "Unit of the quantity; without one, the unit it was bought in."),
            new("notes", Text, "Anything else."),
        ])
    {
        IsOccasional = true,
    };

    /// <summary><c>trips.csv</c>: outings, mostly to look for pieces.</summary>
    public static LogTable Trips { get; } = new(
        "trips.csv",
        "With your outings, driving and searching are in the cost and the wage, fruitless trips included.",
        [
            new("trip", Name, "Your own name for the outing; pieces refer to it.", IsRequired: true),
            new("date", Date, "Day of the outing."),
            new("distance", Number, "Distance driven.", "the workshop's distance unit", Smallest.Zero),
            new("hours", Number, "Hours away.", "hours", Smallest.Zero),
            Amount("other_cost", "Parking, tolls, van hire.", Smallest.Zero),
            Words<TripPurpose>("purpose", "What the outing was for; empty means sourcing, that is looking for pieces."),
            new("id", Name, "The piece you took to its buyer, where the purpose is delivery; an id of pieces.csv."),
            new("notes", Text, "Anything else."),
        ]);

    /// <summary><c>tools.csv</c>: what lasts over many pieces.</summary>
    public static LogTable Tools { get; } = new(
        "tools.csv",
        "With your tools, every piece carries its share of their wear in the full wage.",
        [
            new("item", Name, "What it is.", IsRequired: true),
            new("bought_on", Date, "Day you bought it."),
            Amount("price", "What it cost.", Smallest.Zero) with { IsDeciding = true },
            Amount("salvage", "What it will fetch at the end of its life.", Smallest.Zero),
            new("life_pieces", Number, "How many pieces it lasts for.", "pieces", Smallest.AboveZero),
            new("life_months", Number, "How many months it lasts for.", "months", Smallest.AboveZero),
        ]);

    /// <summary><c>overheads.csv</c>: costs of no single piece.</summary>
    public static LogTable Overheads { get; } = new(
        "overheads.csv",
        "With rent, insurance and the like, the quarter and the full wage show what is really left.",
        [
            new("month", Month, "Month it belongs to; it counts evenly over its days.", IsRequired: true),
            new("item", Label, "What it was for, such as rent."),
            Amount("amount", "What it cost; below zero for money back.", Smallest.Any) with { IsRequired = true },
            new("channel", Label, "The channel it is for, such as a booth; the pieces on sale there share it."),
        ]);

    /// <summary><c>moves.csv</c>: parts and items that went from one piece to another.</summary>
    public static LogTable Moves { get; } = new(
        "moves.csv",
        "With parts that you moved, and sets that you split, each piece carries what is in it.",
        [
            new("date", Date, "Day you moved it.", IsRequired: true),
            new("from", Name, "The piece that gave it; an id of pieces.csv.", IsRequired: true),
            new("to", Name, "The piece that took it; an id of pieces.csv.", IsRequired: true),
            Amount("cost", "How much of the giving piece's cost goes with it.", Smallest.Zero) with { IsRequired = true },
            new("notes", Text, "Anything else."),
        ])
    {
        IsOccasional = true,
    };

    /// <summary><c>money.csv</c>: money that no other table tells.</summary>
    public static LogTable Money { get; } = new(
        "money.csv",
        "With deposits, sales tax paid over and what you take out, the money in hand comes out as in your account.",
        [
            new("date", Date, "Day the money came or went.", IsRequired: true),
            Words<MoneyKind>(
                "kind",
                "payment (from a buyer, where it does not all come on the day of the sale), sales_tax (paid over), paid_owner "
                + "(to the owner of a piece sold for them), taken (out by you), put_in (by you).") with { IsRequired = true },
            new("id", Name, "The piece, for payment and paid_owner; an id of pieces.csv."),
            Amount("amount", "How much; below zero where it was given back.", Smallest.Any) with { IsRequired = true },
            new("notes", Text, "Anything else."),
        ])
    {
        IsOccasional = true,
    };

    /// <summary><c>returns.csv</c>: pieces that came back, and money given back to buyers.</summary>
    public static LogTable Returns { get; } = new(
        "returns.csv",
        "With returns, a piece that came back is in stock again, and the profit holds what you gave back.",
        [
            new("id", Name, "The piece; an id of pieces.csv.", IsRequired: true),
            new("returned_on", Date, "Day it came back, or you gave the money back.", IsRequired: true),
            Amount("refund", "What you gave back of sale price and delivery charge.", Smallest.Zero) with { IsRequired = true },
            Amount("sales_tax", "Sales tax that you gave back with it.", Smallest.Zero),
            new("sold_on", Date, "Of a piece that came back: day of the sale that was undone; pieces.csv then tells of the piece as it is now."),
            Amount("sold_price", "Of a piece that came back: what the buyer had paid for it; empty where the buyer kept the piece.", Smallest.AboveZero),
            Amount("fees", "What the channel kept of that sale in the end.", Smallest.Zero),
            Amount("delivery_charged", "What the buyer had paid for delivery.", Smallest.Zero),
            Amount("delivery_cost", "What delivery had cost you.", Smallest.Zero),
            Amount("cost", "What it cost to take the piece back.", Smallest.Zero),
            new("notes", Text, "Anything else."),
        ])
    {
        IsOccasional = true,
    };

    /// <summary><c>colors.csv</c>: what the owner says of colours.</summary>
    public static LogTable Colors { get; } = new(
        "colors.csv",
        "With color families, a color you have hardly tried learns from its relatives.",
        [
            new("color", Name, "The color, in the word that pieces use.", IsRequired: true),
            new("family", Label, "The family it belongs to, such as green."),
            new("hex", Hex, "How it looks on a screen."),
        ]);

    /// <summary>File name of the settings.</summary>
    public const string WorkshopFile = "workshop.toml";

    /// <summary>What the answers gain from the settings, as a sentence.</summary>
    public const string WorkshopAdds =
        "With your target wage, selling fees and mileage rate, limits and wages are yours and not defaults.";

    /// <summary>All tables, the required one first.</summary>
    public static ImmutableArray<LogTable> Tables { get; } =
        [Pieces, Asking, Hours, Supplies, Uses, Counts, Trips, Tools, Overheads, Moves, Money, Returns, Colors];

    /// <summary>The word of the log for a value, such as damaged.</summary>
    internal static string WordOf<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());

    private static LogColumn Amount(string name, string meaning, Smallest smallest) =>
        new(name, ColumnKind.Money, meaning, CurrencyWords, smallest);

    private static LogColumn Words<T>(string name, string meaning)
        where T : struct, Enum =>
        new(name, Word, meaning) { Words = [.. Enum.GetValues<T>().Select(WordOf)] };
}
