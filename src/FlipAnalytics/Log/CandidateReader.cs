using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What came of reading a file of candidates.</summary>
/// <param name="Candidates">Candidates, in file order.</param>
/// <param name="Problems">Problems, by line; a row with one is not among the candidates.</param>
public sealed record CandidateReading(ImmutableArray<Candidate> Candidates, ImmutableArray<LogProblem> Problems);

/// <summary>Reads a file of pieces in a store: a CSV file of which only the column <c>type</c> is needed.</summary>
public static class CandidateReader
{
    /// <summary>Reads a file of candidates. Never throws on what the file says.</summary>
    /// <param name="path">The file.</param>
    /// <param name="workshop">The workshop, for its currency.</param>
    public static CandidateReading Read(string path, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(workshop);
        string full = Path.GetFullPath(path);
        LogProblems problems = new();
        ReadTable<Candidate> rows = TableReader.Read(
            CandidateColumns.Table, new(Path.GetDirectoryName(full) ?? "", workshop.Currency, new(mergesWords: false), problems),
            Path.GetFileName(full));
        if (!rows.IsPresent)
        {
            problems.Error(path, null, null, null, "a file with the pieces in the store",
                "There is no such file; check the spelling.");
        }

        return new([.. rows.Kept], problems.Sorted());
    }
}
