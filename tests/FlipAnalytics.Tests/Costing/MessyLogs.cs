using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>
/// Logs of a busy, careless owner, over three years: everything that reading lets through, so pieces never end before
/// they begin, but work, uses and trips may be dated anywhere, and whatever may be empty sometimes is. For laws that must
/// hold for every log. The log is as of a day in the middle, at the end, or years later.
/// </summary>
internal static class MessyLogs
{
    /// <summary>The earliest day of any fact.</summary>
    public static readonly DateOnly FirstDay = new(2023, 1, 15);

    /// <summary>Facts lie on this many days from the first; a little later where a piece took long.</summary>
    public const int Days = 1_095;

    private static readonly Gen<DateOnly?> Day =
        Gen.Int[-Days / 8, Days].Select(day => day < 0 ? (DateOnly?)null : FirstDay.AddDays(day));

    // Minor units of the currency, at times unknown or nothing.
    private static readonly Gen<int?> Units = Gen.Int[-4_000, 30_000].Select(n => n < -2_000 ? (int?)null : Math.Max(0, n));

    private static readonly Gen<int?> PositiveUnits = Gen.Int[-4_000, 30_000].Select(n => n <= 0 ? (int?)null : n);

    private static readonly Gen<decimal?> Number = Gen.Int[-700, 4_000].Select(n => n <= 0 ? (decimal?)null : n / 1000m);

    private static readonly Gen<string?> Unit =
        Gen.OneOf<string?>("quart", "quart", "pint", "ml", "l", "fl oz", "oz", "tin", "sheet", null);

    private static readonly Gen<string> Item = Gen.OneOf("paint", "primer", "wax", "rags", "Sandpaper");

    private static readonly Gen<Piece> Bought = Gen.Select(
        Gen.OneOf("dresser", "nightstand", "chair", "bookcase", "coffee table", "lamp"),
        Gen.Int[-3, 6],
        Gen.Select(Number, Number, Number, Gen.Enum<Condition>().Nullable()),
        Gen.OneOf<string?>("sage", "navy", "white", "oak stain", null),
        Gen.Int[0, 8],
        Day,
        Gen.Select(PositiveUnits, Units, PositiveUnits),
        (type, count, looks, colour, trip, day, money) => new Piece
        {
            Id = "",
            Type = type,
            Count = count < 1 ? null : count,
            Width = looks.Item1 * 10,
            Depth = looks.Item2 * 5,
            Height = looks.Item3 * 12,
            Condition = looks.Item4,
            Colour = colour,
            // A third of the trips were one purchase for one sum, with prices here and there.
            Lot = trip % 3 == 0 ? Named("L", trip) : null,
            // Trips 6 and above are in no trips.csv.
            Trip = trip > 6 ? null : Named("T", trip),
            BoughtOn = day,
            StickerPrice = money.Item1,
            BoughtPrice = money.Item2,
            // One piece in nine is sold for somebody else.
            Commission = trip == 8 ? 0.35m : null,
            ExpectedPrice = money.Item3,
        });

    private static readonly Gen<Piece> Worked = Gen.Select(
        Bought,
        Gen.Int[-20, 60],
        Gen.Int[-20, 60],
        Gen.Select(PositiveUnits, Units, Gen.Int[0, 2]),
        Gen.Int[-10_000, 20_000],
        (piece, toReady, toListed, money, hours) =>
        {
            DateOnly start = piece.BoughtOn ?? FirstDay.AddDays(200);
            return piece with
            {
                ReadyOn = toReady < 0 ? null : start.AddDays(toReady),
                ListedOn = toListed < 0 ? null : start.AddDays(toListed),
                AskingPrice = toListed is < 0 and > -15 ? null : money.Item1,
                SuppliesCost = money.Item3 == 0 ? money.Item2 : null,
                Hours = hours <= 0 ? null : hours / 1000m,
            };
        });

    private static readonly Gen<Piece> Ended = Gen.Select(
        Worked,
        Gen.Int[0, 9],
        Gen.Int[-25, 150],
        Gen.Select(PositiveUnits, Units, Units, Units, Gen.Bool),
        Gen.OneOf<string?>("online", "market stall", "word of mouth", null),
        Gen.Enum<LeftAs>(),
        (piece, end, days, money, channel, leftAs) =>
        {
            DateOnly? day = days < 0 ? null : (piece.ListedOn ?? piece.BoughtOn ?? FirstDay.AddDays(300)).AddDays(days);
            return end switch
            {
                < 3 => piece with { Channel = channel },
                < 5 => piece with { Channel = channel, LeftOn = day, LeftAs = day is null || money.Item5 ? leftAs : null },
                _ => piece with
                {
                    SoldOn = day,
                    SoldPrice = money.Item1 ?? 9_999,
                    SalesTax = end == 7 ? money.Item3 : null,
                    Channel = channel,
                    Fees = money.Item5 ? money.Item2 : null,
                    DeliveryCharged = end == 5 ? money.Item3 : null,
                    DeliveryCost = end is 5 or 6 ? money.Item4 : null,
                },
            };
        });

