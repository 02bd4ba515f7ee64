using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What the money of a loser is compared with.</summary>
public enum LossYardstick
{
    /// <summary>Too few other flips: nothing.</summary>
    None,

    /// <summary>Other flips of its type.</summary>
    SameType,

    /// <summary>All other flips.</summary>
    AllFlips,
}

/// <summary>One difference between a loser and what is usual.</summary>
/// <param name="Item">What it is about: takings, or a kind of cost.</param>
/// <param name="Actual">What the piece brought or cost.</param>
/// <param name="Usual">What would have been usual.</param>
/// <param name="Difference">What it took off the profit, below zero, or added to it.</param>
/// <param name="Reason">The same in words.</param>
public sealed record LossPart(string Item, decimal Actual, decimal Usual, decimal Difference, string Reason);

/// <summary>
/// A flip whose full profit is below zero, and why. Usual takings are the owner's own guess when buying, else what other
/// flips of the type brought on average, else what it brought itself. Usual costs are as much of these takings as those
/// of the other flips are of theirs, sum over sum.
/// </summary>
/// <param name="Id">The piece's id.</param>
/// <param name="Type">Kind of furniture.</param>
/// <param name="SoldOn">Day it was sold.</param>
/// <param name="FullProfit">What it left after all costs, below zero.</param>
/// <param name="Yardstick">Whose costs are usual.</param>
/// <param name="Peers">How many flips these are.</param>
/// <param name="UsualProfit">What such a piece usually leaves.</param>
/// <param name="Parts">Every difference, the most unfavourable first; they add up to the full profit less the usual one.</param>
/// <param name="MainReason">What cost it most, in words.</param>
public sealed record LosingFlip(
    string Id,
    string Type,
    DateOnly? SoldOn,
    decimal FullProfit,
    LossYardstick Yardstick,
    int Peers,
    decimal UsualProfit,
    ImmutableArray<LossPart> Parts,
    string MainReason)
{
    /// <summary>Full profit less the usual profit less all parts: always 0.</summary>
    public decimal Difference => Yardstick == LossYardstick.None
        ? 0 : FullProfit - UsualProfit - Parts.Sum(part => part.Difference);
}
