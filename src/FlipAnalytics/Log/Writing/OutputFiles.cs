namespace FlipAnalytics;

/// <summary>
/// The one way in which files are written. A file of a log is never replaced, nor anything else that flip did not write unless
/// asked; and a file is as it was or complete, never half of either.
/// </summary>
public static class OutputFiles
{
    /// <summary>What <c>--force</c> is for, in words for the owner.</summary>
    public const string ForceRule =
        "Replace files that are there already. Without it only the work of flip itself is replaced: a picture, page or notebook that nobody changed since, and a table whose first line is the same. A file of a log is never replaced.";

    private static readonly string[] SystemFolders = ["/dev/", "/proc/", "/sys/"];

    // What flip writes is far smaller.
    private const int LargestOwn = 256_000_000;

    /// <summary>Writes files: all in full beside their names first, then each is moved to its own.</summary>
    /// <param name="files">The files; folders are made where they do not exist.</param>
    /// <param name="replaces">Whether files that flip did not write may be replaced too.</param>
    /// <exception cref="FileRefusedException">A file may not be replaced; nothing was written.</exception>
    /// <exception cref="IOException">Writing fails; what stood there before is as it was.</exception>
    public static void Write(IEnumerable<OutputFile> files, bool replaces = false)
    {
        ArgumentNullException.ThrowIfNull(files);
        OutputFile[] all = [.. files];
        foreach (OutputFile file in all)
        {
            if (Refusal(file.Path, file.IsOwn, replaces) is { } refusal)
                throw new FileRefusedException(refusal);
        }

        Stage([.. all.Select(file => (Resolved(file.Path), file.Content))]);
    }

    /// <summary>Why a file is not written, in a sentence with what to do instead; null where it may be.</summary>
    /// <param name="path">Its name.</param>
    /// <param name="isOwn">Whether a file that is there, by its bytes, is one that flip wrote.</param>
    /// <param name="replaces">Whether a file that flip did not write may be replaced too.</param>
    /// <exception cref="IOException">The file that is there cannot be read.</exception>
    public static string? Refusal(string path, Func<ReadOnlyMemory<byte>, bool> isOwn, bool replaces)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        ArgumentNullException.ThrowIfNull(isOwn);
        string target = Resolved(path);
        if (IsOfALog(target))
            return $"{Shown(path, target)} has the name of a file of a log, which is never written over: name another file.";
        if (IsOfTheSystem(target) || (File.Exists(target) && PlainFile.IsPipeOrDevice(target)))
            return $"{Shown(path, target)} is no ordinary file: name a file in a folder of yours.";
        if (Directory.Exists(target))
            return $"{path} is a folder: name a file in it.";
        return replaces || !File.Exists(target) || (PlainFile.Read(target, LargestOwn) is { } bytes && isOwn(bytes)) ? null
            : $"{path} is there already, and was not written by flip, or changed since: name another file, or add --force to replace it.";
    }

    /// <summary>Writes the files of a log itself, whose names are those of a log.</summary>
    internal static void WriteLog(IEnumerable<(string Path, ReadOnlyMemory<byte> Content)> files) =>
        Stage([.. files.Select(file => (Path.GetFullPath(file.Path), file.Content))]);

    /// <summary>Writes files in full, then gives them their names.</summary>
    /// <param name="files">Paths in full, with what stands in each.</param>
    /// <param name="open">Makes a new file at a path; for tests, one that fails.</param>
    internal static void Stage((string Path, ReadOnlyMemory<byte> Content)[] files, Func<string, Stream>? open = null)
    {
        using StagedFiles staged = new(open);
        string at = "";
        try
        {
            foreach (var (path, content) in files)
                staged.Add(at = path, content.Span);
            staged.Commit();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new IOException($"{at} could not be written, and what was there before is as it was ({Cause(e)}).", e);
        }
    }

    // Without the name of the file beside it, which means nothing to the owner.
    private static string Cause(Exception e) => e.Message.Split(" : '")[0].TrimEnd('.');

    // Where a link leads: the file behind it is the one that is written, and judged.
    private static string Resolved(string path)
    {
        string full = Path.GetFullPath(path);
        FileInfo file = new(full);
        return file.LinkTarget is null ? full : file.ResolveLinkTarget(returnFinalTarget: true)!.FullName;
    }

    // By name alone and in any case, as a disk may not tell capitals apart; Windows drops points and spaces at the end.
    private static bool IsOfALog(string path)
    {
        string name = Path.GetFileName(path).TrimEnd('.', ' ');
        return Columns.Tables.Select(table => table.File).Append(Columns.WorkshopFile)
            .Contains(name, StringComparer.OrdinalIgnoreCase);
    }

    private static bool IsOfTheSystem(string path) =>
        !OperatingSystem.IsWindows()
        && SystemFolders.Any(start => path.StartsWith(start, StringComparison.Ordinal))
        && !path.StartsWith("/dev/shm/", StringComparison.Ordinal);

    private static string Shown(string path, string target) =>
        Path.GetFullPath(path) == target ? path : $"{path}, a link to {target},";
}
