using System.Globalization;
using System.Text;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>The trail of a piece as text of at most 100 columns.</summary>
public static class WageTrailText
{
    private const int AmountWidth = 10;

    /// <summary>The answer first, then every line of money and of hours with its place in the log.</summary>
    /// <param name="trail">The trail.</param>
    /// <param name="workshop">The workshop.</param>
    public static string Render(WageTrail trail, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(trail);
        ArgumentNullException.ThrowIfNull(workshop);
        StringBuilder text = new();
        text.AppendWrapped("", "", Answer(trail, workshop));
        text.Append("\nMoney\n");
        foreach (WageTrailLine line in trail.Money)
            Append(text, line, MoneyText.PlainExact(line.Amount, workshop));
        Append(text, MoneyText.PlainExact(trail.FullProfit ?? trail.Takings - trail.Cost, workshop), MoneyResult(trail));
        if (!trail.Hours.IsEmpty)
        {
            text.Append("\nHours\n");
            foreach (WageTrailLine line in trail.Hours)
                Append(text, line, line.Amount.ToString("0.00", CultureInfo.InvariantCulture));
            Append(text, trail.Hours.Sum(line => line.Amount).ToString("0.00", CultureInfo.InvariantCulture),
                trail.BenchHours is null ? "= hours beyond the bench; those at the bench are unknown" : "= all hours");
        }

        if (trail is { CashProfit: { } cash, FullProfit: { } full })
        {
            text.Append("\nWage\n");
            if (trail is { FullWage: { } fullWage, AllHours: { } all })
            {
                text.AppendWrapped("  ", "    ", Invariant(
                    $"all costs, all work: {MoneyText.PlainExact(full, workshop)} / {all:0.00} h = {MoneyText.PlainExact(fullWage, workshop)} an hour"));
            }

            if (trail is { CashWage: { } cashWage, BenchHours: { } bench })
            {
                text.AppendWrapped("  ", "    ", Invariant(
                    $"this piece's own costs, hands-on work: {MoneyText.PlainExact(cash, workshop)} / {bench:0.00} h = {MoneyText.PlainExact(cashWage, workshop)} an hour"));
            }

            if (trail.FullWage is null)
                text.Append("  Without hours at the bench there is no wage.\n");
        }

        if (!trail.Unknown.IsEmpty)
        {
            text.Append("\nNot known\n");
            foreach (string unknown in trail.Unknown)
                text.AppendWrapped("  - ", "    ", unknown);
        }

        return text.ToString();
    }

    private static string Answer(WageTrail trail, Workshop workshop)
    {
        string piece = $"{trail.Id} ({trail.Type})";
        string atMost = trail.IsAtMost ? "at most " : "";
        string day = trail.EndedOn is { } ended ? Invariant($" on {ended:yyyy-MM-dd}") : "";
        return trail switch
        {
            { FullWage: { } wage } =>
                $"{piece} paid {atMost}{MoneyText.Exact(wage, workshop)} an hour: {MoneyText.Exact(trail.FullProfit!.Value, workshop)} for {WageFigures.Hours(trail.AllHours!.Value)} hours, all work and all costs counted.",
            { FullProfit: { } profit } =>
                $"{piece} left {atMost}{MoneyText.Exact(profit, workshop)}; its hours are not written down, so what it paid by the hour is unknown.",
            { State: PieceState.Sold } =>
                $"{piece} was sold{day}, but its price is not known in full, so neither is what it paid.",
            { State: PieceState.Gone } =>
                $"{piece} left without a sale{day}. It cost {MoneyText.Exact(trail.Cost, workshop)}.",
            _ => $"{piece} is not sold. It has cost {MoneyText.Exact(trail.Cost, workshop)} so far.",
        };
    }

    private static string MoneyResult(WageTrail trail) => trail switch
    {
        { FullProfit: not null, IsAtMost: true } => "= left at most, for some costs are not known",
        { FullProfit: not null } => "= left for all the work",
        { State: PieceState.Sold } => "= on record so far; not all is known",
        { State: PieceState.Gone } => "= lost",
        _ => "= spent so far",
    };

    private static void Append(StringBuilder text, WageTrailLine line, string amount)
    {
        string place = line.Row is > 0 and { } row ? Invariant($"{line.File}, line {row}") : line.File;
        string day = line.Date is { } date ? Invariant($", {date:yyyy-MM-dd}") : "";
        Append(text, amount, $"{line.What}{day} [{place}] {line.Rule}");
    }

    private static void Append(StringBuilder text, string amount, string what) =>
        text.AppendWrapped(amount.PadLeft(AmountWidth) + "  ", new string(' ', AmountWidth + 4), what);
}
