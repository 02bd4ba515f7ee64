using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// The money of one kind in all the files, and where it counts: in this year, on one line of the sheet, or not in it. The four
/// parts add up to all that the files hold of it.
/// </summary>
/// <param name="What">What kind of money, such as sales.</param>
/// <param name="Column">Where it is written.</param>
/// <param name="Line">Name of the line of the sheet that holds the part of this year; empty for what is on none.</param>
/// <param name="InYear">What counts in this year.</param>
/// <param name="Before">What counts before it.</param>
/// <param name="After">What counts after it.</param>
/// <param name="WithoutDay">What has no day; stock, supplies and tools are taken as there from the beginning.</param>
public sealed record YearTally(
    string What, string Column, string Line, decimal InYear, decimal Before, decimal After, decimal WithoutDay)
{
    internal const string Unsold = "fees, delivery and sales tax of pieces not sold";

    /// <summary>All of it.</summary>
    public decimal Total => InYear + Before + After + WithoutDay;

    internal static ImmutableArray<YearTally> Of(QuarterBooks books, ReportPeriod period)
    {
        PieceCost[] sold = [.. books.Costs.Pieces.Where(cost => cost.Piece.IsSold)];
        CostLine[] own = [.. books.Costs.Pieces.SelectMany(cost => cost.Lines)];
        CostLine[] overheads = [.. books.Costs.Overheads];
        Func<CostLine, TripPurpose?> purposeOf = QuarterTrailUpkeep.PurposeOf(books);
        return
        [
            .. ((YearTally[])
            [
                Dated("sales", "sold_price in pieces.csv", "sales", sold.Select(cost => (cost.Piece.SoldOn, cost.SalePrice ?? 0))),
                Dated("delivery charged", "delivery_charged in pieces.csv", "delivery_charged",
                    sold.Select(cost => (cost.Piece.SoldOn, cost.Piece.DeliveryCharged ?? 0))),
                Stock("pieces bought", "bought_price in pieces.csv", "pieces_bought", line => line.Line.Kind == CostKind.Purchase),
                Dated("supplies bought", "price in supplies.csv", "supplies_bought", Paid(CostKind.Supplies)),
                // What a count found missing in a can stands behind what was stated.
                Dated("supplies stated beyond the cans", "supplies_cost in pieces.csv, less what cans were charged for",
                    "supplies_stated",
                    Arisen(line => line.IsStated).Concat(books.Costs.StatedByCounts.Select(settled => ((DateOnly?)settled.Date, -settled.Amount)))),
                Stock("outings that brought pieces home", "distance and other_cost in trips.csv", "outings",
                    line => line.Line.Kind == CostKind.Trip),
                Dated("fees, as written down", "fees in pieces.csv", "fees",
                    own.Where(line => line.Kind == CostKind.Fees && IsWritten(line)).Select(Day)),
                Dated("fees, by your rule", "[fees] in workshop.toml", "fees",
                    own.Where(line => line.Kind == CostKind.Fees && !IsWritten(line)).Select(Day)),
                Dated("delivery", "delivery_cost in pieces.csv", "delivery",
                    own.Where(line => line.Kind == CostKind.Delivery && IsWritten(line)).Select(Day)),
                Dated("drives to buyers", "distance and other_cost in trips.csv, on the day of the sale", "delivery",
                    books.Drives.Select(drive => (drive.Counted, drive.Line.Amount))),
                Spread("overheads", "amount in overheads.csv", "overheads", overheads.Where(line => purposeOf(line) is null)),
                Spread("fruitless outings", "distance and other_cost in trips.csv", "fruitless_outings",
                    overheads.Where(line => purposeOf(line) == TripPurpose.Sourcing)),
                Spread("supply runs and other drives", "distance and other_cost in trips.csv", YearLine.OtherDrives,
                    overheads.Where(line => purposeOf(line) is not (null or TripPurpose.Sourcing))),
                Dated("tools bought", "price in tools.csv", "tools_bought", Paid(CostKind.Tools)),
                .. Enum.GetValues<MoneyOf>().Select(of => Dated(
                    YearLine.OutsideProfit(of).What, YearLine.OutsideProfit(of).Column, YearLine.OutsideProfit(of).Name,
                    books.Costs.Held.Where(line => line.Of == of).Select(line => (line.Date, line.Amount)))),
                // They count once the piece is sold.
                new(Unsold, "fees, delivery and sales_tax in pieces.csv", "", 0, 0, 0,
                    books.Log.Pieces.Where(piece => !piece.IsSold)
                        .Sum(piece => (piece.Fees ?? 0) + (piece.DeliveryCharged ?? 0) + (piece.DeliveryCost ?? 0) + (piece.SalesTax ?? 0))),
            ]).Where(tally => tally is not { InYear: 0, Before: 0, After: 0, WithoutDay: 0 }),
        ];

        IEnumerable<(DateOnly?, decimal)> Paid(CostKind kind) =>
            books.Costs.Cash.Where(movement => movement.Kind == kind).Select(movement => (movement.Date, -movement.Amount));

        YearTally Stock(string what, string column, string name, Func<StockLine, bool> which) =>
            Dated(what, column, name, Arisen(which));

        // What the books could not give a day stands before every day.
        IEnumerable<(DateOnly?, decimal)> Arisen(Func<StockLine, bool> which) => books.Lines.Where(which)
            .Select(line => (line.Arose == DateOnly.MinValue ? (DateOnly?)null : line.Arose, line.Line.Amount));

        YearTally Dated(string what, string column, string name, IEnumerable<(DateOnly? Day, decimal Amount)> facts)
        {
            decimal within = 0, before = 0, after = 0, without = 0;
            foreach ((DateOnly? day, decimal amount) in facts)
            {
                if (day is null)
                    without += amount;
                else if (day < period.From)
                    before += amount;
                else if (day > period.To)
                    after += amount;
                else
                    within += amount;
            }

            return new(what, column, name, within, before, after, without);
        }

        YearTally Spread(string what, string column, string name, IEnumerable<CostLine> lines)
        {
            decimal within = 0, before = 0, after = 0, without = 0;
            foreach (CostLine line in lines)
            {
                decimal inYear = CostsBySpan.Of(books.Costs, line, period);
                decimal later = line.ArisesAfter(period.To, books.Currency);
                within += inYear;
                after += later;
                if (line.Date is null)
                    without += line.Amount;
                else
                    before += line.Amount - inYear - later;
            }

            return new(what, column, name, within, before, after, without);
        }
    }

    /// <summary>Whether a line of the sheet is money that came in.</summary>
    internal static bool IsReceipt(string line) => line is "sales" or "delivery_charged"
        || Enum.GetValues<MoneyOf>().Any(of => YearLine.OutsideProfit(of).Name == line);

    private static (DateOnly? Day, decimal Amount) Day(CostLine line) => (line.Date, line.Amount);

    private static bool IsWritten(CostLine fee) => fee.Origin.File == Columns.Pieces.File;
}
