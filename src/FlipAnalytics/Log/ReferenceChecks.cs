using System.Globalization;

namespace FlipAnalytics;

/// <summary>Checks what refers to pieces and trips, and rows that are alike.</summary>
internal static class ReferenceChecks
{
    public static void Run(ReadTables tables, LogProblems problems)
    {
        Dictionary<string, Piece> pieces = tables.Pieces.Kept
            .ToDictionary(piece => piece.Id, StringComparer.OrdinalIgnoreCase);
        Dictionary<string, int> setAside = new(StringComparer.OrdinalIgnoreCase);
        IEnumerable<Piece> all = tables.Pieces.Read.Concat(tables.Pieces.Unusable);
        foreach (Piece piece in all.Where(piece => !pieces.ContainsKey(piece.Id)))
            setAside.TryAdd(piece.Id, piece.Row);

        RequirePiece(tables.Asking, change => change.PieceId, change => change.Row);
        RequirePiece(tables.Hours, entry => entry.PieceId, entry => entry.Row);
        RequirePiece(tables.Uses, use => use.PieceId, use => use.Row);
        RequirePiece(tables.Moves, move => move.From, move => move.Row, "from");
        RequirePiece(tables.Moves, move => move.To, move => move.Row, "to");
        RequirePiece(tables.Money, entry => entry.PieceId, entry => entry.Row);
        RequirePiece(tables.Returns, back => back.PieceId, back => back.Row);
        RequireOnce(tables.Trips, "trip", trip => trip.Name, trip => trip.Row);
        RequireOnce(tables.Colours, "color", colour => colour.Word, colour => colour.Row);
        WarnOfUnknownTrips(tables, problems);
        WarnOfUnknownDeliveries(tables.Trips, pieces, problems);
        WarnOfUnusedChannels(tables, problems);
        WarnOfMovesToItself(tables.Moves, problems);
        SetAsideMoneyOfNoPiece(tables.Money, problems);
        WarnOfAskingOutsideTheSale(tables.Asking, pieces, problems);
        WarnOfLongDays(tables.Hours, problems);

        void RequirePiece<T>(ReadTable<T> table, Func<T, string?> idOf, Func<T, int> rowOf, string column = "id")
            where T : class
        {
            foreach (T record in table.Kept)
            {
                if (idOf(record) is not { } id || pieces.ContainsKey(id))
                    continue;
                string remedy = setAside.TryGetValue(id, out int row)
                    ? string.Create(
                        CultureInfo.InvariantCulture,
                        $"The piece is set aside; put line {row} of {tables.Pieces.Table.File} right first.")
                    : $"Correct the id, or add the piece to {tables.Pieces.Table.File}.";
                problems.Error(
                    table.Table.File,
                    rowOf(record),
                    column,
                    id,
                    $"the id of a piece in {tables.Pieces.Table.File}",
                    remedy);
                table.SetAside(record);
            }
        }

        void RequireOnce<T>(ReadTable<T> table, string column, Func<T, string> nameOf, Func<T, int> rowOf)
            where T : class
        {
            Dictionary<string, int> firsts = new(StringComparer.OrdinalIgnoreCase);
            foreach (T record in table.Read)
            {
                if (firsts.TryAdd(nameOf(record), rowOf(record)))
                    continue;
                string remedy = string.Create(
                    CultureInfo.InvariantCulture,
                    $"Line {firsts[nameOf(record)]} is for the same {column}; remove or rename one of the two.");
                problems.Error(
                    table.Table.File, rowOf(record), column, nameOf(record), $"one row for each {column}", remedy);
                table.SetAside(record);
            }
        }
    }

    private static void WarnOfUnknownTrips(ReadTables tables, LogProblems problems)
    {
        // Without a table of trips no trip is known, and that is no mistake.
        if (!tables.Trips.IsPresent)
            return;
        HashSet<string> trips = new(tables.Trips.Kept.Select(trip => trip.Name), StringComparer.OrdinalIgnoreCase);
        foreach (Piece piece in tables.Pieces.Kept.Where(piece => piece.Trip is { } trip && !trips.Contains(trip)))
        {
            problems.Warning(
                tables.Pieces.Table.File,
                piece.Row,
                "trip",
                piece.Trip,
                $"a trip in {tables.Trips.Table.File}",
                "Correct the name, or add the trip; until then the piece carries no driving.");
        }
    }

