using System.Collections.Immutable;

using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Logs full of costs: currencies of 0, 2 and 3 digits, both methods, gaps and contradictions everywhere.</summary>
internal static class CostingLogs
{
    private static readonly DateOnly FirstDay = new(2024, 11, 1);

    private static readonly Gen<DateOnly?> Day = Gen.Int[-9, 240].Select(day => day < 0 ? (DateOnly?)null : FirstDay.AddDays(day));

    private static readonly Gen<decimal?> Units = Gen.Int[-9_000, 60_000].Select(n => n < 0 ? (decimal?)null : n);

    private static readonly Gen<decimal?> Quantity = Gen.Int[-500, 4_000].Select(n => n <= 0 ? (decimal?)null : n / 1000m);

    private static readonly Gen<string?> Unit = Gen.OneOf<string?>("quart", "quart", "ml", "fl oz", "tin", "sheet", null);

    private static readonly Gen<string> Item = Gen.OneOf("paint", "primer", "wax", "rags");

    private static readonly Gen<Piece> Bought = Gen.Select(
        Gen.OneOf("dresser", "chair", "bookcase", "lamp"), Gen.Int[1, 3].Nullable(), Quantity, Gen.Int[0, 5], Day, Units,
        (type, count, size, trip, day, price) => new Piece
        {
            Id = "",
            Type = type,
            Count = count,
            Width = size * 10,
            Depth = size * 5,
            Height = size * 12,
            Trip = trip > 3 ? null : Named("T", trip),
            BoughtOn = day,
            BoughtPrice = price,
        });

    private static readonly Gen<Piece> Kept = Gen.Select(
        Bought, Day, Day, Quantity, Units, Gen.Bool,
        (piece, ready, listed, hours, supplies, states) => piece with
        {
            ReadyOn = ready,
            ListedOn = listed,
            Hours = hours,
            SuppliesCost = states ? supplies : null,
        });

    private static readonly Gen<Piece> Ended = Gen.Select(
        Kept, Gen.Int[0, 3], Day, Gen.Select(Units, Units, Units, Units), Gen.Enum<LeftAs>(),
        (piece, end, day, money, leftAs) => end switch
        {
            0 => piece,
            1 => piece with { LeftOn = day, LeftAs = leftAs },
            _ => piece with
            {
                SoldOn = day,
                SoldPrice = money.Item1 ?? 100,
                Channel = "online",
                Fees = money.Item2,
                DeliveryCharged = money.Item3,
                DeliveryCost = money.Item4,
            },
        });

    private static readonly Gen<SupplyPurchase> Purchase = Gen.Select(
        Item, Day, Quantity, Unit, Units, Quantity, Gen.OneOf<string?>("ft2/quart", "m2/l", "ft2", null),
        (item, day, quantity, unit, price, coverage, per) =>
            new SupplyPurchase(item, null, day, quantity, unit, price, coverage * 50, per));

    private static readonly Gen<(int Piece, DateOnly? Day, string Item, decimal? Quantity, string? Unit, decimal? Coats)> Use =
        Gen.Select(Gen.Int[-1, 9], Day, Item, Quantity, Unit, Quantity);

    private static readonly Gen<StockCount> Count = Gen.Select(
        Gen.Int[0, 400], Item, Quantity, Unit,
        (day, item, quantity, unit) => new StockCount(FirstDay.AddDays(day), item, quantity ?? 0, unit, null));

    /// <summary>Generates logs of up to 7 pieces, as of a day in the middle or after everything.</summary>
    public static readonly Gen<SalesLog> Any = Gen.Select(
        Gen.Select(Gen.OneOf("USD", "JPY", "KWD"), Gen.Enum<CostingMethod>(), Gen.Bool, Gen.Int[0, 400]),
        Ended.Array[0, 7],
        Gen.Select(Purchase.Array[0, 9], Count.Array[0, 4]),
        Use.Array[0, 9],
        Gen.Select(Gen.Int[0, 9], Day, Quantity).Array[0, 9],
        Gen.Select(Day, Quantity, Units).Array[0, 4],
        Gen.Select(Day, Units, Units, Quantity, Gen.Bool).Array[0, 3],
        Gen.Select(Gen.Int[0, 8], Gen.Int[-20_000, 60_000]).Array[0, 4],
        (settings, pieces, supplies, uses, hours, trips, tools, overheads) =>
        {
            Currency currency = Currency.Of(settings.Item1);
            decimal unit = currency.MinorDigits switch { 0 => 1, 2 => 0.01m, _ => 0.001m };
            ImmutableArray<Piece> named = [.. pieces.Select((piece, i) => piece with
            {
                Id = Named("P", i),
                BoughtPrice = piece.BoughtPrice * unit,
                SuppliesCost = piece.SuppliesCost * unit,
                SoldPrice = piece.SoldPrice * unit,
                Fees = piece.Fees * unit,
                DeliveryCharged = piece.DeliveryCharged * unit,
                DeliveryCost = piece.DeliveryCost * unit,
            })];
            return new SalesLog
            {
                Date = new(2026, 1, 31),
                Workshop = new()
                {
                    Currency = currency,
                    Costing = settings.Item2,
                    LengthUnit = settings.Item3 ? LengthUnit.Centimetre : LengthUnit.Inch,
                    Mileage = settings.Item3 ? [new(FirstDay.AddDays(60), 0.317m)] : [],
                    Fees = settings.Item3 ? new Workshop().Fees.Add("online", new(0.1237m, 5 * unit)) : new Workshop().Fees,
                },
                Pieces = named,
                Supplies = [.. supplies.Item1.Select((p, i) => p with { Price = p.Price * unit, Row = i + 2 })],
                Uses = [.. uses.Where(use => use.Piece < named.Length).Select((use, i) => new SupplyUse(
                    use.Piece < 0 ? null : Named("P", use.Piece), use.Day, use.Item, use.Quantity, use.Unit, use.Coats, null, i + 2))],
                Counts = [.. supplies.Item2.Select((count, i) => count with { Row = i + 2 })],
                Hours = [.. hours.Where(entry => entry.Item1 < named.Length).Select(entry => new HoursEntry(
                    Named("P", entry.Item1), entry.Item2, null, entry.Item3 ?? 0))],
                Trips = [.. trips.Select((trip, i) => new Trip(
                    Named("T", i), trip.Item1, trip.Item2 * 10, null, trip.Item3 * unit, null))],
                Tools = [.. tools.Select((tool, i) => new Tool(
                    Named("tool ", i), tool.Item1, tool.Item2 * unit, tool.Item3 * unit / 3m is { } s ? currency.Round(s) : null,
                    tool.Item5 ? tool.Item4 * 3 : null, tool.Item5 ? null : tool.Item4 * 4))],
                Overheads = [.. overheads.Select(o => new Overhead(
                    new(2025, 1 + o.Item1, 1), "rent", o.Item2 * unit))],
            }.AsOf(FirstDay.AddDays(settings.Item4));
        });

    private static string Named(string letter, int number) => FormattableString.Invariant($"{letter}{number}");
}
