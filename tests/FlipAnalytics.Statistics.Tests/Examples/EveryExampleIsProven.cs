using System.Reflection;

namespace FlipAnalytics.Statistics.Tests;

public sealed class EveryExampleIsProven : ReadmeExample
{
    [Fact]
    public void There_are_as_many_example_tests_as_programs_in_the_README()
    {
        int tests = typeof(ReadmeExample).Assembly.GetTypes()
            .Where(type => type.IsSubclassOf(typeof(ReadmeExample)) && type != typeof(EveryExampleIsProven))
            .Sum(type => type.GetMethods().Count(method => method.GetCustomAttribute<FactAttribute>() is not null));
        Assert.Equal(tests, SectionsWithPrograms().Count());
    }
}
