using System.Globalization;

namespace FlipAnalytics;

/// <summary>
/// The accounts of the journal. Assets, equity, income and expenses are the classes by which ledger programs tell a balance
/// sheet from an income statement; stock is kept perpetually, so a sale moves the cost of the piece on its day (Weygandt,
/// Kimmel and Kieso, Accounting Principles, chapters 5 and 6, from memory).
/// </summary>
internal static class JournalAccounts
{
    /// <summary>What the log tells of money, from 0 at the start of the span: what one had then is not in the log.</summary>
    public const string Money = "assets:money";

    /// <summary>Cost of the pieces in stock; a sub-account for each piece.</summary>
    public const string Pieces = "assets:pieces";

    /// <summary>Supplies bought and not yet used up on a piece.</summary>
    public const string Supplies = "assets:supplies";

    /// <summary>Tools at book value.</summary>
    public const string Tools = "assets:tools";

    /// <summary>Sales tax taken from buyers and not yet paid over.</summary>
    public const string SalesTax = "liabilities:sales tax";

    /// <summary>Paid by buyers before the sale; below what is owed, that is an asset, where they still owe after it.</summary>
    public const string Buyers = "liabilities:paid by buyers";

    /// <summary>What is owed to the owners of pieces that were sold for them.</summary>
    public const string OwnersOfPieces = "liabilities:owners of pieces";

    /// <summary>Sale prices; of pieces of others the commission.</summary>
    public const string Sales = "income:sales";

    /// <summary>What buyers paid for delivery.</summary>
    public const string DeliveryCharged = "income:delivery charged";

    /// <summary>What was given back to buyers: it lowers the sales.</summary>
    public const string Returns = "income:returns";

    /// <summary>Cost of the pieces sold; sub-accounts <c>purchase</c>, <c>supplies</c> and <c>outings</c>.</summary>
    public const string CostOfPiecesSold = "expenses:cost of pieces sold";

    /// <summary>What channels kept.</summary>
    public const string Fees = "expenses:fees";

    /// <summary>What delivery to buyers cost.</summary>
    public const string Delivery = "expenses:delivery";

    /// <summary>Cost of pieces given away, scrapped, broken, taken apart or stolen.</summary>
    public const string WrittenOff = "expenses:written off";

    /// <summary>Wear of tools (depreciation).</summary>
    public const string ToolWear = "expenses:wear of tools";

    /// <summary>Supplies wasted, or missing at a count, less what a count found again.</summary>
    public const string SuppliesLost = "expenses:supplies lost";

    /// <summary>Costs of no single piece; a sub-account for each item of <c>overheads.csv</c>.</summary>
    public const string Overhead = "expenses:overhead";

    /// <summary>Outings that looked for pieces and brought nothing home.</summary>
    public const string FruitlessOutings = "expenses:overhead:fruitless outings";

    /// <summary>What was there before the span.</summary>
    public const string Opening = "equity:opening balances";

    /// <summary>What the owner put in and took out of the workshop, pieces the owner kept at cost.</summary>
    public const string Owner = "equity:owner";

    /// <summary>Driving at a rate for each mile or kilometre: a cost with no money of the workshop behind it.</summary>
    public const string DrivingReckoned = "equity:driving reckoned";

    /// <summary>Supplies that <c>pieces.csv</c> states beyond what cans were charged for: no purchase stands behind them.</summary>
    public const string StatedSupplies = "equity:stated supplies";

    /// <summary>Cost of pieces that left the stock on a day that is not written down, so in the profit of no span.</summary>
    public const string LeftOnUnknownDay = "equity:left on an unknown day";

    /// <summary>What is paid on another day than it is counted, or on a day that is not written down.</summary>
    public const string PaidOnAnotherDay = "equity:paid on another day";

    /// <summary>Drives for the workshop that brought nothing home and were no delivery of a single piece, by what they were for.</summary>
    internal static string OverheadOf(TripPurpose purpose) => purpose switch
    {
        TripPurpose.Delivery => Overhead + ":delivery drives",
        TripPurpose.Supplies => Overhead + ":supply runs",
        TripPurpose.Other => Overhead + ":other drives",
        _ => FruitlessOutings,
    };

    /// <summary>Account of money that is no profit.</summary>
    internal static string Of(MoneyOf of) => of switch
    {
        MoneyOf.TaxOffice => SalesTax,
        MoneyOf.Buyers => Buyers,
        MoneyOf.OwnersOfPieces => OwnersOfPieces,
        _ => Owner,
    };

    /// <summary>Sub-account of <see cref="CostOfPiecesSold"/> for a kind of cost.</summary>
    internal static string SoldOf(CostKind kind) => kind switch
    {
        CostKind.Purchase => CostOfPiecesSold + ":purchase",
        CostKind.Supplies => CostOfPiecesSold + ":supplies",
        _ => CostOfPiecesSold + ":outings",
    };

    /// <summary>
    /// Names that no two of a list share, made of words of the owner: what a ledger program cannot read is cleaned away, and
    /// names that come out alike, in either case, get a number.
    /// </summary>
    /// <param name="parent">The account above them.</param>
    /// <param name="words">The owner's words.</param>
    internal static string[] Distinct(string parent, IEnumerable<string> words)
    {
        HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase);
        return [.. words.Select(word =>
        {
            string name = JournalWords.InAccount(word);
            string free = name;
            for (int i = 2; !taken.Add(free); i++)
                free = string.Create(CultureInfo.InvariantCulture, $"{name} no {i}");
            return $"{parent}:{free}";
        })];
    }
}
