using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A step from one wage to another.</summary>
/// <param name="Name">What it is, in snake_case.</param>
/// <param name="What">The same in words.</param>
/// <param name="Profit">What it adds to the profit; below zero for a cost.</param>
/// <param name="Hours">What it adds to the hours.</param>
public sealed record WageBridgeLine(string Name, string What, decimal Profit, decimal Hours);

/// <summary>The two wages of a span and the way from one to the other, to the smallest unit.</summary>
/// <remarks>
/// The full wage is that of the pieces sold in the span: with the shares of tools, overheads and general hours that they
/// carry, whenever those arose. The wage of the span takes the tools and overheads of the span itself, by days and up to the date
/// of the books, and its general hours and losses in their place, whoever carries them; a piece given away, broken or stolen is lost with the hours spent on it. Both rest on the pieces whose prices and hours are known; where those are some of
/// the pieces sold, they bear the costs and hours of the span by their number.
/// </remarks>
/// <param name="Pieces">Pieces sold whose prices and hours are known.</param>
/// <param name="OfPieces">Pieces sold.</param>
/// <param name="FullProfit">Their profit after all that they carry.</param>
/// <param name="AllHours">Their hours, with their shares of others.</param>
/// <param name="Lines">
/// The steps; the first is what no piece carries, because it fell into months without work, or is rent of a channel with nothing for
/// sale.
/// </param>
/// <param name="SpanProfit">Their profit after the costs of the span.</param>
/// <param name="SpanHours">Their hours and those of the span.</param>
/// <param name="IdleCost">
/// Overhead and wear of months without work, and rent of a channel with nothing for sale, all of it that falls into the span.
/// </param>
/// <param name="IdleHours">General hours of months without work, all of them.</param>
public sealed record WageBridge(
    int Pieces, int OfPieces, decimal FullProfit, decimal AllHours, ImmutableArray<WageBridgeLine> Lines,
    decimal SpanProfit, decimal SpanHours, decimal IdleCost, decimal IdleHours)
{
    private const int HoursDigits = 2;

    /// <summary>Hours of these pieces alone, at the bench and on the outings that brought them home.</summary>
    public decimal OwnHours => SpanHours - BorneHours;

    /// <summary>Hours of the span that no piece sold has alone, as far as these pieces bear them.</summary>
    public required decimal BorneHours { get; init; }

    /// <summary>What of <see cref="IdleCost"/> is rent of a channel, such as a booth, that had nothing for sale.</summary>
    public decimal IdleRent { get; init; }

    /// <summary>The full wage; above 0 hours.</summary>
    public decimal FullWage => FullProfit / AllHours;

    /// <summary>The full wage once what no piece carries is taken off as well.</summary>
    public decimal WageAfterIdleMonths => (FullProfit + Lines[0].Profit) / (AllHours + Lines[0].Hours);

    /// <summary>The wage of the span.</summary>
    public decimal SpanWage => SpanProfit / SpanHours;

    /// <summary>Profit at the end less what the steps lead to: always 0.</summary>
    public decimal Difference => SpanProfit - FullProfit - Lines.Sum(line => line.Profit);

    /// <summary>Hours at the end less what the steps lead to: always 0.</summary>
    public decimal HoursDifference => SpanHours - AllHours - Lines.Sum(line => line.Hours);

    /// <summary>The bridge of a span; null where no piece sold in it has its prices known and hours at the bench.</summary>
    /// <param name="costs">The books of the log.</param>
    /// <param name="hours">The hours of the same log.</param>
    /// <param name="period">The span; null for the whole log, what has no day included.</param>
    public static WageBridge? Of(CostBook costs, HoursLedger hours, ReportPeriod? period)
    {
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentNullException.ThrowIfNull(hours);
        ImmutableArray<FlipResult> sold = FlipResult.Sold(costs, hours, piece => IsIn(piece.SoldOn));
        FlipResult[] known = [.. sold.Where(flip => flip is { FullProfit: not null, Hours.Bench: not null })];
        if (!known.Any(flip => flip.Hours.Bench > 0))
            return null;

        decimal idle = Sum(costs.ToolsIdle) + Sum(costs.OverheadsUnshared);
        decimal rent = Sum([.. costs.OverheadsUnshared.Where(line => line.Channel is not null)]);
        decimal shared = Sum(costs.ToolWear) + Sum(costs.Overheads) - idle;
        (PieceCost Cost, PieceHours Hours)[] gone =
        [
            .. costs.Pieces.Zip(hours.Pieces).Where(
                piece => piece.First.Piece.IsWrittenOff && IsIn(piece.First.Piece.LeftOn)),
        ];
        decimal supplies = Sum(costs.SuppliesOnNoPiece);
        decimal lost = gone.Sum(piece => StockMovement.UsualKinds.Sum(piece.Cost.Of));
        // Their own hours: what they share stays in the span.
        decimal lostHours = gone.Sum(piece => piece.Hours.Own);
        GeneralHours[] general = [.. hours.General.Where(entry => IsIn(entry.Date))];
        decimal generalHours = general.Sum(entry => entry.Hours);
        decimal idleHours = general.Where(entry => !entry.IsShared).Sum(entry => entry.Hours);

        // What sales that were undone and returns left in the span, whatever became of their pieces.
        decimal returned = -costs.Pieces.SelectMany(cost => cost.Returns)
            .Sum(back => (back.Row.CameBack && IsIn(back.Row.SoldOn) ? back.LeftBySale : 0) + (IsIn(back.Row.ReturnedOn) ? back.LeftByReturn : 0));
        decimal returnedOnThese = known.Sum(flip => flip.Cost.Returns.Sum(back => back.Kept - back.Fees - back.Delivery - back.TakingBack));
        decimal part = decimal.Divide(known.Length, sold.Length);
        decimal other = idle + shared + lost + supplies + returned;
        decimal borne = known.Length == sold.Length ? other : costs.Currency.Round(other * part);
        decimal otherHours = generalHours + lostHours;
        decimal borneHours = BorneHoursOf(otherHours, known.Length, sold.Length);
        ImmutableArray<decimal> parts = Shares.Rounded(
            [idle * part, shared * part, lost * part, supplies * part, returned * part], borne,
            Math.Max(costs.Currency.MinorDigits, borne.Trimmed().Scale));
        ImmutableArray<decimal> hourParts = Shares.Rounded(
            [idleHours * part, (generalHours - idleHours) * part, lostHours * part], borneHours,
            Math.Max(HoursDigits, (int)borneHours.Trimmed().Scale));
        decimal carried = known.Sum(flip => flip.Cost.Of(CostKind.Tools) + flip.Cost.Of(CostKind.Overhead));
        decimal ownCosts = known.Sum(flip => flip.Cost.Total) - carried;
        return new(
            known.Length, sold.Length, known.Sum(flip => flip.FullProfit!.Value), known.Sum(flip => flip.Hours.All!.Value),
            [
                new("months_without_work", IdleWords.OnNoPiece(idle != rent || idleHours != 0, rent != 0), -parts[0], hourParts[0]),
                new("carried_by_the_pieces", "wear, rent and general work that these pieces carry", carried,
                    -known.Sum(flip => flip.Hours.General)),
                new("fell_into_the_span", "wear, rent and general work that fell into it", -parts[1], hourParts[1]),
                new("supplies_lost", "supplies wasted, or missing at a count", -parts[3], 0),
                new("returns", "sales that were undone, and money given back", -returnedOnThese - parts[4], 0),
                new("written_off", "given away, broken, stolen and the like", -parts[2], hourParts[2]),
            ],
            known.Sum(flip => flip.Takings!.Value) - ownCosts - returnedOnThese - borne,
            known.Sum(flip => flip.Hours.Bench!.Value + flip.Hours.Outings) + borneHours,
            idle, idleHours)
        {
            BorneHours = borneHours,
            IdleRent = rent,
        };

        bool IsIn(DateOnly? day) => period is null || period.Contains(day);
        decimal Sum(ImmutableArray<CostLine> lines) => CostsBySpan.Sum(costs, lines, period);
    }

    /// <summary>What some of the pieces sold bear of hours that no piece sold has alone.</summary>
    internal static decimal BorneHoursOf(decimal hours, int pieces, int ofPieces) =>
        pieces == ofPieces ? hours : decimal.Round(hours * decimal.Divide(pieces, ofPieces), HoursDigits);
}
