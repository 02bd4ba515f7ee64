using System.Text;

namespace FlipAnalytics.Tests;

/// <summary>
/// Generated calls: broken bytes, odd cells, settings, options and lists of candidates. A number stands for a case,
/// the same on every computer.
/// </summary>
internal sealed class FuzzCases
{
    private static readonly string[] Calls =
    [
        "check", "check --all", "wages", "wages --by color", "wages --period 2026-Q1", "wages --explain P1", "wages --explain P8 --all", "quarter", "quarter 2026-Q1",
        "quarter 2025-10-05..2026-02-03", "quarter 2026-Q1 --all", "quarter 2026-Q1 --explain overhead", "quarter 2026-Q1 --explain cash", "quarter 2026-Q1 --explain", "year 2025",
        "year 2025 --all", "year 2025-04-06..2026-03-31 --all",
    ];

    // These fit models, which takes longer than all the rest.
    private static readonly string[] Fitting =
    [
        "buy --type dresser", "buy --type desk --sticker-price 30 --all", "buy --type bench --cautions", "buy --candidates LOG/list.csv", "buy --candidates LOG/list.csv --all", "colors",
        "colors --by type", "colors --by source --all", "colors --for desk", "fit --model price", "fit --model days --all", "fit --model hours", "fit --model supplies --plain",
        "fit --model price --estimator ols",
    ];

    private static readonly string[] Options =
    [
        "--type", "--count", "--width", "--depth", "--height", "--material", "--condition", "--color", "--finish", "--hours", "--supplies", "--sale-price", "--sticker-price", "--candidates",
        "--wage", "--chance", "--channel", "--new-type", "--cautions", "--all", "--json", "--as-of", "--by", "--for", "--period", "--explain", "--model", "--estimator", "--plain", "--keep", "--force",
        "--log", "--help", "--version", "--tables", "--out", "--journal", "--design", "--plot", "--flips", "--seed", "-p", "--x",
    ];

    // What these write goes into the folder of the log, or nowhere.
    private static readonly string[] Writing = ["--tables", "--out", "--journal", "--design", "--plot"];

    private readonly Random random;
    private readonly bool isFitting;

    private FuzzCases(int number, int fitsOneIn)
    {
        random = new(number);
        isFitting = number % fitsOneIn == 0;
    }

    /// <summary>The case of a number.</summary>
    /// <param name="number">Any number.</param>
    /// <param name="fitsOneIn">One in how many fits models, at most.</param>
    public static FuzzCase Of(int number, int fitsOneIn = 2) => new FuzzCases(number, fitsOneIn).Make();

    private FuzzCase Make()
    {
        Dictionary<string, byte[]> files = FuzzLog.Files.ToDictionary(file => file.Name, file => Encoding.UTF8.GetBytes(file.Text + "\n"));
        files["list.csv"] = Encoding.UTF8.GetBytes(FuzzLog.Candidates + "\n");
        List<string> call = [.. Pick(isFitting ? Fitting : Calls).Split(' ')];
        int kind = random.Next(6);
        // A list of candidates is read for the sake of the fit.
        if (kind == 4 && !isFitting)
            kind = 5;
        switch (kind)
        {
            case 0:
                Break(files, random.Next(3) == 0 ? "workshop.toml" : Pick([.. files.Keys]));
                break;
            case 1:
                OddCells(files, Pick([.. files.Keys.Where(name => name.EndsWith(".csv", StringComparison.Ordinal))]), 1 + random.Next(4));
                break;
            case 2:
                OddSettings(files);
                break;
            case 3:
                call = OddCall();
                break;
            case 4:
                OddCells(files, "list.csv", 1 + random.Next(6));
                call = [.. Pick(["buy --candidates LOG/list.csv", "buy --candidates LOG/list.csv --all", "buy --candidates LOG/list.csv --tables LOG/out"]).Split(' ')];
                break;
            default:
                foreach (string name in files.Keys.Where(name => name.EndsWith(".csv", StringComparison.Ordinal)).ToArray())
                    OddCells(files, name, random.Next(3));
                if (random.Next(3) == 0)
                    OddSettings(files);
                break;
        }

        if (random.Next(4) == 0)
            files.Remove(Pick([.. files.Keys.Where(name => name is not "pieces.csv" and not "list.csv")]));
        if (kind != 3)
            call.AddRange(["--log", "LOG"]);
        if (!call.Contains("--as-of") && call[0] is not ("check" or "demo" or "notebook"))
            call.AddRange(["--as-of", random.Next(8) == 0 ? Pick(FuzzWords.Days) : "2026-03-31"]);
        if (random.Next(3) == 0 && !call.Contains("--json"))
            call.Add("--json");
        return new([.. call], [.. files.Select(file => (file.Key, file.Value))]);
    }

