using System.Formats.Tar;

namespace FlipAnalytics;

/// <summary>Ordinary files. A pipe or a device is not opened, as that may wait for ever.</summary>
public static class PlainFile
{
    // Where the header of a tar archive says what kind of thing a name stands for: IEEE Std 1003.1, pax, ustar interchange format. The
    // GNU form has it in the same place, and room for the large user numbers of company networks.
    private const int KindOfEntry = 156;

    /// <summary>
    /// Whether a name, or what it links to, is a pipe, a device or the like. All of these have no length, so that only what has
    /// none is looked at more closely; the one way to do so without opening it is to ask for its header in an archive.
    /// </summary>
    /// <param name="path">A name under which there is something that is no folder.</param>
    public static bool IsPipeOrDevice(string path)
    {
        FileInfo file = new(path);
        if (file.LinkTarget is not null)
        {
            FileInfo last = (FileInfo)file.ResolveLinkTarget(returnFinalTarget: true)!;
            // What a shell pipes in is a link to a name such as pipe:[4711], under which there is nothing.
            if (!Path.Exists(last.FullName))
                return last.Name.Contains(":[", StringComparison.Ordinal);
            file = last;
        }

        if (!file.Exists || file.Length > 0)
            return false;
        try
        {
            using MemoryStream archive = new();
            using (TarWriter writer = new(archive, TarEntryFormat.Gnu, leaveOpen: true))
                writer.WriteEntry(file.FullName, "entry");
            return archive.GetBuffer()[KindOfEntry] is not ((byte)'0' or 0);
        }
        catch (IOException)
        {
            // A socket has no place in an archive.
            return true;
        }
    }

    /// <summary>Whether a name is a link to nothing.</summary>
    /// <param name="path">The name.</param>
    public static bool IsLinkToNothing(string path) =>
        new FileInfo(path) is { LinkTarget: not null } link && !Path.Exists(link.ResolveLinkTarget(returnFinalTarget: true)!.FullName);

    /// <summary>The bytes of a file, none of a pipe or device; null where it is larger than it may be.</summary>
    /// <param name="path">Its name.</param>
    /// <param name="most">Largest number of bytes.</param>
    /// <exception cref="IOException">It cannot be read.</exception>
    public static byte[]? Read(string path, int most)
    {
        if (IsPipeOrDevice(path))
            return [];
        using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        if (stream.Length > most)
            return null;
        byte[] bytes = new byte[stream.Length];
        int length = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return bytes[..length];
    }
}
