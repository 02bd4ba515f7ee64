using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A line of the quarter that can be opened.</summary>
/// <param name="Word">The word that opens it.</param>
/// <param name="Meaning">What it is, in a few words.</param>
public sealed record QuarterLine(string Word, string Meaning)
{
    internal const string Sales = "sales";
    internal const string DeliveryCharged = "delivery-charged";
    internal const string Returns = "returns";
    internal const string CostOfSold = "cost-of-sold";
    internal const string Purchases = "purchases";
    internal const string Supplies = "supplies";
    internal const string Outings = "outings";
    internal const string GrossProfit = "gross-profit";
    internal const string Fees = "fees";
    internal const string Delivery = "delivery";
    internal const string WrittenOff = "written-off";
    internal const string Tools = "tools";
    internal const string Overhead = "overhead";
    internal const string SuppliesLost = "supplies-lost";
    internal const string Profit = "profit";
    internal const string Cash = "cash";
    internal const string Held = "held";
    internal const string Driving = "driving";
    internal const string Stock = "stock";
    internal const string Cans = "cans";
    internal const string BookValue = "book-value";
    internal const string Hours = "hours";

    // What else people call a line.
    private static readonly ImmutableArray<(string Word, string[] AlsoCalled)> OtherNames =
    [
        (Sales, ["revenue", "turnover", "takings", "income", "sold"]),
        (Returns, ["returned", "refunds", "refund", "came back", "given back"]),
        (CostOfSold, ["cogs", "cost of goods sold", "cost of sales", "cost"]),
        (Purchases, ["bought", "buying"]),
        (Supplies, ["paint", "materials", "uses"]),
        (Outings, ["trips"]),
        (GrossProfit, ["gross", "margin"]),
        (Fees, ["channel", "commission"]),
        (WrittenOff, ["broken", "stolen", "given", "scrapped", "lost"]),
        (Tools, ["wear", "depreciation", "tool wear", "wear of tools"]),
        (Overhead, ["rent", "insurance", "fruitless"]),
        (SuppliesLost, ["waste", "wasted", "missing", "shrinkage"]),
        (Profit, ["net", "net profit", "result", "made", "loss"]),
        (Cash, ["money", "payments", "spent", "paid"]),
        (Held, ["sales tax", "deposits", "tax", "owed"]),
        (Driving, ["mileage", "miles", "car"]),
        (Stock, ["inventory", "pieces", "tied up"]),
        (Cans, ["in cans", "supplies left"]),
        (BookValue, ["tools left"]),
        (Hours, ["time", "work"]),
    ];

    private static readonly KnownWords Known;

    static QuarterLine()
    {
        All =
        [
            new(Sales, "sale prices of the pieces sold"),
            new(DeliveryCharged, "what buyers paid for delivery"),
            new(Returns, "what you gave back to buyers"),
            new(CostOfSold, "what the pieces you sold had cost you"),
            new(Purchases, "what was paid for the pieces you sold"),
            new(Supplies, "supplies used up on the pieces you sold"),
            new(Outings, "outings that brought home the pieces you sold"),
            new(GrossProfit, "what is left after the pieces"),
            new(Fees, "what selling channels kept"),
            new(Delivery, "what delivery cost"),
            new(WrittenOff, "cost of pieces given away, broken, stolen and the like"),
            new(Tools, "wear of tools"),
            new(Overhead, "rent and the like, and fruitless outings"),
            new(SuppliesLost, "supplies wasted, or missing at a count"),
            new(Profit, "what you made"),
            new(Cash, "money that came in less money that went out"),
            new(Held, "money you hold for others, such as sales tax and deposits, and your own put in less taken out"),
            new(Driving, "driving at the mileage rate: reckoned, not paid"),
            new(Stock, "cost so far of the pieces that are not sold yet"),
            new(Cans, "supplies left"),
            new(BookValue, "tools at what is left of them"),
            new(Hours, "hours of the pieces sold and written off, general hours and drives for no single piece"),
        ];
        Known = new(All.Select(line => line.Word));
    }

    /// <summary>All lines, in the order of the report.</summary>
    public static ImmutableArray<QuarterLine> All { get; }

    /// <summary>Whether it is in hours and not in money.</summary>
    public bool IsHours => Word == Hours;

    /// <summary>Whether it is what is there on the last evening, not what moved in the span.</summary>
    public bool IsOnAnEvening => Word is Stock or Cans or BookValue or Held;

    /// <summary>The line that a word opens; case, number, spaces and hyphens do not matter. Null for no line.</summary>
    /// <param name="word">The word.</param>
    public static QuarterLine? Find(string word) =>
        Known.Find(word) is { Fit: WordFit.Known or WordFit.SameWord, Words: [var known] }
            ? All.First(line => line.Word == known)
            : null;

    /// <summary>Why a word opens no line, with those that do, the likeliest first; null where it opens one.</summary>
    /// <param name="word">The word; null or empty where none was given.</param>
    public static string? Refusal(string? word)
    {
        if (string.IsNullOrWhiteSpace(word))
            return $"--explain needs the word of a line, such as --explain overhead: {Listed(All.Select(line => line.Word))}.";
        if (Find(word) is not null)
            return null;
        string shown = CleanText.Shown(word);
        return Meant(word) is { } meant
            ? $"The quarter has no line '{shown}': did you mean {meant}? Others are {Listed(All.Select(line => line.Word).Where(other => other != meant))}."
            : $"The quarter has no line '{shown}'. Its lines are {Listed(All.Select(line => line.Word))}.";
    }

    private static string? Meant(string word) =>
        OtherNames.FirstOrDefault(name => new KnownWords(name.AlsoCalled).Find(word).Fit is WordFit.Known or WordFit.SameWord).Word
        ?? Known.Meant(word)
        ?? Known.Find(word).Words.FirstOrDefault();

    private static string Listed(IEnumerable<string> words) => string.Join(", ", words);
}
