namespace FlipAnalytics;

/// <summary>Money in and out, movement by movement, money of others, and driving, which is reckoned and not paid.</summary>
internal static class QuarterTrailCash
{
    public static QuarterTrail Cash(QuarterBooks books, QuarterReport report)
    {
        CashMovement[] paid = [.. Within(books, report).Where(movement => !movement.IsReckoned)];
        IEnumerable<QuarterTrailPart> parts = paid
            .GroupBy(QuarterCash.PlaceOf).OrderBy(kind => kind.Key)
            .SelectMany(kind => kind.OrderBy(movement => movement.Date).Select(movement => Part(movement, movement.Amount) with
            {
                Group = QuarterCash.NameOf(kind.Key),
            }));
        string money = $"{MoneyText.Exact(report.Cash.In, report.Workshop)} came in, {MoneyText.Exact(report.Cash.Out, report.Workshop)} went out.";
        string driving = $"Driving of {MoneyText.Exact(report.Cash.DrivingReckoned, report.Workshop)} is reckoned, not paid, so it is not in it: --explain driving.";
        return QuarterTrail.Of(report, QuarterLine.Cash, report.Cash.Change, paid.Length, "movement", parts,
            [
                money,
                .. report.Cash.DrivingReckoned == 0 ? Array.Empty<string>() : [driving],
                .. QuarterTrail.Undated(report, [QuarterUndated.Sold, .. QuarterUndated.Payments]),
            ]);
    }

    /// <summary>Money held for others, and the owner's own: every change of it up to the last evening.</summary>
    public static QuarterTrail Held(QuarterBooks books, QuarterReport report)
    {
        MoneyOfOthers[] changes = [.. books.Costs.Held.Where(line => line.Date <= report.Reckoned.To)];
        var parts = changes.GroupBy(line => line.Of).Where(of => of.Sum(line => line.Amount) != 0).OrderBy(of => of.Key)
            .SelectMany(of => of.OrderBy(line => line.Date).Select(line => QuarterTrailPart.Of(
                line.Origin, line.PieceId is { } id ? $"{id}, {line.What}" : line.What, line.Date, line.Amount) with
            {
                Group = report.Held.First(held => held.Of == of.Key).What,
                Id = line.PieceId,
            }))
            .ToArray();
        return QuarterTrail.Of(
            report, QuarterLine.Held, report.Held.Sum(held => held.Closing), parts.Length, "change", parts);
    }

    public static QuarterTrail Driving(QuarterBooks books, QuarterReport report)
    {
        CashMovement[] driven = [.. Within(books, report).Where(movement => movement.IsReckoned)];
        return QuarterTrail.Of(report, QuarterLine.Driving, report.Cash.DrivingReckoned, driven.Length, "trip",
            driven.Select(movement => Part(movement, -movement.Amount)),
            books.Costs.Notes.Where(note => note.StartsWith("What driving cost", StringComparison.Ordinal)
                || note.Contains("mileage rate", StringComparison.Ordinal)));
    }

    private static IEnumerable<CashMovement> Within(QuarterBooks books, QuarterReport report) =>
        books.Costs.Cash.Where(movement => report.Reckoned.Contains(movement.Date));

    private static QuarterTrailPart Part(CashMovement movement, decimal amount) =>
        QuarterTrailPart.Of(movement.Origin, movement.What, movement.Date, amount) with
        {
            Id = movement.PieceId,
            Rule = movement.Origin.Rule + TakenAsPaid(movement),
        };

    // What the log does not say of the day of a payment is taken from the fact it belongs to.
    private static string TakenAsPaid(CashMovement movement) => movement switch
    {
        { Kind: CostKind.Overhead } when movement.Origin.File == Columns.Overheads.File => " Taken as paid on the first of its month.",
        { Of: MoneyOf.OwnersOfPieces } when movement.Origin.File == Columns.Pieces.File => " Taken as paid to its owner at the sale.",
        { Kind: null } when movement.Origin.File == Columns.Pieces.File => " Taken as paid on the day of the sale.",
        _ => "",
    };
}
