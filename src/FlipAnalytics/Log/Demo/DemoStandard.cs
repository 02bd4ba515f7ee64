using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// The lists of the standard demo market. Dimensions and hours are ordinary ones of the trade; prices, colours and
/// shares are invented.
/// </summary>
internal static class DemoStandard
{
    private static readonly ImmutableArray<DemoCount> One = [new(1, 1)];

    // A bookcase takes more paint than a dresser and sells for a third: the trap of this town.
    public static readonly ImmutableArray<DemoType> Types =
    [
        new("dresser", 0.20, 0.510, -0.10, 9.0, 30, 58, 18, 33, One),
        new("nightstand", 0.18, -0.350, -0.30, 3.7, 12, 21, 16, 26, [new(1, 0.6), new(2, 0.4)]),
        new("coffee table", 0.14, -0.250, -0.10, 4.2, 15, 44, 22, 18, One),
        new("side chair", 0.11, -0.900, 0.15, 2.4, 8, 18, 18, 38,
            [new(1, 0.15), new(2, 0.4), new(4, 0.35), new(6, 0.1)]),
        new("chest of drawers", 0.10, 0.340, 0.10, 8.2, 28, 36, 18, 48, One),
        new("desk", 0.08, 0.200, 0.10, 7.8, 24, 52, 26, 30, One),
        new("sideboard", 0.07, 0.555, 0.05, 9.5, 33, 60, 18, 36, One),
        new("dining table", 0.04, 0.465, 0.45, 8.6, 29, 68, 37, 30, One),
        new("bench", 0.027, -0.480, 0.20, 3.4, 11, 44, 16, 19, One),
        new("bookcase", 0.053, -0.750, 0.00, 6.6, 34, 36, 12, 66, One),
    ];

    public static readonly ImmutableArray<DemoColour> Colours =
    [
        new("white", "white", "#f4f4f2", 0.24, 0.06, -0.35),
        new("sage", "green", "#9caf88", 0.20, 0.10, -0.30),
        new("navy", "blue", "#1f2f4f", 0.15, 0.07, -0.05),
        new("charcoal", "gray", "#3f4347", 0.13, 0.01, 0.05),
        new("cream", "white", "#f3ead3", 0.12, 0.00, -0.10),
        new("dusty blue", "blue", "#8ea4b8", 0.08, -0.03, 0.20),
        new("teal", "green", "#2f7f7d", 0.06, -0.02, 0.15),
        new("mustard", "yellow", "#c9992e", 0.02, -0.16, 0.60),
    ];

    public static readonly ImmutableArray<DemoFinish> Finishes =
    [
        new("satin", 0.55, 0, 0, 0),
        new("matte", 0.20, -0.02, 0, 0),
        new("wax", 0.17, 0.03, 0.06, 0.05),
        new("gloss", 0.08, -0.05, 0.10, 0.08),
    ];

    public static readonly ImmutableArray<DemoCondition> Conditions =
    [
        new(Condition.Sound, 0.35, 0, 0, 0),
        new(Condition.Worn, 0.50, -0.08, 0.10, 0.05),
        new(Condition.Damaged, 0.15, -0.20, 0.35, 0.25),
    ];

    public static readonly ImmutableArray<DemoChannel> Channels =
    [
        new("online", 0.60, 0.07m, 0.40m),
        new("market stall", 0.25, 0.03m, 0.10m),
        new("local shop", 0.15, 0.22m, 0m),
    ];
}
