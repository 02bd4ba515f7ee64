using System.Collections.Immutable;
using System.Globalization;

namespace FlipAnalytics.Tests;

/// <summary>
/// One cell of the demo log changed at a time: only those parts of the report may change that the column has to do with, and
/// every sum still comes out.
/// </summary>
public sealed class QuarterMutationTests
{
    private const string Nothing = "";
    private const string Used = "cost written-off stock cans";
    private const string Worked = Used + " tools hours counts";

    // For each column, the parts of the report that may change with it.
    private static readonly Dictionary<string, string> MayChange = new()
    {
        ["pieces.id"] = Worked,
        ["pieces.type"] = Nothing,
        ["pieces.title"] = Nothing,
        ["pieces.count"] = "floor",
        ["pieces.width"] = "floor",
        ["pieces.depth"] = "floor",
        ["pieces.height"] = Nothing,
        ["pieces.material"] = Nothing,
        ["pieces.condition"] = Nothing,
        ["pieces.color"] = Nothing,
        ["pieces.finish"] = Nothing,
        ["pieces.source"] = Nothing,
        ["pieces.trip"] = "cost written-off stock hours overheads",
        ["pieces.bought_on"] = "cash stock counts floor",
        ["pieces.sticker_price"] = Nothing,
        ["pieces.bought_price"] = "cost written-off stock cash",
        ["pieces.expected_price"] = Nothing,
        ["pieces.ready_on"] = Worked,
        ["pieces.listed_on"] = Worked,
        ["pieces.asking_price"] = Nothing,
        ["pieces.sold_on"] = Worked + " sales selling cash floor",
        ["pieces.sold_price"] = "sales selling cash",
        ["pieces.channel"] = "selling cash",
        ["pieces.fees"] = "selling cash",
        ["pieces.delivery_charged"] = "sales cash",
        ["pieces.delivery_cost"] = "selling cash",
        ["pieces.hours"] = Used + " hours",
        ["pieces.supplies_cost"] = "cost written-off stock",
        ["pieces.left_on"] = Worked + " floor",
        ["pieces.left_as"] = "written-off stock counts",
        ["pieces.notes"] = Nothing,
        ["asking.id"] = Nothing,
        ["asking.date"] = Nothing,
        ["asking.price"] = Nothing,
        ["colors.color"] = Nothing,
        ["colors.family"] = Nothing,
        ["colors.hex"] = Nothing,
        ["hours.id"] = Worked,
        ["hours.date"] = Worked,
        ["hours.task"] = "hours",
        ["hours.hours"] = Used + " hours",
        ["supplies.item"] = Used,
        ["supplies.kind"] = Nothing,
        ["supplies.bought_on"] = Used + " cash",
        ["supplies.quantity"] = Used,
        ["supplies.unit"] = Used,
        ["supplies.price"] = Used + " cash",
        ["supplies.coverage"] = Used,
        ["supplies.coverage_unit"] = Used,
        ["uses.id"] = Used + " tools",
        ["uses.date"] = Used + " tools",
        ["uses.item"] = Used,
        ["uses.quantity"] = Used,
        ["uses.unit"] = Used,
        ["uses.coats"] = Used,
        ["uses.area"] = Used,
        ["trips.trip"] = "cost written-off stock hours overheads",
        ["trips.date"] = "cost written-off stock hours overheads cash",
        ["trips.distance"] = "cost written-off stock overheads cash",
        ["trips.hours"] = "hours",
        ["trips.other_cost"] = "cost written-off stock overheads cash",
        ["trips.notes"] = Nothing,
        ["tools.item"] = Nothing,
        ["tools.bought_on"] = "tools cash",
        ["tools.price"] = "tools cash",
        ["tools.salvage"] = "tools",
        ["tools.life_pieces"] = "tools",
        ["tools.life_months"] = "tools",
        ["overheads.month"] = "overheads cash",
        ["overheads.item"] = Nothing,
        ["overheads.amount"] = "overheads cash",
    };

    private static readonly ReportPeriod Period = ReportPeriod.Parse("2024-07-01..2026-03-31")!;

    private static readonly string[] Tables = ["pieces", "asking", "colors", "hours", "supplies", "uses", "trips", "tools", "overheads"];

    [Theory]
    [InlineData("pieces")]
    [InlineData("asking")]
    [InlineData("colors")]
    [InlineData("hours")]
    [InlineData("supplies")]
    [InlineData("uses")]
    [InlineData("trips")]
    [InlineData("tools")]
    [InlineData("overheads")]
    public void ACellChangesOnlyWhatDependsOnIt(string table)
    {
        using LogFolder folder = new();
        foreach (string name in Tables)
            folder.With(name + ".csv", House.Repository.Read("data-demo", name + ".csv"));
        folder.With("workshop.toml", House.Repository.Read("data-demo", "workshop.toml"));
        Dictionary<string, string> before = Parts(folder);
        string[] lines = House.Repository.Read("data-demo", table + ".csv").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        string[] columns = lines[0].Trim('\r').Split(',');
        int effects = 0;
        for (int column = 0; column < columns.Length; column++)
        {
            string allowed = MayChange[$"{table}.{columns[column]}"];
            foreach (int row in Rows(lines, column))
            {
                string[] cells = Cells(lines[row]);
                string changed = Changed(table, columns[column], cells[column]);
                folder.With(table + ".csv", string.Join('\n', lines.Select((line, i) => i != row ? line
                    : string.Join(',', cells.Select((cell, k) => k == column ? changed : cell)))) + "\n");
                Dictionary<string, string> after = Parts(folder);
                string[] moved = [.. before.Keys.Where(part => before[part] != after[part])];
                effects += moved.Length;
                Assert.True(
                    moved.All(part => allowed.Split(' ').Contains(part)),
                    $"{table}.{columns[column]}, line {row + 1}, {cells[column]} to {changed}: {string.Join(", ", moved)} changed.");
            }
        }

        Assert.Equal(table is not ("asking" or "colors"), effects > 0);
    }

