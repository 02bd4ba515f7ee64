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
            fees += fee;
            sheet.Lines[i].Add(new(CostKind.Fees, piece.SoldOn, fee, "selling fees", origin));
            sheet.Pay(piece.SoldOn, -fee, $"{piece.Id} selling fees", origin, CostKind.Fees, piece.Id);
        }
        else
        {
            sheet.Gaps[i].Add(new(
                CostKind.Fees,
                $"The fees of {piece.Id} are not written down, and workshop.toml has no rule for its channel."));
        }

        if (piece.DeliveryCost is { } delivery)
        {
            deliveries += delivery;
            sheet.Lines[i].Add(new(CostKind.Delivery, piece.SoldOn, delivery, "delivery", written));
            sheet.Pay(piece.SoldOn, -delivery, $"{piece.Id} delivery", written, CostKind.Delivery, piece.Id);
        }
        else if (piece.DeliveryCharged > 0 && !sheet.Lines[i].Any(line => line.Kind == CostKind.Delivery))
        {
            sheet.Gaps[i].Add(new(
                CostKind.Delivery, $"A charge for delivering {piece.Id} is written down, but not what delivery cost."));
        }
    }

    /// <summary>Fees and delivery of sales that were undone, and what taking the piece back cost.</summary>
    public static void WriteReturns(CostSheet sheet, int i, ref decimal fees, ref decimal deliveries)
    {
        string id = sheet.Log.Pieces[i].Id;
        foreach (SaleReturn back in sheet.Returns[i])
        {
            CostOrigin written = new(Columns.Returns.File, back.Row, "As written down.");
            if (back.CameBack)
            {
                fees += Add(CostKind.Fees, back.SoldOn, back.Fees, "fees of the sale that was undone", written);
                deliveries += Add(CostKind.Delivery, back.SoldOn, back.DeliveryCost, "delivery of the sale that was undone", written);
                if (back.Fees is null)
                    sheet.Gaps[i].Add(new(CostKind.Fees, Invariant($"What was kept in fees of the sale of {id} that was undone on {back.ReturnedOn:yyyy-MM-dd} is not written down.")));
                if (back is { DeliveryCost: null, DeliveryCharged: > 0 } && !sheet.Lines[i].Any(line => line.Kind == CostKind.Delivery))
                    sheet.Gaps[i].Add(new(CostKind.Delivery, $"A charge for delivering {id} is written down, but not what delivery cost."));
            }

            deliveries += Add(CostKind.Delivery, back.ReturnedOn, back.Cost, back.CameBack ? "taking it back" : "giving money back", written);
        }

        decimal Add(CostKind kind, DateOnly? day, decimal? amount, string what, CostOrigin origin)
        {
            if (amount is not (null or 0))
            {
                sheet.Lines[i].Add(new(kind, day, amount.Value, what, origin));
                sheet.Pay(day, -amount.Value, $"{id} {what}", origin, kind, id);
            }

            return amount ?? 0;
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
