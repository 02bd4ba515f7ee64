using FlipAnalytics.Tests.House;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>Notebooks narrate, the library computes: the notebooks of this repository as they are committed.</summary>
public sealed class CommittedNotebookTests
{
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
    public void ANotebookHasOneCellWhoseAnswerOpensThePage(string file) =>
        Assert.Single(Read(file).Code, cell => cell.Tags.Contains("answer"));

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
    public void ANotebookIsSoundByTheSchemaOfItsFormat(string file) =>
        Assert.Empty(NotebookSchema.Faults(Repository.Read("notebooks", file)));

    [Theory]
    [MemberData(nameof(All))]
    public void ACellHoldsCallsAndParametersAndNoFormula(string file) =>
        Assert.Empty(Read(file).Code.SelectMany(cell => CellGrammar.Refused(cell)));

    private static NotebookText Read(string file) => NotebookText.Read(Repository.PathOf("notebooks", file));
}
