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
        PieceReturn[] returns = [.. books.Costs.Pieces.SelectMany(cost => cost.Returns)];
        CostLine[] overheads = [.. books.Costs.Overheads];
        Func<CostLine, TripPurpose?> purposeOf = QuarterTrailUpkeep.PurposeOf(books);
        return
        [
            .. ((YearTally[])
            [
                Dated("sales", "sold_price in pieces.csv", "sales", sold.Select(cost => (cost.Piece.SoldOn, cost.SalePrice ?? 0))),
                Dated("sales of pieces that came back", "sold_price in returns.csv", "sales",
                    returns.Select(back => (back.Row.SoldOn, back.SalePrice))),
                Dated("delivery charged", "delivery_charged in pieces.csv", "delivery_charged",
                    sold.Select(cost => (cost.Piece.SoldOn, cost.Piece.DeliveryCharged ?? 0))),
                Dated("delivery charged for pieces that came back", "delivery_charged in returns.csv", "delivery_charged",
                    returns.Select(back => (back.Row.SoldOn, back.DeliveryCharged))),
                Dated("given back to buyers", "refund in returns.csv, with what buyers no longer owe and without an owner's share", "returns",
                    returns.Select(back => ((DateOnly?)back.Row.ReturnedOn, back.GivenBack))),
                Stock("pieces bought", "bought_price in pieces.csv", "pieces_bought", line => line.Line.Kind == CostKind.Purchase),
                Dated("supplies bought", "price in supplies.csv", "supplies_bought", Paid(CostKind.Supplies)),
                // What a count found missing in a can stands behind what was stated.
                Dated("supplies stated beyond the cans", "supplies_cost in pieces.csv, less what cans were charged for",
                    "supplies_stated",
                    Arisen(line => line.IsStated).Concat(books.Costs.StatedByCounts.Select(settled => ((DateOnly?)settled.Date, -settled.Amount)))),
                Stock("outings that brought pieces home", "distance and other_cost in trips.csv", "outings",
                    line => line.Line.Kind == CostKind.Trip),
                Dated("fees, as written down", "fees in pieces.csv", "fees", Selling(CostKind.Fees, Columns.Pieces.File)),
                Dated("fees, by your rule", "[fees] in workshop.toml", "fees", Selling(CostKind.Fees, Columns.WorkshopFile)),
                Dated("fees of sales that were undone", "fees in returns.csv", "fees", Selling(CostKind.Fees, Columns.Returns.File)),
                Dated("delivery", "delivery_cost in pieces.csv", "delivery", Selling(CostKind.Delivery, Columns.Pieces.File)),
                Dated("delivery and taking back of pieces that came back", "delivery_cost and cost in returns.csv", "delivery",
                    Selling(CostKind.Delivery, Columns.Returns.File)),
                Dated("drives to buyers", "distance and other_cost in trips.csv, on the day of the sale", "delivery",
                    Selling(CostKind.Delivery, Columns.Trips.File)),
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

        IEnumerable<(DateOnly?, decimal)> Selling(CostKind kind, string file) => books.Selling
            .Where(line => line.Line.Kind == kind && line.Line.Origin.File == file).Select(line => (line.Counted, line.Line.Amount));

        YearTally Stock(string what, string column, string name, Func<StockLine, bool> which) =>
            Dated(what, column, name, Arisen(which));

        // What the books could not give a day stands before every day.
        IEnumerable<(DateOnly?, decimal)> Arisen(Func<StockLine, bool> which) => books.Lines.Where(line => !line.IsBack && which(line))
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
}
