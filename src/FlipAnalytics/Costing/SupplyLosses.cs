using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What a count found to differ from the books, before what pieces state is set off against it.</summary>
/// <param name="Item">The supply.</param>
/// <param name="Date">Day from which it counts: that of the count, or of the purchase where that is later.</param>
/// <param name="CountedBefore">Day of the count before; null for none.</param>
/// <param name="Since">Day of its first purchase.</param>
/// <param name="Amount">What is missing had cost; below zero for what was found.</param>
/// <param name="What">A few words for the owner.</param>
/// <param name="Origin">The row of <c>counts.csv</c> and the rule.</param>
internal sealed record CountDifference(
    string Item, DateOnly Date, DateOnly? CountedBefore, DateOnly Since, decimal Amount, string What, CostOrigin Origin);

/// <summary>What a count found missing and a piece states to have used: the can stands behind what is stated.</summary>
/// <param name="Date">Day of the count.</param>
/// <param name="PieceId">The piece.</param>
/// <param name="Amount">Amount; below zero where less was used than cans were charged for.</param>
/// <param name="Item">The supply.</param>
/// <param name="Origin">The row of <c>counts.csv</c> and the rule.</param>
public sealed record StatedByCount(DateOnly Date, string PieceId, decimal Amount, string Item, CostOrigin Origin);

/// <summary>
/// Supplies that no piece carries: waste, and what counts find missing or find again, a cost or a gain of its day.
/// </summary>
/// <remarks>
/// Between counts the books are kept perpetually, by uses; a count puts them right, and the difference, inventory shrinkage
/// or overage, goes to the cost of the period (Weygandt, Kimmel and Kieso, Accounting Principles, chapter on merchandising
/// operations, from memory; IAS 2, paragraph 34: losses of inventories are an expense of the period in which they occur, from
/// memory). What <c>pieces.csv</c> states for supplies beyond the cans was taken from some can: where one is found short, that
/// is where it went, and it must not cost twice.
/// </remarks>
internal sealed class SupplyLosses
{
    private const string IsWasted = " wasted";
    private const string IsMissing = " missing at the count";
    private const string IsFound = " found at the count";

    private readonly List<CostLine> wasted = [];
    private readonly List<CountDifference> differences = [];

    /// <summary>The supply that one of these lines is of.</summary>
    public static string ItemOf(CostLine line)
    {
        foreach (string suffix in (string[])[IsWasted, IsMissing, IsFound])
        {
            if (line.What.EndsWith(suffix, StringComparison.Ordinal))
                return line.What[..^suffix.Length];
        }

        return line.What;
    }

    /// <summary>What a count of a supply found, as words.</summary>
    public static string AtTheCount(string item, bool isMissing) => item + (isMissing ? IsMissing : IsFound);

    public void Waste(string item, DateOnly? date, decimal cost, CostOrigin origin) =>
        wasted.Add(new(CostKind.Supplies, date, cost, item + IsWasted, origin));

    public void Differ(CountDifference difference) => differences.Add(difference);

    /// <summary>The lines of what no piece carries, and what is set off against what pieces state.</summary>
    /// <param name="sheet">The books, with what pieces state.</param>
    /// <param name="stated">What each piece states beyond the ledger.</param>
    public (ImmutableArray<CostLine> OnNoPiece, ImmutableArray<StatedByCount> Settled) SetOff(
        CostSheet sheet, IReadOnlyList<decimal> stated)
    {
        decimal[] open = [.. stated];
        (int Place, DateOnly Day)[] pieces =
        [
            .. Enumerable.Range(0, open.Length).Where(place => open[place] != 0)
                .Select(place => (Place: place, Day: DayOf(place)))
                .OrderBy(piece => piece.Day),
        ];
        List<CostLine> lines = [.. wasted];
        List<StatedByCount> settled = [];
        foreach (CountDifference difference in differences.OrderBy(difference => difference.Date))
        {
            decimal rest = difference.Amount;
            foreach (var (place, day) in pieces)
            {
                if (rest == 0 || day > difference.Date)
                    break;
                bool isSameWay = decimal.Sign(open[place]) == decimal.Sign(rest);
                if (!isSameWay || day < difference.Since || day <= difference.CountedBefore)
                    continue;
                decimal part = Math.Abs(open[place]) < Math.Abs(rest) ? open[place] : rest;
                (open[place], rest) = (open[place] - part, rest - part);
                settled.Add(new(difference.Date, sheet.Log.Pieces[place].Id, part, difference.Item, difference.Origin));
            }

            if (rest == 0)
                continue;
            decimal known = difference.Amount - rest;
            CostOrigin origin = known == 0 ? difference.Origin : difference.Origin with
            {
                Rule = FormattableString.Invariant($"{difference.Origin.Rule} Of its cost {Math.Abs(known)} is in what pieces.csv states."),
            };
            lines.Add(new(CostKind.Supplies, difference.Date, rest, difference.What, origin));
        }

        return ([.. lines.OrderBy(line => line.Date ?? DateOnly.MaxValue)], [.. settled]);

        DateOnly DayOf(int place) => sheet.Stays[place].AroseOn(sheet.Calendar.WorkDay(place));
    }
}
