namespace FlipAnalytics;

/// <summary>Files written beside their final names first, and moved there together once all are complete.</summary>
internal sealed class StagedFiles(string folder) : IDisposable
{
    private const string Suffix = ".new";

    private readonly List<string> names = [];

    public bool Exists(string name) => File.Exists(Path.Combine(folder, name));

    /// <summary>Opens a file to be written; the caller closes it before <see cref="Commit"/>.</summary>
    public FileStream Add(string name)
    {
        FileStream stream = new(Path.Combine(folder, name + Suffix), FileMode.Create, FileAccess.Write);
        names.Add(name);
        return stream;
    }

    /// <summary>Gives all files their final names.</summary>
    public void Commit()
    {
        foreach (string name in names)
            File.Move(Path.Combine(folder, name + Suffix), Path.Combine(folder, name), overwrite: true);
        names.Clear();
    }

    /// <summary>Removes what was not given its final name.</summary>
    public void Dispose()
    {
        foreach (string name in names)
            File.Delete(Path.Combine(folder, name + Suffix));
    }
}
