using System.Runtime.InteropServices;

namespace FlipAnalytics;

/// <summary>
/// Files written in full beside their final names first, and moved there once all are complete. Whatever ends the writing
/// before that (a full disk, a broken-off run), the old files stay and nothing half done is left. Of a run that is killed
/// without a chance to clear up, a hidden file <c>.NAME.flip-unfinished</c> may stay; the next run that writes NAME replaces it.
/// </summary>
/// <param name="open">Makes a new file at a path; for tests, one that fails.</param>
internal sealed class StagedFiles(Func<string, Stream>? open = null) : IDisposable
{
    private const string Suffix = ".flip-unfinished";

    private readonly Lock gate = new();
    private readonly List<(string Staged, string Final)> waiting = [];
    private readonly Stack<string> madeFolders = [];
    private readonly List<PosixSignalRegistration> endings = [];
    private bool isOver;

    /// <summary>Writes a file beside its final name; its folder is made if it does not exist.</summary>
    /// <param name="path">The final name, with its folder in full.</param>
    /// <param name="content">All of it.</param>
    public void Add(string path, ReadOnlySpan<byte> content)
    {
        if (endings.Count == 0)
            ClearUpWhenEnded();
        string folder = Path.GetDirectoryName(path)!;
        string staged = Path.Combine(folder, "." + Path.GetFileName(path) + Suffix);
        lock (gate)
        {
            ObjectDisposedException.ThrowIf(isOver, this);
            MakeFolder(folder);
            waiting.Add((staged, path));
            // What a killed run left is taken away, not written into: by now it may be a link to somewhere else.
            File.Delete(staged);
        }

        using Stream stream = (open ?? Create)(staged);
        stream.Write(content);
    }

    /// <summary>Gives all files their final names.</summary>
    public void Commit()
    {
        lock (gate)
        {
            while (waiting is [var (staged, final), ..])
            {
                File.Move(staged, final, overwrite: true);
                waiting.RemoveAt(0);
            }

            madeFolders.Clear();
        }
    }

    /// <summary>Removes what was not given its final name, and folders that were made for it.</summary>
    public void Dispose()
    {
        ClearUp();
        foreach (PosixSignalRegistration ending in endings)
            ending.Dispose();
    }

    private static FileStream Create(string path) => new(path, FileMode.CreateNew, FileAccess.Write);

    private void MakeFolder(string folder)
    {
        List<string> missing = [];
        for (string? above = folder; above is not null && !Directory.Exists(above); above = Path.GetDirectoryName(above))
            missing.Add(above);
        Directory.CreateDirectory(folder);
        foreach (string made in Enumerable.Reverse(missing))
            madeFolders.Push(made);
    }

    private void ClearUpWhenEnded()
    {
        foreach (PosixSignal signal in new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP })
            endings.Add(PosixSignalRegistration.Create(signal, _ => ClearUp()));
    }

    private void ClearUp()
    {
        lock (gate)
        {
            isOver = true;
            foreach (var (staged, _) in waiting)
                File.Delete(staged);
            waiting.Clear();
            while (madeFolders.TryPop(out string? folder))
            {
                if (Directory.Exists(folder) && !Directory.EnumerateFileSystemEntries(folder).Any())
                    Directory.Delete(folder);
            }
        }
    }
}
