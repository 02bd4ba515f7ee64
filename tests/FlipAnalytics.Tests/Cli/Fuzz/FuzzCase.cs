namespace FlipAnalytics.Tests;

/// <summary>A call of the command and the files that it finds.</summary>
/// <param name="Arguments">Its arguments; LOG stands for the folder of the log.</param>
/// <param name="Files">Names below that folder, and what the files hold.</param>
internal sealed record FuzzCase(string[] Arguments, (string Name, byte[] Content)[] Files)
{
    /// <summary>What it calls and finds, to be read by whoever looks for the fault.</summary>
    public override string ToString() =>
        $"flip {string.Join(' ', Arguments)}\n" + string.Concat(Files.Select(file => $"--- {file.Name}\n{System.Text.Encoding.Latin1.GetString(file.Content)}\n"));
}
