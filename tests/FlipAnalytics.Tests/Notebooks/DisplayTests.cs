using FlipAnalytics.Notebooks;
using Microsoft.Data.Analysis;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>Reports as tables that a screen reader can follow.</summary>
public sealed class DisplayTests
{
    [Fact]
    public void AProblemIsShownWithItsLineAndRemedyAndItsTextCannotRun()
    {
        string html = LogCheckHtml.Problems(LogCheck.Of(
            LogFolder.ReadPieces("type,bought_price\ndresser,<script>alert(1)</script>\n"))).Html;
        Assert.Contains("<caption>To put right: 1</caption>", html, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.Contains(">2</td>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void EveryTableHasACaptionAndHeadingsForItsColumnsAndRows()
    {
        SalesLog log = DemoLog.Generate(40, 1).Log;
        FitReport fit = ModelFitting.Fit(log, ModelName.Price, Estimator.Ols, plain: true);
        PurchaseReport report = Report(log, "dresser");
        Assert.All(
            new[] { FitHtml.Whole(fit), PurchaseHtml.Whole(report), FrameHtml.FirstRows(log.Pieces.ToDataFrame()) },
            content =>
            {
                string html = content.Html;
                int tables = Count(html, "<table>");
                Assert.NotEqual(0, tables);
                Assert.Equal(tables, Count(html, "<caption>"));
                Assert.Equal(Count(html, "<tr>") - tables, Count(html, "scope=\"row\""));
                Assert.Contains("scope=\"col\"", html, StringComparison.Ordinal);
            });
    }

    [Fact]
    public void TheStepsShownAreThoseOfTheAnswerToTheCent()
    {
        PurchaseReport report = Report(DemoLog.Generate(40, 1).Log, "dresser");
        string html = PurchaseHtml.Steps(report).Html;
        Assert.All(report.Decisions[0].Waterfall, step => Assert.Contains(
            FormattableString.Invariant($">{step.Amount:F2}</td>"), html, StringComparison.Ordinal));
    }

    [Fact]
    public void SeveralPiecesAreATable()
    {
        string html = PurchaseHtml.Whole(Report(DemoLog.Generate(40, 1).Log, "dresser", "bookcase")).Html;
        Assert.Contains("<caption>The most to pay for 2 pieces, in USD</caption>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void AFrameHasTheColumnsOfTheTableInItsOrderAndUnknownStaysUnknown()
    {
        DataFrame frame = LogFolder.ReadPieces(
            "type,bought_price,sold_price,sold_on\ndresser,40.10,,\nchair,,75,2026-03-01\n").Log!.Pieces.ToDataFrame();
        Assert.Equal(Columns.Pieces.Columns.Select(column => column.Name), frame.Columns.Select(column => column.Name));
        Assert.Equal(40.10m, frame["bought_price"][0]);
        Assert.Null(frame["bought_price"][1]);
        Assert.Null(frame["sold_price"][0]);
        Assert.Equal(new DateTime(2026, 3, 1), frame["sold_on"][1]);
        Assert.Null(frame["count"][0]);
    }

    private static PurchaseReport Report(SalesLog log, params string[] types) => PurchaseReport.Of(
        log, [.. types.Select(type => new Candidate { Id = type, Type = type, StickerPrice = 45 })], new());

    private static int Count(string text, string part) => text.Split(part).Length - 1;
}
