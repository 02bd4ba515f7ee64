using System.Collections.Immutable;
using System.Globalization;
using Microsoft.CodeAnalysis.CSharp;

namespace FlipAnalytics.Notebooks;

/// <summary>A parameter as the notebook declares it.</summary>
/// <param name="Name">Name of the variable.</param>
/// <param name="Type">Its declared type.</param>
internal sealed record DeclaredParameter(string Name, Type Type);

/// <summary>
/// Turns texts of the command line into typed assignments. Numbers have a point and dates are ISO 8601, whatever the
/// culture; an empty text makes a parameter unknown where it may be.
/// </summary>
internal static class NotebookParameters
{
    /// <summary>The code that sets parameters, an assignment a line.</summary>
    /// <param name="given">Names and texts; a name may be written as on the command line, sticker-price for stickerPrice.</param>
    /// <param name="declared">What the notebook declares.</param>
    /// <exception cref="NotebookException">A name is unknown or a text does not fit its parameter.</exception>
    public static string Assignments(
        IEnumerable<KeyValuePair<string, string>> given, ImmutableArray<DeclaredParameter> declared) =>
        string.Join('\n', given.Select(entry => Assignment(entry.Key, entry.Value, declared)));

    private static string Assignment(string name, string text, ImmutableArray<DeclaredParameter> declared)
    {
        WordMatch match = new KnownWords(declared.Select(one => one.Name)).Find(name);
        DeclaredParameter parameter = match.Fit is WordFit.Known or WordFit.SameWord
            ? declared.First(one => one.Name == match.Words[0])
            : throw new NotebookException(
                $"The notebook has no parameter '{name}'{NotebookFiles.DidYouMean(name, declared.Select(one => one.Name))} It has {string.Join(", ", declared.Select(one => one.Name))}.");
        return $"{parameter.Name} = {Literal(parameter, text)};";
    }

    private static string Literal(DeclaredParameter parameter, string text)
    {
        Type type = Nullable.GetUnderlyingType(parameter.Type) ?? parameter.Type;
        bool mayBeUnknown = type == typeof(string) || type != parameter.Type;
        if (string.IsNullOrWhiteSpace(text) && mayBeUnknown)
            return "null";
        return type switch
        {
            _ when type == typeof(string) => SymbolDisplay.FormatLiteral(text, quote: true),
            _ when type == typeof(decimal) => decimal.TryParse(
                text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out decimal amount)
                ? Html.Invariant($"{amount}m") : throw Refused("a number with a point, such as 12.5"),
            _ when type == typeof(int) => int.TryParse(
                text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int whole)
                ? Html.Invariant($"{whole}") : throw Refused("a whole number"),
            _ when type == typeof(DateOnly) => DateOnly.TryParseExact(
                text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
                ? Html.Invariant($"new DateOnly({day.Year}, {day.Month}, {day.Day})")
                : throw Refused("a date such as 2026-03-31"),
            _ when type == typeof(bool) => bool.TryParse(text, out bool yes)
                ? (yes ? "true" : "false") : throw Refused("true or false"),
            _ when type.IsEnum => Enum.GetNames(type).FirstOrDefault(word => word.Equals(text, StringComparison.OrdinalIgnoreCase)) is { } known
                ? $"{type.FullName}.{known}"
                : throw Refused($"one of {string.Join(", ", Enum.GetNames(type)).ToLowerInvariant()}"),
            _ => throw new NotebookException(
                $"The notebook's parameter {parameter.Name} is of a kind that cannot be given on the command line: {type.Name}."),
        };

        NotebookException Refused(string expected) =>
            new($"{parameter.Name} needs {expected}; found '{text}'.");
    }
}
