namespace FlipAnalytics.Notebooks;

/// <summary>The piece that a page about a purchase is for.</summary>
public static class AskedPiece
{
    /// <summary>
    /// The piece as it was described. Where nothing at all was said, an example, and the answer says so: the piece bought
    /// last, as it stood in the store.
    /// </summary>
    /// <param name="described">What was said; whatever is null is unknown, the type too.</param>
    /// <param name="log">The log as known at its date.</param>
    /// <exception cref="NotebookException">Something was said, but not what it is.</exception>
    public static Candidate OrExample(Candidate described, SalesLog log)
    {
        ArgumentNullException.ThrowIfNull(described);
        ArgumentNullException.ThrowIfNull(log);
        if (described.Type is not null)
            return described;
        if (described != new Candidate { Id = described.Id, Type = null! })
            throw new NotebookException("Say what it is: the type is needed, such as -p type=dresser.");
        const string Remedy = "Describe your own with -p type=dresser and what else you know.";
        return log.Pieces.OrderByDescending(piece => piece.StickerPrice is not null).ThenByDescending(piece => piece.BoughtOn)
                .FirstOrDefault() is { } last
            ? Candidate.Of(last) with
            {
                Id = described.Id,
                WordNotes = [$"No piece was described, so this is an example: {last.Id}, as it stood in the store. {Remedy}"],
            }
            : described with { Type = "dresser", WordNotes = [$"No piece was described, so this is about a dresser. {Remedy}"] };
    }
}
