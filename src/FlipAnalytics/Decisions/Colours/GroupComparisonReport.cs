using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics;

/// <summary>A difference as a share: 0.1 is 10 % more, −0.3 is 30 % less.</summary>
/// <param name="Share">Middle estimate.</param>
/// <param name="Low">Lower end of the range.</param>
/// <param name="High">Upper end of the range.</param>
/// <param name="Level">Chance that the range holds, 0 to 1.</param>
public sealed record RelativeDifference(double Share, double Low, double High, double Level);

/// <summary>Money for each week on sale: a ratio of sums over pieces sold, on sale and gone.</summary>
/// <param name="PerWeek">Net proceeds less purchase, supplies and hours at the target wage, a week; null where no sold piece
/// has all of them on record.</param>
/// <param name="Money">The money of the sold pieces counted.</param>
/// <param name="Weeks">Weeks on sale of the pieces counted, unsold ones included.</param>
/// <param name="SoldCounted">Sold pieces counted.</param>
/// <param name="UnsoldCounted">Pieces on sale or gone whose weeks count.</param>
/// <param name="LeftOut">Pieces left out because something is not written down.</param>
public sealed record MoneyPerWeek(
    decimal? PerWeek, decimal Money, decimal Weeks, int SoldCounted, int UnsoldCounted, int LeftOut);

/// <summary>The pieces listed in the last year against those before.</summary>
/// <param name="Days">How much longer they take; null where there are too few to say.</param>
/// <param name="SoldLately">Sold of those listed in the last 365 days.</param>
/// <param name="SoldBefore">Sold of those listed earlier.</param>
public sealed record DaysTrend(RelativeDifference? Days, int SoldLately, int SoldBefore);

/// <summary>One color (type, finish, source, channel) and how it sells.</summary>
public sealed record LevelRecord
{
    /// <summary>The owner's word; "not written down" for pieces without one.</summary>
    public required string Level { get; init; }

    /// <summary>The family of a color; null where unknown or for other groupings.</summary>
    public string? Family { get; init; }

    /// <summary>Pieces sold.</summary>
    public required int Sold { get; init; }

    /// <summary>Pieces on sale now.</summary>
    public required int OnSale { get; init; }

    /// <summary>Whether enough were sold to be compared with the rest.</summary>
    public required bool IsCompared { get; init; }

    /// <summary>Share still unsold after so many days, with interval and counts at risk (Kaplan–Meier); empty where no piece
    /// has a listing date.</summary>
    public ImmutableArray<SurvivalStep> Curve { get; init; } = [];

    /// <summary>Days until half are sold, unsold pieces counted; null where no piece has a listing date.</summary>
    public SurvivalQuantile? MedianDays { get; init; }

    /// <summary>How much longer pieces take than the average level, all else alike, shrunk; null where not in the model.</summary>
    public RelativeDifference? Days { get; init; }

    /// <summary>The same for pieces listed in the last year: it weighs first, earlier years as far as taste did not move; null
    /// where none has a listing date.</summary>
    public RelativeDifference? DaysLately { get; init; }

    /// <summary>How much more they bring than the average level, all else alike, shrunk; null where not in the model.</summary>
    public RelativeDifference? Price { get; init; }

    /// <summary>Chance of a difference in days from the rest as large by luck alone, allowing for every test made.</summary>
    public double? DaysP { get; init; }

    /// <summary>The same for the sale price.</summary>
    public double? PriceP { get; init; }

    /// <summary>Chance that these sales would show it if it truly sold in 30 % fewer days than the rest.</summary>
    public double? ChanceToShow { get; init; }

    /// <summary>The least share of days saved that these sales would show with a chance of 80 %.</summary>
    public double? LeastShown { get; init; }

    /// <summary>Chance that it sells fastest among the compared.</summary>
    public double? ChanceFastest { get; init; }

    /// <summary>Chance that it is among the three fastest.</summary>
    public double? ChanceTopThree { get; init; }

    /// <summary>Money for each week on sale.</summary>
    public required MoneyPerWeek Money { get; init; }

    /// <summary>The last year against before.</summary>
    public required DaysTrend Trend { get; init; }
}

/// <summary>Two levels that can be told apart.</summary>
/// <param name="First">The lower one: fewer days, or a lower price.</param>
/// <param name="Second">The other.</param>
/// <param name="Share">How much lower the first is, below 0.</param>
/// <param name="P">Chance of a difference as large by luck alone, allowing for every test made (Holm).</param>
public sealed record PairDifference(string First, string Second, double Share, double P);

/// <summary>How much more often a level sells on any day than another, among pieces still on sale (Cox 1972).</summary>
/// <param name="Level">The level.</param>
/// <param name="Against">The level it is compared with: the one sold most.</param>
/// <param name="HazardRatio">The ratio; above 1 sells sooner.</param>
/// <param name="Low">Lower end of its 95 % range.</param>
/// <param name="High">Upper end.</param>
public sealed record LevelHazard(string Level, string Against, double HazardRatio, double Low, double High);

