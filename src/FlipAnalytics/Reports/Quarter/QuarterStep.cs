using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Something to do next that follows from the numbers.</summary>
/// <param name="What">What to do: lower, stop buying, write down, finish, use up.</param>
/// <param name="Subject">What it is about: pieces, a type, a column.</param>
/// <param name="Count">How many pieces or rows it is about.</param>
/// <param name="Amount">Money tied up or spent in it; null where it is not about money.</param>
/// <param name="Hours">Hours it takes; null where it is not about hours.</param>
/// <param name="Wage">Profit an hour it paid; null where it is not about a wage.</param>
/// <param name="Text">The whole in a sentence or two.</param>
public sealed record QuarterStep(
    string What, string Subject, int Count, decimal? Amount, decimal? Hours, decimal? Wage, string Text);

/// <summary>Finds what to do next: each rule looks at one number and says nothing where it is in order.</summary>
internal sealed class QuarterSteps(
    QuarterBooks books, ReportPeriod period, QuarterStock closing, ImmutableArray<QuarterSale> sales)
{
    // Older than a season on sale; ageing of stock is looked at in such steps, by common practice.
    private const int LongOnSaleInDays = 90;

    // Fewer flips of a type than this may have been bad luck.
    private const int EnoughFlips = 4;

    private const int ShownPieces = 3;

    // More than this many months of supplies ahead is money that could buy pieces.
    private const decimal MonthsAhead = 3;

    private readonly Workshop workshop = books.Log.Workshop;

    public ImmutableArray<QuarterStep> Find() =>
        [.. new[] { Lower(), Queue(), UseUp() }.Concat(StopBuying()).Concat(WriteDown()).OfType<QuarterStep>()];

    private QuarterStep? Lower()
    {
        QuarterStockPiece[] old = [.. closing.Pieces.Where(piece => piece.DaysOnSale > LongOnSaleInDays)
            .OrderByDescending(piece => piece.Cost).ThenByDescending(piece => piece.DaysOnSale)];
        if (old.Length == 0)
            return null;
        decimal tied = old.Sum(piece => piece.Cost);
        string pieces = string.Join("; ", old.Take(ShownPieces).Select(piece => Text(
            $"{piece.Id}, {piece.Type}, {piece.DaysOnSale} days, cost {Money(piece.Cost)}{Asks(piece.Id)}")));
        string more = old.Length > ShownPieces ? Text($"; and {old.Length - ShownPieces} more") : "";
        return new(
            "lower", "pieces long on sale", old.Length, tied, null, null,
            Text($"Lower the price or give up: {Pieces(old.Length)} on sale for over {LongOnSaleInDays} days {(old.Length == 1 ? "holds" : "hold")} {Money(tied)}. {pieces}{more}."));
    }

    private QuarterStep? Queue()
    {
        QuarterStockPiece[] waiting = [.. closing.Pieces.Where(piece => !piece.IsOnSale)];
        decimal[] known = [.. (sales.Any(sale => sale.BenchHours > 0)
            ? sales.Select(sale => sale.BenchHours)
            : books.Costs.Pieces.Where(cost => cost.Piece.IsSold).Select(cost => cost.Hours)).OfType<decimal>().Where(hours => hours > 0)];
        if (waiting.Length == 0 || known.Length == 0 || workshop.HoursPerWeek is not > 0)
            return null;
        decimal each = known.Average();
        decimal hours = Round(each * waiting.Length, 1);
        decimal weeks = Round(hours / workshop.HoursPerWeek.Value, 1);
        string advice = weeks > 4 ? " Finish these before buying more." : "";
        return new(
            "finish", "pieces in the workshop", waiting.Length, waiting.Sum(piece => piece.Cost), hours, null,
            Text($"{Pieces(waiting.Length)} in the workshop: at {each:0.0} h each about {hours:0} h, or {weeks:0.0} weeks of your {workshop.HoursPerWeek:0.##} h.{advice}"));
    }

    private QuarterStep? UseUp()
    {
        // What pieces state to have used beyond the cans has probably come from the cans.
        decimal there = closing.InCans - Math.Max(0, closing.StatedBeyondCans);
        decimal used = books.Lines.Where(line => !line.IsBack && line.Line.Kind == CostKind.Supplies && period.Contains(line.Arose))
            .Sum(line => line.Line.Amount);
        if (used <= 0 || there <= 0)
            return null;
        decimal months = Round(there / used * period.Days * 12 / 365, 1);
        return months <= MonthsAhead ? null : new(
            "use up", "supplies in cans", books.Costs.SuppliesLeft.Count(stock => stock.Value > 0), there, null, null,
            Text($"Use up supplies before buying more: about {Money(there)} is in cans, {months:0.0} months at this pace."));
    }

    private IEnumerable<QuarterStep> StopBuying()
    {
        if (workshop.TargetWage is not { } target)
            return [];
        DateOnly from = period.To.DayNumber < 365 ? DateOnly.MinValue : period.To.AddDays(-364);
        return FlipResult.Sold(books.Costs, books.Hours, piece => piece.SoldOn >= from && piece.SoldOn <= period.To)
            .Where(flip => flip.FullWage is not null)
            .GroupBy(flip => flip.Piece.Type, StringComparer.OrdinalIgnoreCase)
            .Select(type => (Type: type.Key, Count: type.Count(), Hours: type.Sum(flip => flip.Hours.All!.Value),
                Profit: type.Sum(flip => flip.FullProfit!.Value)))
            .Where(type => type.Count >= EnoughFlips && type.Profit < target * type.Hours)
            .OrderBy(type => type.Profit / type.Hours)
            .Select(type => (Flips: type, Wage: books.Currency.Round(type.Profit / type.Hours)))
            .Select(type => new QuarterStep(
                "stop buying", type.Flips.Type, type.Flips.Count, type.Flips.Profit, Round(type.Flips.Hours, 2), type.Wage,
                Text($"{Capital(type.Flips.Type)}: pay less or stop buying; {type.Flips.Count} sold within a year paid {Money(type.Wage)} an hour, not {Money(target)}.")));
    }

    private IEnumerable<QuarterStep> WriteDown()
    {
        (string Column, string Word, int Count)[] gaps =
        [
            ("hours", "hours", sales.Count(sale => sale.BenchHours is null)),
            .. sales.SelectMany(sale => sale.Missing).GroupBy(word => word).Select(word => (word.Key, word.Key, word.Count())),
        ];
        string[] missing = [.. gaps.Where(gap => gap.Count > 0).Select(gap => Text($"{gap.Word} of {gap.Count}"))];
        if (missing.Length > 0)
        {
            yield return new(
                "write down", string.Join(", ", gaps.Where(gap => gap.Count > 0).Select(gap => gap.Column)),
                gaps.Sum(gap => gap.Count), null, null, null,
                Text($"Write down what is missing of the {Pieces(sales.Length)} sold: {string.Join(", ", missing)}."));
        }
    }

    private string Asks(string id)
    {
        Piece piece = books.Costs[id].Piece;
        decimal? price = books.Log.AskingPrices
            .Where(change => change.Date <= closing.Day && string.Equals(change.PieceId, id, StringComparison.OrdinalIgnoreCase))
            .MaxBy(change => change.Date)?.Price ?? piece.AskingPrice;
        return price is { } asked ? Text($", asks {Money(asked)}") : "";
    }

    private string Money(decimal amount) => MoneyText.Exact(amount, workshop);

    private static decimal Round(decimal number, int digits) => decimal.Round(number, digits, MidpointRounding.AwayFromZero);

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Pieces(int count) => TextLines.Counted(count, "piece");

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
