using System.Text.RegularExpressions;

namespace FlipAnalytics.Tests.House;

/// <summary>Just enough reading of C# for the house rules: code without comments and strings, and the types in it.</summary>
internal static partial class CSharpText
{
    /// <summary>The code with every comment, string and character literal replaced by a blank.</summary>
    public static string WithoutCommentsAndStrings(string source) => CommentOrString().Replace(source, " ");

    /// <summary>Names of the types that the code declares.</summary>
    public static IEnumerable<string> DeclaredTypes(string source) =>
        TypeDeclaration().Matches(WithoutCommentsAndStrings(source)).Select(match => match.Groups["name"].Value);

    /// <summary>
    /// Whether the code uses the name as a type: as a whole word that is no member behind a point, no name being
    /// declared (decimal Area), no initializer (Area = 3) and no named argument (Area: 3).
    /// </summary>
    public static bool UsesType(string source, string name)
    {
        string code = WithoutCommentsAndStrings(source);
        return Regex.Matches(code, $@"(?<=(?<before>[\w\]>?=]+\s+|\.)?)\b{Regex.Escape(name)}\b(?<after>\s*(=(?![=>])|:(?!:)))?")
            .Any(match => !match.Groups["after"].Success
                && match.Groups["before"].Value.Trim() is var before
                && before != "."
                && (before.Length == 0 || BeforeAType().IsMatch(before)));
    }

    [GeneratedRegex("""
        //[^\n]*
        | /\*.*?\*/
        | \$*(?<quotes>"{3,}).*?\k<quotes>
        | \$?@\$?"(?:[^"]|"")*"
        | \$?"(?:\\.|[^"\\\n])*"
        | '(?:\\.[^']*|[^'\\\n])'
        """, RegexOptions.Singleline | RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex CommentOrString();

    [GeneratedRegex(@"\b(?:record\s+struct|record\s+class|class|record|struct|interface|enum)\s+(?<name>[A-Z]\w*)")]
    private static partial Regex TypeDeclaration();

    [GeneratedRegex(@"^(public|private|protected|internal|static|sealed|abstract|override|virtual|required|readonly|const"
        + @"|ref|out|in|params|new|return|is|as|not|or|and|case|await|yield|throw|this|class|record|struct|where|else|async|\?|=>?|==|>=)$")]
    private static partial Regex BeforeAType();
}
