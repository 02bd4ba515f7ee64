namespace FlipAnalytics;

/// <summary>The form of a piece, which tells how its painted area follows from its dimensions.</summary>
internal enum FurnitureForm
{
    /// <summary>A box: nightstand, dresser, chest, sideboard, cabinet.</summary>
    Case,

    /// <summary>A top on an apron and four legs: table, writing desk, bench.</summary>
    Table,

    /// <summary>An open bookcase, painted inside and out.</summary>
    Shelves,

    /// <summary>A chair or stool.</summary>
    Chair,
}

/// <summary>
/// Painted area by geometry, in square inches for dimensions in inches; back and underside are left unpainted, details
/// such as mouldings are not counted.
/// </summary>
internal static class PaintedArea
{
    /// <summary>Square inches in a square foot.</summary>
    public const decimal SquareInchesPerSquareFoot = 144;

    /// <summary>Square metres in a square foot, exactly.</summary>
    public const decimal SquareMetresPerSquareFoot = 0.09290304m;

    // A side chair's seat, legs, stretchers and rails come to this; from solid to spindle 8 to 15 are usual. No form
    // gives it from width, depth and height.
    private const decimal ChairSquareFeet = 11.8m;

    // Shelves of a bookcase stand about 14 inches apart.
    private const decimal ShelfSpacing = 14;

    private static readonly (string Word, FurnitureForm Form)[] Forms =
    [
        ("nightstand", FurnitureForm.Case), ("night stand", FurnitureForm.Case), ("bedside", FurnitureForm.Case),
        ("dressing table", FurnitureForm.Table), ("table", FurnitureForm.Table), ("desk", FurnitureForm.Table),
        ("bench", FurnitureForm.Table), ("bookcase", FurnitureForm.Shelves), ("bookshel", FurnitureForm.Shelves),
        ("shelf", FurnitureForm.Shelves), ("shelves", FurnitureForm.Shelves), ("chair", FurnitureForm.Chair),
        ("stool", FurnitureForm.Chair), ("dresser", FurnitureForm.Case), ("chest", FurnitureForm.Case),
        ("drawers", FurnitureForm.Case), ("sideboard", FurnitureForm.Case), ("buffet", FurnitureForm.Case),
        ("cabinet", FurnitureForm.Case), ("cupboard", FurnitureForm.Case), ("wardrobe", FurnitureForm.Case),
        ("armoire", FurnitureForm.Case), ("hutch", FurnitureForm.Case), ("credenza", FurnitureForm.Case),
        ("vanity", FurnitureForm.Case), ("bureau", FurnitureForm.Case), ("commode", FurnitureForm.Case),
        ("trunk", FurnitureForm.Case), ("tv stand", FurnitureForm.Case), ("stand", FurnitureForm.Table),
    ];

    /// <summary>The form that a type's word tells; null for a word that tells none.</summary>
    /// <param name="type">The owner's word, such as coffee table.</param>
    public static FurnitureForm? FormOf(string type)
    {
        ArgumentNullException.ThrowIfNull(type);
        foreach ((string word, FurnitureForm form) in Forms)
        {
            if (type.Contains(word, StringComparison.OrdinalIgnoreCase))
                return form;
        }

        return null;
    }

    /// <summary>
    /// Estimated painted area of a piece with all its items, in ft² where lengths are in inches and in m² where they are
    /// in centimetres; null where its form or a dimension is unknown. A chair needs no dimensions.
    /// </summary>
    /// <param name="piece">The piece.</param>
    /// <param name="unit">Unit of its lengths.</param>
    public static decimal? Of(Piece piece, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(piece);
        if (FormOf(piece.Type) is not { } form)
            return null;
        decimal? feet = form == FurnitureForm.Chair ? ChairSquareFeet
            : Inches(piece.Width) is { } w && Inches(piece.Depth) is { } d && Inches(piece.Height) is { } h
                ? Of(form, w, d, h) / SquareInchesPerSquareFoot
                : null;
        feet *= piece.Count ?? 1;
        return unit == LengthUnit.Centimetre ? feet * SquareMetresPerSquareFoot : feet;

        decimal? Inches(decimal? length) => unit == LengthUnit.Centimetre ? length / LengthUnits.CentimetresPerInch : length;
    }

    private static decimal Of(FurnitureForm form, decimal w, decimal d, decimal h) => form switch
    {
        FurnitureForm.Shelves => Bookcase(w, d, h, Math.Max(1, decimal.Floor(h / ShelfSpacing)), 0.75m),
        FurnitureForm.Table => Table(w, d, 1, 4, Math.Min(2, Math.Min(w, d) / 2), 4, 8, Math.Max(0, h - 1)),
        _ => Case(w, d, h),
    };

    /// <summary>W·D + 2·D·H + W·H: top, sides and front.</summary>
    /// <param name="width">W, inches.</param>
    /// <param name="depth">D, inches.</param>
    /// <param name="height">H, inches.</param>
    public static decimal Case(decimal width, decimal depth, decimal height) =>
        width * depth + 2 * depth * height + width * height;

    /// <summary>L·W + 2(L+W)·t + 2(L'+W')·a + n·g·l: top, its edge, apron and legs.</summary>
    /// <param name="length">L, inches.</param>
    /// <param name="width">W, inches.</param>
    /// <param name="edge">t, thickness of the top, inches.</param>
    /// <param name="apron">a, height of the apron, inches.</param>
    /// <param name="inset">How far the apron stands back from each edge, inches: L' = L − 2·inset.</param>
    /// <param name="legs">n, number of legs.</param>
    /// <param name="girth">g, around a leg, inches.</param>
    /// <param name="legLength">l, inches.</param>
    public static decimal Table(
        decimal length,
        decimal width,
        decimal edge,
        decimal apron,
        decimal inset,
        int legs,
        decimal girth,
        decimal legLength) =>
        length * width + 2 * (length + width) * edge + 2 * (length + width - 4 * inset) * apron
        + legs * girth * legLength;

    /// <summary>2·D·H + W·D outside; 2·D·H + W·H + 2·s·W·D inside; front edges (2·H + s·W)·e.</summary>
    /// <param name="width">W, inches.</param>
    /// <param name="depth">D, inches.</param>
    /// <param name="height">H, inches.</param>
    /// <param name="shelves">s, number of shelves.</param>
    /// <param name="frontEdge">e, thickness of sides and shelves, inches.</param>
    public static decimal Bookcase(decimal width, decimal depth, decimal height, decimal shelves, decimal frontEdge) =>
        4 * depth * height + width * depth + width * height + 2 * shelves * width * depth
        + (2 * height + shelves * width) * frontEdge;

    /// <summary>Top and edge, two pedestals (sides, front and back) and both faces of the modesty panel.</summary>
    /// <param name="width">Width, inches.</param>
    /// <param name="depth">Depth, inches.</param>
    /// <param name="height">Height, inches.</param>
    /// <param name="pedestalWidth">Width of each pedestal, inches.</param>
    /// <param name="modesty">Height of the modesty panel, inches.</param>
    /// <param name="edge">Thickness of the top, inches.</param>
    public static decimal PedestalDesk(
        decimal width, decimal depth, decimal height, decimal pedestalWidth, decimal modesty, decimal edge) =>
        width * depth + 2 * (width + depth) * edge
        + 2 * 2 * (depth + pedestalWidth) * (height - edge)
        + 2 * (width - 2 * pedestalWidth) * modesty;
}
