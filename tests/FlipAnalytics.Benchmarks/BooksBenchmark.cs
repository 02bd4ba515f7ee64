namespace FlipAnalytics.Benchmarks;

/// <summary>The books of logs with every side table: what each piece cost, and the stock of twelve quarters.</summary>
internal static class BooksBenchmark
{
    public static void Run()
    {
        Console.WriteLine(Surroundings.Line());
        foreach (int flips in new[] { 300, 3_000, 10_000 })
        {
            SalesLog log = DemoLog.Generate(flips, 1).Log.AsOf(DemoLog.LastDay);
            int runs = flips < 1_000 ? 50 : 7;
            Console.WriteLine($"books of {flips} flips: {Repeated.Of(3, runs, () => CostBook.Of(log))}");
            CostBook book = CostBook.Of(log);
            Console.WriteLine($"their {book.Pieces.Sum(piece => piece.Lines.Length)} lines in 12 quarters of stock: {Repeated.Of(3, runs, () => Quarters(book))}");
            Console.WriteLine($"each piece looked up by its id: {Repeated.Of(1, 3, () => LookUp(book, log))}");
        }
    }

    private static void Quarters(CostBook book)
    {
        for (int quarter = 0; quarter < 12; quarter++)
        {
            DateOnly first = new DateOnly(2023, 4, 1).AddMonths(3 * quarter);
            book.Stock(first, first.AddMonths(3).AddDays(-1));
        }
    }

    private static void LookUp(CostBook book, SalesLog log)
    {
        foreach (Piece piece in log.Pieces)
            _ = book[piece.Id];
    }
}
