using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>The generator of messy logs gives what laws are tested on: all kinds of records, and only readable logs.</summary>
public sealed class MessyLogsTests
{
    private const string Seed = "0000000000001";

    [Fact]
    public void EveryKindOfRecordTurnsUp()
    {
        HashSet<string> seen = [];
        MessyLogs.Any.Sample(
            log =>
            {
                foreach (string kind in Kinds(log))
                    seen.Add(kind);
            },
            seed: Seed, iter: 2_000, threads: 1);
        string[] wanted =
        [
            "USD", "JPY", "KWD", "Fifo", "Average", "undated purchase", "unknown price", "set", "in the workshop", "on sale",
            "undated sale", "fees stated", "fees by rule", "fees unknown", "delivery charged", "delivery without its cost",
            "stated supplies", "trip shared", "trip fruitless", "trip undated", "tool by pieces", "tool by months", "tool worn out",
            "general hours", "hours of a piece", "measured use", "coats on an area", "coats", "price cut", "month without work",
            "ready after the sale", "waste", "count", "counted empty", "missing at a count", "found at a count", .. Enum.GetNames<LeftAs>(),
        ];
        Assert.Empty(wanted.Except(seen));
    }

    [Fact]
    public void AMessyLogCanBeWrittenAndReadBackWithoutAnError() => MessyLogs.Any.Sample(
        log =>
        {
            using LogFolder folder = new();
            SalesLogWriter.Write(log, folder.Path);
            Assert.DoesNotContain(folder.Read().Problems, problem => problem.Severity == Severity.Error);
        },
        seed: Seed, iter: 40, threads: 1);

    private static IEnumerable<string> Kinds(SalesLog log)
    {
        yield return log.Workshop.Currency.Code;
        yield return log.Workshop.Costing.ToString();
        foreach (Piece piece in log.Pieces)
        {
            if (piece.BoughtOn is null)
                yield return "undated purchase";
            if (piece.BoughtPrice is null)
                yield return "unknown price";
            if (piece.Count > 1)
                yield return "set";
            if (piece.State is PieceState.InTheWorkshop or PieceState.OnSale)
                yield return piece.State == PieceState.OnSale ? "on sale" : "in the workshop";
            if (piece.IsGone)
                yield return piece.LeftAs?.ToString() ?? "gone somehow";
            if (piece.SuppliesCost is not null)
                yield return "stated supplies";
            if (!piece.IsSold)
                continue;
            if (piece.SoldOn is null)
                yield return "undated sale";
            if (piece.ReadyOn > piece.SoldOn)
                yield return "ready after the sale";
            if (piece.DeliveryCharged > 0)
                yield return piece.DeliveryCost is null ? "delivery without its cost" : "delivery charged";
            yield return piece.Fees is not null ? "fees stated"
                : log.Workshop.Fees.ContainsKey(piece.Channel ?? "") ? "fees by rule" : "fees unknown";
        }

        foreach (Trip trip in log.Trips)
        {
            int pieces = log.Pieces.Count(piece => piece.Trip == trip.Name);
            if (pieces != 1)
                yield return pieces == 0 ? "trip fruitless" : "trip shared";
            if (trip.Date is null)
                yield return "trip undated";
        }

        foreach (Tool tool in log.Tools)
        {
            if (tool.LifePieces is not null)
                yield return "tool by pieces";
            else if (tool.LifeMonths is not null)
                yield return "tool by months";
            if (tool is { LifePieces: null, LifeMonths: { } months, BoughtOn: { } day } && day.AddMonths(1 + (int)months) < log.Date)
                yield return "tool worn out";
        }

        foreach (HoursEntry entry in log.Hours)
            yield return entry.PieceId is null ? "general hours" : "hours of a piece";
        foreach (SupplyUse use in log.Uses.Where(use => use.PieceId is null))
            yield return "waste";
        foreach (StockCount count in log.Counts)
            yield return count.Quantity == 0 ? "counted empty" : "count";
        foreach (CostLine line in log.Counts.IsEmpty ? [] : CostBook.Of(log).SuppliesOnNoPiece.Where(line => line.Origin.File == "counts.csv"))
            yield return line.Amount > 0 ? "missing at a count" : "found at a count";
        foreach (SupplyUse use in log.Uses)
            yield return use.Quantity is not null ? "measured use" : use is { Coats: not null, Area: not null } ? "coats on an area" : "coats";
        if (log.AskingPrices.Length > 0)
            yield return "price cut";
        if (CostBook.Of(log).OverheadsUnshared.Length > 0)
            yield return "month without work";
    }
}
