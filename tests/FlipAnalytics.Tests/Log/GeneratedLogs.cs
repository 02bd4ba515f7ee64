using System.Collections.Immutable;
using System.Globalization;

using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>Logs as a careful owner might keep them, with gaps anywhere that gaps may be and with awkward texts.</summary>
internal static class GeneratedLogs
{
    public static readonly DateOnly FirstDay = new(2025, 1, 1);

    private static readonly Gen<string?> Label = Gen.OneOf<string?>(
        null, "sage", "Dark Teal", "=SUM(A1)", "+x", "-y", "@z", "'tis", "'=odd", "a,b", "semi;colon", "\"quoted\"", "été");

    private static readonly Gen<string?> Text = Gen.Select(
        Gen.Char["ab ,;\"'\n\r\t=+-@é8\u00a0|#"].Array[0, 12],
        Gen.OneOf("", "", "\t", "\n", "\r", "="),
        (letters, start) => new string(letters).Trim() is { Length: > 0 } text ? start + text : null);

    private static readonly Gen<decimal?> Amount = Gen.Int[1, 99_999].Select(cents => cents / 100m).Nullable();

    private static readonly Gen<decimal?> Quantity = Gen.Int[1, 9_999].Select(number => number / 1000m).Nullable();

    /// <summary>Days from the first; -1 for a day not recorded.</summary>
    private static readonly Gen<int> Gap = Gen.Int[-6, 30];

    private static readonly Gen<Piece> Bought = Gen.Select(
        Label, Text, Gen.Int[1, 6].Nullable(), Gen.Select(Quantity, Quantity, Quantity), Gen.Enum<Condition>().Nullable(), Label, Amount, Amount,
        (type, title, count, size, condition, source, sticker, price) => new Piece
        {
            Id = "",
            Type = type ?? "dresser",
            Title = title,
            Count = count,
            Width = size.Item1,
            Depth = size.Item2,
            Height = size.Item3,
            Condition = condition,
            Source = source,
            StickerPrice = sticker,
            BoughtPrice = price,
        });

    private static readonly Gen<Piece> Worked = Gen.Select(
        Bought, Label, Label, Label, Amount, Quantity, Amount, Text,
        (piece, material, colour, finish, expected, hours, supplies, notes) => piece with
        {
            Material = material,
            Colour = colour,
            Finish = finish,
            ExpectedPrice = expected,
            Hours = hours,
            SuppliesCost = supplies,
            Notes = notes,
        });

    private static readonly Gen<Piece> Ended = Gen.Select(
        Worked, Gen.Int[0, 5], Gen.Select(Amount, Amount, Amount, Amount, Amount), Label, Gen.Enum<LeftAs>(), Gen.Bool,
        Gen.Select(Gap, Gap, Gap, Gap),
        (piece, end, money, channel, leftAs, isDated, gaps) =>
        {
            int day = 20 + gaps.Item1;
            DateOnly? bought = Day(day, gaps.Item1);
            DateOnly? ready = Day(day + Math.Max(0, gaps.Item2), gaps.Item2);
            DateOnly? listed = Day(day += Math.Max(0, gaps.Item3), gaps.Item3);
            DateOnly? over = isDated ? Day(day + Math.Max(0, gaps.Item4), 0) : null;
            Piece dated = piece with
            {
                BoughtOn = bought,
                ReadyOn = ready,
                ListedOn = listed,
                AskingPrice = listed is null ? null : money.Item1,
            };
            return end switch
            {
                0 or 1 => dated,
                2 => dated with { LeftOn = over, LeftAs = leftAs },
                _ => dated with
                {
                    SoldOn = over,
                    SoldPrice = money.Item2 ?? 120,
                    SalesTax = money.Item1,
                    Commission = end == 5 ? 0.4m : null,
                    Channel = channel,
                    Fees = money.Item3,
                    DeliveryCharged = money.Item4,
                    DeliveryCost = money.Item5,
                },
            };
        });

    private static readonly Gen<Workshop> Settings = Gen.Select(
        Text, Gen.Bool, Quantity, Gen.Int[1, 40].Nullable(), Gen.Int[0, 99], Gen.Int[1, 500],
        (name, isMetric, wage, hours, percent, low) => new Workshop
        {
            Name = name?.Trim(),
            Currency = Currency.Of(isMetric ? "EUR" : "USD"),
            Symbol = isMetric ? "€" : null,
            LengthUnit = isMetric ? LengthUnit.Centimetre : LengthUnit.Inch,
            DistanceUnit = isMetric ? DistanceUnit.Kilometre : DistanceUnit.Mile,
            Costing = isMetric ? CostingMethod.Average : CostingMethod.Fifo,
            TargetWage = wage,
            HoursPerWeek = hours,
            CapitalRate = percent / 100m,
            Storage = percent / 1000m,
            Fees = new Workshop().Fees.Add("market stall", new(percent / 100m, 0.30m)).Add("on.line", new(0.5m, 0)),
            Mileage = [new(new(2024, 1, 1), 0.67m), new(new(2025, 1, 1), percent / 1000m)],
            Guesses = new Workshop().Guesses.Add(
                "dresser", new(new(low, low + 1, low + 1.5m), null, null, new(1, 2, 3))),
        });

