using System.Text;

using CsCheck;
using FlipAnalytics.Tests.Notebooks;

namespace FlipAnalytics.Tests;

/// <summary>
/// hledger and ledger read the journals, accept every assertion, and find the quarter's profit, money and stock in them to
/// the smallest unit.
/// </summary>
public sealed class JournalProgramsTests
{
    private const int MessyOnes = 200;

    // Signs that begin something in a journal, end a name, or have no width or no pair.
    private static readonly Gen<string> Words = Gen.OneOf<string>(
            ";", " ;", "  ", "\t", "\n", "\r\n", "|", ":", "::", "*", "!", "(", ")", "[", "]", "[2026-99-99]", "{", "}", "=", "==",
            "@", "@@", "\"", "'", "#", "%", "&", "~", "-", "- 5 USD", "$", "5", "date:1", "type:X", "a", "ö", "家具", "\u00a0", "\u2028",
            "\u200b", "\ufeff", "\u0000", "\u001b", "\ud83d\ude00", "\ud83d", "\\", "/", ",", "end", "include x", "<", ">", "rent")
        .Array[0, 9].Select(string.Concat);

    // A journal that nobody reads alone, so that many fit one run: each under an account of its own.
    private static readonly Gen<(SalesLog Log, ReportPeriod Span)> Messy = Gen.Select(
        QuarterLaws.Cases, Words.Array[40], Gen.Bool,
        (given, words, isHostile) => (isHostile ? Renamed(given.Log, words) : given.Log, ReportPeriod.Of(given.From, given.To)));

    private static SalesLog Demo()
    {
        SalesLog log = SalesLogReader.Read(House.Repository.PathOf("data-demo")).Log!;
        return log.AsOf(log.LastFact()!.Value);
    }

    [LedgerFact]
    public async Task BothFindInEveryJournalWhatTheReportSays()
    {
        SalesLog demo = Demo();
        (SalesLog Log, ReportPeriod Span)[] all =
            [.. Messy.Array[MessyOnes].Single(), .. SpansOf(demo).Select(span => (demo, span))];
        using LogFolder folder = new();
        StringBuilder text = new();
        for (int i = 0; i < all.Length; i++)
            text.Append(Prefixed(i, JournalText.Render(Journal.Of(all[i].Log, all[i].Span))));
        string file = Path.Combine(folder.With("all.journal", text.ToString()).Path, "all.journal");

        var hledger = ByJournal(await LedgerPrograms.Hledger(file));
        var ledger = ByJournal(await LedgerPrograms.Ledger(file));
        var moneyIn = await LedgerPrograms.Hledger(file, "assets:money$", "amt:>0");
        var moneyOut = await LedgerPrograms.Ledger(file, "assets:money", "--limit", "amount < 0");
        for (int i = 0; i < all.Length; i++)
        {
            var report = QuarterReport.Of(all[i].Log, all[i].Span);
            Assert.Empty(JournalTruth.Breaches(report, account => LedgerPrograms.Sum(In(hledger, i), account)));
            Assert.Empty(JournalTruth.Breaches(report, account => LedgerPrograms.Sum(In(ledger, i), account)));
            Assert.Equal((i, report.Cash.In), (i, moneyIn.GetValueOrDefault($"{Key(i)}:assets:money")));
            Assert.Equal((i, -report.Cash.Out), (i, moneyOut.GetValueOrDefault($"{Key(i)}:assets:money")));
        }
    }

    [LedgerFact]
    public async Task TheStatementsOfHledgerAreThoseOfTheReport()
    {
        using LogFolder folder = new();
        SalesLog log = Demo();
        // Each year and the newest quarter; the other quarters are among the journals that both programs read in one run.
        foreach (ReportPeriod span in SpansOf(log).Where((span, i) => i == 0 || span.Noun == "year"))
        {
            var report = QuarterReport.Of(log, span);
            string file = Path.Combine(folder.Path, $"{span.Name}.journal");
            JournalFile.Write(Journal.Of(log, span), file);

            var (income, net) = await LedgerPrograms.Statement(file, "incomestatement");
            Assert.Equal(report.Profit.Net, net);
            Assert.Equal(report.Profit.Sales, income.GetValueOrDefault("income:sales"));
            Assert.Equal(report.Profit.Overheads, LedgerPrograms.Sum(income, "expenses:overhead"));
            var (balance, assets) = await LedgerPrograms.Statement(file, "balancesheet");
            Assert.Equal(report.Cash.Change + report.Closing.Cost + report.Closing.InCans + report.Closing.Tools, assets);
            Assert.Equal(report.Closing.Cost, LedgerPrograms.Sum(balance, "assets:pieces"));
            var (_, cash) = await LedgerPrograms.Statement(file, "cashflow");
            Assert.Equal(report.Cash.Change, cash);
        }
    }

