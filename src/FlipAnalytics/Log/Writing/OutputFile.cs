namespace FlipAnalytics;

/// <summary>A file to be written.</summary>
/// <param name="Path">Its name.</param>
/// <param name="Content">All of it.</param>
/// <param name="IsOwn">
/// Whether a file of that name, by its bytes, is one that flip wrote, so that it may be replaced unasked.
/// </param>
public sealed record OutputFile(string Path, ReadOnlyMemory<byte> Content, Func<ReadOnlyMemory<byte>, bool> IsOwn)
{
    /// <summary>A table: CSV has no room for a mark, so a file with the very same first line is taken for the same table.</summary>
    /// <param name="path">Its name.</param>
    /// <param name="content">The table, its lines ending in line feeds.</param>
    public static OutputFile Table(string path, ReadOnlyMemory<byte> content)
    {
        ReadOnlyMemory<byte> header = content[..(content.Span.IndexOf((byte)'\n') + 1)];
        return new(path, content, old => old.Span.StartsWith(header.Span));
    }

    /// <summary>A file that the caller has judged: over another it is written only where that may be replaced.</summary>
    /// <param name="path">Its name.</param>
    /// <param name="content">All of it.</param>
    public static OutputFile Judged(string path, ReadOnlyMemory<byte> content) => new(path, content, _ => false);

    /// <summary>A text that carries <see cref="OwnMark.Place"/> once: it is replaced while nobody changed it.</summary>
    /// <param name="path">Its name.</param>
    /// <param name="text">The text.</param>
    public static OutputFile Marked(string path, string text) =>
        new(path, OwnMark.Sealed(System.Text.Encoding.UTF8.GetBytes(text)), OwnMark.IsOn);
}

/// <summary>A file that flip does not write over; the message says why and what to do.</summary>
public sealed class FileRefusedException(string message) : IOException(message);
