using System.Reflection;
using System.Runtime.CompilerServices;
using FlipAnalytics.Plots;
using FlipAnalytics.Statistics;

namespace FlipAnalytics.Tests.House;

/// <summary>
/// What the libraries show to others is written down, a type a line with its members: whoever adds to it has to add it here,
/// and is asked whether a notebook or another program needs it.
/// </summary>
public sealed class PublicSurfaceTests
{
    private const BindingFlags Own = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    public static TheoryData<string> Libraries => [.. Assemblies.Keys];

    private static Dictionary<string, Assembly> Assemblies { get; } =
        new[] { typeof(LeastSquares).Assembly, typeof(SalesLog).Assembly, typeof(Figure).Assembly }
            .ToDictionary(assembly => assembly.GetName().Name!);

    [Theory]
    [MemberData(nameof(Libraries))]
    public void What_a_library_shows_is_what_is_written_down(string library)
    {
        string[] shown = Shown(Assemblies[library]);
        string[] written = File.ReadAllLines(Repository.PathOf("tests", "FlipAnalytics.Tests", "House", "PublicSurface", $"{library}.txt"));
        Assert.True(
            shown.SequenceEqual(written),
            $"Put House/PublicSurface/{library}.txt right, or make internal what nobody outside needs.\n"
            + string.Concat(shown.Except(written).Select(line => $"shown, not written: {line}\n"))
            + string.Concat(written.Except(shown).Select(line => $"written, not shown: {line}\n")));
    }

    private static string[] Shown(Assembly assembly) =>
    [
        .. assembly.GetExportedTypes()
            .Select(type => $"{NameOf(type)}: {string.Join(", ", Members(type))}".TrimEnd(':', ' '))
            .Order(StringComparer.Ordinal),
    ];

    // Without what every record or enumeration has.
    private static IEnumerable<string> Members(Type type) => type.IsSubclassOf(typeof(Delegate)) ? [] :
        type.GetMembers(Own)
            .Where(member => member.GetCustomAttribute<CompilerGeneratedAttribute>() is null)
            .Where(member => member is not MethodBase { IsSpecialName: true } and not Type)
            .Where(member => member is not MethodInfo { Name: "ToString" or "Equals" or "GetHashCode" or "Deconstruct" or "<Clone>$" })
            .Where(member => member is not FieldInfo { IsSpecialName: true })
            .Select(member => member.Name)
            .Distinct()
            .Order(StringComparer.Ordinal);

    private static string NameOf(Type type) =>
        type.IsNested ? $"{NameOf(type.DeclaringType!)}.{type.Name}" : type.Name;
}
