using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>Whose money it is that comes and goes outside profit.</summary>
public enum MoneyOf
{
    /// <summary>The tax office's: sales tax taken from buyers and not yet paid over.</summary>
    TaxOffice,

    /// <summary>Buyers': paid before the sale; below zero what they still owe after it.</summary>
    Buyers,

    /// <summary>Of those whose pieces were sold for them: their share of the sale price, not yet paid over.</summary>
    OwnersOfPieces,

    /// <summary>The owner's own: put in, less taken out.</summary>
    Owner,
}

/// <summary>
/// A change of what the workshop holds for somebody and has not earned. Above zero it holds more. What it holds is the sum
/// up to a day.
/// </summary>
/// <param name="Of">Whose it is.</param>
/// <param name="Date">The day; null where the day of sale is not written down.</param>
/// <param name="Amount">Above zero where more is held.</param>
/// <param name="What">A few words for the owner.</param>
/// <param name="PieceId">The piece; null for none.</param>
/// <param name="Origin">Where it comes from.</param>
public sealed record MoneyOfOthers(
    MoneyOf Of, DateOnly? Date, decimal Amount, string What, string? PieceId, CostOrigin Origin);

/// <summary>
/// Writes money that is no profit. Sales tax is collected for the tax office and is no income (IFRS 15, paragraph 47, from
/// memory); of a piece that belongs to somebody else only the commission is income (IFRS 15, paragraphs B34 to B38, from
/// memory); a deposit is owed to the buyer until the sale (IFRS 15, paragraph 106, from memory). A piece with payments on
/// record is paid by those; any other on the day of its sale. The owner of a piece is paid on the days in
/// <c>money.csv</c>, else on the day of the sale.
/// </summary>
internal static class MoneyOutsideProfit
{
    /// <summary>Writes it, and returns it with what each return did to the sales of its piece.</summary>
    public static (ImmutableArray<MoneyOfOthers> Held, ImmutableArray<ImmutableArray<PieceReturn>> Returns) Write(
        CostSheet sheet, ImmutableArray<decimal?> salePrices)
    {
        List<MoneyOfOthers> held = [];
        ILookup<(MoneyKind, string), MoneyEntry> byPiece = sheet.Log.Money.Where(entry => entry is { NeedsPiece: true, PieceId: not null })
            .ToLookup(entry => (entry.Kind, entry.PieceId!.ToUpperInvariant()));
        var returns = ImmutableArray.CreateBuilder<ImmutableArray<PieceReturn>>(sheet.Log.Pieces.Length);
        for (int i = 0; i < sheet.Log.Pieces.Length; i++)
        {
            Piece piece = sheet.Log.Pieces[i];
            string id = piece.Id.ToUpperInvariant();
            MoneyEntry[] payments = [.. byPiece[(MoneyKind.Payment, id)]];
            MoneyEntry[] toOwner = [.. byPiece[(MoneyKind.PaidOwner, id)]];
            SaleMoney sales = new(sheet, held, piece, payments, toOwner.Length > 0);
            returns.Add([.. sheet.Returns[i].Select(sales.WriteReturn)]);
            if (piece.IsSold)
                sales.WriteStanding(salePrices[i]);
            foreach (MoneyEntry payment in payments)
            {
                held.Add(Of(MoneyOf.Buyers, payment, payment.Amount, "paid by the buyer"));
                sheet.Pay(payment.Date, payment.Amount, $"{piece.Id} paid by the buyer", Written(payment), null, piece.Id);
            }

            foreach (MoneyEntry paid in toOwner)
                Pay(sheet, held, MoneyOf.OwnersOfPieces, paid, -paid.Amount, $"paid to the owner of {piece.Id}");
        }

        foreach (MoneyEntry entry in sheet.Log.Money.Where(entry => !entry.NeedsPiece))
        {
            (MoneyOf of, int sign, string what) = entry.Kind switch
            {
                MoneyKind.SalesTax => (MoneyOf.TaxOffice, -1, "sales tax paid over"),
                MoneyKind.Taken => (MoneyOf.Owner, -1, "taken out by you"),
                _ => (MoneyOf.Owner, 1, "put in by you"),
            };
            Pay(sheet, held, of, entry, sign * entry.Amount, what);
        }

        return ([.. held.Where(line => line.Amount != 0)], returns.MoveToImmutable());
    }

    private static void Pay(
        CostSheet sheet, List<MoneyOfOthers> held, MoneyOf of, MoneyEntry entry, decimal amount, string what)
    {
        held.Add(Of(of, entry, amount, what));
        if (amount != 0)
            sheet.Cash.Add(new(entry.Date, amount, what, Written(entry)) { PieceId = entry.PieceId, Of = of });
    }

    private static MoneyOfOthers Of(MoneyOf of, MoneyEntry entry, decimal amount, string what) =>
        new(of, entry.Date, amount, what, entry.PieceId, Written(entry));

    private static CostOrigin Written(MoneyEntry entry) => new(Columns.Money.File, entry.Row, "As written down.");
}
