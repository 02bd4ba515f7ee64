namespace FlipAnalytics.Tests;

/// <summary>The answer as it is read in the aisle: how the piece gets home, the cautions by name, one screen.</summary>
public class AisleTests
{
    private static readonly Workshop Hatchback = new() { Car = new(40, 60, 30) };

    [Theory]
    [InlineData(90, 20, 30, "it will not go into your car")]
    [InlineData(58, 28, 38, "it goes into your car")]
    [InlineData(28, 58, 38, "it goes into your car")]
    [InlineData(50, 45, 20, "it will not go into your car")]
    [InlineData(35, 35, 35, "it will not go into your car")]
    public void A_piece_goes_into_the_car_turned_some_way_or_not_at_all(int width, int depth, int height, string said)
    {
        Candidate piece = new() { Id = "C", Type = "dresser", Width = width, Depth = depth, Height = height };
        Assert.Contains(said, string.Join(' ', LoadText.Of(piece, Hatchback)), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_a_side_is_not_known_it_is_said_that_it_has_to_be_measured_unless_another_is_too_long_already()
    {
        Candidate piece = new() { Id = "C", Type = "dresser", Width = 48 };
        Assert.Contains("measure its other sides", LoadText.Of(piece, Hatchback)[^1], StringComparison.Ordinal);
        Assert.Contains("measure its third side", LoadText.Of(piece with { Depth = 18 }, Hatchback)[^1], StringComparison.Ordinal);
        Assert.Contains("will not go", LoadText.Of(piece with { Width = 70 }, Hatchback)[^1], StringComparison.Ordinal);
        Assert.Empty(LoadText.Of(piece with { Width = null }, Hatchback));
    }

    [Fact]
    public void Two_carry_what_is_long_in_either_unit()
    {
        Candidate piece = new() { Id = "C", Type = "dresser", Width = 48 };
        Assert.Contains("two people", Assert.Single(LoadText.Of(piece, new())), StringComparison.Ordinal);
        Assert.Empty(LoadText.Of(piece with { Width = 39 }, new()));
        Workshop metric = new() { LengthUnit = LengthUnit.Centimetre };
        Assert.Empty(LoadText.Of(piece with { Width = 48 }, metric));
        Assert.Contains("two people", Assert.Single(LoadText.Of(piece with { Width = 122 }, metric)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_car_is_read_from_the_settings_and_written_back()
    {
        using LogFolder folder = new();
        folder.With("pieces.csv", "type,bought_price\ndresser,10\n");
        LogReading reading = folder.With("workshop.toml", "[car]\nwidth = 40\nlength = 60.5\nheight = 30\n").Read();
        Assert.Equal(new Car(40, 60.5m, 30), reading.Log!.Workshop.Car);
        Assert.Empty(reading.Problems);
        SalesLogWriter.Write(reading.Log, folder.Path, overwrite: true);
        Assert.Equal(reading.Log.Workshop.Car, folder.Read().Log!.Workshop.Car);
        LogProblem problem = Assert.Single(folder.With("workshop.toml", "[car]\nwidth = 40\n").Read().Problems);
        Assert.Contains("length and height", problem.Remedy, StringComparison.Ordinal);
        Assert.Equal(1, problem.Row);
    }

    [Fact]
    public void A_caution_is_a_line_that_says_what_to_do_and_is_told_in_full_when_asked()
    {
        var report = PurchaseReport.Of(Workbench.Demo(60, 4), [Workbench.MeasuredDresser], new());
        string screen = PurchaseText.Render(report);
        string full = PurchaseText.Render(report, PurchaseDetail.Cautions);
        Assert.Contains("- lead: test old paint before you sand\n", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("state health", screen, StringComparison.Ordinal);
        foreach (Caution caution in report.Decisions[0].Cautions)
            Assert.Contains(OnOneLine($"{caution.Topic}: {caution.Text} ({caution.Source})"), OnOneLine(full), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("crib", "Do not buy a crib")]
    [InlineData("bunk bed", "needs guardrails")]
    [InlineData("toy chest", "children have died")]
    public void What_may_cost_a_life_is_told_in_full_unasked(string type, string words)
    {
        var report = PurchaseReport.Of(Workbench.Demo(60, 4), [new Candidate { Id = "C", Type = type }], new() { NewWords = true });
        Assert.Contains(words, OnOneLine(PurchaseText.Render(report)), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_caution_says_in_a_few_words_what_to_do() => Assert.All(
        CautionTable.Rules, rule => Assert.InRange(rule.Caution.Act.Length, 10, 80));

    [Fact]
    public void An_answer_fits_a_screen_and_all_of_it_is_there_when_asked()
    {
        int cut = 0;
        foreach (var (log, piece) in from log in Logs() from piece in Workbench.Various select (log, piece))
        {
            var report = PurchaseReport.Of(log, [piece], new() { NewWords = true });
            // What stands below it tells of a log that was left alone.
            string screen = PurchaseText.Render(report);
            Assert.InRange(TextLines.LineCount(screen), 1, TextLines.ScreenLines);
            string all = OnOneLine(PurchaseText.Render(report, PurchaseDetail.Everything));
            Assert.All(report.Decisions[0].Notes, note => Assert.Contains(OnOneLine(note), all, StringComparison.Ordinal));
            cut += screen.Contains("--all", StringComparison.Ordinal) ? 1 : 0;
        }

        Assert.InRange(cut, 1, int.MaxValue);
    }

    [Fact]
    public void A_long_list_is_cut_to_what_is_worth_a_second_look_and_says_so()
    {
        DemoLogResult demo = DemoLog.Generate(60, 4);
        var report = PurchaseReport.Of(
            demo.Log, [.. demo.Truth.Offers(80, 4).Select((offer, i) => Candidate.Of(offer.Seen))], new());
        string screen = PurchaseText.Render(report);
        Assert.InRange(TextLines.LineCount(screen), 20, TextLines.ScreenLines);
        Assert.Contains("more pieces", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("\nLEAVE", screen, StringComparison.Ordinal);
        string all = PurchaseText.Render(report, PurchaseDetail.Everything);
        Assert.All(report.Decisions, decision => Assert.Contains($"  {decision.Candidate.Id} ", all, StringComparison.Ordinal));
    }

    [Fact]
    public void A_verdict_that_the_average_carries_says_so()
    {
        PurchaseDecision answer = Workbench.Decide(Workbench.Demo(60, 4), Workbench.Dresser);
        Assert.Null(AverageText.Of(answer with { Verdict = Verdict.Buy, ChanceOfTargetWage = 0.5m }));
        Assert.Contains(
            "average that pays", AverageText.Of(answer with { Verdict = Verdict.Buy, ChanceOfTargetWage = 0.4m }), StringComparison.Ordinal);
        Assert.Contains(
            "on average it does not pay", AverageText.Of(answer with { Verdict = Verdict.Leave, ChanceOfTargetWage = 0.6m }), StringComparison.Ordinal);
        // Near the limit a piece pays on average though fewer than half do: the text and the picture both say so.
        SalesLog log = Workbench.Demo(300, 4);
        decimal limit = decimal.Floor(Workbench.Decide(log, Workbench.MeasuredDresser).Ceiling!.Value);
        var report = PurchaseReport.Of(log, [Workbench.MeasuredDresser with { StickerPrice = limit }], new());
        Assert.Equal(Verdict.Buy, report.Decisions[0].Verdict);
        Assert.InRange(report.Decisions[0].ChanceOfTargetWage!.Value, 0.3m, 0.4999m);
        Assert.Contains("It is the average that pays", PurchaseText.Render(report), StringComparison.Ordinal);
    }

    [Fact]
    public void Past_sales_of_another_type_stand_only_where_there_is_none_of_its_own()
    {
        SalesLog log = Workbench.Demo(150, 4);
        foreach (string type in log.Pieces.Where(piece => piece.SoldPrice > 0).Select(piece => piece.Type).Distinct())
        {
            PurchaseDecision decision = Workbench.Decide(log, new Candidate { Id = "C", Type = type });
            Assert.All(decision.Comparables, sale => Assert.Equal(type, sale.Type, ignoreCase: true));
        }

        Assert.NotEmpty(Workbench.Decide(log, new Candidate { Id = "C", Type = "grandfather clock" }).Comparables);
    }

    private static IEnumerable<SalesLog> Logs() =>
    [
        new() { Date = new(2026, 3, 31), Pieces = [new() { Id = "P1", Type = "desk", SoldPrice = 80, BoughtPrice = 10 }] },
        Workbench.Demo(12, 3), Workbench.Demo(150, 4),
    ];

    private static string OnOneLine(string text) =>
        string.Join(' ', text.Split((char[])['\n', ' '], StringSplitOptions.RemoveEmptyEntries));
}
