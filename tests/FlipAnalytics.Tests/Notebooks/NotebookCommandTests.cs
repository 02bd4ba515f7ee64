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

    [Fact]
    public void AFlipWithoutTheNotebookProgramSaysHowToGetIt()
    {
        foreach (string name in new[] { "flip.dll", "flip.runtimeconfig.json", "FlipAnalytics.dll", "System.CommandLine.dll" })
            File.Copy(Path.Combine(AppContext.BaseDirectory, name), Path.Combine(folder, name));
        FlipRun run = Flip.RunAt(folder, [], "notebook", "list");
        Assert.Equal(2, run.ExitCode);
        Assert.Empty(run.Output);
        string line = Assert.Single(run.ErrorLines);
        Assert.Contains($"dotnet publish src/FlipAnalytics.Notebooks -c Release -o \"{folder}\"", line, StringComparison.Ordinal);
    }

    /// <summary>As in a clone where only the command was built, so that its first use of a notebook builds the rest.</summary>
    [Fact]
    public void AFlipBuiltFromSourcesRunsTheNotebookProgramOfTheSameSources()
    {
        string cli = Directory.CreateDirectory(Path.Combine(folder, "src", "FlipAnalytics.Cli", "bin", "Debug", "net10.0")).FullName;
        foreach (string name in new[] { "flip.dll", "flip.runtimeconfig.json", "FlipAnalytics.dll", "System.CommandLine.dll" })
            File.Copy(Path.Combine(AppContext.BaseDirectory, name), Path.Combine(cli, name));
        string notebooks = Directory.CreateDirectory(Path.Combine(folder, "src", "FlipAnalytics.Notebooks")).FullName;
        File.WriteAllText(Path.Combine(notebooks, "Program.cs"), "System.Console.Write(string.Join('|', args)); return 3;");
        File.WriteAllText(Path.Combine(notebooks, "FlipAnalytics.Notebooks.csproj"), """
            <Project Sdk="Microsoft.NET.Sdk">
              <PropertyGroup><OutputType>Exe</OutputType><TargetFramework>net10.0</TargetFramework></PropertyGroup>
            </Project>
            """);
        FlipRun run = Flip.RunAt(cli, [], "notebook", "run", "side table", "--out", "my pages", "-p", "type=side table");
        Assert.Equal((3, "run|side table|my pages|type=side table"), (run.ExitCode, run.Output));
        Assert.Contains("takes a minute or two", run.Error, StringComparison.Ordinal);
    }
}
