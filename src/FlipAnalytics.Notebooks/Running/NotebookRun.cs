namespace FlipAnalytics.Notebooks;

/// <summary>What came of running a notebook.</summary>
/// <param name="Notebook">The executed notebook; up to the failing cell if one failed.</param>
/// <param name="Page">The same as a web page that needs no other file.</param>
/// <param name="Failure">The cell that stopped the run; null if all ran.</param>
public sealed record NotebookRun(string Notebook, string Page, FailedCell? Failure);

/// <summary>A cell that stopped a run.</summary>
/// <param name="Number">Its number among the cells that were run, as notebooks print it: 1 for the first.</param>
/// <param name="Message">What went wrong.</param>
public sealed record FailedCell(int Number, string Message);
