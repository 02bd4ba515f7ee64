using System.CommandLine;
using FlipAnalytics.Plots;

namespace FlipAnalytics.Cli;

/// <summary><c>flip buy</c>: the most to pay for a piece in the store, or for a list of pieces.</summary>
internal sealed class BuyCommand
{
    private readonly Option<string?> type = Values.Text("--type", "Kind of furniture, as in your log.");
    private readonly Option<int?> count = Values.Whole("--count", "How many items you would sell as one.", (int)NumberRange.Count.Least, (int)NumberRange.Count.Most);
    private readonly Option<decimal?> width = Length("--width");
    private readonly Option<decimal?> depth = Length("--depth");
    private readonly Option<decimal?> height = Length("--height");
    private readonly Option<string?> material = Values.Text("--material", "What it is made of, such as oak.");
    private readonly Option<Condition?> condition = Values.Word<Condition>("--condition", "How sound it is");
    private readonly Option<string?> color = Values.Text("--color", "Color you would give it.");
    private readonly Option<string?> finish = Values.Text("--finish", "Finish you would give it.");
    private readonly Option<decimal?> hours = Values.Number("--hours", "Hours you expect; estimated unless given.", NumberRange.Hours.AboveZero);
    private readonly Option<decimal?> supplies = Values.Number("--supplies", "Supplies you expect; estimated unless given.", NumberRange.Money);
    private readonly Option<decimal?> salePrice = Values.Number("--sale-price", "Sale price you expect; estimated unless given.", NumberRange.Money.AboveZero);
    private readonly Option<decimal?> sticker = Values.Number("--sticker-price", "What the store asks.", NumberRange.Money);
    private readonly Option<string?> candidates = Values.Place(
        "--candidates", "A CSV file with a piece a row instead of the options above; only the column type is needed.", "FILE.csv");
    private readonly Option<decimal?> wage = Values.Number("--wage", "Wage an hour; target_wage in workshop.toml unless given.", NumberRange.Money);
    private readonly Option<decimal?> chance = Values.Number(
        "--chance", "Chance with which the careful limit must hold, such as 0.75.", NumberRange.Chance);
    private readonly Option<string?> channel = Values.Text("--channel", "Where you would sell it; the mix of your past sales unless given.");
    private readonly Option<string?> tables = Values.Place(
        "--tables", "Write the answers as a CSV file into this folder, after your own columns of the file of candidates.", "FOLDER");
    private readonly Option<bool> newWords = Values.NewWords();
    private readonly Option<bool> cautions = Values.Flag("--cautions", "Print the cautions that fit the piece in full, each with its source and whom to ask.");
    private readonly Option<bool> all = Values.All();
    private readonly Option<string?> plot = Values.Picture(
        "Draw what the limit of one piece consists of, and the chance of your wage by price, into this file.");
    private readonly ForceOption force;
    private readonly LogOptions log;

    private BuyCommand(Command command)
    {
        foreach (Option option in new Option[]
        {
            type, count, width, depth, height, material, condition, color, finish, hours, supplies, salePrice, sticker,
            candidates, wage, chance, channel, newWords, cautions, all, tables, plot,
        })
        {
            command.Options.Add(option);
        }

        color.Aliases.Add("--colour");
        force = new(command, [plot, tables]);
        log = new(command);
        command.SetAction(Run);
    }

    public static Command Create()
    {
        var command = new Command("buy",
            "The most to pay for a piece in the store so that the sale still pays everything and every hour. Leave out what you do not know: it is estimated from your log.");
        ExamplesHelp.AddTo(command,
            "flip buy --log my-log --type dresser --width 48 --color sage --sticker-price 45",
            "flip buy --log my-log --type nightstand --count 2 --condition worn --hours 6",
            "flip buy --log my-log --candidates saturday.csv --json",
            "flip buy --log my-log --type crib --cautions",
            "flip buy --log my-log --type dresser --sticker-price 45 --plot limit.png");
        _ = new BuyCommand(command);
        return command;
    }

