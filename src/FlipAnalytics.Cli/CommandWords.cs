using System.Collections.Immutable;
using System.CommandLine;
using System.CommandLine.Parsing;

namespace FlipAnalytics.Cli;

/// <summary>The verbs and options of the command, and which of them was meant by what was written.</summary>
internal static class CommandWords
{
    // What else people call it; the first one that the verb has is meant.
    private static readonly ImmutableArray<(string Word, string[] AlsoCalled)> OtherNames =
    [
        ("--sticker-price", ["sticker", "price", "cost", "tag", "price-tag", "ticket", "asking", "asking-price", "store-price", "buy-price"]),
        ("--sale-price", ["price", "sale", "sell-price", "sold-price", "selling-price", "resale", "value", "worth", "sells-for"]),
        ("--wage", ["price", "target", "target-wage", "hourly", "hourly-wage", "rate", "pay"]),
        ("--type", ["kind", "item", "piece", "furniture", "sort", "what"]),
        ("--color", ["paint", "shade", "hue"]),
        ("--material", ["wood", "timber"]),
        ("--finish", ["topcoat", "sheen"]),
        ("--condition", ["state"]),
        ("--hours", ["time", "labor", "work"]),
        ("--width", ["wide", "long", "length", "size"]),
        ("--depth", ["deep"]),
        ("--height", ["high", "tall"]),
        ("--count", ["quantity", "number", "pieces", "items", "many"]),
        ("--supplies", ["materials", "paint-cost", "cost"]),
        ("--candidates", ["list", "file", "csv"]),
        ("--channel", ["place", "shop", "market", "where", "sell-at"]),
        ("--chance", ["probability", "confidence", "sure"]),
        ("--new-type", ["new"]),
        ("--for", ["type", "next"]),
        ("--by", ["group", "group-by", "compare"]),
        ("--period", ["span", "quarter", "month", "year", "from"]),
        ("--explain", ["id", "piece", "why"]),
        ("--tables", ["csv", "out", "output", "export"]),
        ("--design", ["csv", "out", "output", "export", "data"]),
        ("--out", ["output", "folder", "export", "tables", "csv"]),
        ("--force", ["overwrite", "replace"]),
        ("SPAN", ["period", "span", "quarter", "month", "year", "from", "for"]),
        ("YEAR", ["period", "span", "quarter", "month", "year", "from", "for"]),
        ("NAME", ["name", "notebook"]),
        ("--log", ["folder", "dir", "directory", "path", "data"]),
        ("--as-of", ["date", "day", "until"]),
        ("--plot", ["picture", "chart", "graph", "image", "png", "svg"]),
        ("-p", ["parameter", "set"]),
        ("buy", ["price", "pay", "offer", "purchase", "ceiling", "limit"]),
        ("colors", ["paint", "shades"]),
        ("wages", ["hourly", "pay", "earnings"]),
        ("quarter", ["report", "month", "profit"]),
        ("year", ["tax", "taxes", "annual", "accountant"]),
        ("check", ["validate", "problems", "read"]),
        ("fit", ["model"]),
        ("demo", ["example", "sample"]),
    ];

    // A value to copy, for an option that was given none.
    private static readonly ImmutableDictionary<string, string> Examples = new Dictionary<string, string>
    {
        ["--type"] = "dresser",
        ["--count"] = "2",
        ["--material"] = "oak",
        ["--condition"] = "worn",
        ["--color"] = "sage",
        ["--finish"] = "satin",
        ["--channel"] = "online",
        ["--candidates"] = "saturday.csv",
        ["--chance"] = "0.75",
        ["--for"] = "nightstand",
        ["--by"] = "type",
        ["--period"] = "2026-Q1",
        ["--explain"] = "P0012",
        ["--tables"] = "figures",
        ["--design"] = "data-as-fitted.csv",
        ["--model"] = "price",
        ["--estimator"] = "ols",
        ["--log"] = "my-log",
        ["--as-of"] = "2026-03-31",
        ["--plot"] = "picture.png",
        ["--out"] = "pages",
        ["--flips"] = "300",
        ["--seed"] = "7",
        ["-p"] = "type=dresser",
        ["SPAN"] = "2026-Q1",
        ["YEAR"] = "2025",
        ["NAME"] = "01-sourcing",
        ["FOLDER"] = "try-me",
    }.ToImmutableDictionary();

