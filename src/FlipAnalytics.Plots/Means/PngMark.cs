using System.Buffers.Binary;
using System.Text;

namespace FlipAnalytics.Plots;

/// <summary>
/// The mark of flip in a PNG: a text chunk "Software" before the end, which viewers pass over. PNG (Portable Network Graphics)
/// Specification, third edition, W3C 2025: 5.3 chunk layout, 11.3.3.2 tEXt, annex D the cyclic redundancy code.
/// </summary>
internal static class PngMark
{
    // Length, name and check: the last chunk, IEND, is empty.
    private const int EndLength = 12;

    /// <summary>The picture with the mark in it.</summary>
    public static byte[] Sealed(ReadOnlySpan<byte> png)
    {
        byte[] text = Encoding.ASCII.GetBytes($"tEXtSoftware\0{OwnMark.Place}");
        byte[] blank = [.. png[..^EndLength], .. Length(text), .. text, 0, 0, 0, 0, .. png[^EndLength..]];
        byte[] marked = OwnMark.Sealed(blank);
        // The check of the chunk counts as zero in the digits, as it depends on them.
        Range check = CheckOf(marked);
        BinaryPrimitives.WriteUInt32BigEndian(marked.AsSpan(check), Code(marked.AsSpan(check.Start.Value - text.Length, text.Length)));
        return marked;
    }

    /// <summary>Whether a file carries the mark and is as it was written.</summary>
    public static bool IsOn(ReadOnlyMemory<byte> file)
    {
        if (file.Length < 2 * EndLength)
            return false;
        byte[] blank = file.ToArray();
        blank.AsSpan(CheckOf(blank)).Clear();
        return OwnMark.IsOn(blank);
    }

    private static Range CheckOf(byte[] marked) => (marked.Length - EndLength - 4)..(marked.Length - EndLength);

    private static byte[] Length(byte[] text)
    {
        byte[] length = new byte[4];
        BinaryPrimitives.WriteInt32BigEndian(length, text.Length - 4);
        return length;
    }

    internal static uint Code(ReadOnlySpan<byte> bytes)
    {
        uint code = uint.MaxValue;
        foreach (byte next in bytes)
        {
            code ^= next;
            for (int bit = 0; bit < 8; bit++)
                code = (code & 1) == 1 ? 0xEDB88320 ^ (code >> 1) : code >> 1;
        }

        return ~code;
    }
}