    private static readonly Gen<SupplyPurchase> Purchase = Gen.Select(
        Item, Day, Number, Unit, Units, Number, Gen.OneOf<string?>("ft2/quart", "m2/l", "sq ft per gal", "ft2", null),
        (item, day, quantity, unit, price, coverage, per) =>
            new SupplyPurchase(item, null, day, quantity, unit, price, coverage * 50, per));

    // Measured, coats, both or neither; of an item bought or not; on a piece or wasted.
    private static readonly Gen<SupplyUse> Use = Gen.Select(
        Gen.Int[-1, 7], Day, Gen.OneOf(Item, Gen.Const("varnish"), Item), Number, Unit, Number, Number,
        (piece, day, item, quantity, unit, coats, area) =>
            new SupplyUse(piece < 0 ? null : Named("P", piece), day, item, quantity, unit, coats, area * 10));

    private static readonly Gen<StockCount> Count = Gen.Select(
        Gen.Int[0, Days], Gen.OneOf(Item, Item, Gen.Const("varnish")), Number, Unit,
        (day, item, quantity, unit) => new StockCount(FirstDay.AddDays(day), item, quantity ?? 0, unit, null));

    private static readonly Gen<HoursEntry> Work = Gen.Select(
        Gen.Int[-3, 7], Day, Gen.Enum<WorkTask>().Nullable(), Gen.Int[0, 8_000],
        // An id counts in either case.
        (piece, day, task, hours) => new HoursEntry(
            piece < 0 ? null : Named(piece % 2 == 0 ? "P" : "p", piece), day, task, hours / 1000m));

    private static readonly Gen<Trip> Outing = Gen.Select(
        Day, Gen.Int[-20, 300], Gen.Int[-20, 80], Units,
        (day, distance, hours, cost) => new Trip("", day, distance < 0 ? null : distance / 4m, hours < 0 ? null : hours / 20m, cost, null)
        {
            Purpose = hours % 9 is 1 or 2 or 3 ? (TripPurpose)(hours % 9) : TripPurpose.Sourcing,
            PieceId = hours % 9 == (int)TripPurpose.Delivery ? Named("P", hours % 8) : null,
        });

    private static readonly Gen<CostMove> Part = Gen.Select(
        Gen.Int[0, 7], Gen.Int[0, 7], Gen.Int[0, Days], Gen.Int[0, 9_000],
        (from, to, day, cost) => new CostMove(FirstDay.AddDays(day), Named("P", from), Named("p", to), cost, null));

    private static readonly Gen<MoneyEntry> Cash = Gen.Select(
        Gen.Enum<MoneyKind>(), Gen.Int[0, 7], Gen.Int[0, Days], Gen.Int[-4_000, 20_000],
        (kind, piece, day, amount) => new MoneyEntry(FirstDay.AddDays(day), kind, Named("p", piece), amount, null));

    private static readonly Gen<Tool> Kit = Gen.Select(
        Day, Units, Units, Number, Gen.Int[0, 6],
        (day, price, salvage, life, kind) => new Tool(
            "", day, price, kind > 2 ? null : salvage / 3, kind is 1 or 3 or 6 ? life * 3 : null, kind is 2 or 4 or 6 ? life * 12 : null));

    private static readonly Gen<Overhead> Cost = Gen.Select(
        Gen.Int[0, 44], Gen.OneOf<string?>("rent", "insurance", null), Gen.Int[-5_000, 40_000],
        // Half of them for a channel, at times one that no piece names.
        Gen.OneOf<string?>("online", "Market Stall", "word of mouth", "booth", null, null, null, null),
        (month, item, amount, channel) =>
            new Overhead(new DateOnly(2022, 11, 1).AddMonths(month), item, amount) { Channel = channel });

    private static readonly Gen<AskingPrice> Cut = Gen.Select(
        Gen.Int[0, 7], Gen.Int[0, Days], Gen.Int[1, 30_000],
        (piece, day, price) => new AskingPrice(Named("P", piece), FirstDay.AddDays(day), price));

    private static readonly Gen<Workshop> Settings = Gen.Select(
        Gen.OneOf("USD", "JPY", "KWD"), Gen.Enum<CostingMethod>(), Gen.Bool, Gen.Bool, Gen.Int[0, 3],
        (code, method, isMetric, hasFees, mileage) => new Workshop
        {
            Currency = Currency.Of(code),
            Costing = method,
            LengthUnit = isMetric ? LengthUnit.Centimetre : LengthUnit.Inch,
            DistanceUnit = isMetric ? DistanceUnit.Kilometre : DistanceUnit.Mile,
            TargetWage = hasFees ? 15 : null,
            CapitalRate = hasFees ? 0.08m : 0,
            Storage = isMetric ? 0.01m : 0,
            Mileage = mileage switch
            {
                0 => [],
                1 => [new(FirstDay.AddDays(400), 0.317m)],
                _ => [new(FirstDay.AddDays(-100), 0.25m), new(FirstDay.AddDays(500), 0.317m)],
            },
            Fees = hasFees
                ? new Workshop().Fees.Add("online", new(0.1237m, 5)).Add("market stall", new(0, 300))
                : new Workshop().Fees,
        });

