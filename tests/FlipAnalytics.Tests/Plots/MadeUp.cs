using System.Collections.Immutable;
using FlipAnalytics.Statistics;

namespace FlipAnalytics.Tests.Plots;

/// <summary>Records to draw, of any number of groups, with short names or long ones.</summary>
internal static class MadeUp
{
    public static string Name(int i, bool isLong) => isLong
        ? FormattableString.Invariant($"a six-drawer chest with turned feet, waxed top & brass pulls\nfrom the far end of town <{i}>")
        : FormattableString.Invariant($"group {i}");

    public static MarketCurves Curves(int groups, bool isLong = false)
    {
        ImmutableArray<MarketCurve> curves =
        [
            .. Enumerable.Range(0, groups).Select(i => new MarketCurve(Name(i, isLong), KaplanMeier.Estimate(Spells(i)))),
        ];
        return new(
            "color", new(2026, 3, 31), curves,
            groups == 0 ? null : KaplanMeier.Estimate([.. Enumerable.Range(0, groups).SelectMany(Spells)]), null, groups < 2 ? null : 0.01);
    }

    public static EffectIntervals Effects(int rows, bool isLong = false) => new("sale price", "color", 0.8,
        [.. Enumerable.Range(0, rows).Select(i => new EffectInterval(Name(i, isLong), i + 1, 30 - 2.5 * i, 20 - 3 * i, 1240.0 / (i + 1) - 2 * i))]);

    public static ModelCheck Check(int rows, bool isLong = false) => new()
    {
        Model = ModelName.Price,
        Response = "sale price",
        Unit = "USD",
        Rows =
        [
            .. Enumerable.Range(0, rows).Select(i => new CheckedAmount(
                Name(i, isLong), 100 + 37 * i % 211, 120 + 53 * i % 190, 90 + 53 * i % 190, 150 + 53 * i % 190, i % 7 - 3, (i - rows / 2) * 4.0 / rows,
                Math.Sqrt(Math.Abs(i % 7 - 3)))),
        ],
        Influence = [.. Enumerable.Range(0, rows).Select(i => new PieceInfluence(Name(i, isLong), (i + 1.0) / (rows + 1), i % 5 - 2, i / 30.0))],
        Coverage = rows == 0 ? [] :
            [.. new[] { 0.2, 0.5, 0.8, 0.95 }.Select(p => new LevelHeld(p, (int)(p * rows), rows, (int)(p * rows) / (double)rows, Proportion.Wilson((int)(p * rows), rows)))],
    };

    public static PriceBySize Prices(int sales, bool isLong = false, decimal scale = 1) => new()
    {
        Type = Name(0, isLong),
        Count = isLong ? 2 : 1,
        Workshop = new(),
        Sales = [.. Enumerable.Range(0, sales).Select(i => new SaleAtWidth($"P{i}", 30 + i, (120 + 17 * i % 90) * scale))],
        OtherSales = sales,
        Curve = [.. Enumerable.Range(0, sales).Select(i => new PriceAtWidth(30 + i, (90 + i) * scale, (130 + i) * scale, (200 + i) * scale))],
    };

    public static ImmutableArray<AskingHistory> Asking(int pieces, bool isLong = false) =>
    [
        .. Enumerable.Range(0, pieces).Select(i => new AskingHistory(
            isLong ? Name(i, isLong) : $"P{i}", Name(i, isLong),
            [new(0, 320), .. Enumerable.Range(1, i % 6).Select(k => new AskedPrice(7 * k, 320 - 12.25m * k))],
            45 + i, (PieceState)(1 + i % 3), i % 3 == 1 ? 240 : null)),
    ];

    /// <summary>Flips sold 75 days apart, every seventh at a loss, one far above the others.</summary>
    public static WagesReport Wages(int flips, bool isLong = false) => WagesReport.Of(new()
    {
        Date = FirstSale.AddDays(75 * flips),
        Workshop = new() { TargetWage = 15 },
        Pieces = [.. Enumerable.Range(0, flips).Select(i => Flip(i, FirstSale.AddDays(75 * i), isLong))],
    });

    /// <summary>A quarter, or a span of days, with so many sales and as many pieces in stock.</summary>
    public static QuarterReport Quarter(int pieces, bool isLong = false, decimal scale = 1)
    {
        var log = new SalesLog
        {
            Date = new(2026, 4, 20),
            Pieces =
            [
                .. Enumerable.Range(0, pieces).Select(i => Flip(i, new(2026, 1 + i % 3, 1 + i % 28), isLong, scale)),
                .. Enumerable.Range(0, pieces).Select(i => new Piece
                {
                    Id = $"S{i}", Type = Name(i, isLong), BoughtOn = new DateOnly(2026, 3, 30).AddDays(-17 * i), BoughtPrice = (20 + i) * scale,
                }),
            ],
        };
        return QuarterReport.Of(log, ReportPeriod.Parse(isLong ? "2026-01-05..2026-03-30" : "2026-Q1")!);
    }

    public static LogCheck Filling(int columns, bool isLong = false) => new(
        true, columns, 0, 0, 0, 0, null, null, 0, 0, 0, [], [], [],
        [
            .. Enumerable.Range(0, columns).Select(i => new ColumnFilling(
                Name(i, isLong), i % 2 == 0 ? "all" : "offered", 40 + i, 40 - i, i % 3, i % 3 == 0 ? null : "hours.csv", i % 5 == 4)),
        ], []);

    private static readonly DateOnly FirstSale = new(2017, 2, 1);

    private static Piece Flip(int i, DateOnly soldOn, bool isLong, decimal scale = 1) => new()
    {
        Id = isLong ? Name(i, isLong) : $"P{i}",
        Type = Name(i, isLong),
        BoughtOn = soldOn.AddDays(-40),
        BoughtPrice = (i % 7 == 3 ? 190 : 30) * scale,
        ListedOn = soldOn.AddDays(-10),
        SoldOn = soldOn,
        SoldPrice = (120 + 13 * i % 60) * scale,
        Fees = 6 * scale,
        DeliveryCost = 0,
        SuppliesCost = 15 * scale,
        Hours = i == 5 ? 0.2m : 5 + i % 4,
    };

    private static SurvivalTime[] Spells(int group) =>
        [.. Enumerable.Range(1, 12).Select(k => new SurvivalTime(5 * k + 3 * group, k % (group + 3) != 1))];
}
