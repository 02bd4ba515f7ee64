using System.Globalization;
using System.Net;
using System.Text;

namespace FlipAnalytics.Notebooks;

/// <summary>A column of a table.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="IsNumber">Whether its cells are set flush right, so that digits stand below each other.</param>
internal readonly record struct HtmlColumn(string Heading, bool IsNumber = false);

/// <summary>
/// Builds a piece of a web page. Every text is encoded, every table has a caption and says which cells are headings, and
/// nothing in it runs.
/// </summary>
internal sealed class Html
{
    private readonly StringBuilder text = new();

    public static HtmlColumn Number(string heading) => new(heading, IsNumber: true);

    public static HtmlColumn Words(string heading) => new(heading);

    /// <summary>A text as it stands in a page: nothing in it is markup, and nothing hides.</summary>
    public static string Encode(string value) => WebUtility.HtmlEncode(CleanText.Lines(value));

    public static string Invariant(FormattableString value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A heading below those of a notebook's sections, which are of the second rank.</summary>
    public Html Heading(string words) => Element("h3", words);

    public Html Paragraph(string words) => Element("p", words);

    /// <summary>A paragraph that leads.</summary>
    public Html Lead(string words)
    {
        text.Append("<p><strong>").Append(Encode(words)).Append("</strong></p>\n");
        return this;
    }

    public Html Items(IEnumerable<string> items) => Items(items.Select(item => ("", item, "")));

    /// <summary>A list whose items have a name before the words and a source after them; both may be empty.</summary>
    public Html Items(IEnumerable<(string Name, string Words, string Source)> items)
    {
        text.Append("<ul>\n");
        foreach ((string name, string words, string source) in items)
        {
            text.Append("<li>");
            if (name.Length > 0)
                text.Append("<strong>").Append(Encode(name)).Append("</strong>: ");
            text.Append(Encode(words));
            if (source.Length > 0)
                text.Append(" <small>(").Append(Encode(source)).Append(")</small>");
            text.Append("</li>\n");
        }

        text.Append("</ul>\n");
        return this;
    }

    /// <summary>A table; the first cell of each row is the row's heading.</summary>
    public Html Table(string caption, HtmlColumn[] columns, IEnumerable<string[]> rows)
    {
        text.Append("<table>\n<caption>").Append(Encode(caption)).Append("</caption>\n<thead><tr>");
        foreach (HtmlColumn column in columns)
            Cell(column, "th scope=\"col\"", column.Heading);
        text.Append("</tr></thead>\n<tbody>\n");
        foreach (string[] row in rows)
        {
            text.Append("<tr>");
            for (int i = 0; i < columns.Length; i++)
                Cell(columns[i], i == 0 ? "th scope=\"row\"" : "td", row[i]);
            text.Append("</tr>\n");
        }

        text.Append("</tbody>\n</table>\n");
        return this;
    }

    /// <summary>Adds what was built elsewhere.</summary>
    public Html Then(HtmlPart part)
    {
        text.Append(part.Html);
        return this;
    }

    public HtmlPart Content() => new(text.ToString());

    private Html Element(string name, string words)
    {
        text.Append('<').Append(name).Append('>').Append(Encode(words)).Append("</").Append(name).Append(">\n");
        return this;
    }

    private void Cell(HtmlColumn column, string tag, string words) => text
        .Append('<').Append(tag).Append(column.IsNumber ? " style=\"text-align:right\">" : " style=\"text-align:left\">")
        .Append(Encode(words)).Append("</").Append(tag.AsSpan(0, 2)).Append('>');
}
