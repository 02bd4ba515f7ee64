using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>What a channel keeps, as it is kept.</summary>
/// <param name="Channel">The channel.</param>
/// <param name="Rate">Share of the sale price.</param>
/// <param name="Fixed">Amount a sale.</param>
public sealed record QuarterKeptFee(string Channel, decimal Rate, decimal Fixed);

/// <summary>The settings that figures of a quarter rest on.</summary>
/// <param name="Costing">Costing method: fifo or average.</param>
/// <param name="LengthUnit">in or cm.</param>
/// <param name="DistanceUnit">mi or km.</param>
/// <param name="Mileage">Own rates for driving, earliest first.</param>
/// <param name="Fees">Fee rules by channel.</param>
public sealed record QuarterKeptSettings(
    string Costing, string LengthUnit, string DistanceUnit, ImmutableArray<MileageRate> Mileage, ImmutableArray<QuarterKeptFee> Fees)
{
    internal static QuarterKeptSettings Of(Workshop workshop) => new(
        workshop.Costing == CostingMethod.Fifo ? "fifo" : "average",
        workshop.LengthUnit.Word(),
        workshop.DistanceUnit == FlipAnalytics.DistanceUnit.Mile ? "mi" : "km",
        workshop.Mileage,
        [
            .. workshop.Fees.OrderBy(fee => fee.Key, StringComparer.OrdinalIgnoreCase)
                .Select(fee => new QuarterKeptFee(fee.Key, fee.Value.Rate, fee.Value.Fixed)),
        ]);

    /// <summary>A workshop with these settings in place of its own; what is not kept stays.</summary>
    internal Workshop Over(Workshop workshop) => workshop with
    {
        Costing = Costing == "average" ? CostingMethod.Average : CostingMethod.Fifo,
        LengthUnit = LengthUnit == "cm" ? FlipAnalytics.LengthUnit.Centimetre : FlipAnalytics.LengthUnit.Inch,
        DistanceUnit = DistanceUnit == "km" ? FlipAnalytics.DistanceUnit.Kilometre : FlipAnalytics.DistanceUnit.Mile,
        Mileage = Mileage,
        Fees = new Workshop().Fees.AddRange(Fees.Select(fee => KeyValuePair.Create(fee.Channel, new FeeRule(fee.Rate, fee.Fixed)))),
    };

    /// <summary>What is set otherwise in a workshop now: a change a setting, in a fixed order.</summary>
    internal IEnumerable<QuarterKeptSettingChange> ChangesTo(Workshop now)
    {
        QuarterKeptSettings other = Of(now);
        if (Costing != other.Costing)
            yield return new("costing method", Costing, other.Costing, shop => shop with { Costing = now.Costing });
        if (LengthUnit != other.LengthUnit)
            yield return new("length_unit", LengthUnit, other.LengthUnit, shop => shop with { LengthUnit = now.LengthUnit });
        if (DistanceUnit != other.DistanceUnit)
            yield return new("distance_unit", DistanceUnit, other.DistanceUnit, shop => shop with { DistanceUnit = now.DistanceUnit });
        if (!Mileage.SequenceEqual(other.Mileage))
        {
            yield return new("mileage rate", Rates(Mileage.Except(other.Mileage)), Rates(other.Mileage.Except(Mileage)),
                shop => shop with { Mileage = now.Mileage });
        }

        foreach (string channel in Fees.Concat(other.Fees).Select(fee => fee.Channel).Distinct(StringComparer.OrdinalIgnoreCase))
        {
            QuarterKeptFee? then = Fees.FirstOrDefault(fee => fee.Channel.Equals(channel, StringComparison.OrdinalIgnoreCase));
            QuarterKeptFee? here = other.Fees.FirstOrDefault(fee => fee.Channel.Equals(channel, StringComparison.OrdinalIgnoreCase));
            if ((then?.Rate, then?.Fixed) == (here?.Rate, here?.Fixed))
                continue;
            yield return new($"fees of {channel}", Rule(then, now), Rule(here, now), shop => shop with
            {
                Fees = here is null ? shop.Fees.Remove(channel) : shop.Fees.SetItem(channel, new(here.Rate, here.Fixed)),
            });
        }
    }

    private static string Rates(IEnumerable<MileageRate> rates) =>
        string.Join(", ", rates.Select(rate => Invariant($"{rate.Rate.Trimmed()} from {rate.From:yyyy-MM-dd}")));

    private static string Rule(QuarterKeptFee? fee, Workshop workshop) => fee is null ? ""
        : Invariant($"{(fee.Rate * 100).Trimmed()} % and {MoneyText.Exact(fee.Fixed, workshop)}");
}

/// <summary>A setting that is another now.</summary>
/// <param name="What">The setting.</param>
/// <param name="Kept">As it was kept; empty for none.</param>
/// <param name="Now">As it is; empty for none.</param>
/// <param name="Apply">Sets it in a workshop.</param>
internal sealed record QuarterKeptSettingChange(string What, string Kept, string Now, Func<Workshop, Workshop> Apply);
