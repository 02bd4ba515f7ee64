using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>
/// Purchases and uses of supplies. Of a piece's supplies half is paint, a fifth primer, 15 % topcoat or wax, the rest
/// abrasives, filler and hardware. A can is bought when what is left does not reach; every piece takes from the cans,
/// but the uses of only some are written down.
/// </summary>
internal sealed class DemoSuppliesBook
{
    /// <summary>Share of the paint lost in brush and roller where a use is written as coats on an area.</summary>
    public const double Loss = 0.15;

    private sealed record Good(
        string Item, string Kind, string Unit, double Price, decimal Pack, double? Coverage, double Share, int Coats);

    private static readonly Good Primer = new("bonding primer", "primer", "quart", 19, 1, 85, 0.2, 1);
    private static readonly Good Topcoat = new("clear topcoat", "topcoat", "quart", 21, 1, 125, 0.15, 2);
    private static readonly Good Wax = new("clear wax", "wax", "tin", 18, 1, 85, 0.15, 1);
    private static readonly Good[] Sundries =
    [
        new("sandpaper", "abrasive", "sheet", 0.56, 25, null, 0.06, 0),
        new("wood filler", "filler", "tub", 9, 1, null, 0.02, 0),
        new("knobs and pulls", "hardware", "each", 2.4, 10, null, 0.07, 0),
    ];

    private readonly Dictionary<string, double> left = [];
    private readonly List<SupplyPurchase> purchases = [];
    private readonly List<SupplyUse> uses = [];

    public ImmutableArray<SupplyPurchase> Purchases => [.. purchases.OrderBy(row => row.BoughtOn)];

    public ImmutableArray<SupplyUse> Uses => [.. uses.OrderBy(row => row.Date)];

    public static DemoSuppliesBook Write(ImmutableArray<DemoEntry> entries, DateOnly first, DateOnly last, ulong seed)
    {
        DemoSuppliesBook book = new();
        foreach (DemoEntry entry in entries
            .Where(entry => entry.Life.ReadyOn <= last && !entry.Life.LeftUnready)
            .OrderBy(entry => entry.Life.PaintedOn))
        {
            DemoDraws draws = new(seed, DemoStream.Supplies, entry.Life.Index);
            DateOnly shopped = entry.Life.PaintedOn.AddDays(-draws.Below(4));
            book.WorkOn(entry, shopped < first ? first : shopped, draws);
        }
        return book;
    }

    private void WorkOn(DemoEntry entry, DateOnly shopped, DemoDraws draws)
    {
        DemoLife life = entry.Life;
        Good paint = new($"{life.Facts.Colour} paint", "paint", "quart", 24, 1, 100, 0.5, 2);
        Good[] coats = [Primer, paint, life.Facts.Finish == "wax" ? Wax : Topcoat];
        bool measured = draws.Chance(0.6);
        for (int day = 0; day < coats.Length; day++)
        {
            Good good = coats[day];
            decimal quantity = Math.Max(
                0.05m, DemoRounding.To(0.05m, good.Share * life.Supplies / PriceOf(good, life.PaintedOn)));
            decimal area = Math.Max(1, DemoRounding.To(1, (double)quantity * Covered(good) / good.Coats));
            double taken = measured ? (double)quantity : (double)area * good.Coats / Covered(good);
            Take(good, taken, shopped);
            if (!entry.SuppliesByUse)
                continue;
            DateOnly date = life.PaintedOn.AddDays(day);
            uses.Add(measured
                ? new(life.Id, date, good.Item, quantity, good.Unit, null, null)
                : new(life.Id, date, good.Item, null, null, good.Coats, area));
        }
        foreach (Good good in Sundries)
            Take(good, good.Share * life.Supplies / PriceOf(good, life.PaintedOn), shopped);
    }

    /// <summary>Area that a unit covers in one coat after loss.</summary>
    private static double Covered(Good good) => good.Coverage!.Value * (1 - Loss);

    /// <summary>Price of a unit: 3 % a year dearer.</summary>
    private static double PriceOf(Good good, DateOnly date) =>
        good.Price * (1 + 0.03 * (date.DayNumber - DemoLog.LastDay.DayNumber) / 365.25);

    private void Take(Good good, double quantity, DateOnly shopped)
    {
        double stock = left.GetValueOrDefault(good.Item);
        // A fifth in hand, for the owner's brush may lose more than the label's does.
        if (stock < 1.2 * quantity)
        {
            decimal packs = Math.Ceiling((decimal)(1.2 * quantity - stock) / good.Pack);
            decimal bought = packs * good.Pack;
            decimal price = Math.Ceiling((decimal)PriceOf(good, shopped) * bought) - 0.01m;
            purchases.Add(new(
                good.Item, good.Kind, shopped, bought, good.Unit, price,
                (decimal?)good.Coverage, good.Coverage is null ? null : $"ft2/{good.Unit}"));
            stock += (double)bought;
        }
        left[good.Item] = stock - quantity;
    }
}
