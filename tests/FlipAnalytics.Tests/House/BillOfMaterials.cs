using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Xml.Linq;

namespace FlipAnalytics.Tests.House;

/// <summary>
/// The software bill of materials: every package that is restored, from the lock files, with the licence that its maker states in
/// it. CycloneDX 1.6 (ECMA-424).
/// </summary>
internal static class BillOfMaterials
{
    private const string LockFile = "packages.lock.json";

    private static readonly string[] Shipped = ["src/FlipAnalytics.Cli", "src/FlipAnalytics.Notebooks"];
    private static readonly string[] ForTests = ["tests/FlipAnalytics.Statistics.Tests", "tests/FlipAnalytics.Tests", "tests/FlipAnalytics.Benchmarks"];

    /// <summary>Where it stands.</summary>
    public static string Place => Repository.PathOf(".config", "bom.cdx.json");

    /// <summary>What it should say, by the lock files and the packages that were restored.</summary>
    public static string Text()
    {
        SortedDictionary<string, Package> packages = new(StringComparer.OrdinalIgnoreCase);
        foreach (string project in Shipped.Concat(ForTests))
        {
            foreach (Package package in Locked(project))
                packages.TryAdd(package.Name, package with { IsShipped = Shipped.Contains(project) });
        }

        using MemoryStream bytes = new();
        using (Utf8JsonWriter json = new(bytes, new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
            Write(json, packages.Values);
        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    /// <summary>The packages that a project's lock file names, with their hashes.</summary>
    public static IEnumerable<Package> Locked(string project)
    {
        using var file = JsonDocument.Parse(Repository.Read([.. project.Split('/'), LockFile]));
        foreach (JsonProperty entry in file.RootElement.GetProperty("dependencies").EnumerateObject().SelectMany(target => target.Value.EnumerateObject()))
        {
            if (entry.Value.GetProperty("type").GetString() != "Project")
                yield return new(entry.Name, entry.Value.GetProperty("resolved").GetString()!, entry.Value.GetProperty("contentHash").GetString()!);
        }
    }

    private static void Write(Utf8JsonWriter json, IEnumerable<Package> packages)
    {
        json.WriteStartObject();
        json.WriteString("bomFormat", "CycloneDX");
        json.WriteString("specVersion", "1.6");
        json.WriteNumber("version", 1);
        json.WriteStartObject("metadata");
        json.WriteStartObject("component");
        json.WriteString("type", "application");
        json.WriteString("name", "FlipAnalytics");
        json.WriteString("version", XDocument.Parse(Repository.Read("Directory.Build.props")).Descendants("Version").Single().Value);
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteStartArray("components");
        foreach (Package package in packages)
        {
            json.WriteStartObject();
            json.WriteString("type", "library");
            json.WriteString("name", package.Name);
            json.WriteString("version", package.Version);
            json.WriteString("scope", package.IsShipped ? "required" : "excluded");
            json.WriteString("purl", $"pkg:nuget/{package.Name}@{package.Version}");
            WriteLicence(json, LicenceOf(package));
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteLicence(Utf8JsonWriter json, (string? Expression, string? Name) licence)
    {
        json.WriteStartArray("licenses");
        json.WriteStartObject();
        if (licence.Expression is { } expression)
        {
            json.WriteString("expression", expression);
        }
        else
        {
            json.WriteStartObject("license");
            json.WriteString("name", licence.Name);
            json.WriteEndObject();
        }

        json.WriteEndObject();
        json.WriteEndArray();
    }

    // An expression of SPDX, or the place where the maker states it.
    private static (string? Expression, string? Name) LicenceOf(Package package)
    {
        string name = package.Name.ToLowerInvariant();
        XElement about = XDocument.Load(Path.Combine(Packages, name, package.Version.ToLowerInvariant(), name + ".nuspec")).Root!.Elements().First();
        XElement? licence = about.Elements().FirstOrDefault(element => element.Name.LocalName == "license");
        return licence?.Attribute("type")?.Value == "expression" ? (licence.Value, null)
            : licence is not null ? (null, $"file {licence.Value} of the package")
            : about.Elements().FirstOrDefault(element => element.Name.LocalName == "licenseUrl") is { } address ? (null, address.Value)
            : (null, "not stated in the package");
    }

    private static string Packages => Environment.GetEnvironmentVariable("NUGET_PACKAGES") is { Length: > 0 } folder ? folder
        : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");

    /// <summary>A package.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Version">The version that is restored.</param>
    /// <param name="Hash">Its hash, as the lock file has it.</param>
    internal sealed record Package(string Name, string Version, string Hash)
    {
        /// <summary>Whether the command or the notebooks hold it, and not the tests alone.</summary>
        public bool IsShipped { get; init; }
    }
}
