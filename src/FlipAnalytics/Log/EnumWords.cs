using System.Collections.Frozen;

namespace FlipAnalytics;

/// <summary>The words of the log for the values of an enumeration.</summary>
internal static class EnumWords<T>
    where T : struct, Enum
{
    /// <summary>Values by their word, in any case.</summary>
    public static FrozenDictionary<string, T> ByWord { get; } =
        Enum.GetValues<T>().ToFrozenDictionary(Columns.WordOf, StringComparer.OrdinalIgnoreCase);
}