    /// <summary>What is wrong with a call, a line each; what follows from an earlier one is left out.</summary>
    public static ImmutableArray<string> Problems(ParseResult parsed)
    {
        CommandResult call = parsed.CommandResult;
        if (call.Children.OfType<ArgumentResult>().SelectMany(argument => argument.Tokens).FirstOrDefault(token => IsOption(token.Value))
            is { } taken)
        {
            return [NoOption(call, taken.Value)];
        }

        if (parsed.UnmatchedTokens is [var unknown, ..])
            return [call.Command.Subcommands.Count > 0 && !IsOption(unknown) ? NoVerb(call, unknown) : NoOption(call, unknown)];
        return [.. parsed.Errors.Select(error => error.SymbolResult switch
        {
            OptionResult { Tokens.Count: 0 } option => NeedsValue(option.Option.Name),
            OptionResult { IdentifierTokenCount: > 1 } option => $"{option.Option.Name} is there {option.IdentifierTokenCount} times: give it once.",
            CommandResult { Command.Subcommands.Count: > 0 } =>
                $"Say what to do: {PathOf(call)} {Listed([.. call.Command.Subcommands.Select(verb => verb.Name)], "or")}.",
            ArgumentResult argument when argument.Tokens.Count == 0 => $"{PathOf(call)} needs a {argument.Argument.Name}.",
            _ => error.Message,
        }).Distinct()];
    }

    /// <summary>Says that an option has no value, with one to copy.</summary>
    public static string NeedsValue(string option) =>
        $"{option} needs a value, such as {option} {Examples.GetValueOrDefault(option, "12.5")}.";

    /// <summary>The command as it is typed, such as flip notebook run.</summary>
    public static string PathOf(CommandResult call) =>
        call.Parent is CommandResult parent ? $"{PathOf(parent)} {call.Command.Name}" : "flip";

    private static string NoVerb(CommandResult call, string written)
    {
        string[] verbs = [.. call.Command.Subcommands.Select(verb => verb.Name)];
        string shown = CleanText.Shown(written);
        return Meant(written, verbs) is { } meant
            ? $"{PathOf(call)} has no '{shown}': did you mean {PathOf(call)} {meant}?"
            : $"{PathOf(call)} has no '{shown}': it has {Listed(verbs, "and")}.";
    }

    private static string NoOption(CommandResult call, string written)
    {
        string path = PathOf(call);
        string shown = CleanText.Shown(written);
        if (!IsOption(written))
        {
            return $"{path} does not know what '{shown}' is for: a value follows its option, and one of several words needs quotes, "
                + "such as --type \"side chair\".";
        }

        // --type=desk and the like: the name alone is what it is looked up by.
        string name = shown.Split('=', ':')[0];
        string[] options = [.. OptionsOf(call.Command)];
        if (options.Contains(name, StringComparer.Ordinal))
            return $"{name} comes after the verb: {path} {name} {Examples.GetValueOrDefault(name, "12.5")}.";
        if (call.Command.Subcommands.FirstOrDefault(verb => OptionsOf(verb).Contains(name)) is { } has)
            return $"{name} comes after the verb, such as {path} {has.Name} {name}.";
        return Meant(name, [.. options, .. call.Command.Arguments.Select(argument => argument.Name)]) switch
        {
            null => $"{path} has no option {name}.",
            ['-', ..] and var meant => $"{path} has no option {name}: did you mean {meant}?",
            var argument => $"{path} has no option {name}: {argument} stands alone, as in {path} {Examples[argument]}.",
        };
    }

    private static IEnumerable<string> OptionsOf(Command command) =>
        command.Options.SelectMany(option => option.Aliases.Prepend(option.Name));

    private static string? Meant(string written, string[] known)
    {
        var words = new KnownWords(known);
        WordMatch match = words.Find(written);
        if (match.Fit is WordFit.Known or WordFit.SameWord)
            return match.Words[0];
        return OtherNames.FirstOrDefault(name =>
                known.Contains(name.Word, StringComparer.Ordinal)
                && new KnownWords(name.AlsoCalled).Find(written.TrimStart('-')).Fit is WordFit.Known or WordFit.SameWord).Word
            ?? words.Meant(written)
            ?? (match.Words.IsEmpty ? null : match.Words[0]);
    }

    private static bool IsOption(string written) => written.StartsWith('-') && written.Length > 1;

    private static string Listed(string[] words, string last) => $"{string.Join(", ", words[..^1])} {last} {words[^1]}";
}
