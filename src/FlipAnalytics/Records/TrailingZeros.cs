namespace FlipAnalytics;

/// <summary>Amounts without zeros at their end.</summary>
public static class TrailingZeros
{
    private const decimal One = 1.0000000000000000000000000000m;

    extension(decimal amount)
    {
        /// <summary>The same amount without zeros after its last digit behind the point: 5.00 becomes 5.</summary>
        /// <remarks>Division by a one of 28 digits leaves no zeros at the end.</remarks>
        public decimal Trimmed() => amount / One;
    }
}
