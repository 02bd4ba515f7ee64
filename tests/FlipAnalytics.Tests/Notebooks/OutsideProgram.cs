namespace FlipAnalytics.Tests.Notebooks;

/// <summary>
/// A program that some tests need and building does not. Where it is missing, those tests are left out and say what to
/// install; where <see cref="SkipNothing"/> is set, as <c>.ci/run</c> does, they run all the same and fail.
/// </summary>
/// <param name="Names">What the program may be called, the likeliest name first.</param>
/// <param name="Remedy">What to install, as a sentence.</param>
internal sealed record OutsideProgram(string[] Names, string Remedy)
{
    public const string SkipNothing = "FLIP_SKIP_NOTHING";

    public static OutsideProgram NbConvert { get; } = new(
        ["jupyter-nbconvert"],
        "Jupyter is not installed, so no notebook ran in it: install it (Debian: apt-get install --no-install-recommends jupyter-nbconvert).");

    public static OutsideProgram Chromium { get; } = new(
        ["chromium", "chromium-browser", "google-chrome"],
        "Chromium is not installed, so no page was looked at: install it (Debian: apt-get install --no-install-recommends chromium).");

    public static OutsideProgram Hledger { get; } = new(
        ["hledger"],
        "hledger is not installed, so it read no journal: install it (Debian: apt-get install --no-install-recommends hledger).");

    public static OutsideProgram Ledger { get; } = new(
        ["ledger"],
        "ledger is not installed, so it read no journal: install it (Debian: apt-get install --no-install-recommends ledger).");

    public string Path => Find(Environment.GetEnvironmentVariable("PATH")) ?? throw new FileNotFoundException(Remedy);

    /// <summary>Why a test that needs the program is left out here; null if it is not.</summary>
    public string? ReasonToSkip => ReasonToSkipWith(
        Environment.GetEnvironmentVariable("PATH"), Environment.GetEnvironmentVariable(SkipNothing));

    public string? ReasonToSkipWith(string? path, string? skipNothing) =>
        string.IsNullOrEmpty(skipNothing) && Find(path) is null ? Remedy : null;

    private string? Find(string? path) =>
        (from name in Names
         from folder in (path ?? "").Split(System.IO.Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
         select System.IO.Path.Combine(folder, name)).FirstOrDefault(File.Exists);
}

/// <summary>A test that runs notebooks in Jupyter.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class JupyterFactAttribute : FactAttribute
{
    public JupyterFactAttribute() => Skip = OutsideProgram.NbConvert.ReasonToSkip;
}

/// <summary>A test that opens pages in Chromium.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class ChromiumFactAttribute : FactAttribute
{
    public ChromiumFactAttribute() => Skip = OutsideProgram.Chromium.ReasonToSkip;
}

/// <summary>A test that has hledger and ledger read a journal.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class LedgerFactAttribute : FactAttribute
{
    public LedgerFactAttribute() => Skip = OutsideProgram.Hledger.ReasonToSkip ?? OutsideProgram.Ledger.ReasonToSkip;
}