/// <summary>Whether levels can be told apart at all.</summary>
public sealed record ToldApart
{
    /// <summary>Confidence of every claim together, 0 to 1: the chance of no false one where there is no difference.</summary>
    public required double Confidence { get; init; }

    /// <summary>Sales a level needs to be compared.</summary>
    public required int LeastSales { get; init; }

    /// <summary>The levels compared, most sold first.</summary>
    public required ImmutableArray<string> Compared { get; init; }

    /// <summary>Levels with a sale that have too few.</summary>
    public required ImmutableArray<string> TooFew { get; init; }

    /// <summary>Chance of differences in days as large by luck alone, allowing for the test of prices; null without a test.
    /// </summary>
    public double? DaysP { get; init; }

    /// <summary>The same for the sale price, allowing for the test of days.</summary>
    public double? PriceP { get; init; }

    /// <summary>Whether days differ, with the confidence.</summary>
    public bool DaysDiffer => DaysP <= 1 - Confidence;

    /// <summary>Whether sale prices differ, with the confidence.</summary>
    public bool PricesDiffer => PriceP <= 1 - Confidence;

    /// <summary>The plain log-rank test within types, without any other adjustment, for those who know it.</summary>
    public LogRank? LogRank { get; init; }

    /// <summary>
    /// Cox's hazard ratios within types, without any other adjustment, for those who know them; empty where they cannot be
    /// estimated.
    /// </summary>
    public ImmutableArray<LevelHazard> Hazards { get; init; } = [];

    /// <summary>Pairs told apart by days; none unless days differ.</summary>
    public ImmutableArray<PairDifference> DaysPairs { get; init; } = [];

    /// <summary>Pairs told apart by sale price; none unless prices differ.</summary>
    public ImmutableArray<PairDifference> PricePairs { get; init; } = [];
}

/// <summary>What a piece would likely bring in one color or finish.</summary>
/// <param name="Level">The color or finish.</param>
/// <param name="Money">Mean of what is left for buying the piece after fees, supplies, hours at the target wage and holding.
/// </param>
/// <param name="Days">Median days on market.</param>
/// <param name="IsCompared">Whether enough were sold to be compared with the rest.</param>
/// <param name="ChanceBest">Chance that it truly leaves most of the compared; null where it is not compared.</param>
public sealed record NextChoice(string Level, decimal Money, decimal Days, bool IsCompared, double? ChanceBest);

/// <summary>What to give the next piece of a type.</summary>
/// <param name="Type">The type.</param>
/// <param name="Choices">The choices, most money first.</param>
/// <param name="MoreFlips">About how many more sold flips in the two best would make the choice between them 90 % sure, if the
/// difference is what it seems; null where it is so already or there is one choice.</param>
public sealed record NextPiece(string Type, ImmutableArray<NextChoice> Choices, int? MoreFlips)
{
    /// <summary>Whether some choice leaves anything for buying the piece.</summary>
    public bool Pays => Choices.Any(choice => choice.Money > 0);
}

/// <summary>Which colors (types, finishes, sources, channels) sell fast and well, and whether it can be told at all.</summary>
public sealed record GroupComparisonReport
{
    /// <summary>The log's date.</summary>
    public required DateOnly AsOf { get; init; }

    /// <summary>The workshop's settings.</summary>
    public required Workshop Workshop { get; init; }

    /// <summary>The grouping.</summary>
    public required GroupedBy By { get; init; }

    /// <summary>How long pieces of each level stay on the market, as seen; the curves of <see cref="Levels"/> are these.</summary>
    public required MarketCurves Market { get; init; }

    /// <summary>The wage hours are paid at.</summary>
    public required decimal TargetWage { get; init; }

    /// <summary>Pieces sold in the whole log.</summary>
    public required int Sold { get; init; }

    /// <summary>Whether levels can be told apart.</summary>
    public required ToldApart ToldApart { get; init; }

    /// <summary>Every level, fastest in the last year first; "not written down" last.</summary>
    public required ImmutableArray<LevelRecord> Levels { get; init; }

    /// <summary>What to give the next piece; null where the grouping is not chosen at the bench or nothing is known.</summary>
    public NextPiece? Next { get; init; }

    /// <summary>The line on a row that is worth a look and on which the answer hangs; null where there is none.</summary>
    public string? WorthALook { get; init; }

    /// <summary>What it comes to.</summary>
    public GroupAdvice Advice => GroupAdvice.Of(this);

    /// <summary>The choices sold often enough to be compared, those that are recommended first.</summary>
    public ImmutableArray<NextChoice> Choices => Next is not { } next ? [] :
    [
        .. next.Choices.Where(choice => choice.IsCompared).OrderByDescending(choice => Advice.Recommended.Contains(choice.Level)),
    ];

    /// <summary>What was made of the words of the question: taken for words of the log, or new to it.</summary>
    public ImmutableArray<string> WordNotes { get; init; } = [];

    /// <summary>What was left out of which number, and words that may mean the same.</summary>
    public ImmutableArray<string> Notes { get; init; } = [];
}
