using System.Globalization;

namespace FlipAnalytics;

/// <summary><c>pieces.csv</c>: the only file that must be there.</summary>
internal static class PieceColumns
{
    public static readonly RecordTable<Piece> Table = new(
        "pieces.csv",
        "It is the log itself: what was bought, what it sold for and what is still here.",
        Row);

    private static readonly Column<Piece, string?> Id = Table.Name(
        "id", "Your own name for the piece, different for every row; without it the line number serves.", piece => piece.Id);
    private static readonly Column<Piece, string> Type = Table.RequiredLabel(
        "type", "Kind of furniture in your own words, such as dresser.", piece => piece.Type);
    private static readonly Column<Piece, string?> Title = Table.Text(
        "title",
        "A few words that tell the piece from others.",
        piece => piece.Title, column => column with { IsExtra = true });
    private static readonly Column<Piece, int?> Count = Table.WholeNumber(
        "count",
        "How many items are sold as one, such as 4 for a set of chairs.",
        piece => piece.Count, "items", Smallest.AboveZero, column => column with { IsExtra = true });
    private static readonly Column<Piece, decimal?> Width = Table.Number(
        "width", "Width of one item.", piece => piece.Width, Columns.LengthWords, Smallest.AboveZero);
    private static readonly Column<Piece, decimal?> Depth = Table.Number(
        "depth", "Depth of one item.", piece => piece.Depth, Columns.LengthWords, Smallest.AboveZero);
    private static readonly Column<Piece, decimal?> Height = Table.Number(
        "height", "Height of one item.", piece => piece.Height, Columns.LengthWords, Smallest.AboveZero);
    private static readonly Column<Piece, string?> Material = Table.Label(
        "material",
        "What it is made of, such as oak or pine.",
        piece => piece.Material, column => column with { IsExtra = true });
    private static readonly Column<Piece, Condition?> Condition = Table.Word<Condition>(
        "condition", "How sound it was when you bought it.", piece => piece.Condition);
    private static readonly Column<Piece, string?> Colour = Table.Label(
        "color",
        "Color you gave it, in your own word.",
        piece => piece.Colour, column => column with { HadBy = HadBy.Offered });
    private static readonly Column<Piece, string?> Finish = Table.Label(
        "finish",
        "Finish you gave it, such as satin or wax.",
        piece => piece.Finish, column => column with { HadBy = HadBy.Offered });
    private static readonly Column<Piece, string?> Source = Table.Label(
        "source", "Where you found it, such as charity shop or roadside.", piece => piece.Source);
    private static readonly Column<Piece, string?> Trip = Table.Name(
        "trip",
        "Outing that brought it home; a name in trips.csv.",
        piece => piece.Trip, column => column with { IsExtra = true });
    private static readonly Column<Piece, string?> Lot = Table.Name(
        "lot",
        "A word that pieces bought together for one sum share; one of them has the sum as its price.",
        piece => piece.Lot, column => column with { IsExtra = true });
    private static readonly Column<Piece, DateOnly?> BoughtOn = Table.Date(
        "bought_on", "Day you bought it.", piece => piece.BoughtOn);
    private static readonly Column<Piece, decimal?> StickerPrice = Table.Money(
        "sticker_price", "What the store asked.", piece => piece.StickerPrice, Smallest.Zero);
    private static readonly Column<Piece, decimal?> BoughtPrice = Table.Money(
        "bought_price",
        "What you paid; 0 if it cost nothing.",
        piece => piece.BoughtPrice, Smallest.Zero, column => column with { IsRequired = true });
    private static readonly Column<Piece, decimal?> ExpectedPrice = Table.Money(
        "expected_price",
        "Your own guess of the sale price when you bought it.",
        piece => piece.ExpectedPrice, Smallest.AboveZero, column => column with { IsExtra = true });
    private static readonly Column<Piece, DateOnly?> ReadyOn = Table.Date(
        "ready_on", "Day the work on it was done.", piece => piece.ReadyOn, column => column with { HadBy = HadBy.Offered });
    private static readonly Column<Piece, DateOnly?> ListedOn = Table.Date(
        "listed_on",
        "Day you first offered it; offering it again changes nothing here.",
        piece => piece.ListedOn, column => column with { HadBy = HadBy.Offered });
    private static readonly Column<Piece, decimal?> AskingPrice = Table.Money(
        "asking_price",
        "What you asked at first; later changes go into asking.csv.",
        piece => piece.AskingPrice, Smallest.AboveZero, column => column with { HadBy = HadBy.Offered });
    private static readonly Column<Piece, DateOnly?> SoldOn = Table.Date(
        "sold_on",
        "Day it was sold.",
        piece => piece.SoldOn, column => column with { IsDeciding = true, HadBy = HadBy.Sold });
    private static readonly Column<Piece, decimal?> SoldPrice = Table.Money(
        "sold_price",
        "What the buyer paid for the piece, before fees and without a delivery charge.",
        piece => piece.SoldPrice, Smallest.AboveZero, column => column with
        {
            IsDeciding = true,
            HadBy = HadBy.Sold,
            Remedy = "If it was given away, empty sold_price and sold_on and write the day into left_on and given into left_as.",
        });
    private static readonly Column<Piece, decimal?> SalesTax = Table.Money(
        "sales_tax", "Sales tax the buyer paid on top of the sale price.", piece => piece.SalesTax, Smallest.Zero);
    private static readonly Column<Piece, decimal?> Commission = Table.Number(
        "commission",
        "For a piece that belongs to somebody else: your share of the sale price, such as 0.4.",
        piece => piece.Commission, "a share", Smallest.AboveZero, column => column with
        {
            IsDeciding = true,
            Remedy = "Write your share as a part of 1, such as 0.4 for 40 %; leave it empty for a piece of your own.",
        });
    private static readonly Column<Piece, string?> Channel = Table.Label(
        "channel",
        "Where it was sold, or is for sale, such as online or market stall.",
        piece => piece.Channel, column => column with { HadBy = HadBy.Sold });
    private static readonly Column<Piece, decimal?> Fees = Table.Money(
        "fees",
        "What the channel or payment service kept.",
        piece => piece.Fees, Smallest.Zero, column => column with { HadBy = HadBy.Sold });
    private static readonly Column<Piece, decimal?> DeliveryCharged = Table.Money(
        "delivery_charged",
        "What the buyer paid for delivery on top of the sale price.",
        piece => piece.DeliveryCharged, Smallest.Zero, column => column with { HadBy = HadBy.Sold, IsExtra = true });
    private static readonly Column<Piece, decimal?> DeliveryCost = Table.Money(
        "delivery_cost",
        "What delivery cost you.",
        piece => piece.DeliveryCost, Smallest.Zero, column => column with { HadBy = HadBy.Sold, IsExtra = true });
    private static readonly Column<Piece, decimal?> Hours = Table.Number(
        "hours",
        "All hands-on hours on it; drying time is not hours.",
        piece => piece.Hours, "hours", Smallest.Zero, column => column with { HadBy = HadBy.Offered });
    private static readonly Column<Piece, decimal?> SuppliesCost = Table.Money(
        "supplies_cost",
        "Cost of what was used up on it.",
        piece => piece.SuppliesCost, Smallest.Zero, column => column with { HadBy = HadBy.Offered });
    private static readonly Column<Piece, DateOnly?> LeftOn = Table.Date(
        "left_on",
        "Day it left without being sold.",
        piece => piece.LeftOn, column => column with { IsDeciding = true, HadBy = HadBy.Gone });
    private static readonly Column<Piece, LeftAs?> LeftAs = Table.Word<LeftAs>(
        "left_as",
        "How it left without being sold.",
        piece => piece.LeftAs, column => column with { IsDeciding = true, HadBy = HadBy.Gone });
    private static readonly Column<Piece, string?> Notes = Table.Text(
        "notes", "Anything else.", piece => piece.Notes, column => column with { IsExtra = true });

