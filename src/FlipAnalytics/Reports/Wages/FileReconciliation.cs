using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>The costs of a file, added up row by row, against what the books took from it.</summary>
/// <param name="Name">The file, or what is reckoned from it.</param>
/// <param name="Written">The amounts of its rows as they stand, so that a spreadsheet finds the same sum.</param>
/// <param name="Reckoned">What its rows cost by a rule: driving at the mileage rate, fees by the channel's rule.</param>
/// <param name="InBooks">What the books took from it.</param>
public sealed record FileReconciliation(string Name, decimal Written, decimal Reckoned, decimal InBooks)
{
    /// <summary>Rows and what was reckoned from them less the books: always 0.</summary>
    public decimal Difference => Written + Reckoned - InBooks;

    internal static ImmutableArray<FileReconciliation> Of(SalesLog log, CostBook book)
    {
        Piece[] sold = [.. log.Pieces.Where(piece => piece.IsSold)];
        decimal fruitless = book.Overheads.Where(line => line.Origin.File == Columns.Trips.File).Sum(line => line.Amount);
        CostLine[] lines = [.. book.Pieces.SelectMany(cost => cost.Lines)];
        decimal drives = lines.Where(PieceCost.IsDrive).Sum(line => line.Amount);
        return
        [
            new("pieces.csv, prices paid", log.Pieces.Sum(piece => piece.BoughtPrice ?? 0), 0, Spent(CostKind.Purchase)),
            new("pieces.csv, delivery", sold.Sum(piece => piece.DeliveryCost ?? 0), 0, Spent(CostKind.Delivery) - drives - OfReturns(CostKind.Delivery)),
            new("pieces.csv, fees", sold.Sum(piece => piece.Fees ?? 0),
                -book.Cash.Where(paid => paid.Kind == CostKind.Fees && paid.Origin.File == Columns.WorkshopFile).Sum(paid => paid.Amount),
                Spent(CostKind.Fees) - OfReturns(CostKind.Fees)),
            new(Columns.Supplies.File, log.Supplies.Sum(purchase => purchase.Price ?? 0), 0, Spent(CostKind.Supplies)),
            new(Columns.Tools.File, log.Tools.Sum(tool => tool.Price ?? 0), 0, Spent(CostKind.Tools)),
            new(Columns.Trips.File, log.Trips.Sum(trip => trip.OtherCost ?? 0),
                -book.Cash.Where(paid => paid.IsReckoned).Sum(paid => paid.Amount), Spent(CostKind.Trip) + fruitless + drives),
            new($"{Columns.Returns.File}, fees, delivery and cost",
                log.Returns.Sum(back => (back.Cost ?? 0) + (back.CameBack ? (back.Fees ?? 0) + (back.DeliveryCost ?? 0) : 0)), 0,
                OfReturns(CostKind.Fees) + OfReturns(CostKind.Delivery)),
            new(Columns.Overheads.File, log.Overheads.Sum(row => row.Amount), 0, Spent(CostKind.Overhead) - fruitless),
        ];

        decimal Spent(CostKind kind) => book.Total(kind).Spent;

        decimal OfReturns(CostKind kind) => lines.Where(line => line.Kind == kind && line.Origin.File == Columns.Returns.File).Sum(line => line.Amount);
    }
}
