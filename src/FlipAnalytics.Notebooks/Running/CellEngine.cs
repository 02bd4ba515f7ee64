using System.Collections.Immutable;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Documents;
using Microsoft.DotNet.Interactive.Events;

namespace FlipAnalytics.Notebooks;

/// <summary>A kernel that runs the cells of one notebook in this process.</summary>
internal sealed class CellEngine : IDisposable
{
    public const string Language = "csharp";

    private readonly CSharpKernel csharp = new CSharpKernel().UseKernelHelpers();
    private readonly CompositeKernel root;

    public CellEngine()
    {
        root = new() { csharp };
        root.DefaultKernelName = csharp.Name;
        csharp.AddAssemblyReferences(
            new[]
            {
                typeof(Statistics.LeastSquares), typeof(SalesLog), typeof(Plots.Figure), typeof(FlipNotebook),
                typeof(ScottPlot.Plot), typeof(Microsoft.Data.Analysis.DataFrame),
            }.Select(type => type.Assembly.Location));
    }

    /// <summary>The variables declared so far.</summary>
    public ImmutableArray<DeclaredParameter> Variables() =>
        [.. csharp.ScriptState?.Variables.Select(variable => new DeclaredParameter(variable.Name, variable.Type)) ?? []];

    /// <summary>Runs a cell and puts what it shows into its outputs.</summary>
    /// <returns>What went wrong; null if nothing did.</returns>
    public async Task<string?> RunAsync(InteractiveDocumentElement cell)
    {
        cell.Outputs.Clear();
        KernelCommandResult result = await root.SendAsync(new SubmitCode(cell.Contents, Language)).ConfigureAwait(false);
        string? failure = null;
        foreach (KernelEvent happened in result.Events)
        {
            switch (happened)
            {
                case StandardOutputValueProduced written:
                    cell.Outputs.Add(new TextElement(Text(written), "stdout"));
                    break;
                case StandardErrorValueProduced written:
                    cell.Outputs.Add(new TextElement(Text(written), "stderr"));
                    break;
                case ReturnValueProduced returned:
                    var value = new ReturnValueElement { ExecutionOrder = cell.ExecutionOrder };
                    AddTo(value.Data, value.Metadata, returned);
                    cell.Outputs.Add(value);
                    break;
                case DisplayedValueProduced displayed:
                    var shown = new DisplayElement(new Dictionary<string, object>());
                    AddTo(shown.Data, shown.Metadata, displayed);
                    cell.Outputs.Add(shown);
                    break;
                case CommandFailed failed:
                    failure = Message(failed);
                    cell.Outputs.Add(new ErrorElement(failure, failed.Exception?.GetType().Name ?? "Error", []));
                    break;
            }
        }

        return failure;
    }

    public void Dispose() => root.Dispose();

    private static string Message(CommandFailed failed) =>
        failed.Exception is { } exception and not CodeSubmissionCompilationErrorException
            ? exception.Message
            : failed.Message;

    private static string Text(DisplayEvent written) => string.Concat(written.FormattedValues.Select(value => value.Value));

    private static void AddTo(
        IDictionary<string, object> data, IDictionary<string, object> metadata, DisplayEvent shown)
    {
        foreach (var value in shown.FormattedValues)
            data[value.MimeType] = value.Value;
        // Readers that know pictures only by this name look here for the words that stand in for one.
        if (data.ContainsKey("image/png") && data.TryGetValue("text/plain", out object? words))
            metadata["image/png"] = new Dictionary<string, object> { ["alt"] = words };
    }
}
