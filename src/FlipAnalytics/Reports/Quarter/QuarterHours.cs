using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The profit for an hour of the owner's work.</summary>
/// <remarks>
/// Over the pieces sold in the span whose hours and both prices are known; a sale that was undone is none of them, and what it and
/// the return left is borne like other costs. Where those are all, profit is the net profit, and
/// hours are theirs, at the bench and on outings, whenever worked, the general hours of the span, and those of the pieces written
/// off in it. Where they are some, they bear costs and hours of others in proportion to their number.
/// </remarks>
/// <param name="Pieces">Pieces it rests on.</param>
/// <param name="OfPieces">Pieces sold.</param>
/// <param name="Profit">Profit.</param>
/// <param name="Hours">Hours, above 0.</param>
/// <param name="PerHour">Profit an hour, rounded to the currency's minor unit.</param>
public sealed record QuarterWage(int Pieces, int OfPieces, decimal Profit, decimal Hours, decimal PerHour);

/// <summary>The hours of a span, by what they belong to and by when they were worked.</summary>
/// <param name="BenchOfSold">Hands-on hours of the pieces sold, whenever worked; unknown ones are not in it.</param>
/// <param name="OutingsOfSold">Their share of the hours of the outings that brought them home.</param>
/// <param name="General">Hours of no single piece dated in the span, fruitless outings included.</param>
/// <param name="OfWrittenOff">Hours of the pieces given away, broken, stolen and the like in the span, whenever worked.</param>
/// <param name="SoldWithout">Pieces sold whose hands-on hours are unknown.</param>
/// <param name="Worked">Hours worked in the span on whatever it was, as far as the log tells the day.</param>
/// <param name="Wage">The wage of the span, with its own costs; null where nothing was sold or no hours are known.</param>
/// <param name="Bridge">From the full wage of the pieces sold, with what they carry, to the wage of the span; null without
/// a wage.</param>
/// <param name="Everywhere">Every hour of the log, in the wage of the span or outside it.</param>
public sealed record QuarterHours(
    decimal BenchOfSold, decimal OutingsOfSold, decimal General, decimal OfWrittenOff, int SoldWithout, decimal Worked,
    QuarterWage? Wage, WageBridge? Bridge, WageHours Everywhere)
{
    /// <summary>Hours that belong to the pieces sold and to the span.</summary>
    public decimal Belonging => BenchOfSold + OutingsOfSold + General + OfWrittenOff;

    internal static QuarterHours Of(
        QuarterBooks books, ReportPeriod period, ImmutableArray<QuarterSale> sales, QuarterProfit profit)
    {
        decimal general = books.Hours.General.Where(entry => period.Contains(entry.Date)).Sum(entry => entry.Hours);
        decimal writtenOff = books.Log.Pieces.Zip(books.Hours.Pieces)
            .Where(piece => piece.First.IsWrittenOff && period.Contains(piece.First.LeftOn))
            .Sum(piece => piece.Second.Own);
        var bridge = WageBridge.Of(books.Costs, books.Hours, period);
        return new(
            sales.Sum(sale => sale.BenchHours ?? 0),
            sales.Where(sale => sale.BenchHours is not null).Sum(sale => sale.OutingHours),
            general,
            writtenOff,
            sales.Count(sale => sale.BenchHours is null),
            general + Away(books, period) + AtTheBench(books, period),
            WageOf(sales, profit, general + writtenOff, books.Currency),
            bridge,
            WageHours.Of(books.Log, books.Hours, period, bridge));
    }

    /// <summary>The wage of some sales; a pure function, so that it can be worked by hand.</summary>
    internal static QuarterWage? WageOf(
        ImmutableArray<QuarterSale> sales, QuarterProfit profit, decimal otherHours, Currency currency)
    {
        QuarterSale[] standing = [.. sales.Where(sale => sale.ReturnedOn is null)];
        QuarterSale[] known = [.. standing.Where(sale => sale.HasPrices && sale.Hours is not null)];
        // As everywhere, hours on outings alone make no wage.
        if (!known.Any(sale => sale.BenchHours > 0))
            return null;
        bool isAll = known.Length == standing.Length;
        decimal part = decimal.Divide(known.Length, standing.Length);
        decimal earned = isAll ? profit.Net
            : known.Sum(sale => sale.Contribution) - currency.Round((standing.Sum(sale => sale.Contribution) - profit.Net) * part);
        decimal hours = known.Sum(sale => sale.Hours!.Value)
            + WageBridge.BorneHoursOf(otherHours, known.Length, standing.Length);
        return new(known.Length, standing.Length, earned, hours, currency.Round(earned / hours));
    }

    private static decimal Away(QuarterBooks books, ReportPeriod period) =>
        books.Hours.Outings.Where(outing => period.Contains(outing.Date)).Sum(outing => outing.Hours);

    // A piece without dated entries was worked on when it was ready, as the sharing of overheads has it.
    private static decimal AtTheBench(QuarterBooks books, ReportPeriod period) =>
        books.Calendar.Between(period.From, period.To == DateOnly.MaxValue ? period.To : period.To.AddDays(1))
            .Where(work => books.Hours.Pieces[work.Index].Bench is not null)
            .Sum(work => work.Weight);
}
