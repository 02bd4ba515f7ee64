namespace FlipAnalytics;

/// <summary>Amounts of the other tables that are out of line with their like.</summary>
internal static class OtherAmounts
{
    public static IEnumerable<LogFinding> Of(SalesLog log) =>
        [.. Asking(log), .. Hours(log), .. Supplies(log), .. Uses(log), .. Trips(log), .. Tools(log), .. Overheads(log)];

    // A changed price is told by the price before it: the first one asked, or the change before.
    private static IEnumerable<LogFinding> Asking(SalesLog log)
    {
        var sheet = new AmountSheet(Columns.Asking.File);
        var first = log.Pieces.ToDictionary(p => p.Id, p => p.AskingPrice ?? p.ExpectedPrice ?? p.SoldPrice, StringComparer.OrdinalIgnoreCase);
        foreach (AskingPrice change in log.AskingPrices)
        {
            sheet.Add(change.Row);
            int? price = sheet.Cell("price", change.Price, AmountSlip.Money);
            if (Crossing.Log(first.GetValueOrDefault(change.PieceId)) is { } before)
                sheet.Expect("cut", 0.2, 0.1, null, price, offset: before);
        }

        return sheet.Findings();
    }

    private static IEnumerable<LogFinding> Hours(SalesLog log)
    {
        var sheet = new AmountSheet(Columns.Hours.File);
        foreach (HoursEntry entry in log.Hours)
        {
            sheet.Add(entry.Row);
            sheet.Expect("hours", 0.6, 0.5, entry.Task is { } task ? Columns.WordOf(task) : "", sheet.Cell("hours", entry.Hours, AmountSlip.Hours));
        }

        return sheet.Findings();
    }

    private static IEnumerable<LogFinding> Supplies(SalesLog log)
    {
        var sheet = new AmountSheet(Columns.Supplies.File);
        foreach (SupplyPurchase purchase in log.Supplies)
        {
            sheet.Add(purchase.Row);
            string inUnit = $"{purchase.Kind ?? purchase.Item} by {purchase.Unit}";
            int? quantity = sheet.Cell("quantity", purchase.Quantity, AmountSlip.Quantity);
            int? price = sheet.Cell("price", purchase.Price, AmountSlip.Money);
            sheet.Expect("quantity", 0.4, 3, inUnit, quantity);
            sheet.Expect("price", 0.4, 0.6, inUnit, price);
            if (quantity is not null)
                sheet.Expect("price of a unit", 0.3, 3, inUnit, price, quantity);
            sheet.Expect(
                "coverage", 0.2, 0.5, $"{purchase.Kind ?? purchase.Item} {purchase.CoverageUnit}",
                sheet.Cell("coverage", purchase.Coverage, AmountSlip.Quantity));
        }

        return sheet.Findings();
    }

    private static IEnumerable<LogFinding> Uses(SalesLog log)
    {
        var sheet = new AmountSheet(Columns.Uses.File);
        var pieces = log.Pieces.ToDictionary(p => p.Id, StringComparer.OrdinalIgnoreCase);
        foreach (SupplyUse use in log.Uses)
        {
            sheet.Add(use.Row);
            Piece? piece = use.PieceId is { } id ? pieces.GetValueOrDefault(id) : null;
            double set = Crossing.Log(piece?.Count) ?? 0;
            sheet.Expect("quantity", 0.6, 0.8, $"{use.Item} by {use.Unit}", sheet.Cell("quantity", use.Quantity, AmountSlip.Quantity), offset: 0.8 * set);
            sheet.Expect("coats", 0.4, 0.4, use.Item, sheet.Cell("coats", use.Coats, AmountSlip.Quantity));
            sheet.Expect("area", 0.5, 0.5, piece?.Type, sheet.Cell("area", use.Area, AmountSlip.Quantity), offset: set);
        }

        return sheet.Findings();
    }

    private static IEnumerable<LogFinding> Trips(SalesLog log)
    {
        var sheet = new AmountSheet(Columns.Trips.File);
        foreach (Trip trip in log.Trips)
        {
            sheet.Add(trip.Row);
            int? distance = sheet.Cell("distance", trip.Distance, AmountSlip.Quantity);
            int? hours = sheet.Cell("hours", trip.Hours, AmountSlip.Hours);
            sheet.Expect("distance", 0.7, 0.5, null, distance);
            sheet.Expect("hours", 0.5, 0.5, null, hours);
            if (distance is not null)
                sheet.Expect("hours on the road", 0.6, 0.5, null, hours, distance);
            sheet.Expect("other cost", 0.7, 0.5, null, sheet.Cell("other_cost", trip.OtherCost, AmountSlip.Money));
        }

        return sheet.Findings();
    }

    private static IEnumerable<LogFinding> Tools(SalesLog log)
    {
        var sheet = new AmountSheet(Columns.Tools.File);
        foreach (Tool tool in log.Tools)
        {
            sheet.Add(tool.Row);
            int? price = sheet.Cell("price", tool.Price, AmountSlip.Money);
            sheet.Expect("price", 0.9, 0.5, null, price);
            if (price is not null)
                sheet.Expect("salvage", 0.7, 0.5, null, sheet.Cell("salvage", tool.Salvage, AmountSlip.Money), price);
            sheet.Expect("life in pieces", 0.7, 0.5, null, sheet.Cell("life_pieces", tool.LifePieces, AmountSlip.Quantity));
            sheet.Expect("life in months", 0.6, 0.5, null, sheet.Cell("life_months", tool.LifeMonths, AmountSlip.Quantity));
        }

        return sheet.Findings();
    }

    private static IEnumerable<LogFinding> Overheads(SalesLog log)
    {
        var sheet = new AmountSheet(Columns.Overheads.File);
        foreach (Overhead overhead in log.Overheads)
        {
            sheet.Add(overhead.Row);
            sheet.Expect("amount", 0.3, 0.8, overhead.Item, sheet.Cell("amount", overhead.Amount, AmountSlip.Money));
        }

        return sheet.Findings();
    }
}
