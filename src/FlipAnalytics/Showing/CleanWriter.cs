using System.Text;

namespace FlipAnalytics;

/// <summary>
/// The way out to a terminal: every text goes through <see cref="CleanText"/>, whatever part of the program it comes from.
/// </summary>
/// <param name="inner">Where it goes.</param>
/// <param name="isAMessageALine">Whether what is written with <c>WriteLine</c> is one line, whatever line ends are in it.</param>
public sealed class CleanWriter(TextWriter inner, bool isAMessageALine = false) : TextWriter
{
    /// <inheritdoc/>
    public override Encoding Encoding => inner.Encoding;

    /// <inheritdoc/>
    public override void Write(char value) => inner.Write(CleanText.Lines(value.ToString()));

    /// <inheritdoc/>
    public override void Write(char[] buffer, int index, int count) => inner.Write(CleanText.Lines(new string(buffer, index, count)));

    /// <inheritdoc/>
    public override void Write(ReadOnlySpan<char> buffer) => inner.Write(CleanText.Lines(buffer.ToString()));

    /// <inheritdoc/>
    public override void Write(string? value) => inner.Write(CleanText.Lines(value ?? ""));

    /// <inheritdoc/>
    public override void WriteLine() => inner.Write('\n');

    /// <inheritdoc/>
    public override void WriteLine(string? value) =>
        inner.Write((isAMessageALine ? CleanText.OnOneLine(value ?? "") : CleanText.Lines(value ?? "")) + "\n");

    /// <inheritdoc/>
    public override void Flush() => inner.Flush();
}
