namespace FlipAnalytics;

/// <summary>The words of a verdict for tables and other programs.</summary>
public static class VerdictWords
{
    /// <summary>In lower case, as JSON and tables write it: buy, haggle, leave or cannot_say_yet.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Code(Verdict verdict) => verdict switch
    {
        Verdict.Buy => "buy",
        Verdict.Haggle => "haggle",
        Verdict.Leave => "leave",
        _ => "cannot_say_yet",
    };

    /// <summary>As the owner reads it in a table.</summary>
    /// <param name="verdict">The verdict.</param>
    public static string Words(Verdict verdict) =>
        verdict == Verdict.CannotSayYet ? "cannot say yet" : Code(verdict);
}
