using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>One component of a piece's money or hours, with where it comes from.</summary>
/// <param name="What">A few words.</param>
/// <param name="Date">The day; null where the log does not say.</param>
/// <param name="File">File of the log.</param>
/// <param name="Row">Line of the file; null where it rests on no single line.</param>
/// <param name="Rule">How the amount follows from there: a sentence.</param>
/// <param name="Amount">Money, below zero for a cost; or hours.</param>
public sealed record WageTrailLine(string What, DateOnly? Date, string File, int? Row, string Rule, decimal Amount);

/// <summary>Every component of what a piece earned and of the hours it took. For a piece not sold: what it cost so far.</summary>
public sealed record WageTrail
{
    /// <summary>The piece's id.</summary>
    public required string Id { get; init; }

    /// <summary>Kind of furniture.</summary>
    public required string Type { get; init; }

    /// <summary>Where it stands.</summary>
    public required PieceState State { get; init; }

    /// <summary>Day it was sold or left.</summary>
    public DateOnly? EndedOn { get; init; }

    /// <summary>Money in, then costs below zero.</summary>
    public required ImmutableArray<WageTrailLine> Money { get; init; }

    /// <summary>Hours at the bench, then its shares of the others.</summary>
    public required ImmutableArray<WageTrailLine> Hours { get; init; }

    /// <summary>What the log does not tell: a sentence each.</summary>
    public required ImmutableArray<string> Unknown { get; init; }

    /// <summary>All costs on record.</summary>
    public required decimal Cost { get; init; }

    /// <summary>Profit after the costs of this piece alone; null where not sold or unknown.</summary>
    public decimal? CashProfit { get; init; }

    /// <summary>Profit after all costs; null where not sold or unknown.</summary>
    public decimal? FullProfit { get; init; }

    /// <summary>Whether a cost is missing, so that profit and wage are at most these.</summary>
    public bool IsAtMost { get; init; }

    /// <summary>Hands-on hours; null where unknown.</summary>
    public decimal? BenchHours { get; init; }

    /// <summary>All hours; null where those at the bench are unknown.</summary>
    public decimal? AllHours { get; init; }

    /// <summary>Cash profit for a hands-on hour.</summary>
    public decimal? CashWage { get; init; }

    /// <summary>Full profit for an hour of all work.</summary>
    public decimal? FullWage { get; init; }

    /// <summary>All money lines less the profit, or plus the cost of a piece without one; always 0.</summary>
    public decimal MoneyDifference => Money.Sum(line => line.Amount) - (FullProfit ?? Takings - Cost);

    /// <summary>All hours lines less the hours; always 0.</summary>
    public decimal HoursDifference { get; init; }

    /// <summary>Money in on record.</summary>
    public required decimal Takings { get; init; }

    /// <summary>Why an id cannot be explained, with the id that was likely meant; null where the log has it.</summary>
    /// <param name="log">The log.</param>
    /// <param name="id">The id asked for.</param>
    public static string? Refusal(SalesLog log, string id)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(id);
        string[] ids = [.. log.Pieces.Select(piece => piece.Id)];
        if (ids.Contains(id, StringComparer.OrdinalIgnoreCase))
            return null;
        string remedy = ids.Length == 0 ? "the log has no pieces."
            : new KnownWords(ids).Meant(id) is { } meant ? $"did you mean {meant}?"
            : $"its ids look like {string.Join(", ", ids.Take(3))}.";
        return Invariant($"The log has no piece '{id}' as of {log.Date:yyyy-MM-dd}: {remedy}");
    }

    /// <summary>The trail of a piece.</summary>
    /// <param name="log">The log, as of its date.</param>
    /// <param name="id">Its id, in either case.</param>
    /// <exception cref="ArgumentException">The log has no such piece.</exception>
    public static WageTrail Of(SalesLog log, string id)
    {
        if (Refusal(log, id) is { } refusal)
            throw new ArgumentException(refusal, nameof(id));
        CostBook book = CostBook.Of(log);
        int place = 0;
        while (!string.Equals(log.Pieces[place].Id, id, StringComparison.OrdinalIgnoreCase))
            place++;
        HoursLedger ledger = HoursLedger.Of(log);
        FlipResult result = new(book.Pieces[place], ledger.Pieces[place]);
        ImmutableArray<WageTrailLine> hours = [.. WageTrailHours.Of(log, ledger, place)];
        Piece piece = result.Piece;
        return new()
        {
            Id = piece.Id,
            Type = piece.Type,
            State = piece.State,
            EndedOn = result.Cost.EndedOn,
            Money =
            [
                .. TakingsOf(result.Cost),
                .. result.Cost.Lines.Select(line => new WageTrailLine(
                    line.What, line.Date, line.Origin.File, line.Origin.Row, line.Origin.Rule, -line.Amount)),
            ],
            Hours = hours,
            Unknown =
            [
                .. piece.IsSold && piece.SoldPrice is null ? ["The sale price is not written down."] : Array.Empty<string>(),
                .. result.Cost.Gaps.Select(gap => gap.What),
                .. result.Hours.Bench is null ? ["No hours on this piece are written down."] : Array.Empty<string>(),
            ],
            Takings = TakingsOf(result.Cost).Sum(line => line.Amount),
            Cost = result.Cost.Total,
            CashProfit = result.CashProfit,
            FullProfit = result.FullProfit,
            IsAtMost = result.FullIsAtMost,
            BenchHours = result.Hours.Bench,
            AllHours = result.Hours.All,
            CashWage = result.CashWage,
            FullWage = result.FullWage,
            HoursDifference = hours.Sum(line => line.Amount) - (result.Hours.Bench ?? 0) - result.Hours.Outside,
        };
    }

    private static IEnumerable<WageTrailLine> TakingsOf(PieceCost cost)
    {
        Piece piece = cost.Piece;
        if (cost.SalePrice is { } price)
        {
            yield return piece.Commission is { } share
                ? new("commission", piece.SoldOn, Columns.Pieces.File, piece.Row, Invariant($"Your share of {share} of the sale price of {piece.SoldPrice}."), price)
                : new("sold", piece.SoldOn, Columns.Pieces.File, piece.Row, "The sale price, as written down.", price);
        }

        if (piece is { IsSold: true, DeliveryCharged: { } charge and not 0 })
        {
            yield return new(
                "delivery charged", piece.SoldOn, Columns.Pieces.File, piece.Row, "As written down.", charge);
        }

        foreach (PieceReturn back in cost.Returns)
        {
            SaleReturn row = back.Row;
            if (back.SalePrice + back.DeliveryCharged != 0)
                yield return Line("sale that was undone", row.SoldOn, "What was yours of sale price and delivery charge.", back.SalePrice + back.DeliveryCharged);
            if (back.GivenBack != 0)
                yield return Line("given back", row.ReturnedOn, "What was yours of it.", -back.GivenBack);

            WageTrailLine Line(string what, DateOnly? day, string rule, decimal amount) => new(what, day, Columns.Returns.File, row.Row, rule, amount);
        }
    }
}
