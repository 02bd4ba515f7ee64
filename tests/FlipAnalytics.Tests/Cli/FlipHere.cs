namespace FlipAnalytics.Tests;

/// <summary>
/// Runs the command in this process, which is quicker by the start of one. What it prints is the whole process's, so its tests
/// belong to the collection "console", which runs alone.
/// </summary>
internal static class FlipHere
{
    public static FlipRun Run(params string[] arguments)
    {
        TextWriter usualOutput = Console.Out;
        TextWriter usualError = Console.Error;
        using var output = new StringWriter();
        using var error = new StringWriter();
        try
        {
            Console.SetOut(output);
            Console.SetError(error);
            int code = Cli.Program.Main(arguments);
            return new(code, output.ToString(), error.ToString());
        }
        finally
        {
            Console.SetOut(usualOutput);
            Console.SetError(usualError);
        }
    }
}
