namespace FlipAnalytics;

/// <summary>Finds the name that was meant.</summary>
internal static class NearMiss
{
    private const int MostEdits = 2;

    /// <summary>The known name within two edits (Levenshtein) of what was written, or equal but for case and spaces.</summary>
    public static string? Of(string written, IEnumerable<string> known)
    {
        string plain = Plain(written);
        return known
            .Select(name => (Name: name, Edits: Edits(plain, Plain(name))))
            .Where(near => near.Edits <= MostEdits && near.Edits * 2 < near.Name.Length)
            .OrderBy(near => near.Edits)
            .Select(near => near.Name)
            .FirstOrDefault();
    }

    private static string Plain(string name) =>
        name.Trim().ToLowerInvariant().Replace(' ', '_').Replace('-', '_');

    private static int Edits(string from, string to)
    {
        if (Math.Abs(from.Length - to.Length) > MostEdits)
            return int.MaxValue / 2;
        int[] row = [.. Enumerable.Range(0, to.Length + 1)];
        for (int i = 1; i <= from.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.Length; j++)
            {
                int changed = diagonal + (from[i - 1] == to[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(changed, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[to.Length];
    }
}