    private int Run(ParseResult parsed)
    {
        string? file = parsed.GetValue(candidates);
        if ((file is null) == (parsed.GetValue(type) is null))
        {
            throw new CommandProblemException(
                "Say what it is with --type, such as --type dresser, or give a list with --candidates FILE.csv; one of the two.");
        }

        bool replaces = force.IsGiven(parsed);
        string? picture = parsed.GetValue(plot);
        if (picture is not null && file is not null)
            throw new CommandProblemException("--plot draws one piece: give it by options instead of --candidates.");

        OpenedLog opened = log.Open(parsed);
        if (opened.Log is not { } sales)
            return opened.ExitCode;
        CandidateReading pieces = file is null ? new([FromOptions(parsed)], []) : FromFile(file, sales);
        if (pieces.Candidates.IsEmpty)
        {
            Console.Error.WriteLine($"{file}: no piece could be read, so there is nothing to answer.");
            return ExitCode.DataProblem;
        }

        var terms = new PurchaseTerms
        {
            TargetWage = parsed.GetValue(wage),
            CautiousChance = parsed.GetValue(chance) ?? new PurchaseTerms().CautiousChance,
            Channel = parsed.GetValue(channel),
            NewWords = parsed.GetValue(newWords),
        };
        var rows = Task.Run(() => RowsWorthALook.In(sales));
        var report = PurchaseReport.Of(sales, pieces.Candidates, terms);
        report = report.WithWorthALook(sales, terms, rows) with
        {
            SetAside = [.. pieces.Problems.Where(problem => problem is { Severity: Severity.Error, Row: not null })],
        };
        if (parsed.GetValue(tables) is { } folder)
            ReportTableFiles.Write([PurchaseTables.Of(report)], folder, replaces);
        if (picture is not null)
            Draw(report, picture, replaces);
        PurchaseDetail detail = (parsed.GetValue(cautions) ? PurchaseDetail.Cautions : PurchaseDetail.Screen)
            | (parsed.GetValue(all) ? PurchaseDetail.Everything : PurchaseDetail.Screen);
        log.Print(parsed, opened, () => PurchaseJson.Render(report), () => PurchaseText.Render(report, detail));
        return pieces.Problems.Any(p => p.Severity == Severity.Error) ? ExitCode.DataProblem : opened.ExitCode;
    }

    private Candidate FromOptions(ParseResult parsed) => new()
    {
        Id = "C1",
        Type = parsed.GetValue(type)!,
        Count = parsed.GetValue(count),
        Width = parsed.GetValue(width),
        Depth = parsed.GetValue(depth),
        Height = parsed.GetValue(height),
        Material = parsed.GetValue(material),
        Condition = parsed.GetValue(condition),
        Colour = parsed.GetValue(color),
        Finish = parsed.GetValue(finish),
        Hours = parsed.GetValue(hours),
        Supplies = parsed.GetValue(supplies),
        SalePrice = parsed.GetValue(salePrice),
        StickerPrice = parsed.GetValue(sticker),
    };

    private static void Draw(PurchaseReport report, string path, bool replaces)
    {
        if (report.Decisions[0].Ceiling is null)
            throw new NotEnoughDataException(report.Decisions[0].Notes[0]);
        PlotFile.Save(DecisionPlot.Of(report.Decisions[0], report.Workshop), path, replaces);
    }

    private static CandidateReading FromFile(string file, SalesLog sales)
    {
        CandidateReading reading = CandidateReader.Read(file, sales.Workshop);
        foreach (LogProblem problem in reading.Problems)
            Console.Error.WriteLine(problem);
        return reading;
    }

    private static Option<decimal?> Length(string name) => Values.Number(
        name, $"{char.ToUpperInvariant(name[2])}{name[3..]} of one item, in the log's length unit.", NumberRange.Length);
}
