using System.Text;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>The lists of a year's sheet as text.</summary>
internal static class YearListsText
{
    public static void Append(StringBuilder text, YearReport report)
    {
        string Money(decimal amount) => MoneyText.Exact(amount, report.Workshop);
        List(text, "Pieces sold", report.Sales.Select(sale => Invariant(
            $"{sale.Id}, {sale.Type}, {sale.SoldOn:yyyy-MM-dd}: {(sale.SalePrice is { } price ? Money(price) : "price unknown")}, had cost {Money(sale.Cost)}")));
        List(text, "Pieces that left unsold", report.Left.Select(left => Invariant(
            $"{left.Id}, {left.What}, {left.LeftOn:yyyy-MM-dd}, {(left.How is { } how ? Columns.WordOf(how) : "gone")}: had cost {Money(left.Cost)}")));
        List(text, "Driving", report.Driving.Outings.Select(outing => Invariant(
            $"{outing.Date:yyyy-MM-dd}, {outing.Trip}: {outing.Distance?.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) ?? "?"}, {(outing.Driving is { } driving ? Money(driving) : "not reckoned")}{(outing.OtherCost == 0 ? "" : $", and {Money(outing.OtherCost)} of other cost")}; {(outing.IsFruitless ? "brought nothing home" : outing.IsDelivery ? "to a buyer" : outing.IsOverhead ? Drive(outing.Purpose) : TextLines.Counted(outing.Pieces, "piece"))}")));
        List(text, "Tools", report.Tools.Select(tool => Invariant(
            $"{tool.Item}, {Day(tool.BoughtOn)}, {Money(tool.Price)}: wear {Money(tool.Wear)} in the year, left {Money(tool.Value)}")));
        List(text, Invariant($"Stock on {report.Reckoned.To:yyyy-MM-dd}, at cost"), report.Stock.Select(piece => Invariant(
            $"{piece.Id}, {piece.What}, bought {Day(piece.BoughtOn)}: {Money(piece.Cost)}")));
        List(text, Invariant($"In cans on {report.Reckoned.To:yyyy-MM-dd}, at cost"), report.Supplies.Select(supply =>
            $"{supply.Item}: {Money(supply.Value)}"));
        List(text, "Money in and out", report.Cash.Lines.Select(line =>
            $"{line.What}: {(line.In == 0 ? "" : $"in {Money(line.In)}")}{(line.In != 0 && line.Out != 0 ? ", " : "")}{(line.Out == 0 ? "" : $"out {Money(line.Out)}")}"));
        List(text, "Every cent in the files", report.Tally.Select(row =>
            $"{row.What}: {Money(row.Total)} = in the year {Money(row.InYear)}, before {Money(row.Before)}, after {Money(row.After)}, without a day {Money(row.WithoutDay)}"));
        List(text, "To ask a tax professional; these are no advice", report.Prompts
            .Select(prompt => $"{prompt.Text} [{prompt.Source}{(prompt.Status == QuarterPrompts.Published ? "" : $"; {prompt.Status}")}]")
            .Prepend(YearPrompts.Whose(report.Workshop)));
        List(text, "Of the books", report.Notes);
    }

    private static string Drive(TripPurpose purpose) => purpose switch
    {
        TripPurpose.Delivery => "a delivery of no single sale",
        TripPurpose.Supplies => "a supply run",
        _ => "another drive",
    };

    private static string Day(DateOnly? day) => day is { } known ? Invariant($"{known:yyyy-MM-dd}") : "on an unknown day";

    private static void List(StringBuilder text, string heading, IEnumerable<string> items)
    {
        string[] all = [.. items];
        if (all.Length == 0)
            return;
        text.Append('\n').Append(heading).Append('\n');
        foreach (string item in all)
            text.AppendWrapped("  ", "    ", item);
    }
}
