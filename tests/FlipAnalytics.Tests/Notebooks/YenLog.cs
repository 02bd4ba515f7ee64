using System.Collections.Immutable;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>
/// A generated log as a workshop elsewhere would keep it: in yen, which have no minor unit, centimetres, square metres
/// and kilometres.
/// </summary>
internal static class YenLog
{
    private const decimal YenADollar = 150;
    private const decimal CentimetresAnInch = 2.54m;
    private const decimal SquareMetresASquareFoot = 0.09290304m;
    private const decimal KilometresAMile = 1.609344m;

    public static SalesLog Generate(int flips, ulong seed) => Translate(DemoLog.Generate(flips, seed).Log);

    private static SalesLog Translate(SalesLog log) => log with
    {
        Workshop = Translate(log.Workshop),
        Pieces = [.. log.Pieces.Select(Translate)],
        AskingPrices = [.. log.AskingPrices.Select(asking => asking with { Price = Yen(asking.Price) })],
        Supplies = [.. log.Supplies.Select(Translate)],
        Uses = [.. log.Uses.Select(use => use with { Area = Rounded(use.Area, SquareMetresASquareFoot, 2) })],
        Trips =
        [
            .. log.Trips.Select(trip => trip with
            {
                Distance = Rounded(trip.Distance, KilometresAMile, 0),
                OtherCost = Yen(trip.OtherCost),
            }),
        ],
        Tools = [.. log.Tools.Select(tool => tool with { Price = Yen(tool.Price), Salvage = Yen(tool.Salvage) })],
        Overheads = [.. log.Overheads.Select(overhead => overhead with { Amount = Yen(overhead.Amount) })],
    };

    private static Workshop Translate(Workshop workshop) => workshop with
    {
        Currency = Currency.Of("JPY"),
        Symbol = "¥",
        LengthUnit = LengthUnit.Centimetre,
        DistanceUnit = DistanceUnit.Kilometre,
        TargetWage = Yen(workshop.TargetWage),
        Fees = workshop.Fees.ToImmutableDictionary(
            fee => fee.Key, fee => fee.Value with { Fixed = Yen(fee.Value.Fixed) }, StringComparer.OrdinalIgnoreCase),
        Mileage =
        [
            .. workshop.Mileage.Select(rate => rate with { Rate = decimal.Round(rate.Rate * YenADollar / KilometresAMile, 1) }),
        ],
        Guesses = workshop.Guesses.ToImmutableDictionary(
            guess => guess.Key,
            guess => guess.Value with { SalePrice = Yen(guess.Value.SalePrice), Supplies = Yen(guess.Value.Supplies) },
            StringComparer.OrdinalIgnoreCase),
    };

    private static Piece Translate(Piece piece) => piece with
    {
        Width = Rounded(piece.Width, CentimetresAnInch, 0),
        Depth = Rounded(piece.Depth, CentimetresAnInch, 0),
        Height = Rounded(piece.Height, CentimetresAnInch, 0),
        StickerPrice = Yen(piece.StickerPrice),
        BoughtPrice = Yen(piece.BoughtPrice),
        ExpectedPrice = Yen(piece.ExpectedPrice),
        AskingPrice = Yen(piece.AskingPrice),
        SoldPrice = Yen(piece.SoldPrice),
        Fees = Yen(piece.Fees),
        DeliveryCharged = Yen(piece.DeliveryCharged),
        DeliveryCost = Yen(piece.DeliveryCost),
        SuppliesCost = Yen(piece.SuppliesCost),
    };

    private static SupplyPurchase Translate(SupplyPurchase purchase) => purchase with
    {
        Price = Yen(purchase.Price),
        Coverage = Rounded(purchase.Coverage, SquareMetresASquareFoot, 2),
        CoverageUnit = purchase.CoverageUnit?.Replace("ft2/", "m2/", StringComparison.Ordinal),
    };

    private static ThreePointGuess? Yen(ThreePointGuess? guess) =>
        guess is null ? null : new(Yen(guess.Low), Yen(guess.Likely), Yen(guess.High));

    private static decimal Yen(decimal dollars) => Currency.Of("JPY").Round(dollars * YenADollar);

    private static decimal? Yen(decimal? dollars) => dollars is { } amount ? Yen(amount) : null;

    private static decimal? Rounded(decimal? number, decimal factor, int digits) =>
        number is { } known ? decimal.Round(known * factor, digits) : null;
}