    /// <summary>Generates logs of 0 to 8 pieces.</summary>
    public static readonly Gen<SalesLog> Any = Gen.Select(
        Ended.Array[0, 8], Gen.Select(Gen.Int[0, 7], Gen.Int[0, 90], Gen.Int[1, 999]).Array[0, 12], Settings, Text, Label, (pieces, facts, workshop, text, label) =>
        {
            ImmutableArray<Piece> named =
                [.. pieces.Select((piece, i) => piece with { Id = Name("P", i), Trip = i % 2 == 0 ? Name("T", i) : null, Lot = i % 3 == 0 ? label : null })];
            return new SalesLog
            {
                Date = DateOnly.MaxValue,
                Workshop = workshop,
                Pieces = named,
                AskingPrices = [.. OfPieces((id, day, number) => new AskingPrice(id, Day(day, 0)!.Value, number))],
                Hours = [.. OfPieces((id, day, number) => new HoursEntry(
                    day % 3 == 0 ? null : id, Day(day, day - 8), (WorkTask)(day % 14), number / 100m))],
                Uses = [.. OfPieces((id, day, number) => new SupplyUse(
                    id, Day(day, day - 8), "paint", null, label, number, day == 0 ? null : day))],
                Supplies = [.. facts.Select(fact => new SupplyPurchase(
                    "paint", label, Day(fact.Item2, 0), fact.Item3, label, fact.Item3, null, label))],
                Counts = [.. facts.Where(fact => fact.Item1 % 3 == 0).Select(fact => new StockCount(
                    Day(fact.Item2, 0)!.Value, "paint", (fact.Item3 - 1) / 1000m, label, text?.Trim()))],
                Trips =
                [
                    .. named.Select((piece, i) => new Trip(Name("T", i), Day(10 * i, i - 2), i, i / 2m, null, text)
                    {
                        Purpose = (TripPurpose)(i % 4),
                        PieceId = i % 4 == (int)TripPurpose.Delivery ? piece.Id : null,
                    }),
                ],
                Moves =
                [
                    .. OfPieces((id, day, number) => new CostMove(Day(day, 0)!.Value, id, named[day % named.Length].Id, number, text))
                        .Where(move => move.From != move.To),
                ],
                Money = [.. OfPieces((id, day, number) => new MoneyEntry(
                    Day(day, 0)!.Value, (MoneyKind)(day % 5), id, number - 100, text))],
                Returns =
                [
                    .. named.Where(piece => piece.IsSold && piece.SoldOn is not null).Take(2).Select((piece, i) => new SaleReturn(
                        piece.Id, piece.SoldOn!.Value.AddDays(i), i + 0.5m) { SalesTax = i == 0 ? 1.25m : null, Cost = 3, Notes = text?.Trim() }),
                    .. named.Where(piece => piece is { IsSold: false, IsGone: false, BoughtOn: not null }).Take(1).Select(piece => new SaleReturn(
                        piece.Id, (piece.ListedOn ?? piece.BoughtOn!.Value).AddDays(9), 40)
                    {
                        SoldOn = (piece.ListedOn ?? piece.BoughtOn!.Value).AddDays(5), SoldPrice = 45.5m, Fees = 0, DeliveryCharged = 5, DeliveryCost = 4, Notes = text?.Trim(),
                    }),
                ],
                Tools = [.. facts.Take(2).Select(fact => new Tool(
                    "sander", Day(fact.Item2, 0), fact.Item3, 1, fact.Item3, null))],
                Overheads = [.. facts.Take(3).Select(fact => new Overhead(
                    new(2025, 1 + (fact.Item2 % 12), 1), label, 50 - fact.Item3)
                {
                    Channel = named.Length > 0 && fact.Item2 % 2 == 0 ? named[fact.Item2 % named.Length].Channel : null,
                })],
                Colours = label is null ? [] : [new Colour(label, "green", "#8fa68e")],
            };

            IEnumerable<T> OfPieces<T>(Func<string, int, int, T> make) =>
                facts.Where(fact => fact.Item1 < named.Length).Select(fact => make(
                    named[fact.Item1].Id, fact.Item2, fact.Item3));
        });

    private static string Name(string letter, int number) => letter + number.ToString(CultureInfo.InvariantCulture);

    private static DateOnly? Day(int day, int gap) => gap < 0 ? null : FirstDay.AddDays(day);
}
