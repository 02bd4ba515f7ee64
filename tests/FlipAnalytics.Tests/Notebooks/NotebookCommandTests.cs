namespace FlipAnalytics.Tests.Notebooks;

/// <summary><c>flip notebook</c> as it is called from a terminal.</summary>
public sealed class NotebookCommandTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("flip-notebook-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void AFailingCellIsNamedOnStandardErrorAndEndsWith1()
    {
        string path = Path.Combine(folder, "broken.ipynb");
        File.WriteAllText(path, """
            {"cells": [{"cell_type": "code", "execution_count": null, "id": "a", "metadata": {}, "outputs": [], "source": "sand(dresser)"}],
             "metadata": {}, "nbformat": 4, "nbformat_minor": 5}
            """);
        (int code, string output, string error) = Flip.Run("notebook", "run", path, "--out", Path.Combine(folder, "out"));
        Assert.Equal(1, code);
        Assert.Contains("cell 1 of 1", error, StringComparison.Ordinal);
        Assert.Contains("cell 1: (1,1): error CS0103", error, StringComparison.Ordinal);
        Assert.Contains(Path.Combine(folder, "out", "broken.html"), output, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(folder, "out", "broken.ipynb")));
    }

    [Theory]
    [InlineData("There is no notebook '07-moon'.", "notebook", "run", "07-moon")]
    [InlineData("-p needs a name and a value", "notebook", "run", "00-start", "-p", "width")]
    public void ACommandThatCannotBeCarriedOutEndsWith2(string expected, params string[] arguments)
    {
        (int code, string output, string error) = Flip.Run(arguments);
        Assert.Equal(2, code);
        Assert.Empty(output);
        Assert.StartsWith(expected, error, StringComparison.Ordinal);
    }
}
