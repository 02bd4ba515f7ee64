using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Ratios of stock and profit over a span, by their textbook definitions; null where a divisor is not above 0.</summary>
/// <remarks>
/// Average stock is the mean of the stock at cost on the evening before the span, on each month's last evening in it, and on
/// its last evening.
/// </remarks>
/// <param name="AverageStock">Average stock at cost.</param>
/// <param name="CostOfPiecesSold">Cost of pieces sold in the span.</param>
/// <param name="GrossProfit">Gross profit of the span.</param>
/// <param name="Days">Days of the span.</param>
public sealed record StockRatios(decimal AverageStock, decimal CostOfPiecesSold, decimal GrossProfit, int Days)
{
    private const decimal DaysOfYear = 365;

    /// <summary>Cost of pieces sold over average stock, in this span.</summary>
    public decimal? Turnover => AverageStock > 0 ? CostOfPiecesSold / AverageStock : null;

    /// <summary>The same at the pace of this span for 365 days.</summary>
    public decimal? TurnoverAYear => Turnover * DaysOfYear / Days;

    /// <summary>Days the average stock lasts at the pace of this span: average stock over cost of pieces sold a day.</summary>
    public decimal? DaysOfStock => CostOfPiecesSold > 0 && AverageStock > 0 ? AverageStock / CostOfPiecesSold * Days : null;

    /// <summary>Gross profit over average stock (GMROI, gross margin return on inventory investment), in this span.</summary>
    public decimal? ReturnOnStock => AverageStock > 0 ? GrossProfit / AverageStock : null;

    /// <summary>The same at the pace of this span for 365 days.</summary>
    public decimal? ReturnOnStockAYear => ReturnOnStock * DaysOfYear / Days;

    /// <summary>The mean of the stock on some evenings.</summary>
    /// <param name="evenings">Stock at cost, at least one.</param>
    public static decimal Average(ImmutableArray<decimal> evenings) => evenings.Average();
}

/// <summary>How many flips pay the costs that belong to none of them (break-even analysis).</summary>
/// <param name="FixedCosts">Overheads and wear of tools.</param>
/// <param name="ContributionAFlip">What a flip leaves after all its own costs.</param>
public sealed record BreakEven(decimal FixedCosts, decimal ContributionAFlip)
{
    /// <summary>Flips that pay the fixed costs; null where a flip leaves nothing.</summary>
    public decimal? Flips => FlipsFor(0);

    /// <summary>The same in whole flips, rounded up.</summary>
    public int? WholeFlips => Flips is { } flips && flips < int.MaxValue ? (int)decimal.Ceiling(flips) : null;

    /// <summary>Flips that pay the fixed costs and leave a profit; null where a flip leaves nothing.</summary>
    /// <param name="profit">The profit.</param>
    public decimal? FlipsFor(decimal profit) => ContributionAFlip > 0 ? (FixedCosts + profit) / ContributionAFlip : null;
}

/// <summary>Sell-through: of the pieces on offer in a span, the share that was sold in it.</summary>
/// <param name="OnSaleBefore">On sale on the evening before.</param>
/// <param name="Listed">First offered in the span; a piece sold without a day of listing counts here.</param>
/// <param name="Sold">Sold in the span.</param>
public sealed record SellThrough(int OnSaleBefore, int Listed, int Sold)
{
    /// <summary>The share, 0 to 1; null where nothing was on offer.</summary>
    public decimal? Share => OnSaleBefore + Listed > 0 ? decimal.Divide(Sold, OnSaleBefore + Listed) : null;

    internal static SellThrough Of(QuarterBooks books, ReportPeriod period)
    {
        int before = 0, listed = 0, sold = 0;
        foreach (PieceCost cost in books.Costs.Pieces)
        {
            DateOnly? left = cost.Stays.Left;
            DateOnly? offered = QuarterStock.OfferedOn(cost.Piece);
            bool isSoldNow = cost.Piece.IsSold && period.Contains(cost.Piece.SoldOn);
            if (offered < period.From && !(left < period.From))
                before++;
            else if (isSoldNow || (period.Contains(offered) && !(left < period.From)))
                listed++;
            else
                continue;
            sold += isSoldNow ? 1 : 0;
        }

        return new(before, listed, sold);
    }
}

/// <summary>The ratios of a span.</summary>
/// <param name="SellThrough">Sell-through.</param>
/// <param name="Stock">Turnover, days of stock and return on stock.</param>
/// <param name="BreakEven">Flips that pay the overheads and the wear of tools; null where nothing was sold.</param>
public sealed record QuarterRatios(SellThrough SellThrough, StockRatios Stock, BreakEven? BreakEven)
{
    internal static QuarterRatios Of(QuarterBooks books, ReportPeriod period, QuarterProfit profit) => new(
        SellThrough.Of(books, period),
        new(
            StockRatios.Average([.. Evenings(period).Select(day => QuarterStock.CostAt(books, day))]),
            profit.CostOfPiecesSold,
            profit.GrossProfit,
            period.Days),
        profit.Pieces == 0 ? null
            : new(profit.Overheads + profit.ToolWear, profit.Contribution / profit.Pieces));

    private static IEnumerable<DateOnly> Evenings(ReportPeriod period)
    {
        if (period.From > DateOnly.MinValue)
            yield return period.From.AddDays(-1);
        for (int month = 0; ; month++)
        {
            DateOnly first = new DateOnly(period.From.Year, period.From.Month, 1).AddMonths(month);
            DateOnly last = new(first.Year, first.Month, DateTime.DaysInMonth(first.Year, first.Month));
            if (last >= period.To)
                break;
            yield return last;
        }

        yield return period.To;
    }
}
