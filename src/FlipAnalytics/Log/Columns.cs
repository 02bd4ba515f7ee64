using System.Collections.Immutable;
using System.Text.Json;

namespace FlipAnalytics;

/// <summary>
/// The column dictionary: every table and column of the log, once. A table's columns are values of its file in
/// <c>Log/Tables</c>; readers, writers and help take names, order, units and meanings from there.
/// </summary>
public static class Columns
{
    internal const string LengthWords = "the workshop's length unit";
    internal const string CurrencyWords = "the workshop's currency";

    /// <summary><c>pieces.csv</c>: the only file that must be there.</summary>
    public static LogTable Pieces { get; } = PieceColumns.Table.Definition;

    /// <summary><c>asking.csv</c>: changes of asking prices.</summary>
    public static LogTable Asking { get; } = AskingColumns.Table.Definition;

    /// <summary><c>hours.csv</c>: hours worked.</summary>
    public static LogTable Hours { get; } = HoursColumns.Table.Definition;

    /// <summary><c>supplies.csv</c>: purchases of what is used up.</summary>
    public static LogTable Supplies { get; } = SupplyColumns.Table.Definition;

    /// <summary><c>uses.csv</c>: uses of supplies on pieces, and waste.</summary>
    public static LogTable Uses { get; } = UseColumns.Table.Definition;

    /// <summary><c>counts.csv</c>: stock counts of supplies.</summary>
    public static LogTable Counts { get; } = CountColumns.Table.Definition;

    /// <summary><c>trips.csv</c>: outings, mostly to look for pieces.</summary>
    public static LogTable Trips { get; } = TripColumns.Table.Definition;

    /// <summary><c>tools.csv</c>: what lasts over many pieces.</summary>
    public static LogTable Tools { get; } = ToolColumns.Table.Definition;

    /// <summary><c>overheads.csv</c>: costs of no single piece.</summary>
    public static LogTable Overheads { get; } = OverheadColumns.Table.Definition;

    /// <summary><c>moves.csv</c>: parts and items that went from one piece to another.</summary>
    public static LogTable Moves { get; } = MoveColumns.Table.Definition;

    /// <summary><c>money.csv</c>: money that no other table tells.</summary>
    public static LogTable Money { get; } = MoneyColumns.Table.Definition;

    /// <summary><c>returns.csv</c>: pieces that came back, and money given back to buyers.</summary>
    public static LogTable Returns { get; } = ReturnColumns.Table.Definition;

    /// <summary><c>colors.csv</c>: what the owner says of colours.</summary>
    public static LogTable Colors { get; } = ColourColumns.Table.Definition;

    /// <summary>File name of the settings.</summary>
    public const string WorkshopFile = "workshop.toml";

    /// <summary>What the answers gain from the settings, as a sentence.</summary>
    public const string WorkshopAdds =
        "With your target wage, selling fees and mileage rate, limits and wages are yours and not defaults.";

    /// <summary>All tables, the required one first.</summary>
    public static ImmutableArray<LogTable> Tables { get; } =
        [Pieces, Asking, Hours, Supplies, Uses, Counts, Trips, Tools, Overheads, Moves, Money, Returns, Colors];

    /// <summary>The word of the log for a value, such as damaged.</summary>
    internal static string WordOf<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());
}
