using System.Text.Json;
using System.Text.Json.Serialization;

namespace FlipAnalytics.Tests;

/// <summary>What a log says, apart from its date and the lines its rows stood on.</summary>
internal static class LogContent
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Converters = { new PlainDecimal() } };

    public static string Of(SalesLog log) => JsonSerializer.Serialize(
        log with
        {
            Date = default,
            Pieces = [.. log.Pieces.Select(piece => piece with { Row = 0 })],
            AskingPrices = [.. log.AskingPrices.Select(change => change with { Row = 0 })],
            Hours = [.. log.Hours.Select(entry => entry with { Row = 0 })],
            Supplies = [.. log.Supplies.Select(purchase => purchase with { Row = 0 })],
            Uses = [.. log.Uses.Select(use => use with { Row = 0 })],
            Counts = [.. log.Counts.Select(count => count with { Row = 0 })],
            Trips = [.. log.Trips.Select(trip => trip with { Row = 0 })],
            Tools = [.. log.Tools.Select(tool => tool with { Row = 0 })],
            Overheads = [.. log.Overheads.Select(overhead => overhead with { Row = 0 })],
            Moves = [.. log.Moves.Select(move => move with { Row = 0 })],
            Money = [.. log.Money.Select(entry => entry with { Row = 0 })],
            Returns = [.. log.Returns.Select(back => back with { Row = 0 })],
            Colours = [.. log.Colours.Select(colour => colour with { Row = 0 })],
        },
        Indented);

    /// <summary>Writes 12.5 and 12.50 alike.</summary>
    private sealed class PlainDecimal : JsonConverter<decimal>
    {
        public override decimal Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.GetDecimal();

        public override void Write(Utf8JsonWriter writer, decimal value, JsonSerializerOptions options) =>
            writer.WriteNumberValue(value / 1.0000000000000000000000000000m);
    }
}
