using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>Finds the flips that lost money and what set them apart.</summary>
internal sealed class LosingFlips
{
    private const int FewestPeers = 3;

    // Hours or rates this many times the usual ones are named as the reason of a high share.
    private const decimal Striking = 1.25m;

    private static readonly CostKind[] Kinds = Enum.GetValues<CostKind>();

    private readonly Dictionary<string, Sums> byType = new(StringComparer.OrdinalIgnoreCase);
    private readonly Sums all = new();
    private readonly Workshop workshop;

    private LosingFlips(IEnumerable<FlipWage> known, Workshop workshop)
    {
        this.workshop = workshop;
        foreach (FlipWage flip in known)
        {
            all.Add(flip, 1);
            if (!byType.TryGetValue(flip.Type, out Sums? sums))
                byType[flip.Type] = sums = new();
            sums.Add(flip, 1);
        }
    }

    /// <summary>The losers among some flips, the greatest loss first.</summary>
    /// <param name="flips">Flips, with or without a known profit.</param>
    /// <param name="workshop">The workshop.</param>
    public static ImmutableArray<LosingFlip> Of(IEnumerable<FlipWage> flips, Workshop workshop)
    {
        FlipWage[] known = [.. flips.Where(flip => flip.FullProfit is not null)];
        LosingFlips losers = new(known, workshop);
        return [.. known.Where(flip => flip.FullProfit < 0).OrderBy(flip => flip.FullProfit).Select(losers.Explain)];
    }

    private LosingFlip Explain(FlipWage flip)
    {
        Sums ofType = byType[flip.Type].Without(flip);
        bool isSameType = ofType is { Flips: >= FewestPeers, Takings: > 0 };
        Sums peers = isSameType ? ofType : all.Without(flip);
        if (peers is not { Flips: >= FewestPeers, Takings: > 0 })
        {
            CostKind biggest = Kinds.MaxBy(flip.Cost);
            return new(
                flip.Id, flip.Type, flip.SoldOn, flip.FullProfit!.Value, LossYardstick.None, peers.Flips, 0, [],
                $"its largest cost was {Name(biggest)}, {Money(flip.Cost(biggest))} of {Money(flip.Takings!.Value)} it brought");
        }

        // The sale is judged by the owner's own guess where there is one: it knew the piece.
        decimal takings = flip.Takings!.Value;
        decimal extra = takings - flip.SoldPrice!.Value;
        decimal usualTakings = flip.ExpectedPrice is { } expected ? expected + extra
            : isSameType ? workshop.Currency.Round(peers.Takings / peers.Flips)
            : takings;
        List<LossPart> parts = [];
        if (takings != usualTakings)
        {
            parts.Add(new(
                "takings", takings, usualTakings, takings - usualTakings,
                flip.ExpectedPrice is { } guess
                    ? $"sold for {Money(flip.SoldPrice.Value)}, {Money(Math.Abs(guess - flip.SoldPrice.Value))} {(guess > flip.SoldPrice ? "under" : "over")} your own guess"
                    : $"brought {Money(takings)}, where your other flips of the type bring {Money(usualTakings)}"));
        }

        foreach (CostKind kind in Kinds)
        {
            decimal cost = flip.Cost(kind);
            decimal usual = workshop.Currency.Round(usualTakings * (peers.Cost(kind) / peers.Takings));
            if (cost != usual)
                parts.Add(new(Item(kind), cost, usual, usual - cost, Reason(flip, kind, cost, usual, peers)));
        }

        ImmutableArray<LossPart> ordered = [.. parts.OrderBy(part => part.Difference)];
        decimal usualProfit = flip.FullProfit!.Value - ordered.Sum(part => part.Difference);
        return new(
            flip.Id, flip.Type, flip.SoldOn, flip.FullProfit.Value,
            isSameType ? LossYardstick.SameType : LossYardstick.AllFlips, peers.Flips, usualProfit, ordered,
            ordered is [{ Difference: < 0 } worst, ..] ? worst.Reason : "nothing about it is unusual: such flips lose money");
    }

    private string Reason(FlipWage flip, CostKind kind, decimal cost, decimal usual, Sums peers)
    {
        string plain = kind == CostKind.Purchase
            ? $"{Money(cost)} paid for it, where {Money(usual)} would have been usual"
            : $"{Money(cost)} of {Name(kind)}, where {Money(usual)} would have been usual";
        if (kind is not (CostKind.Overhead or CostKind.Tools) || flip.BenchHours is not > 0)
            return plain;
        if (peers.UsualHours is { } hours && flip.BenchHours > hours * Striking)
            return Invariant($"{plain}: it took {flip.BenchHours:0.#} h, others {hours:0.#} h");
        decimal rate = cost / flip.BenchHours.Value;
        return peers.CostPerHour(kind) is { } usualRate && rate > usualRate * Striking
            ? $"{plain}: {Money(rate)} for each hour of work in those months, otherwise {Money(usualRate)}"
            : plain;
    }

    private static string Item(CostKind kind) => kind == CostKind.Trip ? "outings" : kind.ToString().ToLowerInvariant();

    private static string Name(CostKind kind) => kind switch
    {
        CostKind.Purchase => "the price paid",
        CostKind.Trip => "driving and outings",
        CostKind.Tools => "tool wear",
        CostKind.Overhead => "rent and other shared costs",
        CostKind.Fees => "selling fees",
        _ => kind.ToString().ToLowerInvariant(),
    };

    private string Money(decimal amount) => MoneyText.Exact(amount, workshop);

    /// <summary>Totals of some flips.</summary>
    private sealed class Sums
    {
        private readonly decimal[] costs = new decimal[(int)CostKind.Fees + 1];
        private int timed;
        private decimal hours;
        private readonly decimal[] timedCosts = new decimal[(int)CostKind.Fees + 1];

        public int Flips { get; private set; }

        public decimal Takings { get; private set; }

        public decimal? UsualHours => timed > 0 ? hours / timed : null;

        public decimal Cost(CostKind kind) => costs[(int)kind];

        public decimal? CostPerHour(CostKind kind) => hours > 0 ? timedCosts[(int)kind] / hours : null;

        public void Add(FlipWage flip, int sign)
        {
            Flips += sign;
            Takings += sign * flip.Takings!.Value;
            foreach (CostKind kind in Kinds)
            {
                costs[(int)kind] += sign * flip.Cost(kind);
                timedCosts[(int)kind] += flip.BenchHours is null ? 0 : sign * flip.Cost(kind);
            }

            timed += flip.BenchHours is null ? 0 : sign;
            hours += sign * (flip.BenchHours ?? 0);
        }

        public Sums Without(FlipWage flip)
        {
            Sums others = new() { Flips = Flips, Takings = Takings, timed = timed, hours = hours };
            costs.CopyTo(others.costs, 0);
            timedCosts.CopyTo(others.timedCosts, 0);
            others.Add(flip, -1);
            return others;
        }
    }
}
