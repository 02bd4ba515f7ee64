namespace FlipAnalytics;

/// <summary>Numbers rounded as people write them down.</summary>
internal static class DemoRounding
{
    /// <summary>To 5 from 60 on, else to 1; at least 1.</summary>
    public static decimal Price(double amount)
    {
        decimal unit = amount >= 60 ? 5 : 1;
        return Math.Max(1, To(unit, amount));
    }

    /// <summary>To 5 from 20 on, else to 1; at least 1.</summary>
    public static decimal Sticker(double amount)
    {
        decimal unit = amount >= 20 ? 5 : 1;
        return Math.Max(1, To(unit, amount));
    }

    /// <summary>To a quarter of an hour; at least one.</summary>
    public static decimal Quarters(double hours) => Math.Max(0.25m, To(0.25m, hours));

    /// <summary>To a multiple of a unit, halves away from zero.</summary>
    public static decimal To(decimal unit, double amount) =>
        Math.Round((decimal)amount / unit, MidpointRounding.AwayFromZero) * unit;
}
