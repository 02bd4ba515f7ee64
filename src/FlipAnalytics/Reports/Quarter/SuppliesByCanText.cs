using System.Text;

using static System.FormattableString;
using static FlipAnalytics.TextLines;

namespace FlipAnalytics;

/// <summary>The supplies that are left, can by can, as text.</summary>
internal static class SuppliesByCanText
{
    private const int Label = 53;
    private const int Column = 11;

    /// <summary>The cans with something left; nothing where there is none.</summary>
    /// <param name="text">The text so far.</param>
    /// <param name="report">The report.</param>
    public static void Append(StringBuilder text, QuarterReport report)
    {
        SupplyCan[] left = [.. report.Cans.Where(can => can.ValueLeft > 0 || can.Left > 0)];
        if (left.Length == 0)
            return;
        text.Append('\n').Append(Row("Supplies left, can by can", "used", "lost", "left", "worth"));
        foreach (SupplyCan can in left)
        {
            string bought = can.BoughtOn is { } day ? Invariant($" of {day:yyyy-MM-dd}") : "";
            string quantity = can.Bought is { } much ? Invariant($", {much:0.##} {can.Unit}").TrimEnd() : "";
            text.Append(Row(
                Shortened($"  {can.Item}{quantity}{bought}"), Quantity(can.Used), Quantity(can.Wasted + can.CountedAway),
                Quantity(can.Left), MoneyText.PlainExact(can.ValueLeft, report.Workshop)));
        }

        int gone = report.Cans.Length - left.Length;
        string others = gone == 0 ? "" : Invariant($"; {gone} more {(gone == 1 ? "is" : "are")} used up");
        text.AppendWrapped("  ", "  ", $"{Counted(left.Length, "purchase")} with something left{others}. Lost is what was wasted, or missing at a count.");
    }

    private static string Quantity(decimal? quantity) => quantity is { } known ? Invariant($"{known:0.##}") : "?";

    private static string Shortened(string label) => label.Length < Label ? label : label[..(Label - 2)] + "…";

    private static string Row(string label, params ReadOnlySpan<string> cells)
    {
        StringBuilder row = new(label.PadRight(Label));
        foreach (string cell in cells)
            row.Append(cell.PadLeft(Column));
        return row.Append('\n').ToString();
    }
}
