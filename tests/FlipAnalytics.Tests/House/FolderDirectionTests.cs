namespace FlipAnalytics.Tests.House;

/// <summary>
/// The folders of the library use only those before them, and what the owner earned (Reports) never rests on a fit
/// (Models).
/// </summary>
public sealed class FolderDirectionTests
{
    private static readonly string[] Order = ["Records", "Log", "Costing", "Models", "Plausibility", "Showing", "Decisions", "Reports"];

    [Fact]
    public void AFolderUsesOnlyThoseBeforeIt() => Assert.Empty(Violations(
        from folder in Order
        where Directory.Exists(Repository.PathOf("src", "FlipAnalytics", folder))
        from file in Repository.Sources("src", "FlipAnalytics", folder)
        select (folder, Repository.Relative(file), File.ReadAllText(file.FullName))));

    [Fact]
    public void EveryFolderHasItsPlaceInTheOrder() => Assert.Empty(
        new DirectoryInfo(Repository.PathOf("src", "FlipAnalytics")).EnumerateDirectories()
            .Select(folder => folder.Name)
            .Where(name => !Repository.IsMadeByBuilding(name))
            .Except(Order));

    [Fact]
    public void ARecordThatUsesAReportIsCaught() => Assert.Equal(
        ["Piece.cs (Records) uses Wages of Reports"],
        Violations(
        [
            ("Records", "Piece.cs", "public sealed record Piece(Wages Wages);"),
            ("Reports", "Wages.cs", "public sealed record Wages(decimal Cash);"),
        ]));

    [Fact]
    public void AReportThatUsesAModelIsCaughtThoughModelsComeBefore() => Assert.Equal(
        ["Wages.cs (Reports) uses PriceModel of Models"],
        Violations(
        [
            ("Models", "PriceModel.cs", "internal sealed class PriceModel;"),
            ("Reports", "Wages.cs", "sealed class Wages { void Fit() => PriceModel.Fit(); }"),
        ]));

    [Fact]
    public void ADecisionMayUseAModelAndACost() => Assert.Empty(
        Violations(
        [
            ("Costing", "PieceCost.cs", "sealed record PieceCost(decimal Total);"),
            ("Models", "PriceModel.cs", "sealed class PriceModel;"),
            ("Decisions", "MostToPay.cs", "sealed class MostToPay(PriceModel model, PieceCost cost);"),
        ]));

    private static string[] Violations(IEnumerable<(string Folder, string File, string Source)> files)
    {
        var all = files.ToArray();
        var types = all
            .SelectMany(file => CSharpText.DeclaredTypes(file.Source), (file, type) => (file.Folder, Type: type))
            .Distinct()
            .ToArray();
        return
        [
            .. from file in all
               from type in types
               where !MayUse(file.Folder, type.Folder)
               where CSharpText.UsesType(file.Source, type.Type)
               select $"{file.File} ({file.Folder}) uses {type.Type} of {type.Folder}",
        ];
    }

    private static bool MayUse(string user, string used) =>
        Array.IndexOf(Order, used) <= Array.IndexOf(Order, user) && !(user == "Reports" && used == "Models");
}
