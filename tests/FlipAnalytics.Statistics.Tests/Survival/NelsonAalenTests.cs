namespace FlipAnalytics.Statistics.Tests;

/// <summary>By hand; the estimate itself is checked against R beside Kaplan–Meier.</summary>
public class NelsonAalenTests
{
    [Fact]
    public void Three_pieces_by_hand()
    {
        var steps = NelsonAalen.Estimate([new(1, true), new(2, false), new(3, true)]);
        Assert.Equal([1 / 3.0, 1 / 3.0, 4 / 3.0], steps.Select(step => step.CumulativeHazard), (a, b) => Math.Abs(a - b) < 1e-15);
        Assert.Equal(Math.Sqrt(1 / 9.0 + 1), steps[2].StandardError, 1e-15);
        Limits limits = steps[0].Limits!.Value;
        // se/H is 1 at the first step, so the limits are H times e to ± 1.959964.
        Assert.Equal(Math.Exp(-1.959963984540054) / 3, limits.Low, 1e-14);
        Assert.Equal(Math.Exp(1.959963984540054) / 3, limits.High, 1e-14);
    }

    [Fact]
    public void Before_the_first_ending_there_are_no_limits()
    {
        Assert.Null(NelsonAalen.Estimate([new(1, false), new(3, true)])[0].Limits);
    }
}