    private static void WarnOfUnknownDeliveries(
        ReadTable<Trip> trips, Dictionary<string, Piece> pieces, LogProblems problems)
    {
        foreach (Trip trip in trips.Kept.Where(trip => trip.PieceId is not null))
        {
            if (trip.Purpose != TripPurpose.Delivery)
            {
                problems.Warning(
                    trips.Table.File, trip.Row, "id", trip.PieceId, "an empty cell, as the purpose is not delivery",
                    "Write delivery as the purpose, or empty the id; what an outing brought home stands in pieces.csv under trip.");
            }
            else if (!pieces.ContainsKey(trip.PieceId!))
            {
                problems.Warning(
                    trips.Table.File, trip.Row, "id", trip.PieceId, $"the id of a piece in {Columns.Pieces.File}",
                    "Correct the id; until then the drive counts as a cost of no single piece.");
            }
        }
    }

    // Once for each word: a rent comes every month.
    private static void WarnOfUnusedChannels(ReadTables tables, LogProblems problems)
    {
        KnownWords used = new(tables.Pieces.Read.Select(piece => piece.Channel).OfType<string>());
        // Before the first piece a booth has nothing in it, and that is no mistake.
        if (tables.Pieces.Read.Count == 0)
            return;
        foreach (var rent in tables.Overheads.Kept.Where(row => row.Channel is not null)
            .GroupBy(row => row.Channel!, StringComparer.OrdinalIgnoreCase))
        {
            WordMatch match = used.Find(rent.Key);
            if (match.Fit is WordFit.Known or WordFit.SameWord)
                continue;
            string likely = match.Words.IsEmpty ? "" : $"Did you mean {match.Choice}? ";
            string rows = rent.Count() == 1 ? "it is" : string.Create(CultureInfo.InvariantCulture, $"all {rent.Count()} rows of it are");
            problems.Warning(
                tables.Overheads.Table.File,
                rent.First().Row,
                "channel",
                rent.Key,
                $"a channel of a piece in {tables.Pieces.Table.File}",
                $"{likely}Write here and as channel of the pieces for sale there the same word, or empty the cell for a cost of the whole workshop; until then {rows} a cost of idle months, on no piece.");
        }
    }

    private static void WarnOfMovesToItself(ReadTable<CostMove> moves, LogProblems problems)
    {
        foreach (CostMove move in moves.Kept.Where(move => string.Equals(move.From, move.To, StringComparison.OrdinalIgnoreCase)))
        {
            problems.Error(
                moves.Table.File, move.Row, "to", move.To, "another piece than the one that gave it",
                "Name the piece that the part went to.");
            moves.SetAside(move);
        }
    }

    private static void SetAsideMoneyOfNoPiece(ReadTable<MoneyEntry> money, LogProblems problems)
    {
        foreach (MoneyEntry entry in money.Kept.Where(entry => entry is { NeedsPiece: true, PieceId: null }))
        {
            problems.Error(
                money.Table.File, entry.Row, "id", null, $"the piece that the {Columns.WordOf(entry.Kind)} was for",
                "Write the id of the piece.");
            money.SetAside(entry);
        }
    }

    private static void WarnOfAskingOutsideTheSale(
        ReadTable<AskingPrice> asking, Dictionary<string, Piece> pieces, LogProblems problems)
    {
        foreach (AskingPrice change in asking.Kept)
        {
            Piece piece = pieces[change.PieceId];
            if (change.Date < piece.ListedOn)
                Warn(change, $"{CellText.Of(piece.ListedOn)} or later, when the piece was listed");
            else if (change.Date > (piece.SoldOn ?? piece.LeftOn))
                Warn(change, $"{CellText.Of(piece.SoldOn ?? piece.LeftOn)} or earlier, when the piece left");
        }

        void Warn(AskingPrice change, string expected) => problems.Warning(
            asking.Table.File,
            change.Row,
            "date",
            CellText.Of(change.Date),
            expected,
            "Correct the date here or in pieces.csv.");
    }

    private static void WarnOfLongDays(ReadTable<HoursEntry> hours, LogProblems problems)
    {
        foreach (HoursEntry entry in hours.Kept.Where(entry => entry is { Date: not null, Hours: > 24 }))
        {
            problems.Warning(
                hours.Table.File,
                entry.Row,
                "hours",
                entry.Hours.ToString(CultureInfo.InvariantCulture),
                "at most 24 on one day",
                "Correct it, or spread it over the days worked; it counts as it stands.");
        }
    }
}
