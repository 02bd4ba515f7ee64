namespace FlipAnalytics;

/// <summary>What an hour was spent on.</summary>
public enum WorkTask
{
    /// <summary>Looking for pieces.</summary>
    Sourcing,

    /// <summary>Cleaning.</summary>
    Cleaning,

    /// <summary>Repair and gluing.</summary>
    Repair,

    /// <summary>Taking off an old finish.</summary>
    Stripping,

    /// <summary>Sanding.</summary>
    Sanding,

    /// <summary>Priming.</summary>
    Priming,

    /// <summary>Painting.</summary>
    Painting,

    /// <summary>Clear coats, wax or oil.</summary>
    Topcoat,

    /// <summary>Knobs, pulls, hinges, feet.</summary>
    Hardware,

    /// <summary>Taking photos.</summary>
    Photos,

    /// <summary>Writing and renewing an offer.</summary>
    Listing,

    /// <summary>Messages and viewings.</summary>
    Selling,

    /// <summary>Delivery and hand-over.</summary>
    Delivery,

    /// <summary>Anything else.</summary>
    Other,
}

/// <summary>Hours worked on a day: a row of <c>hours.csv</c>.</summary>
/// <param name="PieceId">The piece; null for work on no single piece.</param>
/// <param name="Date">Day of the work.</param>
/// <param name="Task">What was done; null where the log does not say.</param>
/// <param name="Hours">Hands-on hours, zero or more; drying time is not hours.</param>
/// <param name="Row">Line of the file.</param>
public sealed record HoursEntry(string? PieceId, DateOnly? Date, WorkTask? Task, decimal Hours, int Row = 0);