    private void Break(Dictionary<string, byte[]> files, string name)
    {
        List<byte> bytes = [.. files[name]];
        for (int change = 1 + random.Next(6); change > 0 && bytes.Count > 0; change--)
        {
            int at = random.Next(bytes.Count);
            int length = Math.Min(random.Next(40), bytes.Count - at);
            switch (random.Next(7))
            {
                case 0:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 1:
                    bytes.RemoveRange(at, length);
                    break;
                case 2:
                    bytes.InsertRange(at, Encoding.Latin1.GetBytes(Pick(FuzzWords.Bytes)));
                    break;
                case 3:
                    bytes.InsertRange(at, bytes.GetRange(random.Next(bytes.Count - length + 1), length));
                    break;
                case 4:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 5:
                    if (random.Next(5) == 0)
                        bytes.RemoveRange(at, bytes.Count - at);
                    break;
                default:
                    if (random.Next(10) == 0)
                        bytes = [.. Enumerable.Range(0, random.Next(2000)).Select(_ => (byte)random.Next(256))];
                    break;
            }
        }

        files[name] = [.. bytes];
    }

    private void OddCells(Dictionary<string, byte[]> files, string name, int cells)
    {
        string[][] rows = [.. Encoding.UTF8.GetString(files[name]).TrimEnd('\n').Split('\n').Select(line => line.Split(','))];
        for (; cells > 0; cells--)
        {
            string[] row = rows[random.Next(random.Next(12) == 0 ? 0 : 1, rows.Length)];
            row[random.Next(row.Length)] = Quoted(Word());
        }

        if (random.Next(12) == 0)
            rows = [.. rows, .. rows.Skip(1)];
        files[name] = Encoding.UTF8.GetBytes(string.Join('\n', rows.Select(row => string.Join(',', row))) + "\n");
    }

    private void OddSettings(Dictionary<string, byte[]> files)
    {
        string[] lines = Encoding.UTF8.GetString(files["workshop.toml"]).Split('\n');
        for (int change = 1 + random.Next(3); change > 0; change--)
        {
            int at = random.Next(lines.Length);
            int equals = lines[at].IndexOf('=', StringComparison.Ordinal);
            lines[at] = random.Next(5) switch
            {
                0 => Pick(lines),
                1 => $"[{Pick(["fees", "guess", "mileage", "costing", "x"])}.\"{Toml(Word())}\"]",
                2 when equals > 0 => $"{lines[at][..equals]}= [{Pick(FuzzWords.Numbers)}, {Pick(FuzzWords.Numbers)}, {Pick(FuzzWords.Numbers)}]",
                3 when equals > 0 => $"{lines[at][..equals]}= {Pick(FuzzWords.Numbers)}",
                _ when equals > 0 => $"{lines[at][..equals]}= \"{Toml(Word())}\"",
                _ => $"{Word()} = {Word()}",
            };
        }

        files["workshop.toml"] = Encoding.UTF8.GetBytes(string.Join('\n', lines));
    }

    private List<string> OddCall()
    {
        List<string> call = [.. Pick(isFitting ? Fitting : Calls).Split(' ')];
        for (int options = random.Next(5); options > 0; options--)
        {
            string option = Pick(Options);
            string value = Writing.Contains(option) ? "LOG/" + Pick(["out", "pieces.csv", "a.svg", "b.png", "c.csv", "d.journal", "", "hours.CSV"]) : Word();
            if (random.Next(6) == 0 && !Writing.Contains(option))
                call.Add($"{option}={value}");
            else
                call.AddRange(random.Next(8) == 0 && !Writing.Contains(option) ? [option] : [option, value]);
        }

        if (random.Next(6) == 0)
            call.Insert(random.Next(call.Count + 1), Word());
        call.AddRange(["--log", "LOG"]);
        return call;
    }

    private string Word() => random.Next(5) switch
    {
        0 or 1 => Pick(FuzzWords.Numbers),
        2 => Pick(FuzzWords.Days),
        3 => Pick(FuzzWords.Texts),
        _ => Pick(FuzzWords.Texts) + Pick(FuzzWords.Texts),
    };

    private T Pick<T>(T[] words) => words[random.Next(words.Length)];

    private static string Quoted(string text) =>
        text.AsSpan().IndexOfAny(",\"\r\n") < 0 ? text : $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";

    private static string Toml(string text) => string.Concat(text.Select(sign =>
        sign is '"' or '\\' || char.IsControl(sign) ? $"\\u{(int)sign:x4}" : sign.ToString()));
}
