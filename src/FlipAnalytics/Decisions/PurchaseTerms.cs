namespace FlipAnalytics;

/// <summary>What the owner asks of a purchase.</summary>
public sealed record PurchaseTerms
{
    /// <summary>Wage taken where neither the owner nor workshop.toml names one, in units of the currency.</summary>
    public const decimal AssumedWage = 15;

    /// <summary>Wanted for an hour; null takes workshop.toml's target wage, else <see cref="AssumedWage"/>.</summary>
    public decimal? TargetWage
    {
        get;
        init => field = NumberRange.Money.Checked(value, nameof(TargetWage));
    }

    /// <summary>Chance with which the careful limit must hold, from 0.01 to 0.99; 0.75 unless set.</summary>
    public decimal CautiousChance
    {
        get;
        init => field = NumberRange.Chance.Checked(value, nameof(CautiousChance))!.Value;
    } = 0.75m;

    /// <summary>Channel the piece would be sold through; null takes the mix of past sales.</summary>
    public string? Channel { get; init; }

    /// <summary>Whether a word that is not in the log, but like one that is, is a new word and no slip.</summary>
    public bool NewWords { get; init; }

    /// <summary>The wage that holds for a workshop.</summary>
    public decimal WageFor(Workshop workshop)
    {
        ArgumentNullException.ThrowIfNull(workshop);
        return TargetWage ?? workshop.TargetWage ?? AssumedWage;
    }
}
