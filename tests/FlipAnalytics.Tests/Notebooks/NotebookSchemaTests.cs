namespace FlipAnalytics.Tests.Notebooks;

/// <summary>The schema as it is read here refuses what Jupyter would refuse.</summary>
public sealed class NotebookSchemaTests
{
    private const string Sound = """
        {"cells": [{"cell_type": "code", "execution_count": null, "id": "a", "metadata": {}, "outputs": [
           {"output_type": "display_data", "data": {"text/plain": "sage"}, "metadata": {}}], "source": ["1"]}],
         "metadata": {}, "nbformat": 4, "nbformat_minor": 5}
        """;

    [Fact]
    public void ASoundNotebookHasNoFault() => Assert.Empty(NotebookSchema.Faults(Sound));

    [Theory]
    [InlineData("\"id\": \"a\", ", "")]
    [InlineData("\"id\": \"a\"", "\"id\": \"a b\"")]
    [InlineData("\"execution_count\": null, ", "")]
    [InlineData("display_data", "picture")]
    [InlineData("\"text/plain\": \"sage\"", "\"text/plain\": 7")]
    [InlineData("\"nbformat_minor\": 5", "\"nbformat_minor\": 4")]
    [InlineData("\"nbformat\": 4,", "")]
    [InlineData("\"cell_type\": \"code\"", "\"cell_type\": \"code\", \"color\": \"sage\"")]
    public void APlantedFaultIsFound(string sound, string broken) =>
        Assert.NotEmpty(NotebookSchema.Faults(Sound.Replace(sound, broken, StringComparison.Ordinal)));
}
