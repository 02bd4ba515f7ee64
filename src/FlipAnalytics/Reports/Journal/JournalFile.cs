using System.Security.Cryptography;
using System.Text;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>A journal that was written.</summary>
/// <param name="File">The file, as it was named.</param>
/// <param name="Transactions">Transactions in it.</param>
public sealed record WrittenJournal(string File, int Transactions);

/// <summary>
/// A journal as a file. Its last line holds the first digits of the SHA-256 of what stands above, so that a later run knows a
/// file that is as it was written, and replaces no other.
/// </summary>
public static class JournalFile
{
    private const int Digits = 12;
    private const int LargestFile = 256_000_000;
    private const string Seal = "\n; As written: ";

    /// <summary>
    /// Why a journal cannot be written into a file without replacing what this did not write, in a sentence; null where it can.
    /// </summary>
    /// <param name="journal">The journal.</param>
    /// <param name="path">The file; it need not exist.</param>
    /// <exception cref="IOException">The file cannot be read.</exception>
    public static string? Refusal(Journal journal, string path)
    {
        ArgumentNullException.ThrowIfNull(journal);
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        if (Directory.Exists(path))
            return $"{path} is a folder: name a file in it.";
        if (!File.Exists(path))
            return null;
        string text = Encoding.UTF8.GetString(PlainFile.Read(path, LargestFile) ?? []);
        int seal = text.LastIndexOf(Seal, StringComparison.Ordinal);
        if (seal < 0 || text[seal..] != SealOf(text[..seal]))
            return $"{path} was not written by flip, or changed since: name another file, or add --force to replace it.";
        return text.StartsWith(JournalText.Title(journal), StringComparison.Ordinal) ? null
            : $"{path} holds the journal of another span or workshop: name another file, or add --force to replace it.";
    }

    /// <summary>Writes a journal; a file of that name is replaced, once the new one is complete.</summary>
    /// <param name="journal">The journal.</param>
    /// <param name="path">The file; its folder is made if it does not exist.</param>
    /// <returns>What was written.</returns>
    /// <exception cref="IOException">Writing fails.</exception>
    public static WrittenJournal Write(Journal journal, string path)
    {
        ArgumentNullException.ThrowIfNull(journal);
        ArgumentException.ThrowIfNullOrWhiteSpace(path);
        string text = JournalText.Render(journal);
        // What is the owner's has been refused by now, or may be replaced.
        OutputFiles.Write([OutputFile.Judged(path, Encoding.UTF8.GetBytes(text + SealOf(text)))], replaces: true);
        return new(path, journal.Transactions.Length);
    }

    /// <summary>What was written and how to read it, in a sentence.</summary>
    /// <param name="journal">The journal.</param>
    /// <param name="path">The file.</param>
    public static string Sentence(Journal journal, string path)
    {
        ArgumentNullException.ThrowIfNull(journal);
        return Invariant(
            $"Wrote the books of {journal.Period.Name} in double entry into {path} ({TextLines.Counted(journal.Transactions.Length, "transaction")}). Read it with hledger or ledger: hledger -f {path} incomestatement.");
    }

    private static string SealOf(string text) =>
        $"{Seal}{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..Digits]}\n";
}