    private static Piece Row(Cells cells) => new()
    {
        Row = cells.Row,
        Id = Id.In(cells) ?? string.Create(CultureInfo.InvariantCulture, $"row {cells.Row}"),
        Type = Type.In(cells),
        Title = Title.In(cells),
        Count = Count.In(cells),
        Width = Width.In(cells),
        Depth = Depth.In(cells),
        Height = Height.In(cells),
        Material = Material.In(cells),
        Condition = Condition.In(cells),
        Colour = Colour.In(cells),
        Finish = Finish.In(cells),
        Source = Source.In(cells),
        Trip = Trip.In(cells),
        Lot = Lot.In(cells),
        BoughtOn = BoughtOn.In(cells),
        StickerPrice = StickerPrice.In(cells),
        BoughtPrice = BoughtPrice.In(cells),
        ExpectedPrice = ExpectedPrice.In(cells),
        ReadyOn = ReadyOn.In(cells),
        ListedOn = ListedOn.In(cells),
        AskingPrice = AskingPrice.In(cells),
        SoldOn = SoldOn.In(cells),
        SoldPrice = SoldPrice.In(cells),
        SalesTax = SalesTax.In(cells),
        Commission = Commission.In(cells),
        Channel = Channel.In(cells),
        Fees = Fees.In(cells),
        DeliveryCharged = DeliveryCharged.In(cells),
        DeliveryCost = DeliveryCost.In(cells),
        Hours = Hours.In(cells),
        SuppliesCost = SuppliesCost.In(cells),
        LeftOn = LeftOn.In(cells),
        LeftAs = LeftAs.In(cells),
        Notes = Notes.In(cells),
    };
}
