namespace FlipAnalytics.Statistics.Tests;

/// <summary>The spells of a reference case.</summary>
internal static class SurvivalInput
{
    public static SurvivalTime[] Times(ReferenceCase reference) => reference.Answer.GetProperty("case").GetString() switch
    {
        "survival/04_relistings_left_truncated" => Times(reference, "entered", "exit", "sold"),
        "survival/05_price_cuts_split_rows" => Times(reference, "start", "stop", "sold"),
        "cox/01_weights_strata_late_entry" => Times(reference, "entered", "exit", "ended"),
        _ => Times(reference, null, "time", "event"),
    };

    /// <summary>The spells behind a curve such as "km_overall" or "km_by_sex/f".</summary>
    public static SurvivalTime[] Times(ReferenceCase reference, string curve)
    {
        SurvivalTime[] all = Times(reference);
        if (!curve.StartsWith("km_by_", StringComparison.Ordinal))
            return all;
        string[] parts = curve["km_by_".Length..].Split('/');
        string[] groups = reference.Text(parts[0]);
        return [.. all.Where((_, i) => groups[i] == parts[1])];
    }

    private static SurvivalTime[] Times(ReferenceCase reference, string? start, string stop, string ended)
    {
        double[] starts = start is null ? new double[reference.RowCount] : reference.Numbers(start);
        double[] stops = reference.Numbers(stop), ends = reference.Numbers(ended);
        return [.. stops.Select((value, i) => new SurvivalTime(starts[i], value, ends[i] == 1))];
    }
}
