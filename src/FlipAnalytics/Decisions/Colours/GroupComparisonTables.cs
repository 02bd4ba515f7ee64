using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The comparison of colors (types, finishes, sources, channels) as tables, for a spreadsheet.</summary>
public static class GroupComparisonTables
{
    /// <summary>How each sells, what was told apart and what to give the next piece: a table each.</summary>
    /// <param name="report">The comparison.</param>
    public static ImmutableArray<ReportTable> Tables(this GroupComparisonReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return [Levels(report), ToldApart(report), .. report.Next is { } next ? ImmutableArray.Create(Next(report, next)) : []];
    }

    private static ReportTable Levels(GroupComparisonReport report) => ReportTable.Of(
        // colors.csv would be a file of the log.
        report.By.Plural() + "-compared", $"How each {report.By.Singular()} sells, fastest in the last year first", report.Levels,
        (report.By.Singular(), "Your word.", l => l.Level),
        ("family", "Family of a color.", l => l.Family),
        ("sold", "Pieces sold.", l => l.Sold),
        ("on_sale", "Pieces on sale now.", l => l.OnSale),
        ("is_compared", "Whether enough were sold to be compared.", l => l.IsCompared),
        ("median_days", "Days until half are sold, unsold pieces counted.", l => Digits(l.MedianDays?.Time, 1)),
        ("days", "How much longer than the average, all else alike, as a share.", l => Share(l.Days?.Share)),
        ("days_low", "8 in 10: from this,", l => Share(l.Days?.Low)),
        ("days_high", "to this.", l => Share(l.Days?.High)),
        ("days_lately", "The same in the last year.", l => Share(l.DaysLately?.Share)),
        ("days_lately_low", "8 in 10: from this,", l => Share(l.DaysLately?.Low)),
        ("days_lately_high", "to this.", l => Share(l.DaysLately?.High)),
        ("price", "How much more they bring than the average, all else alike, as a share.", l => Share(l.Price?.Share)),
        ("price_low", "8 in 10: from this,", l => Share(l.Price?.Low)),
        ("price_high", "to this.", l => Share(l.Price?.High)),
        ("days_p", "Chance of days so different from the rest by luck alone.", l => Share(l.DaysP)),
        ("price_p", "Chance of prices so different from the rest by luck alone.", l => Share(l.PriceP)),
        ("chance_fastest", "Chance that it sells fastest of the compared.", l => Share(l.ChanceFastest)),
        ("money_per_week", "Money left for each week on sale, hours paid at the target wage.", l => l.Money.PerWeek),
        ("weeks", "Weeks on sale behind it.", l => l.Money.Weeks),
        ("left_out", "Pieces left out of it because something is not written down.", l => l.Money.LeftOut),
        ("sold_lately", "Sold of those listed in the last year.", l => l.Trend.SoldLately),
        ("sold_before", "Sold of those listed before.", l => l.Trend.SoldBefore));

    private static ReportTable ToldApart(GroupComparisonReport report) => ReportTable.Of(
        report.By.Plural() + "-told-apart", $"Which {report.By.Plural()} differ by more than luck",
        report.ToldApart.DaysPairs.Select(pair => (What: "days", Pair: pair))
            .Concat(report.ToldApart.PricePairs.Select(pair => (What: "price", Pair: pair))),
        ("what", "In days on sale, or in sale price.", row => row.What),
        ("first", "The lower one.", row => row.Pair.First),
        ("second", "The other.", row => row.Pair.Second),
        ("difference", "How much lower the first is, as a share.", row => Share(row.Pair.Share)),
        ("p", "Chance of a difference as large by luck alone, allowing for every test made.", row => Share(row.Pair.P)));

    private static ReportTable Next(GroupComparisonReport report, NextPiece next) => ReportTable.Of(
        report.By.Plural() + "-next-piece", $"What to give the next {next.Type}, most money first", next.Choices,
        (report.By.Singular(), "Your word.", choice => choice.Level),
        ("left_for_buying", "Left for buying the piece after fees, supplies, hours at the target wage and holding.", choice => choice.Money),
        ("median_days", "Likely days on sale.", choice => choice.Days),
        ("is_compared", "Whether enough were sold to be compared.", choice => choice.IsCompared),
        ("chance_best", "Chance that it leaves most of the compared.", choice => Share(choice.ChanceBest)));

    private static decimal? Share(double? share) => Digits(share, 4);

    private static decimal? Digits(double? value, int digits) => value is { } known ? Crossing.Rounded(known, digits) : null;
}
