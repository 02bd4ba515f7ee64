namespace FlipAnalytics.Tests.Notebooks;

/// <summary>A cell that works something out is caught; one that asks the library and shows the answer is not.</summary>
public sealed class CellGrammarTests
{
    [Theory]
    [InlineData("var profit = sold - bought;")]
    [InlineData("total += 3;")]
    [InlineData("total = report;")]
    [InlineData("count++;")]
    [InlineData("Math.Log(price)")]
    [InlineData("log.Pieces.Sum(piece => piece.BoughtPrice)")]
    [InlineData("log.Pieces.Where(piece => piece.IsSold)")]
    [InlineData("log.Pieces.Count")]
    [InlineData("frame.Description()")]
    [InlineData("bool isDear = price > 40;")]
    [InlineData("price ?? 0")]
    [InlineData("isDear ? 1 : 2")]
    [InlineData("if (isDear) display(report);")]
    [InlineData("foreach (var piece in log.Pieces) display(piece);")]
    [InlineData("decimal Half(decimal price) => price / 2;")]
    [InlineData("class Own { }")]
    [InlineData("$\"{price}\"")]
    [InlineData("pieces[first]")]
    [InlineData("-price")]
    [InlineData("#r \"nuget: Some.Package\"\nreport")]
    [InlineData("report(")]
    public void ACellThatWorksSomethingOutIsCaught(string code) => Assert.NotEmpty(CellGrammar.RefusedAsCall(code));

    [Theory]
    [InlineData("using FlipAnalytics;\nFlipNotebook.Register();")]
    [InlineData("// Facts up to the date.\nNotebookLog opened = NotebookLog.Open(logFolder, today, asOf);\nopened")]
    [InlineData("var piece = new Candidate { Type = type, Width = 48 };\nPurchaseReport.Of(opened.Log, [piece], new())")]
    [InlineData("display(report.Decisions[0]);")]
    [InlineData("Table.Of<Piece>(log.Pieces, rows: 20)")]
    public void ACellThatAsksAndShowsIsNot(string code) => Assert.Empty(CellGrammar.RefusedAsCall(code));

    [Theory]
    [InlineData("decimal wage = 3 * 5;")]
    [InlineData("decimal wage;")]
    [InlineData("decimal wage = other;")]
    [InlineData("string folder = Path.GetTempPath();")]
    [InlineData("display(wage);")]
    public void AParameterWithoutAFixedValueIsCaught(string code) => Assert.NotEmpty(CellGrammar.RefusedAsParameters(code));

    [Theory]
    [InlineData("string folder = \"data-demo\";\ndecimal? wage = null;\nint shift = -1;")]
    [InlineData("DateOnly today = DateOnly.FromDateTime(DateTime.Now);\nDateOnly? asOf = new DateOnly(2026, 3, 31);")]
    [InlineData("Condition? condition = Condition.Worn;\nstring[] types = [\"dresser\", \"chair\"];")]
    public void AParameterWithAFixedValueIsNot(string code) => Assert.Empty(CellGrammar.RefusedAsParameters(code));

    [Theory]
    [InlineData("#r \"nuget: Some.Package\"")]
    [InlineData("#r \"../src/A.dll\"\nA.Start();")]
    public void ACellForJupyterOnlyLoads(string code) => Assert.NotEmpty(CellGrammar.RefusedAsLoading(code));
}