    // Three rows that hold something in the column, from the later part of the log, where most matters for the span.
    private static int[] Rows(string[] lines, int column)
    {
        int[] filled = [.. Enumerable.Range(1, lines.Length - 1).Where(i => Cells(lines[i])[column].Length > 0)];
        return [.. new[] { 0.5, 0.75, 0.95 }.Select(part => (int)(part * filled.Length)).Distinct()
            .Where(i => i < filled.Length).Select(i => filled[i])];
    }

    private static string[] Cells(string line)
    {
        List<string> cells = [];
        bool isQuoted = false;
        string cell = "";
        foreach (char c in line.Trim('\r'))
        {
            isQuoted ^= c == '"';
            if (c == ',' && !isQuoted)
            {
                cells.Add(cell);
                cell = "";
            }
            else
            {
                cell += c;
            }
        }

        return [.. cells, cell];
    }

    private static string Changed(string table, string column, string cell) => (table, column, cell) switch
    {
        (_, "condition", "worn") => "sound",
        (_, "condition", _) => "worn",
        (_, "left_as", _) => "given",
        (_, "task", "sourcing") => "other",
        (_, "task", _) => "sourcing",
        (_, "unit", "quart") => "pint",
        (_, "unit", _) => "quart",
        (_, "coverage_unit", _) => "ft2/gallon",
        (_, "channel", "online") => "market stall",
        (_, "channel", _) => "online",
        (_, "month", _) => DateOnly.ParseExact(cell + "-01", "yyyy-MM-dd").AddMonths(-1).ToString("yyyy-MM", CultureInfo.InvariantCulture),
        ("pieces", "trip", _) => "T100",
        ("hours" or "uses" or "asking", "id", _) => "P0100",
        (_, "item", _) when table is "supplies" or "uses" => cell == "clear wax" ? "white paint" : "clear wax",
        (_, "hex", _) => "#123456",
        ("pieces", "count", _) => "3",
        _ when DateOnly.TryParseExact(cell, "yyyy-MM-dd", out DateOnly day) =>
            day.AddDays(column == "bought_on" ? -1 : 1).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
        _ when decimal.TryParse(cell, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal number) =>
            (number + (column is "life_pieces" ? -60 : 1)).ToString(CultureInfo.InvariantCulture),
        _ when cell.StartsWith('"') => "other words",
        _ => cell + "x",
    };

    private static Dictionary<string, string> Parts(LogFolder folder)
    {
        SalesLog log = folder.Read().Log!.AsOf(new(2026, 3, 31));
        var report = QuarterReport.Of(log, Period);
        Assert.All(report.Sums, sum => Assert.Equal(0, sum.Difference));
        QuarterProfit profit = report.Profit;
        return new()
        {
            ["sales"] = Text(profit.Pieces, profit.Sales, profit.DeliveryCharged),
            ["cost"] = Text(profit.Purchases, profit.Supplies, profit.Outings),
            ["selling"] = Text(profit.Fees, profit.Delivery),
            ["written-off"] = Text(profit.WrittenOff),
            ["tools"] = Text(profit.ToolWear, report.Opening.Tools, report.Closing.Tools),
            ["overheads"] = Text(profit.Overheads),
            ["hours"] = Text(
                report.Hours.BenchOfSold, report.Hours.OutingsOfSold, report.Hours.General, report.Hours.OfWrittenOff, report.Hours.SoldWithout,
                decimal.Round(report.Hours.Worked, 6)),
            ["cash"] = string.Join(';', report.Cash.Lines) + Text(report.Cash.DrivingReckoned),
            ["stock"] = string.Join(';', new[] { report.Opening, report.Closing }
                .SelectMany(stock => stock.ByState.Concat(stock.ByAge)).Select(group => Text(group.Pieces, group.Cost))),
            ["floor"] = string.Join(';', new[] { report.Opening, report.Closing }
                .SelectMany(stock => stock.ByState).Select(group => Text(group.Floor, group.FloorUnknown))),
            ["cans"] = Text(report.Opening.InCans, report.Closing.InCans),
            ["counts"] = report.Counts.ToString(),
        };
    }

    private static string Text(params ImmutableArray<decimal> amounts) =>
        string.Join(' ', amounts.Select(amount => amount.ToString("0.######", CultureInfo.InvariantCulture)));
}
