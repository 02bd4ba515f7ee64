namespace FlipAnalytics;

/// <summary>What money was for that no other table tells.</summary>
public enum MoneyKind
{
    /// <summary>From a buyer, where it does not all come on the day of the sale: a deposit, an instalment.</summary>
    Payment,

    /// <summary>Sales tax paid over to the tax office.</summary>
    SalesTax,

    /// <summary>To the owner of a piece that was sold for them.</summary>
    PaidOwner,

    /// <summary>Taken out of the workshop by its owner, for living.</summary>
    Taken,

    /// <summary>Put into the workshop by its owner.</summary>
    PutIn,
}

/// <summary>Money that came or went and is told by no other table: a row of <c>money.csv</c>.</summary>
/// <param name="Date">The day.</param>
/// <param name="Kind">What it was for.</param>
/// <param name="PieceId">The piece; null where it belongs to none.</param>
/// <param name="Amount">Amount; below zero where it was given back.</param>
/// <param name="Notes">Anything else.</param>
/// <param name="Row">Line of the file.</param>
public sealed record MoneyEntry(DateOnly Date, MoneyKind Kind, string? PieceId, decimal Amount, string? Notes, int Row = 0)
{
    /// <summary>Whether it makes no sense without a piece.</summary>
    public bool NeedsPiece => Kind is MoneyKind.Payment or MoneyKind.PaidOwner;
}
