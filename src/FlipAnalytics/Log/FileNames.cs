namespace FlipAnalytics;

/// <summary>Warns of files that look like tables of the log under another name, and so are not read.</summary>
internal static class FileNames
{
    public static void Check(string folder, ReadTables tables, bool hasWorkshop, bool hasGuesses, LogProblems problems)
    {
        List<string> missing = [.. tables.Summaries().Where(table => !table.IsPresent).Select(table => table.File)];
        if (!hasWorkshop)
            missing.Add(Columns.WorkshopFile);
        foreach (string name in OtherFiles(folder))
        {
            if (new KnownWords(missing).Meant(name) is { } meant)
                problems.Warning(
                    name,
                    null,
                    null,
                    null,
                    $"the name {meant}",
                    "It was not read under this name; if it is that table, rename it.");
            else if (IsOtherFormat(name, missing) is { } table)
                problems.Warning(
                    name,
                    null,
                    null,
                    null,
                    $"a CSV file named {table}",
                    "It was not read; open it and save it as \"CSV UTF-8\".");
        }

        if (!tables.Pieces.IsPresent && !hasGuesses)
            problems.Error(
                Columns.Pieces.File,
                null,
                null,
                null,
                "this file in the folder",
                "Without it there is no log; check the folder. To begin one, write type,bought_price,sold_price into the first "
                + "line of a new file pieces.csv and a piece into each line below. Before the first piece, guesses in "
                + "workshop.toml answer too: [guess.dresser] with a sale_price.");
    }

    private static List<string> OtherFiles(string folder)
    {
        try
        {
            HashSet<string> known = [.. Columns.Tables.Select(table => table.File), Columns.WorkshopFile];
            return
            [
                .. Directory.EnumerateFiles(folder)
                    .Select(path => Path.GetFileName(path))
                    .Where(name => !known.Contains(name))
                    .Order(StringComparer.Ordinal),
            ];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }

    private static string? IsOtherFormat(string name, List<string> missing) =>
        Path.GetExtension(name).ToLowerInvariant() is ".xlsx" or ".xls" or ".ods" or ".txt" or ".tsv"
            ? missing.Find(table => Path.GetFileNameWithoutExtension(table).Equals(
                Path.GetFileNameWithoutExtension(name), StringComparison.OrdinalIgnoreCase))
            : null;
}
