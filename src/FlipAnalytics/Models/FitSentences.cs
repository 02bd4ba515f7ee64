using System.Collections.Immutable;

using static System.FormattableString;

namespace FlipAnalytics;

/// <summary>
/// What a fitted model says in an owner's words: how much each thing does, where it lies 8 times in 10, and what pure luck
/// would do as often.
/// </summary>
internal static class FitSentences
{
    /// <summary>A change of the log beyond which its size tells nothing: ten thousand times.</summary>
    internal static readonly double Furthest = Math.Log(10_000);

    // 8 in 10 of a normal lie within so many standard errors.
    private const double EightInTen = 1.2816;

    // Rarer than this by pure luck is told as found, the rest as what may be luck.
    private const double MayBeLuck = 0.1;

    private const int LevelsShown = 5;
    private const int TermsShown = 12;

    /// <summary>A sentence a finding, those that luck explains least first.</summary>
    /// <param name="report">The fitted model.</param>
    public static ImmutableArray<string> Of(FitReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        Finding[] findings = [.. Findings(report).OrderBy(finding => finding.Luck)];
        Finding[] found = [.. findings.Where(finding => finding.Luck < MayBeLuck)];
        Finding[] luck = [.. findings.Where(finding => finding.Luck >= MayBeLuck)];
        return
        [
            .. report.Estimator == Estimator.Ols
                ? ["A type, color, finish or material is compared with the first of its kind by name, which has no line here."]
                : ImmutableArray<string>.Empty,
            .. found.Take(TermsShown).Select(finding => Invariant($"{finding.What}: {finding.Says}.")),
            .. found.Length > TermsShown ? [Invariant($"And {found.Length - TermsShown} more.")] : ImmutableArray<string>.Empty,
            .. report.Random.Select(group => OfGroup(report.Model, group)).OfType<string>(),
            .. luck.Length == 0 ? ImmutableArray<string>.Empty :
            [
                $"May be luck. Pure luck would make differences this big in so many logs: {string.Join("; ", luck.Take(LevelsShown).Select(finding =>
                    $"{char.ToLowerInvariant(finding.What[0]) + finding.What[1..]}, {LuckWords.OneIn(finding.Luck)}"))}.",
            ],
        ];
    }

    private readonly record struct Finding(string What, string Says, double Luck);

    private static IEnumerable<Finding> Findings(FitReport report)
    {
        foreach (FitTerm term in report.Terms)
        {
            if (term.Name is TermNames.Intercept or TermNames.SeasonSine or TermNames.SeasonCosine)
                continue;
            var (what, steps) = Step(term.Name);
            yield return new(
                what, Between(report.Model, steps * term.Estimate, steps * term.StandardError),
                term.StandardError > 0 ? 2 * MathNet.Numerics.Distributions.Normal.CDF(0, 1, -Math.Abs(term.Estimate / term.StandardError)) : 1);
        }

        if (Season(report) is { } season)
            yield return season;
    }

    // What is changed, and by how much of the term's own unit.
    private static (string What, double Steps) Step(string term) => term switch
    {
        TermNames.Count => ("A set of two against a single piece", Math.Log(2)),
        TermNames.Size => ("10 % wider than its type usually is", Math.Log(1.1)),
        TermNames.Worn => ("Worn against sound", 1),
        TermNames.Damaged => ("Damaged against sound", 1),
        TermNames.Hours => ("10 % more hours than such a piece usually takes", Math.Log(1.1)),
        TermNames.TypeHours => ("A type that takes 10 % more hours", Math.Log(1.1)),
        TermNames.Asking => ("Asking 10 % more than such a piece brings", Math.Log(1.1)),
        _ => (char.ToUpperInvariant(term[0]) + term[1..], 1),
    };

    /// <summary>The yearly wave: at its top, and how much above the middle.</summary>
    private static Finding? Season(FitReport report)
    {
        FitTerm? sine = report.Terms.FirstOrDefault(term => term.Name == TermNames.SeasonSine);
        FitTerm? cosine = report.Terms.FirstOrDefault(term => term.Name == TermNames.SeasonCosine);
        if (sine is not { StandardError: > 0 } || cosine is not { StandardError: > 0 })
            return null;
        double height = Math.Sqrt((sine.Estimate * sine.Estimate) + (cosine.Estimate * cosine.Estimate));
        double top = Math.Atan2(sine.Estimate, cosine.Estimate) / (2 * Math.PI);
        int month = Math.Clamp((int)(12 * (top - Math.Floor(top))), 0, 11);
        string name = System.Globalization.CultureInfo.InvariantCulture.DateTimeFormat.GetMonthName(month + 1);
        // The two halves of a wave hardly depend on one another, so their squares add up: chi-squared of 2.
        double squares = Math.Pow(sine.Estimate / sine.StandardError, 2) + Math.Pow(cosine.Estimate / cosine.StandardError, 2);
        return new("The time of year", $"at its top about {name}, {Change(report.Model, height)} than in the middle of the year's swing", Math.Exp(-squares / 2));
    }

    private static string? OfGroup(ModelName model, FitGroup group)
    {
        FitLevel[] levels = [.. group.Levels.Where(level => level.Level != TermNames.NotRecorded)];
        if (levels.Length < 2)
            return null;
        string name = char.ToUpperInvariant(group.Group[0]) + group.Group[1..];
        if (group.Group == TermNames.Month)
        {
            FitLevel last = levels[^1];
            return $"Of late ({last.Level}) against the whole log: {Between(model, last.Effect, last.StandardError)}.";
        }

        FitLevel[] apart = [.. levels.Where(level => Math.Abs(level.Effect) > EightInTen * level.StandardError)
            .OrderByDescending(level => Math.Abs(level.Effect))];
        if (apart.Length == 0)
        {
            return $"{name}: none can be told apart yet; all lie between {Change(model, levels.Min(level => level.Effect))} and {Change(model, levels.Max(level => level.Effect))} than the middle.";
        }

        string rest = apart.Length > LevelsShown ? Invariant($"; and {apart.Length - LevelsShown} more") : "";
        return $"{name}, against the rest: {string.Join("; ", apart.Take(LevelsShown).Select(level => $"{level.Level} {Between(model, level.Effect, level.StandardError)}"))}{rest}.";
    }

    private static string Between(ModelName model, double log, double error)
    {
        double low = log - (EightInTen * error);
        double high = log + (EightInTen * error);
        double near = Math.Min(Math.Abs(low), Math.Abs(high));
        double far = Math.Max(Math.Abs(low), Math.Abs(high));
        string range = low * high > 0 ? $"{Percent(Math.CopySign(near, low))} % and {Change(model, Math.CopySign(far, low))}" : $"{Change(model, low)} and {Change(model, high)}";
        return $"{Change(model, log)} (8 in 10 between {range})";
    }

    private static string Change(ModelName model, double log)
    {
        var (more, less) = model == ModelName.Days ? ("longer", "shorter") : ("more", "less");
        return $"{Percent(log)} % {(log < 0 && Percent(log) != "0" ? less : more)}";
    }

    // How far from the middle, without sign, in per cent; from ten thousand times on only that it is so far.
    private static string Percent(double log) => log > Furthest ? Invariant($"over {100 * Math.Exp(Furthest):#,0}")
        : Invariant($"{Math.Abs(Math.Round(100 * (Math.Exp(log) - 1), MidpointRounding.AwayFromZero)):#,0}");
}
