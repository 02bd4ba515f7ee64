using System.Reflection;

namespace FlipAnalytics.Tests.House;

/// <summary>The statistics know no money and no calendar: no decimal, no date in any signature, private ones too.</summary>
public sealed class StatisticsIsDomainFreeTests
{
    private const BindingFlags Everything = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance
        | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Type[] Domain =
        [typeof(decimal), typeof(DateOnly), typeof(DateTime), typeof(DateTimeOffset)];

    [Fact]
    public void NoSignatureOfTheStatisticsHasMoneyOrADate() =>
        Assert.Empty(Assembly.Load("FlipAnalytics.Statistics").GetTypes().SelectMany(Violations));

    [Fact]
    public void PlantedMoneyAndDatesAreCaughtHoweverDeepTheyHide() => Assert.Equal(
        ["Planted.<At>k__BackingField", "Planted.Dates", "Planted.Pay", "Planted.get_At", "Planted.prices"],
        Violations(typeof(Planted)).Distinct().Order(StringComparer.Ordinal));

    private static IEnumerable<string> Violations(Type type) =>
        from member in type.GetMembers(Everything)
        from used in member switch
        {
            FieldInfo field => [field.FieldType],
            MethodInfo method => [method.ReturnType, .. method.GetParameters().Select(p => p.ParameterType)],
            ConstructorInfo constructor => constructor.GetParameters().Select(p => p.ParameterType),
            _ => Enumerable.Empty<Type>(),
        }
        where Parts(used).Any(Domain.Contains)
        select $"{type.Name}.{member.Name}";

    /// <summary>A type with its element types and type arguments: decimal in decimal?[] and in a list of lists.</summary>
    private static IEnumerable<Type> Parts(Type type) =>
    [
        type,
        .. type.GetElementType() is { } element ? Parts(element) : [],
        .. type.GetGenericArguments().Where(argument => !argument.IsGenericParameter).SelectMany(Parts),
    ];

    private sealed class Planted
    {
        private readonly decimal?[] prices = [1];

        public DateTime At { get; } = new(2026, 1, 1);

        public static List<List<DateOnly>> Dates() => [];

        public bool Pay(in decimal amount) => prices.Contains(amount);
    }
}
