namespace FlipAnalytics.Tests.Notebooks;

/// <summary>The pages that notebooks become, in a browser: every picture is there and axe finds nothing against them.</summary>
[Collection("notebooks")]
public sealed class AccessibilityTests(ExecutedNotebooks executed)
{
    private const string Sound = """
        <!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>Sage</title></head>
        <body><main><h1>Sage</h1><p style="color:#222">Sold.</p></main></body></html>
        """;

    [ChromiumFact]
    public async Task EveryPageIsWholeAndOpenToEveryReader()
    {
        (string Name, string Html)[] pages =
        [
            .. from one in await executed.All(ExecutedNotebooks.Demo, ExecutedNotebooks.Yen, ExecutedNotebooks.NoSale)
               select ($"{one.Log}, {Path.GetFileName(one.Run.Page)}", File.ReadAllText(one.Run.Page)),
        ];
        PageFinding[] findings = [.. await AxePages.LookAt(pages)];
        Assert.Equal(pages.Select(page => page.Name), findings.Select(finding => finding.Page));
        Assert.Empty(findings.SelectMany(finding => finding.Violations.Select(rule => $"{finding.Page}: {rule}")));
        Assert.All(findings, finding => Assert.Equal(0, finding.MissingPictures));
        Assert.Contains(findings, finding => finding.Pictures > 0);
        // On a phone of 390 by 800 the answer is on the first screen, and no picture's words are smaller than they were drawn.
        Assert.All(findings, finding => Assert.InRange(finding.AnswerEnds, 1, 800));
        Assert.All(findings, finding => Assert.Equal(0, finding.ShrunkPictures));
    }

    [ChromiumFact]
    public async Task APlantedFaultIsFound()
    {
        (string Sound, string Broken, string Rule)[] faults =
        [
            (" lang=\"en\"", "", "html-has-lang"),
            ("<title>Sage</title>", "", "document-title"),
            ("<h1>Sage</h1>", "", "page-has-heading-one"),
            ("#222", "#ccc", "color-contrast"),
            ("<main>", "<main><img src=\"data:image/png;base64,\">", "image-alt"),
            ("<h1>Sage</h1>", "<h1>Sage</h1><h4>Days</h4>", "heading-order"),
            ("<main>", "<p>Aside</p><main>", "region"),
            (
                "Sold.</p>", "Sold.</p><div style=\"overflow-x:auto\"><p style=\"width:2000px; text-align:right\">Wide</p></div>",
                "scrollable-region-focusable"),
        ];
        PageFinding[] findings = [.. await AxePages.LookAt(
            [("sound", Sound), .. faults.Select(fault => (fault.Rule, Sound.Replace(fault.Sound, fault.Broken, StringComparison.Ordinal)))])];
        Assert.Empty(findings[0].Violations);
        Assert.All(findings.Skip(1), finding => Assert.StartsWith($"{finding.Page}: ", Assert.Single(finding.Violations), StringComparison.Ordinal));
        Assert.Equal(1, findings[5].MissingPictures);
    }
}
