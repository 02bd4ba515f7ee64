namespace FlipAnalytics;

/// <summary>Titles, materials and notes as an owner would write them. They carry no information on price or speed.</summary>
internal static class DemoWording
{
    private static readonly Dictionary<string, string[]> Titles = new()
    {
        ["dresser"] = ["six-drawer dresser", "long low dresser", "nine-drawer dresser", "dresser with mirror posts"],
        ["nightstand"] = ["nightstand with one drawer", "two-drawer nightstand", "nightstand with shelf"],
        ["coffee table"] = ["coffee table with shelf", "plain coffee table", "coffee table, turned legs"],
        ["side chair"] = ["ladder-back side chair", "spindle-back side chair", "side chair, drop-in seat"],
        ["chest of drawers"] = ["five-drawer chest", "tall chest of drawers", "narrow chest of drawers"],
        ["desk"] = ["kneehole desk", "writing desk", "student desk"],
        ["sideboard"] = ["sideboard, two doors", "long sideboard", "buffet with three drawers"],
        ["dining table"] = ["dining table with one leaf", "farmhouse dining table", "pedestal dining table"],
        ["bench"] = ["hall bench", "vanity bench", "storage bench"],
        ["bookcase"] = ["five-shelf bookcase", "narrow bookcase"],
    };

    private static readonly string[] Materials = ["pine", "oak", "maple", "veneer", "mahogany", "laminate"];

    private static readonly string[] DamagedNotes =
    [
        "one leg re-glued", "veneer patch on top", "new drawer runner made", "missing back panel replaced",
        "water ring would not sand out",
    ];

    private static readonly string[] OtherNotes =
    [
        "smelled of smoke, two coats of primer", "knobs from the spares box", "buyer came twice", "paid in cash",
        "asked for more photos", "drawers waxed", "bled through, sealed with shellac", "good photos in morning light",
        "no-show before this buyer", "hard to carry alone",
    ];

    public static string Title(DemoFacts facts, DemoDraws draws)
    {
        string one = Titles.TryGetValue(facts.Type, out string[]? titles) ? draws.OneOf(titles) : facts.Type;
        return facts.Count switch
        {
            1 => one,
            2 => $"pair: {one}",
            _ => $"set of {(facts.Count == 4 ? "four" : facts.Count == 6 ? "six" : "several")}: {one}",
        };
    }

    public static string Material(DemoDraws draws) => draws.OneOf(Materials);

    public static string? Note(Condition condition, DemoDraws draws) =>
        condition == Condition.Damaged && draws.Chance(0.5) ? draws.OneOf(DamagedNotes)
        : draws.Chance(0.12) ? draws.OneOf(OtherNotes)
        : null;
}
