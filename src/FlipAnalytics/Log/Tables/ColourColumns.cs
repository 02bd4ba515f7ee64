namespace FlipAnalytics;

/// <summary><c>colors.csv</c>: what the owner says of colours.</summary>
internal static class ColourColumns
{
    public static readonly RecordTable<Colour> Table = new(
        "colors.csv",
        "With color families, a color you have hardly tried learns from its relatives.",
        Row);

    private static readonly Column<Colour, string> Word = Table.RequiredName(
        "color", "The color, in the word that pieces use.", colour => colour.Word);
    private static readonly Column<Colour, string?> Family = Table.Label(
        "family", "The family it belongs to, such as green.", colour => colour.Family);
    private static readonly Column<Colour, string?> Hex = Table.Hex(
        "hex", "How it looks on a screen.", colour => colour.Hex);

    private static Colour Row(Cells cells) => new(Word.In(cells), Family.In(cells), Hex.In(cells), cells.Row);
}
