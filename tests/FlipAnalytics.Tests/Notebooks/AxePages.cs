using System.Collections.Immutable;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;

namespace FlipAnalytics.Tests.Notebooks;

/// <summary>What is wrong with a page in a browser.</summary>
/// <param name="Page">Its name.</param>
/// <param name="Violations">Rules of axe that it breaks, each with the places.</param>
/// <param name="Pictures">How many pictures it has.</param>
/// <param name="MissingPictures">How many of them cannot be shown.</param>
/// <param name="AnswerEnds">Where the first sentence of its answer ends, in pixels from the top; -1 where there is none.</param>
/// <param name="ShrunkPictures">How many pictures are smaller than they were drawn.</param>
internal sealed record PageFinding(
    string Page, ImmutableArray<string> Violations, int Pictures, int MissingPictures, int AnswerEnds, int ShrunkPictures);

/// <summary>
/// Lets axe look at pages in Chromium without a screen. One start of the browser serves all pages: each is put into a
/// frame of its own, as narrow as a telephone, and axe runs within it.
/// </summary>
internal static partial class AxePages
{
    private static readonly JsonSerializerOptions Names = new() { PropertyNameCaseInsensitive = true };

    /// <summary>Looks at pages.</summary>
    /// <param name="pages">Names and whole texts of the pages.</param>
    public static async Task<ImmutableArray<PageFinding>> LookAt(IEnumerable<(string Name, string Html)> pages)
    {
        string folder = Directory.CreateTempSubdirectory("flip-axe-").FullName;
        try
        {
            string harness = Path.Combine(folder, "axe.html");
            await File.WriteAllTextAsync(harness, Harness(pages));
            string dom = await ChildProcess.Run(
                OutsideProgram.Chromium.Path, folder, TimeSpan.FromMinutes(4),
                [
                    "--headless", "--no-sandbox", "--disable-gpu", "--disable-dev-shm-usage",
                    "--disable-background-networking", "--no-first-run", $"--user-data-dir={Path.Combine(folder, "profile")}",
                    "--virtual-time-budget=600000", "--dump-dom", new Uri(harness).AbsoluteUri,
                ]);
            Match found = Found().Match(dom);
            return found.Success
                ? JsonSerializer.Deserialize<ImmutableArray<PageFinding>>(WebUtility.HtmlDecode(found.Groups["json"].Value), Names)
                : throw new InvalidOperationException($"Chromium gave no findings back, but: {Beginning(dom)}");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    // The serializer escapes angle brackets, so nothing in a page ends the script.
    private static string Harness(IEnumerable<(string Name, string Html)> pages) => $$"""
        <!DOCTYPE html>
        <html lang="en"><head><meta charset="utf-8"><title>axe</title></head><body><script>
        const axe = {{JsonSerializer.Serialize(new BundledAxeScriptProvider().GetScript())}};
        const pages = {{JsonSerializer.Serialize(pages.Select(page => new { page.Name, Html = WithoutPolicy(page.Html) }))}};
        async function look(page) {
          const frame = document.createElement("iframe");
          frame.style = "width: 390px; height: 800px";
          const loaded = new Promise(done => frame.onload = done);
          frame.srcdoc = page.Html;
          document.body.append(frame);
          await loaded;
          frame.contentWindow.eval(axe);
          const result = await frame.contentWindow.axe.run({ resultTypes: ["violations"] });
          const pictures = [...frame.contentDocument.images];
          const finding = {
            page: page.Name,
            violations: result.violations.map(rule =>
              `${rule.id}: ${rule.help}: ${rule.nodes.map(node => node.target.join(" ")).join(", ")}`),
            pictures: pictures.length,
            answerEnds: Math.round(frame.contentDocument.querySelector(".answer .shown > :first-child")?.getBoundingClientRect().bottom ?? -1),
            shrunkPictures: pictures.filter(picture => picture.width < picture.naturalWidth).length,
            missingPictures: pictures.filter(picture => !picture.complete || picture.naturalWidth === 0).length,
          };
          frame.remove();
          return finding;
        }
        (async () => {
          const findings = [];
          const shown = document.createElement("pre");
          try {
            for (const page of pages) findings.push(await look(page));
            shown.id = "findings";
            shown.textContent = JSON.stringify(findings);
          } catch (error) {
            shown.textContent = String(error);
          }
          document.body.replaceChildren(shown);
        })();
        </script></body></html>
        """;

    // The policy of a page lets nothing run in it, axe neither.
    private static string WithoutPolicy(string html) => Policy().Replace(html, "", 1);

    private static string Beginning(string dom) => dom.Length > 2000 ? dom[..2000] : dom;

    [GeneratedRegex("<meta http-equiv=\"Content-Security-Policy\"[^>]*>")]
    private static partial Regex Policy();

    [GeneratedRegex("<pre id=\"findings\">(?<json>.*?)</pre>", RegexOptions.Singleline)]
    private static partial Regex Found();
}
