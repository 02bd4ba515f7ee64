namespace FlipAnalytics;

/// <summary>What reading a row needs to know beyond the row.</summary>
/// <param name="Folder">Folder of the log.</param>
/// <param name="Currency">The workshop's currency.</param>
/// <param name="Spellings">Spellings seen so far.</param>
/// <param name="Problems">Where problems go.</param>
internal sealed record RowReading(string Folder, Currency Currency, Spellings Spellings, LogProblems Problems)
{
    /// <summary>Tables at hand as text, by file name, in place of those in the folder; null to read the folder.</summary>
    public IReadOnlyDictionary<string, byte[]>? AtHand { get; init; }

    /// <summary>The file of a table.</summary>
    public SourceFile Open(string file) => AtHand is null ? SourceFile.Read(Folder, file, Problems)
        : AtHand.TryGetValue(file, out byte[]? bytes) ? new(true, bytes, 0)
        : new(false, null, 0);
}
