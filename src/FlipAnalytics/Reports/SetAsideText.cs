using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>Rows of the log that are in no figure of a report: in a sentence, and as a table beside its figures.</summary>
internal static class SetAsideText
{
    /// <summary>What is set aside and what it holds, in a sentence; null where nothing is.</summary>
    /// <param name="tables">The files with such rows.</param>
    /// <param name="workshop">The workshop.</param>
    public static string? Sentence(ImmutableArray<RowsSetAside> tables, Workshop workshop) => tables.IsDefaultOrEmpty ? null
        : $"Set aside and in none of these figures: {string.Join(", ", tables.Select(table => Invariant($"{table.Rows} of {TextLines.Counted(table.OfRows, "row")} of {table.File}{Holding(table.Amounts, workshop)}")))}; flip check says why.";

    /// <summary>A row a file.</summary>
    internal static ReportTable Table(ImmutableArray<RowsSetAside> tables) => ReportTable.Of(
        "set-aside",
        "Rows of the log that could not be used, and what they hold as far as it can be read",
        tables,
        ("file", "file of the log", table => table.File),
        ("rows", "rows set aside", table => table.Rows),
        ("of_rows", "rows it has", table => table.OfRows),
        ("sales", "sales with a price among them", table => table.Amounts.Sales),
        ("takings", "what they brought", table => table.Amounts.Takings),
        ("spent", "what was spent", table => table.Amounts.Spent),
        ("hours", "hours", table => table.Amounts.Hours));

    private static string Holding(AmountsSetAside amounts, Workshop workshop)
    {
        string[] parts =
        [
            .. amounts.Takings != 0 ? [$"{TextLines.Counted(amounts.Sales, "sale")} for {MoneyText.Exact(amounts.Takings, workshop)}"] : Array.Empty<string>(),
            .. amounts.Spent != 0 ? [$"{MoneyText.Exact(amounts.Spent, workshop)} spent"] : Array.Empty<string>(),
            .. amounts.Hours != 0 ? [Invariant($"{amounts.Hours:0.##} h")] : Array.Empty<string>(),
        ];
        return parts.Length == 0 ? "" : $" ({string.Join(", ", parts)})";
    }
}
