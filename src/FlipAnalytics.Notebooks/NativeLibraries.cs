using System.Reflection;
using System.Runtime.InteropServices;
using System.Runtime.Loader;

namespace FlipAnalytics.Notebooks;

/// <summary>
/// Finds the drawing library's native part when the notebook's own host loaded this library from a folder: the host then
/// looks beside the assembly only, not in <c>runtimes/PLATFORM/native</c> below it, where a build puts native parts.
/// </summary>
internal static class NativeLibraries
{
    private static int isDone;

    public static void FindBesideTheLibrary()
    {
        // Loads the drawing library's managed part, so that its context is there.
        _ = typeof(SkiaSharp.SKTypeface).Assembly;
        if (Interlocked.Exchange(ref isDone, 1) == 0)
        {
            // The host may have put the drawing library into a context of its own, so every context is taught.
            foreach (AssemblyLoadContext context in AssemblyLoadContext.All)
                context.ResolvingUnmanagedDll += Find;
        }
    }

    private static nint Find(Assembly user, string name)
    {
        string folder = Path.Combine(
            Path.GetDirectoryName(typeof(NativeLibraries).Assembly.Location) ?? ".", "runtimes",
            RuntimeInformation.RuntimeIdentifier, "native");
        string[] names = [name, $"lib{name}.so", $"{name}.so", $"{name}.dll", $"lib{name}.dylib", $"{name}.dylib"];
        foreach (string candidate in names)
        {
            if (NativeLibrary.TryLoad(Path.Combine(folder, candidate), out nint handle))
                return handle;
        }

        return 0;
    }
}
