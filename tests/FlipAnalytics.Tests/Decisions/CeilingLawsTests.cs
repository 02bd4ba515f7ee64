using CsCheck;

namespace FlipAnalytics.Tests;

/// <summary>What holds for the most to pay of every candidate.</summary>
public class CeilingLawsTests
{
    private static readonly SalesLog Log = Workbench.Demo(120, 5);
    private static readonly FittedModels Models = FittedModels.Of(Log);
    private static readonly MostToPay Question = new(Models, new());

    private static readonly Gen<Candidate> Candidates =
        from type in Gen.OneOf("dresser", "nightstand", "side chair", "bookcase", "desk", "wardrobe")
        from count in Gen.Int[1, 6].Nullable()
        from size in Gen.Select(
            Gen.Int[15, 70].Nullable(), Gen.Int[12, 40].Nullable(), Gen.Int[15, 70].Nullable())
        from condition in Gen.Enum<Condition>().Nullable()
        from looks in Gen.Select(
            Gen.OneOf<string?>(null, "sage", "navy", "lime"), Gen.OneOf<string?>(null, "satin", "wax", "oil"))
        from stated in Gen.Select(
            Gen.Int[4, 80].Select(quarters => quarters / 4m).Nullable(), Gen.Int[0, 9000].Select(cents => cents / 100m).Nullable(),
            Gen.Int[20, 600].Select(price => (decimal)price).Nullable())
        from sticker in Gen.Int[1, 200].Select(price => (decimal)price).Nullable()
        select new Candidate
        {
            Id = "C1",
            Type = type,
            Count = count,
            Width = size.Item1,
            Depth = size.Item2,
            Height = size.Item3,
            Condition = condition,
            Colour = looks.Item1,
            Finish = looks.Item2,
            Hours = stated.Item1,
            Supplies = stated.Item2,
            SalePrice = stated.Item3,
            StickerPrice = sticker,
        };

    [Theory]
    [InlineData("USD", 0.01, 1)]
    [InlineData("JPY", 1, 150)]
    [InlineData("KWD", 0.001, 0.3)]
    public void The_waterfall_adds_up_to_the_ceiling_in_whole_minor_units(string code, double unit, double scale)
    {
        Workshop workshop = Log.Workshop with
        {
            Currency = Currency.Of(code),
            CapitalRate = 0.08m,
            Storage = 0.01m,
            TargetWage = (decimal)(15 * scale),
        };
        var question = new MostToPay(FittedModels.Of(Log with { Workshop = workshop }), new());
        Candidates.Sample(
            candidate =>
            {
                PurchaseDecision decision = question.Decide(candidate);
                var steps = decision.Waterfall.SkipLast(1).ToArray();
                return steps.Sum(step => step.Amount) == decision.Ceiling
                    && decision.Waterfall[^1].Amount == decision.Ceiling
                    && steps.All(step => step.Amount % (decimal)unit == 0);
            },
            iter: 60, threads: 1);
    }

    [Fact]
    public void The_careful_limit_is_lower_and_the_unpaid_one_higher() => Candidates.Sample(
        candidate =>
        {
            PurchaseDecision decision = Question.Decide(candidate);
            return decision.CeilingCautious <= decision.Ceiling && decision.Ceiling <= decision.CeilingBreakEven;
        },
        iter: 100, threads: 1);

    [Fact]
    public void The_careful_limit_holds_in_three_of_four_such_pieces() => Candidates.Sample(
        candidate =>
        {
            decimal careful = Question.Decide(candidate).CeilingCautious!.Value;
            if (careful < 0)
                return true;
            decimal chance = Question.Decide(candidate with { StickerPrice = careful }).ChanceOfTargetWage!.Value;
            return Math.Abs(chance - 0.75m) <= 3m / JointForecast.Nodes;
        },
        iter: 60, threads: 1);

    [Fact]
    public void Paying_the_ceiling_earns_the_target_wage() => Candidates.Sample(
        candidate =>
        {
            decimal ceiling = Question.Decide(candidate).Ceiling!.Value;
            if (ceiling < 0)
                return true;
            decimal earned = Question.Decide(candidate with { StickerPrice = ceiling }).WageAtSticker!.Value;
            return Math.Abs(earned - Log.Workshop.TargetWage!.Value) <= 0.02m;
        },
        iter: 60, threads: 1);

    [Fact]
    public void A_wage_supplies_or_hours_more_never_raise_the_ceiling() => Candidates.Sample(
        candidate =>
        {
            // Where the sale price is not stated, longer work sells for more, and that may outweigh the hours.
            Candidate stated = candidate with
            {
                Hours = candidate.Hours ?? 5,
                Supplies = candidate.Supplies ?? 20,
                SalePrice = candidate.SalePrice ?? 200,
            };
            decimal ceiling = Question.Decide(stated).Ceiling!.Value;
            return Question.Decide(stated with { Hours = stated.Hours + 1 }).Ceiling == ceiling - 15
                && Question.Decide(stated with { Supplies = stated.Supplies + 3.25m }).Ceiling == ceiling - 3.25m
                && new MostToPay(Models, new() { TargetWage = 16 }).Decide(candidate).Ceiling
                    <= Question.Decide(candidate).Ceiling;
        },
        iter: 40, threads: 1);

    [Fact]
    public void Buy_up_to_the_ceiling_haggle_within_the_usual_discount_leave_beyond()
    {
        decimal discount = SellingTerms.Of(Log).UsualDiscount!.Value;
        Assert.InRange(discount, 0.02m, 0.2m);
        AssertVerdicts(Question, discount);
    }

    [Fact]
    public void Without_any_sticker_price_on_record_a_fifth_is_taken_as_the_usual_discount()
    {
        SalesLog log = Log with { Pieces = [.. Log.Pieces.Select(p => p with { StickerPrice = null })] };
        AssertVerdicts(new(FittedModels.Of(log), new()), 0.2m);
    }

    private static void AssertVerdicts(MostToPay question, decimal discount)
    {
        Candidate dresser = Workbench.StatedDresser;
        PurchaseDecision At(decimal sticker) => question.Decide(dresser with { StickerPrice = sticker });
        decimal ceiling = At(1).Ceiling!.Value;
        decimal dearest = decimal.Floor(100 * ceiling / (1 - discount)) / 100;

        Assert.Equal(Verdict.Buy, At(ceiling).Verdict);
        Assert.Null(At(ceiling).HaggleTo);
        Assert.Equal(Verdict.Haggle, At(ceiling + 0.01m).Verdict);
        Assert.Equal(ceiling, At(ceiling + 0.01m).HaggleTo);
        Assert.Equal(Verdict.Haggle, At(dearest).Verdict);
        Assert.Equal(Verdict.Leave, At(dearest + 0.01m).Verdict);
        Assert.Null(question.Decide(dresser with { StickerPrice = null }).Verdict);
    }
}
