using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using FlipAnalytics.Plots;

namespace FlipAnalytics.Cli;

/// <summary>Options whose values are read the same in every culture: a point, no thousands separators, ISO dates.</summary>
internal static class Values
{
    public static Option<decimal?> Number(string name, string description, NumberRange range) =>
        new(name)
        {
            Description = description,
            HelpName = "NUMBER",
            CustomParser = result =>
            {
                string text = result.Tokens.Single().Value;
                if (decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal value)
                    && range.Holds(value))
                {
                    return value;
                }

                return Refused<decimal?>(result,
                    $"{name} needs a number with a point, such as {(range.Holds(12.5m) ? "12.5" : "0.75")}, {range.Expected(value)}; found '{CleanText.Shown(text)}'.");
            },
        };

    public static Option<int?> Whole(string name, string description, int atLeast, int atMost) => new(name)
    {
        Description = description,
        HelpName = "NUMBER",
        CustomParser = result =>
        {
            string text = result.Tokens.Single().Value;
            return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int value)
                && value >= atLeast && value <= atMost
                ? value
                : Refused<int?>(result, string.Create(CultureInfo.InvariantCulture,
                    $"{name} needs a whole number from {atLeast} to {atMost}; found '{CleanText.Shown(text)}'."));
        },
    };

    /// <summary>The date up to which facts count.</summary>
    public static Option<DateOnly?> AsOf() => new("--as-of")
    {
        Description = "Date up to which facts count, or the word today; left out: today, or the log's last entry if that is over 45 days old.",
        HelpName = "DATE",
        CustomParser = result =>
        {
            string text = result.Tokens.Single().Value;
            return string.Equals(text, "today", StringComparison.OrdinalIgnoreCase) ? Clock.Today
                : DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
                    && NumberRange.Holds(day) ? day
                : Refused<DateOnly?>(result, $"--as-of needs a date such as 2026-03-31, from 1900 to 2100, or today; found '{CleanText.Shown(text)}'.");
        },
    };

    /// <summary>Prints what a screen of about 40 lines has no room for; the same option in every verb that has more to say.</summary>
    public static Option<bool> All() => Flag("--all", "Print all there is to say, not only what fits on a screen.");

    /// <summary>One of a few words, in either case.</summary>
    public static Option<T?> Word<T>(string name, string description)
        where T : struct, Enum
    {
        var known = new KnownWords(Enum.GetNames<T>().Select(w => w.ToLowerInvariant()));
        string words = string.Join(", ", Enum.GetNames<T>().Select(w => w.ToLowerInvariant()));
        return new(name)
        {
            Description = $"{description}: {words}.",
            HelpName = "WORD",
            CustomParser = result =>
            {
                string text = result.Tokens.Single().Value;
                if (known.Find(text) is { Fit: WordFit.Known or WordFit.SameWord, Words: [var word] })
                    return Enum.Parse<T>(word, ignoreCase: true);
                string meant = known.Meant(text) is { } near ? $": did you mean {near}?" : ".";
                return Refused<T?>(result, $"{name} needs one of {words}; found '{CleanText.Shown(text)}'{meant}");
            },
        };
    }

    /// <summary>A name or a word or two, as in the log.</summary>
    public static Option<string?> Text(string name, string description, string helpName = "TEXT") => new(name)
    {
        Description = description,
        HelpName = helpName,
        CustomParser = result => CleanText.OnOneLine(result.Tokens.Single().Value).Trim() switch
        {
            "" => Refused<string?>(result, CommandWords.NeedsValue(name)),
            { Length: > CleanText.LongestName } text => Refused<string?>(result, $"{name} needs {CleanText.NameWords}; found '{CleanText.Shown(text)}'."),
            var text => text,
        },
    };

    /// <summary>The name of a file or folder, taken as it is written.</summary>
    public static Option<string?> Place(string name, string description, string helpName) => new(name)
    {
        Description = description,
        HelpName = helpName,
        CustomParser = result => CleanText.OnOneLine(result.Tokens.Single().Value).Trim().Length > 0
            ? result.Tokens.Single().Value.Trim()
            : Refused<string?>(result, CommandWords.NeedsValue(name)),
    };

    /// <summary>The name of a picture, or null; refused unless it ends in .png or .svg.</summary>
    public static Option<string?> Picture(string description) => new("--plot")
    {
        Description = description,
        HelpName = "FILE.png|FILE.svg",
        CustomParser = result =>
        {
            string name = result.Tokens.Single().Value;
            return PlotFile.CanSave(name)
                ? name
                : Refused<string?>(result, $"--plot needs a name that ends in .png or .svg; found '{CleanText.Shown(name)}'.");
        },
    };

    public static Option<bool> Flag(string name, string description) => new(name) { Description = description };

    /// <summary>Says that a word which is only like one of the log is meant as it stands.</summary>
    public static Option<bool> NewWords() => new("--new-type", "--new-words")
    {
        Description = "A type, color or other word is new and meant as written, though your log has one much like it.",
    };

    private static T? Refused<T>(ArgumentResult result, string message)
    {
        result.AddError(message);
        return default;
    }
}
