using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// Writes the money of a piece's sales, the one that stands and those that were undone. On the day of a return the money goes back,
/// with the sales tax and the share of the piece's owner, and what its buyer still owed is no longer due. Payments up to a return are
/// those of the sale it undid.
/// </summary>
/// <param name="sheet">The books.</param>
/// <param name="held">What is held for others, to be added to.</param>
/// <param name="piece">The piece.</param>
/// <param name="payments">What buyers of the piece paid, where that is written down.</param>
/// <param name="ownerIsPaidByHand">Whether the days on which its owner was paid are written down.</param>
internal sealed class SaleMoney(
    CostSheet sheet, List<MoneyOfOthers> held, Piece piece, MoneyEntry[] payments, bool ownerIsPaidByHand)
{
    private const string TaxTaken = "sales tax taken";

    private DateOnly before = DateOnly.MinValue;

    /// <summary>Writes a return, and the sale that it undid; those of a piece in the order of their days.</summary>
    public PieceReturn WriteReturn(SaleReturn back)
    {
        CostOrigin written = new(Columns.Returns.File, back.Row, "As written down.");
        CostOrigin owners = written with { Rule = Invariant($"What of it is not your share of {piece.Commission}.") };
        decimal tax = back.SalesTax ?? 0;
        decimal yours = 0, theirs, notDue = 0;
        if (back is { CameBack: true, SoldPrice: { } price })
        {
            yours = piece.YoursOf(price, sheet.Currency);
            theirs = price - yours;
            Hold(MoneyOf.TaxOffice, back.SoldOn, tax, TaxTaken, written);
            OwnersShare(back.SoldOn, theirs, owners);
            notDue = Sale(back.SoldOn, price, back.DeliveryCharged ?? 0, tax, back.ReturnedOn, written);
            before = back.ReturnedOn;
        }
        else
        {
            theirs = back.Refund - piece.YoursOf(back.Refund, sheet.Currency);
        }

        Hold(MoneyOf.TaxOffice, back.ReturnedOn, -tax, "sales tax given back", written);
        Hold(MoneyOf.Buyers, back.ReturnedOn, notDue, "no longer due after the return", written);
        OwnersShare(back.ReturnedOn, -theirs, owners);
        Pay(back.ReturnedOn, -back.Refund, "given back", written);
        Pay(back.ReturnedOn, -tax, "sales tax given back", written);
        return new(back, yours, back.Refund + notDue - theirs);
    }

    /// <summary>Writes the sale that stands, once all returns are written.</summary>
    /// <param name="salePrice">What of the sale price is the workshop's; null where unknown.</param>
    public void WriteStanding(decimal? salePrice)
    {
        CostOrigin written = new(Columns.Pieces.File, piece.Row, "As written down.");
        decimal tax = piece.SalesTax ?? 0;
        Hold(MoneyOf.TaxOffice, piece.SoldOn, tax, TaxTaken, written);
        Sale(piece.SoldOn, piece.SoldPrice ?? 0, piece.DeliveryCharged ?? 0, tax, DateOnly.MaxValue, written);
        if (piece is { Commission: { } share, SoldPrice: { } price } && salePrice is { } yours)
        {
            OwnersShare(piece.SoldOn, price - yours, written with
            {
                Rule = Invariant($"The sale price of {price} less your share of {share}."),
            });
        }
    }

    /// <summary>What a buyer owes and pays for a sale; returns what is still owed of it on a later day.</summary>
    private decimal Sale(DateOnly? day, decimal price, decimal charged, decimal tax, DateOnly until, CostOrigin written)
    {
        MoneyEntry[] paid = [.. payments.Where(payment => payment.Date > before && payment.Date <= until)];
        if (paid.Length > 0)
        {
            decimal due = price + charged + tax;
            Hold(MoneyOf.Buyers, day, -due, "due at the sale", written);
            return due - paid.Sum(payment => payment.Amount);
        }

        Pay(day, price, "sold", written);
        Pay(day, charged, "delivery charged", written);
        Pay(day, tax, "sales tax", written);
        return 0;
    }

    // Where no day of paying the owner is written down, the owner was paid at the sale and pays back at the return.
    private void OwnersShare(DateOnly? day, decimal amount, CostOrigin origin)
    {
        if (amount == 0)
            return;
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
