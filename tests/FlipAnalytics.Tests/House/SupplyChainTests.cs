using System.Text.RegularExpressions;

namespace FlipAnalytics.Tests.House;

/// <summary>What is restored is known, package by package, with its hash and its licence.</summary>
public sealed partial class SupplyChainTests
{
    public static TheoryData<string> Projects => new(
        new[] { "src", "tests" }
            .SelectMany(folder => new DirectoryInfo(Repository.PathOf(folder)).EnumerateDirectories()
                .Where(project => project.EnumerateFiles("*.csproj").Any())
                .Select(project => $"{folder}/{project.Name}")));

    [Theory]
    [MemberData(nameof(Projects))]
    public void EveryProjectLocksItsPackagesByHashAndNamesNoPlaceTheyComeFrom(string project)
    {
        string text = Repository.Read([.. project.Split('/'), "packages.lock.json"]);
        Assert.DoesNotContain("://", text, StringComparison.Ordinal);
        Assert.All(BillOfMaterials.Locked(project), package => Assert.Matches(Hash(), package.Hash));
    }

    [Fact]
    public void TheRepositoryNamesNoPlaceThatPackagesComeFrom() => Assert.DoesNotContain(
        Repository.Root.EnumerateFiles().Select(file => file.Name), name => name.Equals("nuget.config", StringComparison.OrdinalIgnoreCase));

    [Fact]
    public void TheChecksRestoreWhatIsLocked() =>
        Assert.Contains("dotnet restore --locked-mode", Repository.Read(".ci", "run"), StringComparison.Ordinal);

    [Fact]
    public void TheBillOfMaterialsNamesEveryPackageAndItsLicence() => Assert.True(
        File.ReadAllText(BillOfMaterials.Place).ReplaceLineEndings("\n") == BillOfMaterials.Text(),
        "Packages changed. Write the bill anew and look at what is new in it: dotnet run --project tests/FlipAnalytics.Benchmarks -- bom");

    [GeneratedRegex("^[A-Za-z0-9+/]{86}==$")]
    private static partial Regex Hash();
}
