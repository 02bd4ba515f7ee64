using System.Globalization;
using System.Text;
using System.Text.Json;

namespace FlipAnalytics.Tests;

/// <summary>What holds of every call, whatever it is given.</summary>
internal static class FuzzRules
{
    /// <summary>Runs a case in a folder of its own and says which rule it breaks; null for none.</summary>
    /// <param name="given">The case.</param>
    /// <param name="flip">Runs the command.</param>
    public static string? Breach(FuzzCase given, Func<string[], FlipRun> flip)
    {
        string folder = Directory.CreateTempSubdirectory("flip-fuzz-").FullName;
        try
        {
            foreach (var (name, content) in given.Files)
                File.WriteAllBytes(Path.Combine(folder, name), content);
            FlipRun run = flip([.. given.Arguments.Select(argument => argument.Replace("LOG", folder, StringComparison.Ordinal))]);
            return Breach(given, run)
                ?? given.Files.Where(file => !File.ReadAllBytes(Path.Combine(folder, file.Name)).AsSpan().SequenceEqual(file.Content))
                    .Select(file => $"{file.Name} is changed").FirstOrDefault();
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static string? Breach(FuzzCase given, FlipRun run) =>
        run.Error.Contains("inside flip", StringComparison.Ordinal) || run.Error.Contains("   at ", StringComparison.Ordinal) ? run.Error
        : Harmful(run.Output) is { } shown ? $"on standard output {shown}"
        : Harmful(run.Error) is { } told ? $"on standard error {told}"
        : run.ExitCode is < 0 or > 2 ? $"it ends with {run.ExitCode}: {run.Error}"
        : run.ExitCode > 0 && run.Error.Length == 0 ? $"it ends with {run.ExitCode} and says nothing"
        : run.ExitCode == 2 && run.Output.Length > 0 ? "it refuses and answers"
        : given.Arguments.Contains("--json") && run.Output.Length > 0 && run.Output[0] is '{' or '[' ? NoJson(run.Output)
        : null;

    private static string? Harmful(string text)
    {
        foreach (Rune sign in text.EnumerateRunes())
        {
            if (sign.Value != '\n' && Rune.GetUnicodeCategory(sign) is UnicodeCategory.Control or UnicodeCategory.Format
                or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator)
                return string.Create(CultureInfo.InvariantCulture, $"stands U+{sign.Value:X4}");
        }

        return null;
    }

    private static string? NoJson(string text)
    {
        try
        {
            JsonDocument.Parse(text).Dispose();
            return null;
        }
        catch (JsonException e)
        {
            return $"the document cannot be read: {e.Message}";
        }
    }
}
