using System.CommandLine;

namespace FlipAnalytics.Cli;

/// <summary><c>flip demo</c>: a made-up log whose true model is written beside it.</summary>
internal static class DemoCommand
{
    private const int UsualFlips = 150;

    public static Command Create()
    {
        var command = new Command("demo",
            "Write a made-up log of an invented town into a new folder, to try the other commands on. truth.json beside it says what the market of that town is really like.");
        ExamplesHelp.AddTo(command,
            "flip demo try-me",
            "flip demo try-me --flips 300 --seed 7");
        var folder = new Argument<string>("FOLDER") { Description = "Folder to write; it must not hold a log yet." };
        Option<int?> flips = Values.Whole("--flips", $"How many pieces were bought; {UsualFlips} unless given.", 0, 100_000);
        Option<int?> seed = Values.Whole("--seed", "Any number; the same number gives the same log; 1 unless given.", 0, int.MaxValue);
        command.Arguments.Add(folder);
        command.Options.Add(flips);
        command.Options.Add(seed);
        command.SetAction(parsed =>
        {
            string target = parsed.GetValue(folder)!;
            if (string.IsNullOrWhiteSpace(target))
                throw new CommandProblemException("Name the folder to write, such as flip demo try-me.");
            if (DemoLog.Refusal(target) is { } refusal)
                throw new CommandProblemException(refusal);
            DemoLogResult demo = DemoLog.Generate(parsed.GetValue(flips) ?? UsualFlips, (ulong)(parsed.GetValue(seed) ?? 1));
            DemoLog.Write(demo, target);
            Console.Out.Write(
                $"A made-up log of {demo.Flips} pieces is in {target}.\nTry: flip buy --log {target} --type dresser --sticker-price 90\n");
            return ExitCode.Done;
        });
        return command;
    }
}