    /// <summary>Generates logs of 0 to 8 pieces with side tables of a few rows each.</summary>
    public static readonly Gen<SalesLog> Any = Gen.Select(
        Gen.Select(Settings, Gen.Int[0, Days + 700]),
        Ended.Array[0, 8],
        Gen.Select(Purchase.Array[0, 8], Use.Array[0, 10], Count.Array[0, 4]),
        Work.Array[0, 10],
        Outing.Array[0, 6],
        Kit.Array[0, 3],
        Cost.Array[0, 6],
        Gen.Select(Cut.Array[0, 5], Part.Array[0, 2], Cash.Array[0, 4], MessyReturns.Any.Array[0, 5]),
        (settings, pieces, supplies, work, outings, kit, costs, rest) => Assemble(
            settings.Item1, pieces, supplies.Item1, supplies.Item2, supplies.Item3, work, outings, kit, costs, rest.Item1, rest.Item2, rest.Item3, rest.Item4)
            .AsOf(FirstDay.AddDays(settings.Item2)));

    private static SalesLog Assemble(
        Workshop workshop, Piece[] pieces, SupplyPurchase[] purchases, SupplyUse[] uses, StockCount[] counts, HoursEntry[] work,
        Trip[] outings, Tool[] kit, Overhead[] costs, AskingPrice[] cuts, CostMove[] parts, MoneyEntry[] cash, SaleReturn[] backs)
    {
        decimal unit = workshop.Currency.MinorDigits switch { 0 => 1, 2 => 0.01m, _ => 0.001m };
        HashSet<string> ids = new(pieces.Select((_, i) => Named("P", i)), StringComparer.OrdinalIgnoreCase);
        return new()
        {
            Date = FirstDay.AddDays(5 * Days),
            Workshop = workshop with
            {
                Fees = workshop.Fees.SetItems(workshop.Fees.Select(
                    rule => KeyValuePair.Create(rule.Key, rule.Value with { Fixed = rule.Value.Fixed * unit }))),
            },
            Pieces = [.. pieces.Select((piece, i) => InUnits(piece, unit) with { Id = Named("P", i), Row = i + 2 })],
            AskingPrices = [.. cuts.Where(cut => ids.Contains(cut.PieceId))
                .Select((cut, i) => cut with { Price = cut.Price * unit, Row = i + 2 })],
            Hours = [.. work.Where(entry => entry.PieceId is null || ids.Contains(entry.PieceId))
                .Select((entry, i) => entry with { Row = i + 2 })],
            Supplies = [.. purchases.Select((p, i) => p with { Price = p.Price * unit, Row = i + 2 })],
            Uses = [.. uses.Where(use => use.PieceId is null || ids.Contains(use.PieceId)).Select((use, i) => use with { Row = i + 2 })],
            Counts = [.. counts.Select((count, i) => count with { Row = i + 2 })],
            Trips = [.. outings.Select((trip, i) => trip with
            {
                Name = Named("T", i),
                OtherCost = trip.OtherCost * unit,
                Row = i + 2,
            })],
            Moves = [.. parts.Where(part => ids.Contains(part.From) && ids.Contains(part.To) && !string.Equals(part.From, part.To, StringComparison.OrdinalIgnoreCase))
                .Select((part, i) => part with { Cost = part.Cost * unit, Row = i + 2 })],
            Money = [.. cash.Where(entry => ids.Contains(entry.PieceId!))
                .Select((entry, i) => entry with
                {
                    PieceId = entry.NeedsPiece ? entry.PieceId : null,
                    Amount = entry.Amount * unit,
                    Row = i + 2,
                })],
            Returns = [.. MessyReturns.Possible(pieces, backs).Select((back, i) => MessyReturns.InUnits(back, unit) with { Row = i + 2 })],
            Tools = [.. kit.Select((tool, i) => tool with
            {
                Item = Named("tool ", i),
                Price = tool.Price * unit,
                Salvage = tool.Salvage is { } salvage ? decimal.Floor(salvage) * unit : null,
                Row = i + 2,
            })],
            Overheads = [.. costs.Select((cost, i) => cost with { Amount = cost.Amount * unit, Row = i + 2 })],
        };
    }

    private static Piece InUnits(Piece piece, decimal unit) => piece with
    {
        StickerPrice = piece.StickerPrice * unit,
        BoughtPrice = piece.BoughtPrice * unit,
        ExpectedPrice = piece.ExpectedPrice * unit,
        AskingPrice = piece.AskingPrice * unit,
        SoldPrice = piece.SoldPrice * unit,
        Fees = piece.Fees * unit,
        DeliveryCharged = piece.DeliveryCharged * unit,
        DeliveryCost = piece.DeliveryCost * unit,
        SuppliesCost = piece.SuppliesCost * unit,
        SalesTax = piece.SalesTax * unit,
    };

    private static string Named(string letter, int number) => FormattableString.Invariant($"{letter}{number}");
}
