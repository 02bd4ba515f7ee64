namespace FlipAnalytics;

/// <summary>What an outing was for.</summary>
public enum TripPurpose
{
    /// <summary>Looking for pieces.</summary>
    Sourcing,

    /// <summary>Taking something to a buyer or to where it is sold.</summary>
    Delivery,

    /// <summary>Fetching supplies or tools.</summary>
    Supplies,

    /// <summary>Anything else for the workshop.</summary>
    Other,
}
