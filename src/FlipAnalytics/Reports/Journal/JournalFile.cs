using System.Text;

namespace FlipAnalytics;

/// <summary>A journal as a file.</summary>
public static class JournalFile
{
    /// <summary>
    /// Writes a journal; one written here before is replaced, once the new one is complete. Any other file of that name is
    /// left as it is.
    /// </summary>
    /// <param name="journal">The journal.</param>
    /// <param name="path">The file; its folder is made if it does not exist.</param>
    /// <exception cref="IOException">The file is no journal written here, or writing fails.</exception>
    public static void Write(Journal journal, string path)
    {
        ArgumentNullException.ThrowIfNull(journal);
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        string full = Path.GetFullPath(path);
        if (File.Exists(full) && !IsOurs(full))
            throw new IOException($"{path} is there already and was not written by flip, so it is left as it is; name another file.");
        string folder = Path.GetDirectoryName(full)
            ?? throw new IOException($"{path} is a folder; name a file in it.");
        Directory.CreateDirectory(folder);
        using StagedFiles files = new(folder);
        using (StreamWriter text = new(files.Add(Path.GetFileName(full)), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)))
            text.Write(JournalText.Render(journal));
        files.Commit();
    }

    private static bool IsOurs(string path)
    {
        using StreamReader file = new(path);
        return file.ReadLine()?.StartsWith(JournalText.Mark, StringComparison.Ordinal) == true;
    }
}
