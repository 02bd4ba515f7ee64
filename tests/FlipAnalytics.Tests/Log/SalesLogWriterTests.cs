using CsCheck;

namespace FlipAnalytics.Tests;

public sealed class SalesLogWriterTests
{
    [Fact]
    public void What_is_written_is_read_back_as_it_was_and_without_an_error() =>
        GeneratedLogs.Any.Sample(
            log =>
            {
                using LogFolder folder = new();
                SalesLogWriter.Write(log, folder.Path);
                LogReading reading = folder.Read();
                Assert.Empty(reading.Problems.Where(problem => problem.Severity == Severity.Error));
                Assert.Equal(LogContent.Of(log), LogContent.Of(reading.Log!));
            },
            iter: 200);
}
