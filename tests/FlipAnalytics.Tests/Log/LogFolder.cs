using System.Text;

namespace FlipAnalytics.Tests;

/// <summary>A folder with a log for one test.</summary>
internal sealed class LogFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("flip-log-").FullName;

    public LogFolder With(string file, string text) => With(file, Encoding.UTF8.GetBytes(text));

    public LogFolder With(string file, byte[] bytes)
    {
        File.WriteAllBytes(System.IO.Path.Combine(Path, file), bytes);
        return this;
    }

    public LogReading Read() => SalesLogReader.Read(Path);

    /// <summary>Reads a log whose only table is the one given.</summary>
    public static LogReading ReadPieces(string pieces)
    {
        using LogFolder folder = new();
        return folder.With("pieces.csv", pieces).Read();
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
