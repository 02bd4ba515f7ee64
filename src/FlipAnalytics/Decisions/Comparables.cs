using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// Past sales that resemble a candidate. The distance adds up: 2 for another type, the difference in log size, ½ for
/// another colour (¼ within the family), ¼ for another condition or finish, and ¼ a year of age; what is unknown on either
/// side adds half of what a difference would.
/// </summary>
internal static class Comparables
{
    private const int Shown = 3;

    public static SalesBasis Basis(SalesLog log, Candidate candidate)
    {
        var sold = log.Pieces.Where(p => p.SoldPrice > 0).ToArray();
        return new(
            sold.Count(p => Same(p.Type, candidate.Type) == true),
            candidate.Colour is null ? null : sold.Count(p => Same(p.Colour, candidate.Colour) == true),
            sold.Length);
    }

    public static ImmutableArray<ComparableSale> Nearest(FittedModels models, Candidate candidate)
    {
        PieceFacts wanted = PieceFacts.Of(candidate, models.Log);
        Piece[] sold = [.. models.Log.Pieces.Where(p => p.SoldPrice > 0)];
        // A sideboard tells nothing of a chair while chairs have sold.
        Piece[] ofType = [.. sold.Where(p => Same(p.Type, candidate.Type) == true)];
        double wantedSize = models.Rows.Size.Of(wanted).Size;
        return
        [
            .. (ofType.Length > 0 ? ofType : sold)
                .Select(p => (Piece: p, Distance: Distance(models, p, wanted, wantedSize)))
                .OrderBy(p => p.Distance)
                .ThenByDescending(p => p.Piece.SoldOn)
                .Take(Shown)
                .Select(p => new ComparableSale(
                    p.Piece.Id, p.Piece.Type, p.Piece.Colour, p.Piece.Condition, p.Piece.Width, p.Piece.SoldOn,
                    p.Piece.SoldPrice!.Value,
                    p.Piece.ListedOn is { } listed && p.Piece.SoldOn is { } sold ? sold.DayNumber - listed.DayNumber : null,
                    Crossing.Rounded(p.Distance, 2))),
        ];
    }

    private static double Distance(FittedModels models, Piece piece, PieceFacts wanted, double wantedSize)
    {
        PieceFacts facts = models.Rows.Facts[piece.Id];
        double age = piece.SoldOn is { } sold ? (Crossing.Day(models.Log.Date) - Crossing.Day(sold)) / 365.25 : 1;
        return (Same(facts.Type, wanted.Type) == true ? 0 : 2)
            + Math.Abs(models.Rows.Sizes[piece.Id].Value - wantedSize)
            + Gap(Same(facts.Colour, wanted.Colour), Same(facts.Family, wanted.Family) == true ? 0.25 : 0.5)
            + Gap(facts.Condition is null || wanted.Condition is null ? null : facts.Condition == wanted.Condition, 0.25)
            + Gap(Same(facts.Finish, wanted.Finish), 0.25)
            + 0.25 * age;
    }

    private static double Gap(bool? same, double cost) => same switch { true => 0, false => cost, null => cost / 2 };

    private static bool? Same(string? a, string? b) =>
        a is null || b is null ? null : string.Equals(a, b, StringComparison.OrdinalIgnoreCase);
}
