namespace FlipAnalytics;

/// <summary>Amounts of <c>pieces.csv</c> that are out of line with other pieces and with each other.</summary>
internal static class PieceAmounts
{
    // What a set brings, takes and costs grows a little slower than its count: a judgement.
    private const double ByCount = 0.85;

    /// <summary>The lengths, which slip together where a piece was measured in another unit.</summary>
    private static readonly string[] Lengths = ["width", "depth", "height"];

    public static IEnumerable<LogFinding> Of(SalesLog log)
    {
        var sheet = new AmountSheet(Columns.Pieces.File);
        var lengthSlips = AmountSlip.Length(log.Workshop.LengthUnit != LengthUnit.Inch);
        foreach (Piece piece in log.Pieces)
        {
            sheet.Add(piece.Row);
            double set = ByCount * (Crossing.Log(piece.Count) ?? 0);
            int? count = sheet.Cell("count", piece.Count, AmountSlip.Quantity);
            sheet.Expect("count", 0.4, 0.4, piece.Type, count);

            int? sticker = sheet.Cell("sticker_price", piece.StickerPrice, AmountSlip.Money);
            int? bought = sheet.Cell("bought_price", piece.BoughtPrice, AmountSlip.Money);
            int? expected = sheet.Cell("expected_price", piece.ExpectedPrice, AmountSlip.Money);
            int? asking = sheet.Cell("asking_price", piece.AskingPrice, AmountSlip.Money);
            int? sold = sheet.Cell("sold_price", piece.SoldPrice, AmountSlip.Money);
            sheet.Expect("sticker", 0.6, 0.6, piece.Type, sticker, offset: set);
            // A lot's sum stands for all of its pieces.
            if (piece.Lot is null)
            {
                sheet.Expect("bought", 0.8, 0.6, piece.Type, bought, offset: set);
                if (sticker is not null)
                    sheet.Expect("haggle", 0.3, 0.2, null, bought, sticker);
            }

            sheet.Expect("expected", 0.4, 0.6, piece.Type, expected, offset: set);
            sheet.Expect("asking", 0.4, 0.6, piece.Type, asking, offset: set);
            sheet.Expect("sold", 0.4, 0.6, piece.Type, sold, offset: set);
            if (asking is not null)
            {
                sheet.Expect("asked and sold", 0.2, 0.1, null, sold, asking);
                sheet.Expect("asked and expected", 0.35, 0.2, null, expected, asking);
            }

            if (expected is not null)
                sheet.Expect("expected and sold", 0.35, 0.2, null, sold, expected);

            int? fees = sheet.Cell("fees", piece.Fees, AmountSlip.Money);
            if (sold is not null)
                sheet.Expect("fees", 0.2, 0.6, piece.Channel, fees, sold);
            sheet.Expect("delivery charge", 0.5, 0.4, null, sheet.Cell("delivery_charged", piece.DeliveryCharged, AmountSlip.Money));
            sheet.Expect("delivery cost", 0.5, 0.4, null, sheet.Cell("delivery_cost", piece.DeliveryCost, AmountSlip.Money));
            sheet.Expect("hours", 0.45, 0.6, piece.Type, sheet.Cell("hours", piece.Hours, AmountSlip.Hours), offset: set);
            sheet.Expect("supplies", 0.5, 0.5, piece.Type, sheet.Cell("supplies_cost", piece.SuppliesCost, AmountSlip.Money), offset: set);

            decimal?[] lengths = [piece.Width, piece.Depth, piece.Height];
            for (int d = 0; d < lengths.Length; d++)
                sheet.Expect(Lengths[d], 0.15, 0.5, piece.Type, sheet.Cell(Lengths[d], lengths[d], lengthSlips));
        }

        return sheet.Findings(Lengths);
    }
}
