using System.Globalization;
using System.Text;
using System.Text.Unicode;

namespace FlipAnalytics;

/// <summary>
/// The bytes of a file of the log, known to be UTF-8 text with lines of ordinary length before any parser sees them.
/// </summary>
/// <param name="IsPresent">Whether there is something under that name.</param>
/// <param name="Bytes">The text without a byte order mark; null if it cannot be used.</param>
/// <param name="Lines">Lines that are not blank.</param>
internal sealed record SourceFile(bool IsPresent, ReadOnlyMemory<byte>? Bytes, int Lines)
{
    // A row of the widest table has some 400 characters; no honest line comes near this.
    private const int LongestLine = 1_000_000;

    private const int LongestFile = 256_000_000;

    private const string SaveAsUtf8 = "Save it again as \"CSV UTF-8\" (Text CSV with character set UTF-8).";

    /// <summary>Reads a file whole, or says why it cannot be used.</summary>
    public static SourceFile Read(string folder, string name, LogProblems problems)
    {
        string path = Path.Combine(folder, name);
        if (Directory.Exists(path))
            return Refused(
                null, "a file", $"There is a folder named {name}; move it away and put the file in its place.");
        try
        {
            if (!File.Exists(path))
                return IsListed(folder, name) ? Unreachable() : new(false, null, 0);
            if (PlainFile.IsPipeOrDevice(path))
                return Refused(null, "an ordinary file", "This is a pipe or a device, which is not read; put a file in its place.");
            if (PlainFile.IsLinkToNothing(path))
                return Unreachable();
            return Guarded(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return Refused(
                null,
                "a file that can be opened",
                $"It cannot be read ({e.Message}); close other programs that use it and check that you may read it.");
        }

        SourceFile Guarded(string path)
        {
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            if (stream.Length > LongestFile)
                return TooLarge();
            using MemoryStream bytes = new();
            byte[] block = new byte[1 << 16];
            int lineLength = 0, length;
            while ((length = stream.Read(block)) > 0)
            {
                // A device or a file still growing has no length to go by.
                if (bytes.Length + length > LongestFile)
                    return TooLarge();
                bytes.Write(block, 0, length);
                ReadOnlySpan<byte> rest = block.AsSpan(0, length);
                for (
                    int end; (end = rest.IndexOfAny((byte)'\n', (byte)'\r')) >= 0; rest = rest[(end + 1)..],
                    lineLength = 0)
                {
                    if (lineLength + end > LongestLine)
                        return TooLong(bytes);
                }

                lineLength += rest.Length;
                if (lineLength > LongestLine)
                    return TooLong(bytes);
            }

            return Decoded(bytes.GetBuffer().AsMemory(0, (int)bytes.Length));
        }

        SourceFile Unreachable() => Refused(
            null,
            "a file that can be opened",
            "It is there but cannot be reached: it is a link to nothing, or you may not enter its folder. Put the file in its place, or ask for the right.");

        SourceFile TooLarge() => Refused(
            null, "a file of at most 256 MB", "This is no log of a workshop; check that it is the right file.");

        SourceFile TooLong(MemoryStream read) => Refused(
            LineOf(read.GetBuffer().AsSpan(0, (int)read.Length)),
            "a line of ordinary length",
            "A line here is over a million characters long; check that it is the right file and that rows end with a line break.");

        SourceFile Decoded(ReadOnlyMemory<byte> bytes)
        {
            if (bytes.Span.StartsWith(Encoding.UTF8.Preamble))
                bytes = bytes[3..];
            if (bytes.Span is [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] || LooksLikeUtf16(bytes.Span))
                return Refused(1, "text in UTF-8", $"This is UTF-16 (\"Unicode text\"). {SaveAsUtf8}", bytes.Span);
            int zero = bytes.Span.IndexOf((byte)0);
            if (zero >= 0)
                return Refused(
                    LineOf(bytes.Span[..zero]),
                    "text",
                    $"The line holds a zero byte, so this is not plain text. {SaveAsUtf8}",
                    bytes.Span);
            if (!Utf8.IsValid(bytes.Span))
            {
                ReadOnlySpan<byte> good = bytes.Span[..FirstInvalid(bytes.Span)];
                byte bad = bytes.Span[good.Length];
                return Refused(
                    LineOf(good),
                    "text in UTF-8",
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"Byte {bad:X2} on this line is not UTF-8; the file was saved in another character set. {SaveAsUtf8}"),
                    bytes.Span);
            }

            return new(true, bytes, LinesOf(bytes.Span));
        }

        SourceFile Refused(int? line, string expected, string remedy, ReadOnlySpan<byte> text = default)
        {
            problems.Error(name, line, null, null, expected, remedy);
            return new(true, null, LinesOf(text));
        }
    }

    // Whether a folder has the name though nothing can be found under it.
    private static bool IsListed(string folder, string name) => Directory.Exists(folder)
        && Directory.EnumerateFileSystemEntries(folder).Any(path => Path.GetFileName(path) == name);

    // Without a mark, UTF-16 shows by every other byte being zero in plain English text.
    private static bool LooksLikeUtf16(ReadOnlySpan<byte> bytes)
    {
        ReadOnlySpan<byte> start = bytes[..Math.Min(bytes.Length, 200)];
        return start.Length >= 4 && start.Count((byte)0) * 3 >= start.Length;
    }

    private static int LineOf(ReadOnlySpan<byte> before) => before.Count((byte)'\n') + 1;

    private static int LinesOf(ReadOnlySpan<byte> text)
    {
        int lines = 0;
        foreach (Range line in text.Split((byte)'\n'))
            lines += text[line].ContainsAnyExcept(" \r"u8) ? 1 : 0;
        return lines;
    }

    private static int FirstInvalid(ReadOnlySpan<byte> bytes)
    {
        int position = 0;
        while (Rune.DecodeFromUtf8(bytes[position..], out _, out int length) == System.Buffers.OperationStatus.Done)
            position += length;
        return position;
    }
}
