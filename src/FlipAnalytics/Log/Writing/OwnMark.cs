using System.Security.Cryptography;
using System.Text;

namespace FlipAnalytics;

/// <summary>
/// The mark by which flip knows a file as its own: the words of <see cref="Place"/>, with the first digits of the SHA-256 of the
/// whole file in place of the zeros, so that a file that somebody changed is the owner's.
/// </summary>
public static class OwnMark
{
    private const string Words = "Written by flip: ";
    private const string Zeros = "000000000000";

    /// <summary>The mark before its digits are known, to be put into the file once, as a comment or the like.</summary>
    public const string Place = Words + Zeros;

    /// <summary>The file with the digits in its mark.</summary>
    /// <param name="file">A file that holds <see cref="Place"/>; where several, the last is the mark.</param>
    /// <exception cref="ArgumentException">It holds none.</exception>
    public static byte[] Sealed(ReadOnlySpan<byte> file)
    {
        int digits = DigitsOf(file);
        if (digits < 0)
            throw new ArgumentException($"A file to be marked must hold '{Place}'; put it in as a comment.", nameof(file));
        byte[] marked = file.ToArray();
        Digest(marked, digits).CopyTo(marked, digits);
        return marked;
    }

    /// <summary>Whether a file carries the mark and is as it was written.</summary>
    /// <param name="file">All of the file.</param>
    public static bool IsOn(ReadOnlyMemory<byte> file)
    {
        int digits = DigitsOf(file.Span);
        return digits >= 0 && file.Span.Slice(digits, Zeros.Length).SequenceEqual(Digest(file.ToArray(), digits));
    }

    private static int DigitsOf(ReadOnlySpan<byte> file)
    {
        int words = file.LastIndexOf(Encoding.ASCII.GetBytes(Words));
        int digits = words + Words.Length;
        return words < 0 || digits + Zeros.Length > file.Length ? -1 : digits;
    }

    private static byte[] Digest(byte[] file, int digits)
    {
        byte[] blank = (byte[])file.Clone();
        Encoding.ASCII.GetBytes(Zeros).CopyTo(blank, digits);
        return Encoding.ASCII.GetBytes(Convert.ToHexStringLower(SHA256.HashData(blank))[..Zeros.Length]);
    }
}
