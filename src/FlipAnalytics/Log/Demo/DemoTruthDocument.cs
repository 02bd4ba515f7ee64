using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace FlipAnalytics;

/// <summary>The contents of <c>truth.json</c>.</summary>
internal sealed record DemoTruthDocument(
    string About, int Flips, ulong Seed, DateOnly FirstDay, DateOnly LastDay, ImmutableArray<string> Formulas, DemoMarket Market);

/// <summary>Writes it without reflection, which a natively compiled command does not have.</summary>
[JsonSerializable(typeof(DemoTruthDocument))]
internal sealed partial class DemoTruthJson : JsonSerializerContext;
