using System.Globalization;
using System.Runtime.InteropServices;

namespace FlipAnalytics.Benchmarks;

/// <summary>The machine and how busy it is, as a line to print above a table.</summary>
internal static class Surroundings
{
    public static string Line()
    {
        string processor = File.Exists("/proc/cpuinfo")
            ? File.ReadLines("/proc/cpuinfo").FirstOrDefault(l => l.StartsWith("model name", StringComparison.Ordinal))?.Split(": ")[1] ?? "?"
            : RuntimeInformation.ProcessArchitecture.ToString();
        return string.Create(CultureInfo.InvariantCulture,
            $"{processor}, {Environment.ProcessorCount} cores in use, {RuntimeInformation.OSDescription}, {RuntimeInformation.FrameworkDescription}, {Load()}");
    }

    /// <summary>How many programs wanted to run in the last minute.</summary>
    public static string Load() => File.Exists("/proc/loadavg")
        ? $"load average {File.ReadAllText("/proc/loadavg").Split(' ')[0]}"
        : "load average unknown";
}
