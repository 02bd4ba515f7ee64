using System.Globalization;

namespace FlipAnalytics;

/// <summary>
/// A file of pieces in a store. A question about a piece is answered as asked or not at all, so every cell decides. Numbers
/// instead of money: other programs write estimates with more digits than a coin has.
/// </summary>
internal static class CandidateColumns
{
    public static readonly RecordTable<Candidate> Table = new("candidates.csv", "", Row)
    {
        EveryCellDecides = true,
    };

    private static readonly Column<Candidate, string?> Id = Table.Name(
        "id", "Your own name for it; without it the line number serves.", candidate => candidate.Id);
    private static readonly Column<Candidate, string> Type = Table.RequiredLabel(
        "type", "Kind of furniture, as in pieces.csv.", candidate => candidate.Type);
    private static readonly Column<Candidate, int?> Count = Table.WholeNumber(
        "count", "How many items would be sold as one.", candidate => candidate.Count, "items", Smallest.AboveZero);
    private static readonly Column<Candidate, decimal?> Width = Table.Number(
        "width", "Width of one item.", candidate => candidate.Width, Columns.LengthWords, Smallest.AboveZero);
    private static readonly Column<Candidate, decimal?> Depth = Table.Number(
        "depth", "Depth of one item.", candidate => candidate.Depth, Columns.LengthWords, Smallest.AboveZero);
    private static readonly Column<Candidate, decimal?> Height = Table.Number(
        "height", "Height of one item.", candidate => candidate.Height, Columns.LengthWords, Smallest.AboveZero);
    private static readonly Column<Candidate, string?> Material = Table.Label(
        "material", "What it is made of.", candidate => candidate.Material);
    private static readonly Column<Candidate, Condition?> Condition = Table.Word<Condition>(
        "condition", "How sound it is.", candidate => candidate.Condition);
    private static readonly Column<Candidate, string?> Colour = Table.Label(
        "color", "Color you would give it.", candidate => candidate.Colour);
    private static readonly Column<Candidate, string?> Finish = Table.Label(
        "finish", "Finish you would give it.", candidate => candidate.Finish);
    private static readonly Column<Candidate, decimal?> Hours = Table.Number(
        "hours", "Hours you expect.", candidate => candidate.Hours, "hours", Smallest.AboveZero);
    private static readonly Column<Candidate, decimal?> Supplies = Table.Number(
        "supplies", "Cost of supplies you expect.", candidate => candidate.Supplies, Columns.CurrencyWords, Smallest.Zero);
    private static readonly Column<Candidate, decimal?> SalePrice = Table.Number(
        "sale_price", "Sale price you expect.", candidate => candidate.SalePrice, Columns.CurrencyWords, Smallest.AboveZero);
    private static readonly Column<Candidate, decimal?> StickerPrice = Table.Number(
        "sticker_price", "What the store asks.", candidate => candidate.StickerPrice, Columns.CurrencyWords, Smallest.Zero);

    private static Candidate Row(Cells cells) => new()
    {
        Id = Id.In(cells) ?? string.Create(CultureInfo.InvariantCulture, $"row {cells.Row}"),
        Type = Type.In(cells),
        Count = Count.In(cells),
        Width = Width.In(cells),
        Depth = Depth.In(cells),
        Height = Height.In(cells),
        Material = Material.In(cells),
        Condition = Condition.In(cells),
        Colour = Colour.In(cells),
        Finish = Finish.In(cells),
        Hours = Hours.In(cells),
        Supplies = Supplies.In(cells),
        SalePrice = SalePrice.In(cells),
        StickerPrice = StickerPrice.In(cells),
        Written = cells.All(),
    };
}
