namespace FlipAnalytics;

/// <summary>
/// Ordinary files. A pipe or a device has no length, and opening one may wait for ever, so what has no length is not opened: it
/// counts as empty.
/// </summary>
public static class PlainFile
{
    /// <summary>Whether there is nothing to read under a name: no file, an empty one, or a pipe or device.</summary>
    /// <param name="path">Its name.</param>
    public static bool IsEmpty(string path)
    {
        FileInfo file = new(path);
        FileSystemInfo? last = file.LinkTarget is null ? file : file.ResolveLinkTarget(returnFinalTarget: true);
        return last is not FileInfo { Exists: true, Length: > 0 };
    }

    /// <summary>The bytes of a file, none of one that is empty; null where it is larger than it may be.</summary>
    /// <param name="path">Its name.</param>
    /// <param name="most">Largest number of bytes.</param>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static byte[]? Read(string path, int most)
    {
        if (IsEmpty(path))
            return [];
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        if (stream.Length > most)
            return null;
        byte[] bytes = new byte[stream.Length];
        int length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return bytes[..length];
    }
}
