namespace FlipAnalytics.Cli;

/// <summary>The command cannot be carried out as it was given; the message says why and what to do.</summary>
internal sealed class CommandProblemException(string message) : Exception(message);
