using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>The hours that belong to a span: those of the pieces sold and written off, and those of no single piece.</summary>
internal static class QuarterTrailHours
{
    private const string General = "on no single piece";
    private const string Fruitless = "outings that brought nothing home";
    private const string Drives = "other drives";

    public static QuarterTrail Of(QuarterBooks books, QuarterReport report)
    {
        HashSet<string> sold = new(report.Sales.Where(sale => sale.ReturnedOn is null).Select(sale => sale.Id), StringComparer.OrdinalIgnoreCase);
        int[] places = [.. Enumerable.Range(0, books.Log.Pieces.Length)];
        int[] ofSold =
        [
            .. places.Where(i => sold.Contains(books.Log.Pieces[i].Id) && books.Hours.Pieces[i].Bench is not null)
                .OrderBy(i => books.Log.Pieces[i].SoldOn),
        ];
        int[] ofGone =
        [
            .. places.Where(i => books.Log.Pieces[i].IsWrittenOff && report.Reckoned.Contains(books.Log.Pieces[i].LeftOn))
                .OrderBy(i => books.Log.Pieces[i].LeftOn),
        ];
        QuarterTrailPart[] parts =
        [
            .. ofSold.SelectMany(i => OfPiece(books, i, QuarterTrailPieces.Sold(books.Log.Pieces[i]))),
            .. ofGone.SelectMany(i => OfPiece(books, i, QuarterTrailPieces.Gone(books.Log.Pieces[i]))),
            .. books.Hours.General.Where(entry => report.Reckoned.Contains(entry.Date))
                .OrderBy(entry => entry.Origin.File == Columns.Trips.File).ThenBy(entry => entry.Task is not WorkTask.Sourcing)
                .ThenBy(entry => entry.Date)
                .Select(entry => QuarterTrailPart.Of(
                    entry.Origin, entry.Task?.ToString().ToLowerInvariant() ?? "work for all pieces", entry.Date, entry.Hours) with
                {
                    Group = entry.Origin.File != Columns.Trips.File ? General : entry.Task is WorkTask.Sourcing ? Fruitless : Drives,
                }),
        ];
        return QuarterTrail.Of(
            report, QuarterLine.Hours, report.Hours.Belonging, ofSold.Length + ofGone.Length, "piece", parts, Notes(report));
    }

    private static IEnumerable<string> Notes(QuarterReport report)
    {
        foreach (QuarterSale sale in report.Sales.Where(sale => sale.BenchHours is null))
            yield return $"No hours on {sale.Id} are written down, so it is left out with its outing.";
        if (report.Hours.Wage is { } wage && wage.Hours != report.Hours.Belonging)
        {
            yield return Invariant(
                $"The wage of the {report.Period.Noun} rests on {wage.Hours:0.##} of them: those of {wage.Pieces} of the {wage.OfPieces} pieces sold, and their part of the rest.");
        }

        foreach (string undated in QuarterTrail.Undated(report, QuarterUndated.Hours))
            yield return undated;
    }

    private static IEnumerable<QuarterTrailPart> OfPiece(QuarterBooks books, int place, string heading) =>
        WageTrailHours.Own(books.Log, books.Hours, place).Select(line => new QuarterTrailPart
        {
            Group = heading,
            Id = books.Log.Pieces[place].Id,
            What = line.What,
            Date = line.Date,
            File = line.File,
            Row = line.Row,
            Rule = line.Rule,
            Amount = line.Amount,
        });
}
