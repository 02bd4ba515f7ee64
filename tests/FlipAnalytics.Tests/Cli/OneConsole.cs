namespace FlipAnalytics.Tests;

/// <summary>Tests that take what this process prints; they run alone.</summary>
[CollectionDefinition("console", DisableParallelization = true)]
public sealed class OneConsole;
