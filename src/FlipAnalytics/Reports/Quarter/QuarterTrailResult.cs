namespace FlipAnalytics;

/// <summary>Lines that are sums of other lines: each part has the word that opens it.</summary>
internal static class QuarterTrailResult
{
    public static QuarterTrail GrossProfit(QuarterReport report) => Of(report, QuarterLine.GrossProfit, report.Profit.GrossProfit,
        (QuarterLine.Sales, report.Profit.Sales),
        (QuarterLine.DeliveryCharged, report.Profit.DeliveryCharged),
        (QuarterLine.Returns, -report.Profit.Returns),
        (QuarterLine.CostOfSold, -report.Profit.CostOfPiecesSold));

    public static QuarterTrail Profit(QuarterReport report) => Of(report, QuarterLine.Profit, report.Profit.Net,
        (QuarterLine.Sales, report.Profit.Sales),
        (QuarterLine.DeliveryCharged, report.Profit.DeliveryCharged),
        (QuarterLine.Returns, -report.Profit.Returns),
        (QuarterLine.CostOfSold, -report.Profit.CostOfPiecesSold),
        (QuarterLine.Fees, -report.Profit.Fees),
        (QuarterLine.Delivery, -report.Profit.Delivery),
        (QuarterLine.WrittenOff, -report.Profit.WrittenOff),
        (QuarterLine.Tools, -report.Profit.ToolWear),
        (QuarterLine.Overhead, -report.Profit.Overheads),
        (QuarterLine.SuppliesLost, -report.Profit.SuppliesLost));

    private static QuarterTrail Of(QuarterReport report, string word, decimal total, params (string Word, decimal Amount)[] lines)
    {
        QuarterTrailPart[] parts =
        [
            .. lines.Where(line => line.Amount != 0).Select(line => new QuarterTrailPart
            {
                What = QuarterLine.Find(line.Word)!.Meaning,
                Sort = line.Word,
                Amount = line.Amount,
            }),
        ];
        return QuarterTrail.Of(report, word, total, parts.Length, "line", parts, report.Lacking);
    }
}
