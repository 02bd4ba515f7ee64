using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Serialization;

namespace FlipAnalytics;

/// <summary>How much of a column of <c>pieces.csv</c> is written down.</summary>
/// <param name="Column">Header of the column.</param>
/// <param name="Pieces">Which pieces can have it: all, offered (sold or on sale), sold, gone.</param>
/// <param name="Of">How many pieces these are.</param>
/// <param name="Written">How many of them have it.</param>
/// <param name="Elsewhere">For how many of the others another part of the log tells it.</param>
/// <param name="ElsewhereIn">Where that is; null for columns that stand in <c>pieces.csv</c> alone.</param>
/// <param name="IsExtra">Whether it is often empty by right, so that a gap takes little from the answers.</param>
public sealed record ColumnFilling(
    string Column, string Pieces, int Of, int Written, int Elsewhere, string? ElsewhereIn, bool IsExtra)
{
    /// <summary>Pieces of which nothing in the log tells it.</summary>
    public int Missing => Of - Written - Elsewhere;

    /// <summary>Share of the pieces that have it, 0 to 1; null where no piece can have it.</summary>
    [JsonIgnore]
    public double? ShareWritten => Of == 0 ? null : (double)Written / Of;

    /// <summary>Share of the pieces of which the log tells it anywhere; null where no piece can have it.</summary>
    [JsonIgnore]
    public double? ShareKnown => Of == 0 ? null : (double)(Written + Elsewhere) / Of;

    /// <summary>Every column of <c>pieces.csv</c>, in the order of the file.</summary>
    /// <param name="log">The log.</param>
    public static ImmutableArray<ColumnFilling> OfPieces(SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(log);
        var worked = log.Hours.Select(entry => entry.PieceId).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        var supplied = log.Uses.Select(use => use.PieceId).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        return [.. Columns.Pieces.Columns.Select(column => Fill(column))];

        ColumnFilling Fill(LogColumn column)
        {
            (string? place, Func<Piece, bool> tells) = column.Name switch
            {
                "hours" => (Columns.Hours.File, piece => worked.Contains(piece.Id)),
                "supplies_cost" => (Columns.Uses.File, piece => supplied.Contains(piece.Id)),
                "bought_price" => ("the price of their lot", piece => piece.Lot is not null),
                "fees" => (Columns.WorkshopFile, piece => piece.Channel is { } channel && log.Workshop.Fees.ContainsKey(channel)),
                _ => ((string?)null, (Func<Piece, bool>)(_ => false)),
            };
            Piece[] pieces = [.. log.Pieces.Where(piece => CanHave(piece, column.HadBy))];
            return new(
                column.Name, column.HadBy.ToString().ToLowerInvariant(), pieces.Length, pieces.Count(IsWritten),
                pieces.Count(piece => !IsWritten(piece) && tells(piece)), place, column.IsExtra);

            bool IsWritten(Piece piece) => column.Name == "id"
                ? piece.Id != string.Create(CultureInfo.InvariantCulture, $"row {piece.Row}")
                : PieceColumns.Table.Cell(piece, column.Name) is not null;
        }
    }

    private static bool CanHave(Piece piece, HadBy which) => which switch
    {
        HadBy.Sold => piece.State == PieceState.Sold,
        HadBy.Gone => piece.State == PieceState.Gone,
        HadBy.Offered => piece.State is PieceState.Sold or PieceState.OnSale,
        _ => true,
    };
}
