using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>Fees and delivery of a sale.</summary>
internal static class SaleCosts
{
    public static void Write(CostSheet sheet, int i, ref decimal fees, ref decimal deliveries)
    {
        Piece piece = sheet.Log.Pieces[i];
        if (!piece.IsSold)
        {
            if (piece.Fees > 0 || piece.DeliveryCost > 0)
                sheet.Notes.Add($"{piece.Id} is not sold: its fees and delivery in pieces.csv count once it is, or as overhead in overheads.csv.");
            return;
        }

        CostOrigin written = new(Columns.Pieces.File, piece.Row, "As written down.");
        if (Fees(sheet.Log.Workshop, piece, written) is var (fee, origin))
        {
            fees += Add(sheet, i, CostKind.Fees, piece.SoldOn, fee, "selling fees", origin);
        }
        else
        {
            sheet.Gaps[i].Add(new(
                CostKind.Fees,
                $"The fees of {piece.Id} are not written down, and workshop.toml has no rule for its channel."));
        }

        if (piece.DeliveryCost is { } delivery)
        {
            deliveries += Add(sheet, i, CostKind.Delivery, piece.SoldOn, delivery, "delivery", written);
        }
        else
        {
            MissDelivery(sheet, i, piece.DeliveryCharged);
        }
    }

    /// <summary>Fees and delivery of sales that were undone, and what taking the piece back cost.</summary>
    public static void WriteReturns(CostSheet sheet, int i, ref decimal fees, ref decimal deliveries)
    {
        foreach (SaleReturn back in sheet.Returns[i])
        {
            CostOrigin written = new(Columns.Returns.File, back.Row, "As written down.");
            if (back.CameBack)
            {
                fees += AddAny(CostKind.Fees, back.SoldOn, back.Fees, "fees of the sale that was undone");
                deliveries += AddAny(CostKind.Delivery, back.SoldOn, back.DeliveryCost, "delivery of the sale that was undone");
                if (back.Fees is null)
                    sheet.Gaps[i].Add(new(CostKind.Fees, Invariant($"What was kept in fees of the sale of {sheet.Log.Pieces[i].Id} that was undone on {back.ReturnedOn:yyyy-MM-dd} is not written down.")));
                if (back.DeliveryCost is null)
                    MissDelivery(sheet, i, back.DeliveryCharged);
            }

            deliveries += AddAny(CostKind.Delivery, back.ReturnedOn, back.Cost, back.CameBack ? "taking it back" : "giving money back");

            decimal AddAny(CostKind kind, DateOnly? day, decimal? amount, string what) =>
                amount is { } known and not 0 ? Add(sheet, i, kind, day, known, what, written) : 0;
        }
    }

    private static decimal Add(CostSheet sheet, int i, CostKind kind, DateOnly? day, decimal amount, string what, CostOrigin origin)
    {
        string id = sheet.Log.Pieces[i].Id;
        sheet.Lines[i].Add(new(kind, day, amount, what, origin));
        sheet.Pay(day, -amount, $"{id} {what}", origin, kind, id);
        return amount;
    }

    // A drive to the buyer may be what it cost.
    private static void MissDelivery(CostSheet sheet, int i, decimal? charged)
    {
        if (charged > 0 && !sheet.Lines[i].Any(line => line.Kind == CostKind.Delivery))
        {
            sheet.Gaps[i].Add(new(
                CostKind.Delivery, $"A charge for delivering {sheet.Log.Pieces[i].Id} is written down, but not what delivery cost."));
        }
    }

    private static (decimal Fee, CostOrigin Origin)? Fees(Workshop workshop, Piece piece, CostOrigin written)
    {
        if (piece.Fees is { } fee)
            return (fee, written);
        if (piece is not { Channel: { } channel, SoldPrice: { } price }
            || !workshop.Fees.TryGetValue(channel, out FeeRule? rule))
        {
            return null;
        }

        decimal reckoned = workshop.Currency.Round(workshop.Currency.Round(price * rule.Rate) + rule.Fixed);
        return (reckoned, new(
            Columns.WorkshopFile,
            null,
            Invariant($"{rule.Rate:0.## %} of {price} and {rule.Fixed}, the rule for {channel}.")));
    }
}
