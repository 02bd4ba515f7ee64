using FlipAnalytics.Notebooks;

namespace FlipAnalytics.Tests;

/// <summary>An answer says when it hangs on a row that looks like a slip.</summary>
public class RowsWorthALookTests
{
    [Fact]
    public void A_lost_decimal_point_in_a_sale_is_named_beside_the_wage_it_makes()
    {
        SalesLog log = Read(60, 4);
        Piece sold = log.Pieces.First(p => p is { SoldPrice: > 100, Hours: > 0 });
        SalesLog slipped = log with { Pieces = log.Pieces.Replace(sold, sold with { SoldPrice = sold.SoldPrice * 100 }) };
        string? sentence = Wage(slipped);
        Assert.NotNull(sentence);
        Assert.Contains(LogFinding.Text(sold.SoldPrice!.Value * 100), sentence, StringComparison.Ordinal);
        Assert.Contains("Without that row the full wage would be", sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(60, 4)]
    [InlineData(25, 9)]
    public void Nothing_is_said_of_a_good_log(int pieces, ulong seed) => Assert.Null(Wage(Read(pieces, seed)));

    [Fact]
    public void The_most_to_pay_names_the_row_it_hangs_on()
    {
        // Too few sales for the fit to tell which of them is wild.
        SalesLog log = Read(60, 4);
        Piece[] few = [.. log.Pieces.Where(p => p is { SoldPrice: > 0, AskingPrice: > 0 }).Take(5)];
        SalesLog slipped = log with
        {
            Pieces = [few[0] with { SoldPrice = few[0].SoldPrice * 100 }, .. few[1..]],
            Hours = [],
            Uses = [],
            AskingPrices = [],
        };
        Candidate[] candidates = [new() { Id = "C1", Type = few[0].Type }];
        var report = PurchaseReport.Of(slipped, candidates, new());
        string? sentence = PurchaseDoubt.Sentence(report, slipped, new());
        Assert.NotNull(sentence);
        Assert.Contains($"line {few[0].Row}, sold_price", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_page_of_a_notebook_shows_the_line_that_its_report_has()
    {
        const string line = "Worth a look: pieces.csv line 7.";
        SalesLog log = Read(60, 4);
        var purchase = PurchaseReport.Of(log, [new() { Id = "C1", Type = log.Pieces[0].Type }], new());
        HtmlPart[] pages =
        [
            WagesHtml.Answer(WagesReport.Of(log) with { WorthALook = line }),
            QuarterHtml.Answer(QuarterReport.Of(log, QuarterReport.UsualPeriod(log)) with { WorthALook = line }),
            ColorsHtml.Answer(GroupComparison.Of(log, GroupedBy.Color) with { WorthALook = line }),
            PurchaseHtml.Answer(purchase with { WorthALook = line }),
        ];
        Assert.All(pages, page => Assert.Equal(2, page.Html.Split(line).Length));
        foreach (string notebook in new[] { "01-sourcing", "02-colors", "03-quarter", "04-wages" })
            Assert.Contains(".WithWorthALook(opened.Log", House.Repository.Read("notebooks", $"{notebook}.ipynb"), StringComparison.Ordinal);
    }

    // With the lines of its files.
    private static SalesLog Read(int pieces, ulong seed)
    {
        using var folder = new LogFolder();
        SalesLogWriter.Write(DemoLog.Generate(pieces, seed).Log, folder.Path);
        return folder.Read().Log!;
    }

    private static string? Wage(SalesLog log) => WagesReport.Of(log).WithWorthALook(log).WorthALook;
}
