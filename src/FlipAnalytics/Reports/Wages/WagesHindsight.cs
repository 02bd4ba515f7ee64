using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A flip that the target wage would have refused at the price paid, had its end been known.</summary>
/// <param name="Id">The piece's id.</param>
/// <param name="Type">Kind of furniture.</param>
/// <param name="Paid">Price paid.</param>
/// <param name="MostToHavePaid">Highest price at which its hours would have paid the target wage; below 0 where not even a
/// gift would have.</param>
/// <param name="FullProfit">What it left after all costs.</param>
/// <param name="Hours">All its hours.</param>
/// <param name="HoursWorth">Those hours at the target wage.</param>
public sealed record HindsightRefusal(
    string Id, string Type, decimal Paid, decimal MostToHavePaid, decimal FullProfit, decimal Hours, decimal HoursWorth)
{
    /// <summary>What it paid an hour; null for no hours.</summary>
    public decimal? Earned => Hours > 0 ? FullProfit / Hours : null;

    /// <summary>What is lacking to the target wage for its hours; as much as was paid too much.</summary>
    public decimal Shortfall => HoursWorth - FullProfit;
}

/// <summary>
/// What the target wage would have refused to buy, with hindsight: at the sale price, the costs and the hours that it came
/// to. Shares of outings, tools and overhead stay as they were.
/// </summary>
/// <param name="TargetWage">What the owner wants for an hour.</param>
/// <param name="Judged">Flips with known profit and hours.</param>
/// <param name="Refused">Those bought above what they could have cost, the largest shortfall first.</param>
/// <param name="FullProfit">What they left together.</param>
/// <param name="Hours">All their hours.</param>
/// <param name="HoursWorth">Those hours at the target wage.</param>
/// <param name="EarnedByOthers">Full wage of the flips not refused; null where there is none.</param>
public sealed record WagesHindsight(
    decimal TargetWage,
    int Judged,
    ImmutableArray<HindsightRefusal> Refused,
    decimal FullProfit,
    decimal Hours,
    decimal HoursWorth,
    decimal? EarnedByOthers)
{
    /// <summary>What the refused ones paid an hour; null where there is none.</summary>
    public decimal? Earned => Hours > 0 ? FullProfit / Hours : null;

    /// <summary>What is lacking to the target wage for their hours.</summary>
    public decimal Shortfall => HoursWorth - FullProfit;

    /// <summary>Refused flips that would not have met the target wage even as a gift.</summary>
    public int NotEvenAsAGift => Refused.Count(refusal => refusal.MostToHavePaid < 0);

    /// <summary>
    /// The highest price at which the hours of a flip would have paid the wage: P + profit − w · hours; null where its
    /// profit or hours are unknown.
    /// </summary>
    /// <param name="flip">The flip.</param>
    /// <param name="targetWage">What the owner wants for an hour.</param>
    public static decimal? MostToHavePaid(FlipWage flip, decimal targetWage)
    {
        ArgumentNullException.ThrowIfNull(flip);
        return flip.Counts ? flip.Purchase + flip.FullProfit - targetWage * flip.AllHours : null;
    }

    /// <summary>The look back on some flips; null without a target wage.</summary>
    /// <param name="flips">The flips.</param>
    /// <param name="targetWage">What the owner wants for an hour.</param>
    public static WagesHindsight? Of(IEnumerable<FlipWage> flips, decimal? targetWage)
    {
        ArgumentNullException.ThrowIfNull(flips);
        if (targetWage is not { } wage)
            return null;
        FlipWage[] judged = [.. flips.Where(flip => flip.Counts)];
        ImmutableArray<HindsightRefusal> refused =
        [
            .. judged.Where(flip => flip.FullProfit < wage * flip.AllHours)
                .Select(flip => new HindsightRefusal(
                    flip.Id, flip.Type, flip.Purchase!.Value, MostToHavePaid(flip, wage)!.Value, flip.FullProfit!.Value,
                    flip.AllHours!.Value, wage * flip.AllHours.Value))
                .OrderByDescending(refusal => refusal.Shortfall),
        ];
        decimal profit = refused.Sum(refusal => refusal.FullProfit);
        decimal hours = refused.Sum(refusal => refusal.Hours);
        decimal otherHours = judged.Sum(flip => flip.AllHours!.Value) - hours;
        return new(
            wage, judged.Length, refused, profit, hours, wage * hours,
            otherHours > 0 ? (judged.Sum(flip => flip.FullProfit!.Value) - profit) / otherHours : null);
    }
}
