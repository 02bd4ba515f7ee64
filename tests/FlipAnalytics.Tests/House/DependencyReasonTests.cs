using System.Xml.Linq;

namespace FlipAnalytics.Tests.House;

/// <summary>Every package is in DEVELOPERS.md, where the reason for it stands.</summary>
public sealed class DependencyReasonTests
{
    [Fact]
    public void EveryPackageIsNamedInTheGuide()
    {
        string[] packages = [.. XDocument.Parse(Repository.Read("Directory.Packages.props"))
            .Descendants("PackageVersion")
            .Select(package => package.Attribute("Include")!.Value)];
        string guide = Repository.Read("DEVELOPERS.md");
        Assert.NotEmpty(packages);
        Assert.All(packages, package => Assert.Contains($"`{package}`", guide, StringComparison.Ordinal));
    }
}
