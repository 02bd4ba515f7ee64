using System.Collections.Immutable;
using System.Globalization;

namespace FlipAnalytics.Notebooks;

/// <summary>The check of a log as tables of a notebook.</summary>
public static class LogCheckHtml
{
    /// <summary>What was read, and each problem with its mend.</summary>
    /// <param name="check">The check.</param>
    public static HtmlPart Problems(LogCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        var html = new Html().Lead(LogCheckText.Answer(check));
        if (check is { HasLog: true, Pieces: > 0 })
            html.Paragraph(LogCheckText.Contents(check));
        AddProblems(html, check, Severity.Error, "To put right");
        AddProblems(html, check, Severity.Warning, "Worth a look");
        if (!check.SimilarWords.IsEmpty)
            html.Heading("Words that may mean the same").Items(check.SimilarWords);
        return html.Content();
    }

    /// <summary>The tables that are there, with their rows.</summary>
    /// <param name="check">The check.</param>
    public static HtmlPart Tables(LogCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        return new Html().Table(
            "Tables in the folder",
            [Html.Words("file"), Html.Number("rows"), Html.Number("set aside"), Html.Words("columns of your own, left alone")],
            check.Tables.Select(table => new[]
            {
                table.File, Number(table.Rows), table.IsReadable ? Number(table.RowsSetAside) : "the whole file",
                string.Join(", ", table.UnknownColumns),
            })).Content();
    }

    /// <summary>The files that are not there, and what each would add.</summary>
    /// <param name="check">The check.</param>
    public static HtmlPart Missing(LogCheck check)
    {
        ArgumentNullException.ThrowIfNull(check);
        ImmutableArray<MissingFile> missing = check.Missing;
        return missing.IsEmpty
            ? new Html().Paragraph("Every table that a log can have is there.").Content()
            : new Html().Table(
                "Not there, none of it needed",
                [Html.Words("file"), Html.Words("what it would add")],
                missing.Select(file => new[] { file.File, file.Adds })).Content();
    }

    private static void AddProblems(Html html, LogCheck check, Severity severity, string heading)
    {
        LogProblem[] problems = [.. check.Problems.Where(problem => problem.Severity == severity)];
        if (problems.Length == 0)
            return;
        html.Table(
            Html.Invariant($"{heading}: {problems.Length}"),
            [
                Html.Words("file"), Html.Number("line"), Html.Words("column"), Html.Words("found"),
                Html.Words("expected"), Html.Words("what to do"),
            ],
            problems.Select(problem => new[]
            {
                problem.File, problem.Row is { } row ? Number(row) : "", problem.Column ?? "", problem.Found ?? "",
                problem.Expected, problem.Remedy,
            }));
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
