using FlipAnalytics.Tests.House;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>Notebooks narrate, the library computes: the notebooks of this repository as they are committed.</summary>
public sealed class CommittedNotebookTests
{
    private static readonly string[] Aggregates =
        ["Sum", "Average", "Min", "Max", "Count", "Aggregate", "Median", "Mean", "Description", "GroupBy"];

    public static TheoryData<string> All() => new(
        new DirectoryInfo(Repository.PathOf("notebooks")).EnumerateFiles("*.ipynb").Select(file => file.Name).Order());

    [Theory]
    [MemberData(nameof(All))]
    public void ANotebookIsCommittedWithoutOutputs(string file) => Assert.All(Read(file).Code, cell =>
    {
        Assert.Equal(System.Text.Json.JsonValueKind.Null, cell.ExecutionCount!.Value.ValueKind);
        Assert.Empty(cell.Outputs!.Value.EnumerateArray());
    });

    [Theory]
    [MemberData(nameof(All))]
    public void ANotebookHasOneCellOfParametersAndOneThatLoadsTheLibraryUnderJupyter(string file)
    {
        NotebookText notebook = Read(file);
        Assert.Single(notebook.Cells, cell => cell.Tags.Contains("parameters"));
        NotebookCell load = Assert.Single(notebook.Cells, cell => cell.Tags.Contains("jupyter"));
        Assert.Same(load, notebook.Code.First());
    }

    [Theory]
    [MemberData(nameof(All))]
    public void ANotebookBeginsWithTheQuestionItAnswers(string file)
    {
        string heading = Read(file).Cells[0].Source.Split('\n')[0];
        Assert.StartsWith("# ", heading, StringComparison.Ordinal);
        Assert.EndsWith("?", heading, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(All))]
    public void ACellHoldsNoFormula(string file) => Assert.Empty(Read(file).Code.SelectMany(cell => Formulas(cell.Source)));

    [Theory]
    [InlineData("var profit = sold - bought;")]
    [InlineData("total += 3;")]
    [InlineData("count++;")]
    [InlineData("Math.Log(price)")]
    [InlineData("log.Pieces.Sum(piece => piece.BoughtPrice)")]
    [InlineData("frame.Description()")]
    public void APlantedFormulaIsCaught(string code) => Assert.NotEmpty(Formulas(code));

    private static NotebookText Read(string file) => NotebookText.Read(Repository.PathOf("notebooks", file));

    private static IEnumerable<string> Formulas(string code) =>
        CSharpSyntaxTree.ParseText(code, CSharpParseOptions.Default.WithKind(SourceCodeKind.Script)).GetRoot()
            .DescendantNodes()
            .Where(node => node switch
            {
                BinaryExpressionSyntax binary => !binary.IsKind(SyntaxKind.CoalesceExpression),
                AssignmentExpressionSyntax assignment => !assignment.IsKind(SyntaxKind.SimpleAssignmentExpression),
                PostfixUnaryExpressionSyntax postfix => !postfix.IsKind(SyntaxKind.SuppressNullableWarningExpression),
                PrefixUnaryExpressionSyntax => true,
                ForStatementSyntax or WhileStatementSyntax => true,
                MemberAccessExpressionSyntax member =>
                    member.Expression.ToString() is "Math" or "MathF" || Aggregates.Contains(member.Name.Identifier.Text),
                _ => false,
            })
            .Select(node => node.ToString());
}
