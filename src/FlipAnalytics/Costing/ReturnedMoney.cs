using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// Writes the money of a piece's returns. A sale that was undone is a sale on its day; on the day of the return the money goes back,
/// with the sales tax and the share of the piece's owner, and what its buyer still owed is no longer due. Payments up to a return are
/// those of the sale it undid.
/// </summary>
/// <param name="sheet">The books.</param>
/// <param name="held">What is held for others, to be added to.</param>
/// <param name="piece">The piece.</param>
/// <param name="payments">What buyers of the piece paid, where that is written down.</param>
/// <param name="ownerIsPaidByHand">Whether the days on which its owner was paid are written down.</param>
internal sealed class ReturnedMoney(
    CostSheet sheet, List<MoneyOfOthers> held, Piece piece, MoneyEntry[] payments, bool ownerIsPaidByHand)
{
    private DateOnly before = DateOnly.MinValue;

    /// <summary>Payments that belong to no sale that was undone.</summary>
    /// <param name="undone">The piece's rows of <c>returns.csv</c> with which it came back, by day.</param>
    public MoneyEntry[] OfNoReturn(IReadOnlyList<SaleReturn> undone) =>
        undone.Count == 0 ? payments : [.. payments.Where(payment => payment.Date > undone[^1].ReturnedOn)];

    /// <summary>Writes a return; those of a piece in the order of their days.</summary>
    public PieceReturn Write(SaleReturn back)
    {
        CostOrigin written = new(Columns.Returns.File, back.Row, "As written down.");
        decimal tax = back.SalesTax ?? 0;
        decimal yours = 0, theirs, notDue = 0;
        if (back.CameBack)
        {
            yours = YoursOf(back.SoldPrice!.Value);
            theirs = back.SoldPrice.Value - yours;
            notDue = Sale(back, tax, theirs, written);
            before = back.ReturnedOn;
        }
        else
        {
            theirs = back.Refund - YoursOf(back.Refund);
        }

        Hold(MoneyOf.TaxOffice, back.ReturnedOn, -tax, "sales tax given back", written);
        Hold(MoneyOf.Buyers, back.ReturnedOn, notDue, "no longer due after the return", written);
        OwnersShare(back.ReturnedOn, -theirs, written);
        Pay(back.ReturnedOn, -back.Refund, "given back", written);
        Pay(back.ReturnedOn, -tax, "sales tax given back", written);
        return new(back, yours, back.Refund + notDue - theirs);
    }

    /// <summary>The sale that was undone; returns what its buyer still owed when it was.</summary>
    private decimal Sale(SaleReturn back, decimal tax, decimal theirs, CostOrigin written)
    {
        decimal price = back.SoldPrice!.Value;
        decimal charged = back.DeliveryCharged ?? 0;
        decimal due = price + charged + tax;
        MoneyEntry[] paid = [.. payments.Where(payment => payment.Date > before && payment.Date <= back.ReturnedOn)];
        Hold(MoneyOf.TaxOffice, back.SoldOn, tax, "sales tax taken", written);
        OwnersShare(back.SoldOn!.Value, theirs, written);
        if (paid.Length > 0)
        {
            Hold(MoneyOf.Buyers, back.SoldOn, -due, "due at the sale", written);
            return due - paid.Sum(payment => payment.Amount);
        }

        Pay(back.SoldOn, price, "sold", written);
        Pay(back.SoldOn, charged, "delivery charged", written);
        Pay(back.SoldOn, tax, "sales tax", written);
        return 0;
    }

    private decimal YoursOf(decimal amount) =>
        piece.Commission is { } share ? sheet.Currency.Round(amount * share) : amount;

    // Where no day of paying the owner is written down, the owner was paid at the sale and pays back at the return.
    private void OwnersShare(DateOnly day, decimal amount, CostOrigin written)
    {
        if (amount == 0)
            return;
        CostOrigin origin = written with { Rule = Invariant($"What of it is not your share of {piece.Commission}.") };
        Hold(MoneyOf.OwnersOfPieces, day, amount, amount > 0 ? "its owner's share" : "its owner's share given back", origin);
        if (ownerIsPaidByHand)
            return;
        Hold(MoneyOf.OwnersOfPieces, day, -amount,
            amount > 0 ? "taken as paid to its owner at the sale" : "taken as paid back by its owner", origin);
        sheet.Cash.Add(new(day, -amount, $"{piece.Id}, its owner's share", origin) { PieceId = piece.Id, Of = MoneyOf.OwnersOfPieces });
    }

    private void Hold(MoneyOf of, DateOnly? day, decimal amount, string what, CostOrigin written) =>
        held.Add(new(of, day, amount, what, piece.Id, written));

    private void Pay(DateOnly? day, decimal amount, string what, CostOrigin written)
    {
        if (amount != 0)
            sheet.Cash.Add(new(day, amount, $"{piece.Id} {what}", written) { PieceId = piece.Id, IsGivenBack = amount < 0 });
    }
}
