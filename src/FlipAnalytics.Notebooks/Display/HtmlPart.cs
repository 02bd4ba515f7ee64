namespace FlipAnalytics.Notebooks;

/// <summary>A part of a web page that a notebook shows as it is.</summary>
/// <param name="Html">Its source; every text in it is encoded.</param>
public sealed record HtmlPart(string Html);
