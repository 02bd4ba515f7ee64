using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What is held for somebody outside profit, from the evening before a span to its last.</summary>
/// <param name="Of">Whose it is.</param>
/// <param name="Opening">Held before the span; below zero where they owe it.</param>
/// <param name="More">By how much more is held.</param>
public sealed record QuarterHeld(MoneyOf Of, decimal Opening, decimal More)
{
    /// <summary>Held on the last evening.</summary>
    public decimal Closing => Opening + More;

    /// <summary>Whose it is, in words after an amount.</summary>
    public string What => Of switch
    {
        MoneyOf.TaxOffice => "of sales tax to pay over",
        MoneyOf.Buyers => Closing < 0 ? "still owed by buyers" : "paid by buyers before the sale",
        MoneyOf.OwnersOfPieces => "owed to owners of pieces you sold for them",
        _ => "put in by you, less what you took out",
    };

    internal static ImmutableArray<QuarterHeld> In(QuarterBooks books, ReportPeriod period) =>
    [
        .. Enum.GetValues<MoneyOf>().Select(of => new QuarterHeld(
                of,
                Sum(books, of, day => day < period.From),
                Sum(books, of, day => period.Contains(day))))
            .Where(held => held.Opening != 0 || held.More != 0),
    ];

    private static decimal Sum(QuarterBooks books, MoneyOf of, Func<DateOnly?, bool> when) =>
        books.Costs.Held.Where(line => line.Of == of && when(line.Date)).Sum(line => line.Amount);
}
