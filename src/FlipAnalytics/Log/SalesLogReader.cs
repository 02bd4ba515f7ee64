using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// Reads a log: a folder of CSV files and <c>workshop.toml</c>. Reading never throws on what the files say and never
/// guesses: a row is either in the log, or set aside with an error among the problems. A row is set aside if a cell that
/// decides it (<see cref="LogColumn.IsDeciding"/>) cannot be read, if one it cannot do without is empty, or if it
/// contradicts itself or an earlier row. Any other cell that cannot be read is set aside alone and counts as unknown.
/// Words that group rows are one apart from case, number, spaces, hyphens and British or American spelling.
/// </summary>
public static class SalesLogReader
{
    /// <summary>Reads the log of a folder.</summary>
    /// <param name="folder">The folder with <c>pieces.csv</c> in it.</param>
    public static LogReading Read(string folder)
    {
        ArgumentNullException.ThrowIfNull(folder);
        LogProblems problems = new();
        if (!Directory.Exists(folder))
        {
            string remedy = File.Exists(folder)
                ? "This is a file; name the folder that it is in."
                : "There is no such folder; check the spelling. A log is a folder with a file pieces.csv in it.";
            problems.Error(folder, null, null, null, "a folder with pieces.csv in it", remedy);
            return new(null, problems.Sorted(), [], false);
        }

        if (!MayBeListed(folder))
        {
            problems.Error(
                folder, null, null, null, "a folder that you may read", "You may not look into it; ask for the right, or name another folder.");
            return new(null, problems.Sorted(), [], false);
        }

        (Workshop workshop, bool hasWorkshop) = WorkshopReader.Read(folder, problems);
        RowReading reading = new(folder, workshop.Currency, SpellingsOf(workshop), problems);
        ReadTables tables = new()
        {
            Pieces = TableReader.Read(PieceColumns.Table, reading),
            Asking = TableReader.Read(AskingColumns.Table, reading),
            Hours = TableReader.Read(HoursColumns.Table, reading),
            Supplies = TableReader.Read(SupplyColumns.Table, reading),
            Uses = TableReader.Read(UseColumns.Table, reading),
            Counts = TableReader.Read(CountColumns.Table, reading),
            Trips = TableReader.Read(TripColumns.Table, reading),
            Tools = TableReader.Read(ToolColumns.Table, reading),
            Overheads = TableReader.Read(OverheadColumns.Table, reading),
            Moves = TableReader.Read(MoveColumns.Table, reading),
            Money = TableReader.Read(MoneyColumns.Table, reading),
            Returns = TableReader.Read(ReturnColumns.Table, reading),
            Colours = TableReader.Read(ColourColumns.Table, reading),
        };
        // Guesses answer before the first piece is bought.
        bool hasGuesses = workshop.Guesses.Values.Any(guess => guess.SalePrice is not null);
        FileNames.Check(folder, tables, hasWorkshop, hasGuesses, problems);
        if (!(tables.Pieces.IsPresent || hasGuesses) || !tables.Pieces.IsReadable)
            return new(null, problems.Sorted(), tables.Summaries(), hasWorkshop);

        PieceChecks.Run(tables, problems);
        ReferenceChecks.Run(tables, problems);
        ReturnChecks.Run(tables, problems);
        SupplyChecks.Run(tables, problems);
        SalesLog log = new()
        {
            Date = DateOnly.MaxValue,
            Workshop = workshop,
            Pieces = [.. tables.Pieces.Kept],
            AskingPrices = [.. tables.Asking.Kept],
            Hours = [.. tables.Hours.Kept],
            Supplies = [.. tables.Supplies.Kept],
            Uses = [.. tables.Uses.Kept],
            Counts = [.. tables.Counts.Kept],
            Trips = [.. tables.Trips.Kept],
            Tools = [.. tables.Tools.Kept],
            Overheads = [.. tables.Overheads.Kept],
            Moves = [.. tables.Moves.Kept],
            Money = [.. tables.Money.Kept],
            Returns = [.. tables.Returns.Kept],
            Colours = [.. tables.Colours.Kept],
        };
        return new(
            log with { Date = log.LastFact() ?? DateOnly.MaxValue },
            problems.Sorted(),
            tables.Summaries(),
            hasWorkshop)
        {
            OtherSpellings = reading.Spellings.Others,
            Contradicting = tables.Pieces.Contradicting,
        };
    }

    private static bool MayBeListed(string folder)
    {
        try
        {
            using IEnumerator<string> entries = Directory.EnumerateFileSystemEntries(folder).GetEnumerator();
            _ = entries.MoveNext();
            return true;
        }
        catch (UnauthorizedAccessException)
        {
            return false;
        }
    }

    // The tables' words for what has a fee or a guess are taken as the settings write them.
    private static Spellings SpellingsOf(Workshop workshop)
    {
        var spellings = new Spellings();
        foreach (string channel in workshop.Fees.Keys.Order(StringComparer.Ordinal))
            spellings.Know("channel", channel);
        foreach (string type in workshop.Guesses.Keys.Order(StringComparer.Ordinal))
            spellings.Know("type", type);
        return spellings;
    }
}

/// <summary>The tables of a log while they are checked.</summary>
internal sealed record ReadTables
{
    public required ReadTable<Piece> Pieces { get; init; }

    public required ReadTable<AskingPrice> Asking { get; init; }

    public required ReadTable<HoursEntry> Hours { get; init; }

    public required ReadTable<SupplyPurchase> Supplies { get; init; }

    public required ReadTable<SupplyUse> Uses { get; init; }

    public required ReadTable<StockCount> Counts { get; init; }

    public required ReadTable<Trip> Trips { get; init; }

    public required ReadTable<Tool> Tools { get; init; }

    public required ReadTable<Overhead> Overheads { get; init; }

    public required ReadTable<CostMove> Moves { get; init; }

    public required ReadTable<MoneyEntry> Money { get; init; }

    public required ReadTable<SaleReturn> Returns { get; init; }

    public required ReadTable<Colour> Colours { get; init; }

    public ImmutableArray<TableReading> Summaries() =>
    [
        Pieces.Summary() with { Aside = AmountsSetAside.Of(Pieces.Aside) },
        Asking.Summary(),
        Hours.Summary() with { Aside = AmountsSetAside.Working(Hours.Aside.Select(entry => (decimal?)entry.Hours)) },
        Supplies.Summary() with { Aside = AmountsSetAside.Spending(Supplies.Aside.Select(purchase => purchase.Price)) },
        Uses.Summary(),
        Counts.Summary(),
        Trips.Summary() with
        {
            Aside = AmountsSetAside.Spending(Trips.Aside.Select(trip => trip.OtherCost)) with { Hours = Trips.Aside.Sum(trip => trip.Hours ?? 0) },
        },
        Tools.Summary() with { Aside = AmountsSetAside.Spending(Tools.Aside.Select(tool => tool.Price)) },
        Overheads.Summary() with { Aside = AmountsSetAside.Spending(Overheads.Aside.Select(row => (decimal?)row.Amount)) },
        Moves.Summary(),
        Money.Summary(),
        Returns.Summary() with { Aside = AmountsSetAside.Spending(Returns.Aside.Select(back => (decimal?)back.Refund)) },
        Colours.Summary(),
    ];
}
