using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A way in which an amount is written down wrongly, by a factor.</summary>
/// <param name="Factor">What the true amount was multiplied by.</param>
/// <param name="Words">How it comes about, as the end of a sentence beginning with "If".</param>
/// <param name="Rarity">How much rarer it is than the commonest slip, as a log.</param>
internal readonly record struct AmountSlip(double Factor, string Words, double Rarity = 0)
{
    // Keying slips of these kinds are known from studies of data entry; how often each comes is a judgement.
    private static readonly AmountSlip[] Digits =
    [
        new(10, "a digit or a zero too many was typed"),
        new(0.1, "a digit is missing"),
        new(100, "the decimal point was lost"),
        new(0.01, "the decimal point slipped", 0.5),
        new(1000, "the decimal point was lost", 1),
        new(0.001, "it was written in thousands", 1.5),
    ];

    public static ImmutableArray<AmountSlip> Money { get; } = [.. Digits];

    public static ImmutableArray<AmountSlip> Quantity { get; } = [.. Digits];

    public static ImmutableArray<AmountSlip> Hours { get; } =
        [new(60, "these are minutes"), .. Digits, new(1 / 60.0, "it was divided by 60 once too often", 2)];

    public static ImmutableArray<AmountSlip> Length(bool metric) =>
    [
        metric ? new(1 / 2.54, "these are inches") : new(2.54, "these are centimeters"),
        metric ? new(10, "these are millimeters") : new(25.4, "these are millimeters"),
        metric ? new(0.01, "these are meters") : new(1 / 12.0, "these are feet"),
        .. Digits,
    ];
}
