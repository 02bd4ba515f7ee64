namespace FlipAnalytics;

/// <summary>What reading a row needs to know beyond the row.</summary>
/// <param name="Folder">Folder of the log.</param>
/// <param name="Currency">The workshop's currency.</param>
/// <param name="Spellings">Spellings seen so far.</param>
/// <param name="Problems">Where problems go.</param>
internal sealed record RowReading(string Folder, Currency Currency, Spellings Spellings, LogProblems Problems);
