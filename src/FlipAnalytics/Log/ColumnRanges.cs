namespace FlipAnalytics;

/// <summary>The range of the numbers of a column, by what it holds.</summary>
internal static class ColumnRanges
{
    /// <summary>The range of a column of numbers.</summary>
    public static NumberRange Of(LogColumn column) => column.Smallest switch
    {
        Smallest.AboveZero => Kind(column).AboveZero,
        Smallest.Zero => Kind(column).OrZero,
        _ => Kind(column).OrBelowZero,
    };

    private static NumberRange Kind(LogColumn column) => (column.Kind, column.Unit) switch
    {
        (ColumnKind.Money, _) or (_, Columns.CurrencyWords) => NumberRange.Money,
        (ColumnKind.WholeNumber, _) => NumberRange.Count,
        (_, Columns.LengthWords) => NumberRange.Length,
        (_, "hours") => NumberRange.Hours,
        (_, "coats") => NumberRange.Coats,
        (_, "pieces" or "months") => NumberRange.Life,
        (_, "a share") => NumberRange.OwnShare,
        (_, "the workshop's distance unit") => NumberRange.Distance,
        _ => NumberRange.Quantity,
    };
}
