using CsCheck;

namespace FlipAnalytics.Tests;

public sealed class KnownThenTests
{
    private static readonly Gen<DateOnly> Day = Gen.Int[0, 130].Select(GeneratedLogs.FirstDay.AddDays);

    [Fact]
    public void Looking_back_twice_is_looking_back_to_the_earlier_date() =>
        Gen.Select(GeneratedLogs.Any, Day, Day).Sample(
            (log, first, second) =>
                LogContent.Of(log.AsOf(first).AsOf(second)) == LogContent.Of(log.AsOf(first < second ? first : second)));
}
