using System.Text;

using Tomlyn;
using Tomlyn.Parsing;
using Tomlyn.Syntax;

namespace FlipAnalytics;

/// <summary>
/// A key of <c>workshop.toml</c> with its value or the keys below it, and the line it stands on. The parser's own mapping
/// to objects drops unknown keys without a word; this keeps all of them, and amounts digit for digit.
/// </summary>
internal sealed class SettingTree(string key, string path, int line)
{
    // Settings have four levels at most; what is deeper stands below an unknown key and is reported with it.
    private const int MostLevels = 4;

    private readonly List<SettingTree> children = [];

    public string Key { get; } = key;

    /// <summary>The key with those above it, such as fees.online.rate.</summary>
    public string Path { get; } = path;

    /// <summary>Line of the file.</summary>
    public int Line { get; } = line;

    /// <summary>The value; null where there are keys below it instead.</summary>
    public ValueSyntax? Value { get; private set; }

    public IReadOnlyList<SettingTree> Children => children;

    /// <summary>The key of this name; null where absent.</summary>
    public SettingTree? this[string key] => children.Find(child => child.Key == key);

    /// <summary>Reads a file; null, with its problems, if it is not TOML.</summary>
    public static SettingTree? Parse(ReadOnlyMemory<byte> bytes, LogProblems problems)
    {
        string text = Encoding.UTF8.GetString(bytes.Span);
        DocumentSyntax document;
        try
        {
            document = SyntaxParser.Parse(text, Columns.WorkshopFile, validate: true);
        }
        catch (TomlException e)
        {
            Report(e.Line, e.Message);
            return null;
        }

        if (document.HasErrors)
        {
            foreach (DiagnosticMessage message in document.Diagnostics.Where(IsError).DistinctBy(LineOf))
                Report(LineOf(message), message.Message);
            return null;
        }

        SettingTree top = new("", "", 1);
        Add(top, document.KeyValues);
        foreach (TableSyntaxBase table in document.Tables)
            Add(Below(top, table.Name!, LineOf(table)), table.Items);
        return top;

        void Report(int? line, string message)
        {
            string cause = message.Contains("already defined", StringComparison.Ordinal)
                ? "This setting or table is there twice; remove one of the two."
                : "Texts go in quotes, numbers take a point and no comma, and brackets come in pairs.";
            problems.Error(
                Columns.WorkshopFile,
                line,
                null,
                line is { } number ? text.Split('\n').ElementAtOrDefault(number - 1)?.Trim() : null,
                "a line such as target_wage = 15",
                $"{cause} None of the settings is used until then.");
        }
    }

    private static void Add(SettingTree parent, IEnumerable<KeyValueSyntax> entries)
    {
        foreach (KeyValueSyntax entry in entries)
            Set(Below(parent, entry.Key!, LineOf(entry)), entry.Value);
    }

    private static void Set(SettingTree entry, ValueSyntax? value)
    {
        if (value is InlineTableSyntax inline)
            Add(entry, inline.Items.Select(item => item.KeyValue!));
        else
            entry.Value = value;
    }

    private static SettingTree Below(SettingTree parent, KeySyntax key, int line)
    {
        SettingTree entry = Child(parent, NameOf(key.Key!), line);
        foreach (DottedKeyItemSyntax part in key.DotKeys.Take(MostLevels))
            entry = Child(entry, NameOf(part.Key!), line);
        return entry;
    }

    private static SettingTree Child(SettingTree parent, string key, int line)
    {
        if (parent[key] is { } known)
            return known;
        SettingTree child = new(key, parent.Path.Length == 0 ? key : $"{parent.Path}.{key}", line);
        parent.children.Add(child);
        return child;
    }

    private static string NameOf(BareKeyOrStringValueSyntax key) => key switch
    {
        StringValueSyntax quoted => quoted.Value ?? "",
        _ => key.ToString()!.Trim(),
    };

    private static int LineOf(DiagnosticMessage message) => message.Span.Start.Line + 1;

    private static bool IsError(DiagnosticMessage message) => message.Kind == DiagnosticMessageKind.Error;

    private static int LineOf(SyntaxNode node) => node.Span.Start.Line + 1;
}
