using System.Collections.Immutable;
using System.Globalization;

using static FlipAnalytics.ColumnKind;

namespace FlipAnalytics;

/// <summary>What came of reading a file of candidates.</summary>
/// <param name="Candidates">Candidates, in file order.</param>
/// <param name="Problems">Problems, by line; a row with one is not among the candidates.</param>
public sealed record CandidateReading(ImmutableArray<Candidate> Candidates, ImmutableArray<LogProblem> Problems);

/// <summary>Reads a file of pieces in a store: a CSV file of which only the column <c>type</c> is needed.</summary>
public static class CandidateReader
{
    // Numbers instead of money: other programs write estimates with more digits than a coin has.
    private static readonly ImmutableArray<LogColumn> CandidateColumns =
    [
        new("id", Name, "Your own name for it; without it the line number serves."),
        new("type", Label, "Kind of furniture, as in pieces.csv.", IsRequired: true),
        new("count", WholeNumber, "How many items would be sold as one.", "items", Smallest.AboveZero),
        new("width", Number, "Width of one item.", Columns.LengthWords, Smallest.AboveZero),
        new("depth", Number, "Depth of one item.", Columns.LengthWords, Smallest.AboveZero),
        new("height", Number, "Height of one item.", Columns.LengthWords, Smallest.AboveZero),
        new("material", Label, "What it is made of."),
        new("condition", Word, "How sound it is.") { Words = [.. Enum.GetValues<Condition>().Select(Columns.WordOf)] },
        new("color", Label, "Color you would give it."),
        new("finish", Label, "Finish you would give it."),
        new("hours", Number, "Hours you expect.", "hours", Smallest.AboveZero),
        new("supplies", Number, "Cost of supplies you expect.", Columns.CurrencyWords, Smallest.Zero),
        new("sale_price", Number, "Sale price you expect.", Columns.CurrencyWords, Smallest.AboveZero),
        new("sticker_price", Number, "What the store asks.", Columns.CurrencyWords, Smallest.Zero),
    ];

    /// <summary>Reads a file of candidates. Never throws on what the file says.</summary>
    /// <param name="path">The file.</param>
    /// <param name="workshop">The workshop, for its currency.</param>
    public static CandidateReading Read(string path, Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(path);
        ArgumentNullException.ThrowIfNull(workshop);
        string full = Path.GetFullPath(path);
        // A question about a piece is answered as asked or not at all, so every cell decides.
        var table = new LogTable(
            Path.GetFileName(full), "", [.. CandidateColumns.Select(column => column with { IsDeciding = true })]);
        LogProblems problems = new();
        ReadTable<Candidate> rows = TableReader.Read(
            table, new(Path.GetDirectoryName(full) ?? "", workshop.Currency, new(mergesWords: false), problems), Row);
        if (!rows.IsPresent)
        {
            problems.Error(path, null, null, null, "a file with the pieces in the store",
                "There is no such file; check the spelling.");
        }

        return new([.. rows.Kept], problems.Sorted());
    }

    private static Candidate Row(Cells cells) => new()
    {
        Id = cells.Text("id") ?? string.Create(CultureInfo.InvariantCulture, $"row {cells.Row}"),
        Type = cells.RequiredText("type"),
        Count = cells.WholeNumber("count"),
        Width = cells.Decimal("width"),
        Depth = cells.Decimal("depth"),
        Height = cells.Decimal("height"),
        Material = cells.Text("material"),
        Condition = cells.Word<Condition>("condition"),
        Colour = cells.Text("color"),
        Finish = cells.Text("finish"),
        Hours = cells.Decimal("hours"),
        Supplies = cells.Decimal("supplies"),
        SalePrice = cells.Decimal("sale_price"),
        StickerPrice = cells.Decimal("sticker_price"),
        Written = cells.All(),
    };
}
