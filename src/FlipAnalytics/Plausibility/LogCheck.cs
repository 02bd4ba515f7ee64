using System.Collections.Immutable;

namespace FlipAnalytics;

/// <summary>What a log holds, what in it needs the owner's eye, and what more would make the answers better.</summary>
/// <param name="HasLog">Whether there is a log at all; false if the folder or pieces.csv cannot be read.</param>
/// <param name="Pieces">Pieces in the log: sold, on sale, in the workshop and gone together.</param>
/// <param name="Sold">Pieces sold.</param>
/// <param name="OnSale">Pieces on sale.</param>
/// <param name="InTheWorkshop">Pieces not yet listed.</param>
/// <param name="Gone">Pieces that left without a sale.</param>
/// <param name="FirstFact">Date of the first dated fact; null if there is none.</param>
/// <param name="LastFact">Date of the last dated fact; null if there is none.</param>
/// <param name="RowsSetAside">Rows of all tables that could not be used.</param>
/// <param name="Errors">Problems that kept something from being used.</param>
/// <param name="Warnings">Problems worth a look.</param>
/// <param name="Tables">Tables that are there.</param>
/// <param name="Missing">Files that are not there, and what each would add.</param>
/// <param name="Problems">All problems, by file and line.</param>
/// <param name="Filling">How much of each column of <c>pieces.csv</c> is written down; empty where there is no log.</param>
/// <param name="SimilarWords">Words that may mean the same, a sentence each; a hint, no problem.</param>
public sealed record LogCheck(
    bool HasLog,
    int Pieces,
    int Sold,
    int OnSale,
    int InTheWorkshop,
    int Gone,
    DateOnly? FirstFact,
    DateOnly? LastFact,
    int RowsSetAside,
    int Errors,
    int Warnings,
    ImmutableArray<TableReading> Tables,
    ImmutableArray<MissingFile> Missing,
    ImmutableArray<LogProblem> Problems,
    ImmutableArray<ColumnFilling> Filling,
    ImmutableArray<string> SimilarWords)
{
    /// <summary>Cells of all tables that could not be used, in rows that are used without them.</summary>
    public int CellsSetAside { get; init; }

    /// <summary>Words that are read as one, or look like one written in several ways, with their places.</summary>
    public ImmutableArray<WordsAlike> WordsAlike { get; init; } = [];

    /// <summary>Numbers and dates out of line with the rest of the log, the likeliest slips first; also among the problems.</summary>
    public ImmutableArray<LogFinding> Findings { get; init; } = [];

    /// <summary>Checks what came of reading a log.</summary>
    /// <param name="reading">What <see cref="SalesLogReader"/> returned.</param>
    /// <param name="today">The last day that can be past; that of the last fact where null.</param>
    public static LogCheck Of(LogReading reading, DateOnly? today = null)
    {
        ArgumentNullException.ThrowIfNull(reading);
        ImmutableArray<LogFinding> findings = reading.Log is null
            ? [] : LogFindings.In(reading.Log, reading.Contradicting, today ?? reading.Log.Date);
        ImmutableArray<LogProblem> problems = Merged(reading.Problems, findings);
        ImmutableArray<Piece> pieces = reading.Log?.Pieces ?? [];
        ImmutableArray<WordsAlike> alike = reading.Log is null
            ? [] : FlipAnalytics.SimilarWords.All(reading.Log, reading.OtherSpellings);
        return new(
            reading.Log is not null,
            pieces.Length,
            Count(PieceState.Sold),
            Count(PieceState.OnSale),
            Count(PieceState.InTheWorkshop),
            Count(PieceState.Gone),
            reading.Log?.FirstFact(),
            reading.Log?.LastFact(),
            reading.Tables.Sum(table => table.RowsSetAside),
            problems.Count(problem => problem.Severity == Severity.Error),
            problems.Count(problem => problem.Severity == Severity.Warning),
            [.. reading.Tables.Where(table => table.IsPresent)],
            MissingFiles(reading),
            problems,
            reading.Log is null ? [] : ColumnFilling.OfPieces(reading.Log),
            [
                .. alike.Select(words => words.Sentence),
                .. reading.Log is null ? [] : FlipAnalytics.SimilarWords.LookingAlike(reading.Log),
            ])
        {
            WordsAlike = alike,
            Findings = findings,
            CellsSetAside = reading.Tables.Sum(table => table.CellsSetAside),
        };

        int Count(PieceState state) => pieces.Count(piece => piece.State == state);
    }

    // One line a cell: what the rest of the log says of it is worth more than what is wrong with it by itself.
    private static ImmutableArray<LogProblem> Merged(
        ImmutableArray<LogProblem> problems, ImmutableArray<LogFinding> findings)
    {
        var found = findings.ToDictionary(f => (f.File, (int?)f.Row, (string?)f.Column));
        List<LogProblem> merged =
        [
            .. problems.Select(problem => found.Remove((problem.File, problem.Row, problem.Column), out LogFinding? finding)
                ? finding.AsProblem() with { Severity = problem.Severity }
                : problem),
        ];
        ImmutableArray<string> files = [.. Columns.Tables.Select(table => table.File)];
        merged.AddRange(found.Values.Select(finding => finding.AsProblem()));
        return
        [
            .. merged.OrderBy(problem => files.IndexOf(problem.File)).ThenBy(problem => problem.Row ?? 0),
        ];
    }

    private static ImmutableArray<MissingFile> MissingFiles(LogReading reading)
    {
        if (reading.Log is null)
            return [];
        IEnumerable<MissingFile> tables = Columns.Tables
            .Where(table => reading.Tables.Any(read => read.File == table.File && !read.IsPresent))
            .Select(table => new MissingFile(table.File, table.Adds));
        return reading.HasWorkshop ? [.. tables] : [.. tables, new(Columns.WorkshopFile, Columns.WorkshopAdds)];
    }
}

/// <summary>A file that a log may have and this one has not.</summary>
/// <param name="File">File name, such as hours.csv.</param>
/// <param name="Adds">What the answers would gain from it, as a sentence.</param>
public sealed record MissingFile(string File, string Adds);
