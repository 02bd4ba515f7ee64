using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>A kind of furniture in the demo market.</summary>
/// <param name="Name">The word the log uses.</param>
/// <param name="Share">Share of the pieces bought, 0 to 1.</param>
/// <param name="OnPrice">Effect on the log sale price.</param>
/// <param name="OnDays">Effect on the log days on market.</param>
/// <param name="Hours">Median hands-on hours of one sound, satin piece of typical size.</param>
/// <param name="Supplies">Median supplies of one sound, satin piece of typical size, in USD.</param>
/// <param name="Width">Typical width in inches.</param>
/// <param name="Depth">Typical depth in inches.</param>
/// <param name="Height">Typical height in inches.</param>
/// <param name="Counts">How many items are sold as one, with the chance of each.</param>
internal sealed record DemoType(
    string Name,
    double Share,
    double OnPrice,
    double OnDays,
    double Hours,
    double Supplies,
    double Width,
    double Depth,
    double Height,
    ImmutableArray<DemoCount> Counts);

/// <summary>A number of items sold as one.</summary>
/// <param name="Count">Items, 1 or more.</param>
/// <param name="Share">Chance, 0 to 1.</param>
internal sealed record DemoCount(int Count, double Share);

/// <summary>A colour word in the demo market.</summary>
/// <param name="Word">The word the log uses.</param>
/// <param name="Family">Its family.</param>
/// <param name="Hex">sRGB as #rrggbb.</param>
/// <param name="Share">Share of the pieces painted in it, 0 to 1; the same for every type.</param>
/// <param name="OnPrice">Effect on the log sale price.</param>
/// <param name="OnDays">Effect on the log days on market.</param>
internal sealed record DemoColour(string Word, string Family, string Hex, double Share, double OnPrice, double OnDays);

/// <summary>A kind of finish in the demo market.</summary>
/// <param name="Name">The word the log uses.</param>
/// <param name="Share">Share of the pieces, 0 to 1.</param>
/// <param name="OnPrice">Effect on the log sale price.</param>
/// <param name="OnHours">Effect on log hours.</param>
/// <param name="OnSupplies">Effect on log supplies.</param>
internal sealed record DemoFinish(string Name, double Share, double OnPrice, double OnHours, double OnSupplies);

/// <summary>A condition in the demo market.</summary>
/// <param name="Condition">How sound a piece is when bought.</param>
/// <param name="Share">Share of the pieces, 0 to 1.</param>
/// <param name="OnPrice">Effect on the log sale price.</param>
/// <param name="OnHours">Effect on log hours.</param>
/// <param name="OnSupplies">Effect on log supplies.</param>
internal sealed record DemoCondition(
    Condition Condition,
    double Share,
    double OnPrice,
    double OnHours,
    double OnSupplies);

/// <summary>A selling channel in the demo market.</summary>
/// <param name="Name">The word the log uses.</param>
/// <param name="Share">Share of the sales, 0 to 1, whatever the piece.</param>
/// <param name="FeeRate">Share of the sale price it keeps.</param>
/// <param name="FixedFee">Amount a sale it keeps on top, in USD.</param>
internal sealed record DemoChannel(string Name, double Share, decimal FeeRate, decimal FixedFee);
