namespace FlipAnalytics;

/// <summary><c>money.csv</c>: money that no other table tells.</summary>
internal static class MoneyColumns
{
    public static readonly RecordTable<MoneyEntry> Table = new(
        "money.csv",
        "With deposits, sales tax paid over and what you take out, the money in hand comes out as in your account.",
        Row)
    {
        IsOccasional = true,
    };

    private static readonly Column<MoneyEntry, DateOnly> Date = Table.RequiredDate(
        "date", "Day the money came or went.", entry => entry.Date);
    private static readonly Column<MoneyEntry, MoneyKind> Kind = Table.RequiredWord<MoneyKind>(
        "kind",
        "payment (from a buyer, where it does not all come on the day of the sale), sales_tax (paid over), paid_owner "
        + "(to the owner of a piece sold for them), taken (out by you), put_in (by you).",
        entry => entry.Kind);
    private static readonly Column<MoneyEntry, string?> PieceId = Table.Name(
        "id", "The piece, for payment and paid_owner; an id of pieces.csv.", entry => entry.PieceId);
    private static readonly Column<MoneyEntry, decimal> Amount = Table.RequiredMoney(
        "amount", "How much; below zero where it was given back.", entry => entry.Amount, Smallest.Any);
    private static readonly Column<MoneyEntry, string?> Notes = Table.Text(
        "notes", "Anything else.", entry => entry.Notes);

    private static MoneyEntry Row(Cells cells) => new(
        Date.In(cells), Kind.In(cells), PieceId.In(cells), Amount.In(cells), Notes.In(cells), cells.Row);
}
