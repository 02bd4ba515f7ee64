namespace FlipAnalytics;

/// <summary>A currency by its ISO 4217 code, with the number of minor digits that its amounts may have.</summary>
public sealed record Currency
{
    // Minor units other than 2, from ISO 4217 table A.1 (from memory).
    private static readonly string[] WithoutMinorUnit =
        ["BIF", "CLP", "DJF", "GNF", "ISK", "JPY", "KMF", "KRW", "PYG", "RWF", "UGX", "VND", "VUV", "XAF", "XOF", "XPF"];

    private static readonly string[] WithThreeDigits = ["BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"];

    private Currency(string code, int minorDigits) => (Code, MinorDigits) = (code, minorDigits);

    /// <summary>Three capital letters, such as USD.</summary>
    public string Code { get; }

    /// <summary>Digits after the point: 0, 2 or 3.</summary>
    public int MinorDigits { get; }

    /// <summary>The currency of a code.</summary>
    /// <param name="code">Three letters, in either case.</param>
    /// <exception cref="ArgumentException">The code does not have three letters.</exception>
    public static Currency Of(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        string upper = code.Trim().ToUpperInvariant();
        if (upper.Length != 3 || !upper.All(char.IsAsciiLetterUpper))
            throw new ArgumentException($"'{code}' is not a currency code of three letters, such as USD.", nameof(code));
        return new(upper, WithoutMinorUnit.Contains(upper) ? 0 : WithThreeDigits.Contains(upper) ? 3 : 2);
    }

    /// <summary>An amount rounded to the minor unit, halves away from zero.</summary>
    /// <param name="amount">Any amount.</param>
    public decimal Round(decimal amount) => decimal.Round(amount, MinorDigits, MidpointRounding.AwayFromZero);
}
