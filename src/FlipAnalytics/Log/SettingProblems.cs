using System.Collections.Immutable;
using System.Globalization;

using Tomlyn.Syntax;

namespace FlipAnalytics;

/// <summary>Reads values of settings strictly; what cannot be read is reported and comes back as null.</summary>
internal sealed class SettingProblems(LogProblems problems)
{
    private const string CorrectIt = "Correct it; the default is used until then.";

    private static readonly ImmutableArray<string> GuessKeys = ["low", "likely", "high"];

    /// <summary>Reports a value that cannot be used.</summary>
    public void Bad(SettingTree? entry, string expected, string remedy, string? found = null) =>
        problems.Error(
            Columns.WorkshopFile, entry?.Line, entry?.Path, found ?? entry?.Value?.ToString().Trim(), expected, remedy);

    /// <summary>Warns of keys that mean nothing here, with the one that was likely meant.</summary>
    public void ReportUnknown(SettingTree table, ImmutableArray<string> known)
    {
        foreach (SettingTree entry in table.Children.Where(entry => !known.Contains(entry.Key)))
        {
            string remedy = new KnownWords(known).Meant(entry.Key) is { } meant
                ? $"It was left out; if you mean {meant}, write it so."
                : $"It was left out; what can stand here is {string.Join(", ", known)}.";
            problems.Warning(
                Columns.WorkshopFile, entry.Line, entry.Path, null, "a setting that the log knows", remedy);
        }
    }

    public string? Text(SettingTree table, string key, int longest = CleanText.LongestName)
    {
        if (table[key] is not { } entry)
            return null;
        if (entry.Value is not StringValueSyntax { Value: { } text })
        {
            Bad(entry, "a text in quotes", $"Write {key} = \"...\".");
            return null;
        }

        string trimmed = text.Trim();
        if (trimmed.Length <= longest)
            return trimmed.Length > 0 ? trimmed : null;
        Bad(entry, string.Create(CultureInfo.InvariantCulture, $"at most {longest} characters"), "Shorten it; it is left out until then.");
        return null;
    }

    public T? Choice<T>(SettingTree table, string key, params ReadOnlySpan<(string Word, T Value)> choices)
        where T : struct, Enum
    {
        if (table[key] is not { } entry)
            return null;
        if (entry.Value is StringValueSyntax { Value: { } text })
        {
            foreach ((string word, T value) in choices)
            {
                if (word.Equals(text.Trim(), StringComparison.OrdinalIgnoreCase))
                    return value;
            }
        }

        Bad(entry, $"\"{choices[0].Word}\" or \"{choices[1].Word}\"", $"\"{choices[0].Word}\" is used until then.");
        return null;
    }

    public decimal? Number(SettingTree table, string key, NumberRange range) =>
        table[key] is { } entry ? Number(entry, range) : null;

    public decimal? Number(SettingTree entry, NumberRange range) => Number(entry, entry.Value, range);

    /// <summary>A table below a key; null where absent.</summary>
    public SettingTree? Table(SettingTree parent, string key)
    {
        if (parent[key] is not { } table)
            return null;
        if (table.Value is null)
            return table;
        Bad(
            table,
            $"a table [{key}] with its own keys",
            $"Write [{key}] on a line of its own and the settings below it.");
        return null;
    }

    /// <summary>The tables below a key, such as [fees.online].</summary>
    public IEnumerable<SettingTree> Tables(SettingTree parent, string key)
    {
        if (Table(parent, key) is not { } group)
            yield break;
        foreach (SettingTree table in group.Children)
        {
            if (table.Value is null)
                yield return table;
            else
                Bad(
                    table,
                    $"a table such as [{key}.{table.Key}]",
                    $"Write [{key}.NAME] on a line of its own and the settings below it.");
        }
    }

    /// <summary>Three numbers, as {low = 1, likely = 2, high = 3} or as [1, 2, 3].</summary>
    public ThreePointGuess? Guess(SettingTree table, string key, NumberRange range)
    {
        if (table[key] is not { } entry)
            return null;
        decimal?[] numbers;
        if (entry.Value is ArraySyntax array)
        {
            numbers = [.. array.Items.Select(item => Number(entry, item.Value, range))];
        }
        else if (entry.Value is null)
        {
            ReportUnknown(entry, GuessKeys);
            numbers = [.. GuessKeys.Where(part => entry[part] is not null).Select(part => Number(
                entry[part]!, range))];
        }
        else
        {
            numbers = [];
        }

        if (numbers.Length != 3)
            Bad(entry, "three numbers: low, likely, high", $"Write {key} = [LOW, LIKELY, HIGH].");
        else if (numbers is [{ } low, { } likely, { } high])
        {
            if (low <= likely && likely <= high)
                return new(low, likely, high);
            Bad(
                entry,
                "low, likely and high in rising order",
                "Put the smallest first.",
                string.Create(CultureInfo.InvariantCulture, $"{low}, {likely}, {high}"));
        }

        return null;
    }

    private decimal? Number(SettingTree entry, ValueSyntax? value, NumberRange range)
    {
        // The token's own text: a value as a whole takes a comment behind it with it.
        string? written = value switch
        {
            IntegerValueSyntax integer => integer.Token?.Text,
            FloatValueSyntax real => real.Token?.Text,
            _ => null,
        };
        written = written?.Replace("_", "", StringComparison.Ordinal);
        const NumberStyles Style =
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;
        if (!decimal.TryParse(written, Style, CultureInfo.InvariantCulture, out decimal number) && IsDigits(written))
            Bad(entry, range.Words, CorrectIt, written);
        else if (!decimal.TryParse(written, Style, CultureInfo.InvariantCulture, out number))
            Bad(
                entry,
                "a number with a point, without quotes",
                "Write, for instance, 15 or 0.13.",
                value?.ToString().Trim());
        else if (!range.Holds(number))
            Bad(entry, range.Expected(number), CorrectIt, written);
        else
            return number;
        return null;
    }

    // Such as 1e40, which no number here can be; inf and nan are no digits.
    private static bool IsDigits(string? written) => written is not null && written.AsSpan().ContainsAnyInRange('0', '9');
}
