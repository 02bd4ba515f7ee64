namespace FlipAnalytics;

/// <summary>
/// A part that went from one piece to another, or a set that was split, with what it had cost: a row of <c>moves.csv</c>.
/// </summary>
/// <param name="Date">Day it was moved.</param>
/// <param name="From">Id of the piece that gave it.</param>
/// <param name="To">Id of the piece that took it.</param>
/// <param name="Cost">What goes with it of the giving piece's cost; zero or more.</param>
/// <param name="Notes">Anything else.</param>
/// <param name="Row">Line of the file.</param>
public sealed record CostMove(DateOnly Date, string From, string To, decimal Cost, string? Notes, int Row = 0);
