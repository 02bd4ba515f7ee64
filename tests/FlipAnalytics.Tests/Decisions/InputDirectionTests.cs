using System.Collections.Immutable;

namespace FlipAnalytics.Tests;

/// <summary>One input changed at a time, on several generated logs: the answer moves the way its owner expects.</summary>
public class InputDirectionTests
{
    private static readonly ImmutableArray<FittedModels> Logs =
        [.. new (int Flips, ulong Seed)[] { (12, 3), (60, 4), (150, 5) }.Select(log => FittedModels.Of(Workbench.Demo(log.Flips, log.Seed)))];

    private static readonly ImmutableArray<Candidate> Pieces =
    [
        Workbench.MeasuredDresser with { Material = "pine" },
        new() { Id = "C2", Type = "nightstand", Count = 2, Condition = Condition.Sound, Colour = "white", Finish = "satin" },
        new() { Id = "C3", Type = "side chair", Count = 4 },
    ];

    private static IEnumerable<(FittedModels Models, Candidate Piece)> Grid =>
        from models in Logs from piece in Pieces select (models, piece);

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    [InlineData(15)]
    [InlineData(60)]
    public void Fewer_stated_hours_never_lower_the_ceiling(int wage)
    {
        foreach (var (models, piece) in Grid)
        {
            var question = new MostToPay(models, new() { TargetWage = wage });
            decimal[] ceilings =
            [
                .. new[] { 0, 0.1m, 0.5m, 1, 2, 4, 6, 8, 10, 14, 20, 40, 100, 500 }
                    .Select(hours => question.Decide(piece with { Hours = hours }).Ceiling!.Value),
            ];
            for (int i = 1; i < ceilings.Length; i++)
                Assert.InRange(ceilings[i], decimal.MinValue, ceilings[i - 1] + 0.01m);
        }
    }

    [Fact]
    public void Leaving_a_trait_out_never_beats_stating_the_usual_one()
    {
        foreach (var (models, piece) in Grid)
        {
            Piece[] logged = [.. models.Log.Pieces.Where(p => p.SoldPrice > 0)];
            string? Usual(Func<Piece, string?> word) => logged.Select(word).Where(w => w is not null)
                .GroupBy(w => w).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.OrdinalIgnoreCase).First().Key;
            Condition usual = Enum.Parse<Condition>(Usual(p => p.Condition?.ToString())!);
            AssertNotBeaten(models, piece with { Condition = null }, piece with { Condition = usual });
            AssertNotBeaten(models, piece with { Finish = null }, piece with { Finish = Usual(p => p.Finish) });
            AssertNotBeaten(models, piece with { Colour = null }, piece with { Colour = Usual(p => p.Colour) });
            AssertNotBeaten(models, piece with { Material = null }, piece with { Material = Usual(p => p.Material) });
        }
    }

    [Fact]
    public void Costs_lower_the_ceiling_and_a_higher_sale_price_raises_it()
    {
        foreach (var (models, piece) in Grid)
        {
            decimal Ceiling(Candidate candidate, decimal wage = 15) =>
                new MostToPay(models, new() { TargetWage = wage }).Decide(candidate).Ceiling!.Value;
            Assert.True(Ceiling(piece with { Supplies = 20 }) > Ceiling(piece with { Supplies = 30 }));
            Assert.True(Ceiling(piece with { SalePrice = 300 }) > Ceiling(piece with { SalePrice = 200 }));
            Assert.True(Ceiling(piece, 10) > Ceiling(piece, 20));
        }
    }

    [Fact]
    public void A_size_or_count_beyond_all_sense_is_held_and_said_so()
    {
        foreach (FittedModels models in Logs)
        {
            var question = new MostToPay(models, new());
            PurchaseDecision plain = question.Decide(Pieces[0]);
            PurchaseDecision wide = question.Decide(Pieces[0] with { Width = 4800 });
            PurchaseDecision many = question.Decide(Pieces[0] with { Count = 100 });
            PurchaseDecision more = question.Decide(Pieces[0] with { Count = 1000 });
            Assert.Equal("width", Assert.Single(wide.Inputs, note => note.Treatment == InputTreatment.Held).Input);
            Assert.InRange(wide.SalePrice!.Mean, plain.SalePrice!.Mean / 3, plain.SalePrice.Mean * 3);
            Assert.Equal("count", Assert.Single(many.Inputs, note => note.Treatment == InputTreatment.Held).Input);
            Assert.Equal(many.Ceiling, more.Ceiling);
        }
    }

    [Fact]
    public void Hours_far_from_what_such_a_piece_takes_are_taken_and_remarked()
    {
        foreach (FittedModels models in Logs)
        {
            PurchaseDecision minutes = new MostToPay(models, new()).Decide(Pieces[0] with { Hours = 540 });
            Assert.Equal("hours", Assert.Single(minutes.Inputs, note => note.Treatment == InputTreatment.Unusual).Input);
            Assert.Equal(540, minutes.Hours!.Mean);
            Assert.Empty(new MostToPay(models, new()).Decide(Pieces[0] with { Hours = 9 }).Inputs
                .Where(note => note.Treatment == InputTreatment.Unusual));
        }
    }

    [Fact]
    public void What_cannot_count_yet_is_said_to_change_nothing_and_changes_nothing()
    {
        SalesLog log = Workbench.Demo(60, 4);
        FittedModels unmeasured = FittedModels.Of(log with
        {
            Pieces = [.. log.Pieces.Select(p => p with { Width = null, Depth = null, Height = null })],
        });
        var question = new MostToPay(unmeasured, new());
        PurchaseDecision with = question.Decide(new Candidate { Id = "C", Type = "dresser", Width = 48, Finish = "gilding" });
        Assert.Equal(["width", "finish"], with.Inputs.Select(note => note.Input));
        Assert.All(with.Inputs, note => Assert.Equal(InputTreatment.Ignored, note.Treatment));
        Assert.Equal(
            question.Decide(new Candidate { Id = "C", Type = "dresser", Finish = "gilding" }).Ceiling, with.Ceiling);
    }

    [Fact]
    public void The_careful_limit_is_no_higher_than_the_ceiling()
    {
        foreach (var (models, piece) in Grid)
        {
            PurchaseDecision answer = new MostToPay(models, new()).Decide(piece);
            Assert.InRange(answer.CeilingCautious!.Value, decimal.MinValue, answer.Ceiling!.Value);
        }
    }

    // The spread of what is open raises a mean by half its variance where errors are normal, a hair more where tails are heavy.
    private static void AssertNotBeaten(FittedModels models, Candidate open, Candidate stated)
    {
        var question = new MostToPay(models, new());
        PurchaseDecision known = question.Decide(stated);
        Assert.InRange(
            question.Decide(open).Ceiling!.Value, decimal.MinValue, known.Ceiling!.Value + 0.001m * known.SalePrice!.Mean);
    }
}
