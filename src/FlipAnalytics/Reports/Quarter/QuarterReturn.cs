using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A piece that came back in the span, or money given back on a sale that stands.</summary>
/// <param name="Id">The piece's id.</param>
/// <param name="Type">Its type.</param>
/// <param name="ReturnedOn">The day.</param>
/// <param name="SoldOn">Day of the sale that was undone; null where the sale stands.</param>
/// <param name="GivenBack">What was given back of the workshop's own.</param>
/// <param name="Cost">What the piece that came back had cost; it is in stock again.</param>
/// <param name="TakingBack">What it cost to take it back.</param>
public sealed record QuarterReturn(
    string Id, string Type, DateOnly ReturnedOn, DateOnly? SoldOn, decimal GivenBack, decimal Cost, decimal TakingBack)
{
    /// <summary>What the return left; mostly below zero.</summary>
    public decimal Contribution => Cost - GivenBack - TakingBack;

    internal static ImmutableArray<QuarterReturn> In(QuarterBooks books, ReportPeriod period) =>
    [
        .. books.ReturnsIn(period).Select(back => new QuarterReturn(
            back.Cost.Piece.Id, back.Cost.Piece.Type, back.Return.Row.ReturnedOn, back.Return.Row.CameBack ? back.Return.Row.SoldOn : null,
            back.Return.GivenBack, back.Return.Cost, back.Return.TakingBack)),
    ];
}
