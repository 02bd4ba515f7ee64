using System.Text;
using Markdig;
using Microsoft.DotNet.Interactive.Documents;

namespace FlipAnalytics.Notebooks;

/// <summary>An executed notebook as a web page that needs no other file and runs nothing.</summary>
internal static class NotebookPage
{
    private const string Style = """
        body { font: 17px/1.55 "DejaVu Sans", Verdana, sans-serif; color: #222; background: #fff; margin: 0 }
        main { max-width: 52rem; margin: 0 auto; padding: 1.5rem }
        h1, h2 { line-height: 1.25 }
        h2 { margin-top: 2.2rem }
        .shown { overflow-x: auto }
        table { border-collapse: collapse; margin: 1rem 0; font-size: 0.9em }
        caption { caption-side: top; text-align: left; font-weight: bold; padding-bottom: 0.3rem }
        th, td { padding: 0.25rem 0.7rem 0.25rem 0; border-bottom: 1px solid #d9d9d9; vertical-align: top }
        tbody th { font-weight: normal }
        img { max-width: 100%; height: auto }
        pre { white-space: pre-wrap; background: #f5f5f5; padding: 0.7rem; font-size: 0.85em }
        details { color: #555; margin: 0.6rem 0; font-size: 0.9em }
        .picture { overflow-x: auto }
        .answer { border-left: 4px solid #0072b2; padding-left: 0.8rem; margin-bottom: 1.5rem }
        @media (max-width: 34rem) {
          body { font-size: 16px }
          main { padding: 0.8rem }
          h1 { font-size: 1.4rem; margin: 0.3rem 0 0.8rem }
          h2 { font-size: 1.2rem }
          th, td { min-width: 3.4rem }
          .picture img { max-width: none }
          ul { padding-left: 1.2rem }
        }
        .error { border-left: 4px solid #d55e00; padding-left: 0.7rem }
        """;

    // Nothing runs and nothing is fetched: what a page shows stands in it. W3C, Content Security Policy Level 3.
    private const string Policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

    private static readonly MarkdownPipeline Markup =
        new MarkdownPipelineBuilder().DisableHtml().UsePipeTables().Build();

    public static string Render(InteractiveDocument notebook, string name)
    {
        var page = new StringBuilder();
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta http-equiv=\"Content-Security-Policy\" content=\"").Append(Policy).Append("\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
            .Append(Html.Encode(Title(notebook) ?? name)).Append("</title>\n<style>\n").Append(Style).Append("\n</style>\n</head>\n<body>\n<main>\n");
        InteractiveDocumentElement[] cells = [.. notebook.Elements.Where(cell => !NotebookRunner.IsForJupyterOnly(cell))];
        AppendOpening(page, cells);
        foreach (InteractiveDocumentElement cell in cells)
        {
            if (NotebookRunner.IsCode(cell))
                AppendCode(page, cell);
            else
                page.Append(Markdown.ToHtml(cell == cells[0] ? Untitled(cell.Contents) : cell.Contents, Markup));
        }

        return page.Append("</main>\n</body>\n</html>\n<!-- ").Append(OwnMark.Place).Append(" -->\n").ToString();
    }

    // The question and its answer come first: on a phone the first screen is all that most will read.
    private static void AppendOpening(StringBuilder page, InteractiveDocumentElement[] cells)
    {
        if (cells.FirstOrDefault() is { } first && Heading(first) is { } title)
            page.Append("<h1>").Append(Html.Encode(title)).Append("</h1>\n");
        InteractiveDocumentElement[] answers = [.. cells.Where(cell => NotebookRunner.IsAnswer(cell) && cell.Outputs.Count > 0)];
        if (answers.Length == 0)
            return;
        page.Append("<div class=\"answer\">\n");
        foreach (InteractiveDocumentElement cell in answers)
            AppendOutputs(page, cell);
        page.Append("</div>\n");
    }

    private static string Untitled(string contents) =>
        contents.IndexOf('\n', StringComparison.Ordinal) is var end && contents.StartsWith("# ", StringComparison.Ordinal)
            ? end < 0 ? "" : contents[end..] : contents;

    private static string? Heading(InteractiveDocumentElement cell) =>
        cell.Contents.Split('\n')[0] is ['#', ' ', .. var heading] ? heading.Trim() : null;

    private static string? Title(InteractiveDocument notebook) =>
        notebook.Elements.FirstOrDefault() is { } first ? Heading(first) : null;

    private static void AppendCode(StringBuilder page, InteractiveDocumentElement cell)
    {
        page.Append("<details><summary>")
            .Append(Html.Invariant($"Step {cell.ExecutionOrder}: the code")).Append("</summary><pre><code>")
            .Append(Html.Encode(cell.Contents)).Append("</code></pre></details>\n");
        if (NotebookRunner.IsAnswer(cell) && cell.Outputs.Count > 0)
            page.Append("<p>Its answer stands at the top of this page.</p>\n");
        else
            AppendOutputs(page, cell);
    }

    private static void AppendOutputs(StringBuilder page, InteractiveDocumentElement cell)
    {
        foreach (InteractiveDocumentOutputElement output in cell.Outputs)
            AppendOutput(page, output, cell.ExecutionOrder);
    }

    private static void AppendOutput(StringBuilder page, InteractiveDocumentOutputElement output, int step)
    {
        switch (output)
        {
            case ErrorElement error:
                page.Append("<pre class=\"error\">").Append(Html.Encode(error.ErrorValue ?? "")).Append("</pre>\n");
                break;
            case TextElement text:
                AppendPlain(page, text.Text);
                break;
            case DisplayElement shown:
                AppendData(page, shown.Data, step);
                break;
            case ReturnValueElement returned:
                AppendData(page, returned.Data, step);
                break;
        }
    }

    private static void AppendData(StringBuilder page, IDictionary<string, object> data, int step)
    {
        string words = data.TryGetValue("text/plain", out object? plain) ? plain.ToString() ?? "" : "";
        if (data.TryGetValue("image/png", out object? png))
        {
            page.Append(Html.Invariant($"<div class=\"picture\" role=\"group\" aria-label=\"Step {step}: the picture\" tabindex=\"0\"><img alt=\""))
                .Append(Html.Encode(words)).Append("\" src=\"data:image/png;base64,").Append(png).Append("\"></div>\n");
        }
        else if (data.TryGetValue("text/html", out object? html))
        {
            // A wide table scrolls on its own, so it has to be reached, and named, without a mouse.
            page.Append(Html.Invariant($"<div class=\"shown\" role=\"group\" aria-label=\"Step {step}: the answer\" tabindex=\"0\">\n"))
                .Append(html).Append("</div>\n");
        }
        else
        {
            AppendPlain(page, words);
        }
    }

    private static void AppendPlain(StringBuilder page, string text) =>
        page.Append("<pre>").Append(Html.Encode(text)).Append("</pre>\n");
}
