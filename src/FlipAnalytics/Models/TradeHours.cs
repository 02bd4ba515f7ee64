using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// Hands-on hours that a paint makeover without a full strip usually takes, by kind of piece: common practice, no time
/// study is known. It stands in for a kind that the owner has never logged hours for, and fades as they log some.
/// </summary>
internal static class TradeHours
{
    /// <summary>How much of a logged piece one row of the table counts as.</summary>
    public const double Weight = 0.3;

    private static readonly ImmutableArray<(string Type, double Low, double High)> Table =
    [
        ("nightstand", 3, 5),
        ("side chair", 2, 4),
        ("chair", 2, 4),
        ("coffee table", 3, 6),
        ("end table", 3, 5),
        ("side table", 3, 5),
        ("dining table", 7, 14),
        ("table", 5, 10),
        ("bookcase", 5, 9),
        ("desk", 7, 12),
        ("chest", 7, 12),
        ("chest of drawers", 7, 12),
        ("dresser", 8, 14),
        ("sideboard", 8, 14),
        ("buffet", 8, 14),
        ("hutch", 12, 20),
        ("armoire", 12, 20),
        ("wardrobe", 12, 20),
        ("cabinet", 8, 16),
        ("bench", 3, 6),
        ("vanity", 7, 12),
    ];

    /// <summary>Every kind in the table with the log of its middle hours (the geometric mean of low and high).</summary>
    public static IEnumerable<(string Type, double LogHours)> All() =>
        Table.Select(row => (row.Type, (Math.Log(row.Low) + Math.Log(row.High)) / 2));
}