    [LedgerFact]
    public async Task AWrongBalanceIsRefusedByBoth()
    {
        using LogFolder folder = new();
        Journal journal = Journal.Of(Demo(), ReportPeriod.QuarterOf(new(2025, 6, 1)));
        string right = $"= {MoneyText.WithCode(journal.Balance(JournalAccounts.Supplies), journal.Workshop.Currency)}\n";
        string text = JournalText.Render(journal);
        string file = Path.Combine(
            folder.With("wrong.journal", text[..text.LastIndexOf(right, StringComparison.Ordinal)] + "= 0.01 USD\n").Path, "wrong.journal");
        await Assert.ThrowsAsync<InvalidOperationException>(() => LedgerPrograms.Hledger(file));
        await Assert.ThrowsAsync<InvalidOperationException>(() => LedgerPrograms.Ledger(file));
    }

    // Each quarter and each year that the log knows anything of.
    private static IEnumerable<ReportPeriod> SpansOf(SalesLog log)
    {
        for (var span = ReportPeriod.QuarterOf(log.Date); span.To >= log.FirstFact(); span = span.Before!)
            yield return span;
        for (int year = log.Date.Year; year >= log.FirstFact()!.Value.Year; year--)
            yield return ReportPeriod.Parse(FormattableString.Invariant($"{year}"))!;
    }

    private static string Key(int i) => FormattableString.Invariant($"L{i}");

    private static Dictionary<string, decimal> In(Dictionary<string, Dictionary<string, decimal>> all, int i) =>
        all.GetValueOrDefault(Key(i)) ?? [];

    private static string Prefixed(int i, string journal) => $"apply account {Key(i)}\n{journal}\nend apply account\n\n";

    private static Dictionary<string, Dictionary<string, decimal>> ByJournal(Dictionary<string, decimal> accounts) => accounts
        .GroupBy(held => held.Key[..held.Key.IndexOf(':', StringComparison.Ordinal)])
        .ToDictionary(journal => journal.Key, journal => journal.ToDictionary(
            held => held.Key[(journal.Key.Length + 1)..], held => held.Value));

    private static SalesLog Renamed(SalesLog log, string[] words)
    {
        Dictionary<string, string> ids = new(StringComparer.OrdinalIgnoreCase);
        HashSet<string> taken = new(StringComparer.OrdinalIgnoreCase) { "" };
        int next = 0;
        foreach (Piece piece in log.Pieces)
        {
            string id = Word();
            while (!taken.Add(id))
                id += ";";
            ids[piece.Id] = id;
        }

        return log with
        {
            Workshop = log.Workshop with { Name = Word() },
            Pieces = [.. log.Pieces.Select(piece => piece with { Id = ids[piece.Id], Title = Word(), Type = Word() })],
            Uses = [.. log.Uses.Select(use => use with { PieceId = use.PieceId is { } id ? ids[id] : null })],
            Trips = [.. log.Trips.Select(trip => trip with { PieceId = trip.PieceId is { } id && ids.TryGetValue(id, out string? named) ? named : null })],
            Moves = [.. log.Moves.Select(move => move with { From = ids[move.From], To = ids[move.To] })],
            Money = [.. log.Money.Select(entry => entry with { PieceId = entry.PieceId is { } id ? ids[id] : null })],
            Returns = [.. log.Returns.Select(back => back with { PieceId = ids[back.PieceId] })],
            Hours = [.. log.Hours.Select(entry => entry with { PieceId = entry.PieceId is { } id ? ids[id] : null })],
            AskingPrices = [.. log.AskingPrices.Select(change => change with { PieceId = ids[change.PieceId] })],
            Tools = [.. log.Tools.Select(tool => tool with { Item = Word() })],
            Overheads = [.. log.Overheads.Select(overhead => overhead with { Item = Word() })],
        };

        string Word() => words[++next % words.Length];
    }
}
