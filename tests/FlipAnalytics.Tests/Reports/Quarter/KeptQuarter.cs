namespace FlipAnalytics.Tests;

/// <summary>A small log in a folder, and its first quarter of 2026 kept as it was on 5 April.</summary>
internal static class KeptQuarter
{
    public const string Pieces = """
        id,type,bought_on,bought_price,ready_on,listed_on,sold_on,sold_price,channel,fees,hours,notes
        P1,dresser,2026-01-05,40,2026-01-20,2026-01-22,2026-02-10,280,online,,8,first one
        P2,nightstand,2026-01-06,20,2026-02-01,2026-02-02,2026-03-01,240,online,,4,
        P3,chair,2026-03-10,9,2026-04-02,2026-04-03,,,,,,

        """;

    public const string Supplies = "item,bought_on,quantity,unit,price\npaint,2026-01-02,4,quart,80\n";
    public const string Uses = "id,date,item,quantity,unit\nP1,2026-01-15,paint,1,quart\nP2,2026-01-28,paint,0.5,quart\n";
    public const string Overheads = "month,item,amount\n2026-01,rent,30\n2026-02,rent,30\n2026-03,rent,30\n";
    public const string Settings = "currency = \"USD\"\nsymbol = \"$\"\ntarget_wage = 15\n[costing]\nmethod = \"fifo\"\n[fees.online]\nrate = 0.1\nfixed = 0\n";

    public static readonly ReportPeriod Quarter = ReportPeriod.Parse("2026-Q1")!;
    public static readonly DateOnly Kept = new(2026, 4, 5);

    public static LogFolder LogInAFolder() => new LogFolder()
        .With("pieces.csv", Pieces).With("supplies.csv", Supplies).With("uses.csv", Uses).With("overheads.csv", Overheads)
        .With("workshop.toml", Settings);

    public static LogFolder KeptFolder()
    {
        LogFolder folder = LogInAFolder();
        Keep(folder);
        return folder;
    }

    public static void Keep(LogFolder folder)
    {
        SalesLog log = Read(folder, Kept);
        QuarterKeptFile.Write(QuarterKept.Of(QuarterReport.Of(log, Quarter), log), folder.Path);
    }

    public static SalesLog Read(LogFolder folder, DateOnly asOf) => folder.Read().Log!.AsOf(asOf);

    public static QuarterSinceKept? Since(LogFolder folder, DateOnly? asOf = null)
    {
        SalesLog log = Read(folder, asOf ?? Kept);
        return QuarterSinceKept.Of(QuarterKeptFile.Read(folder.Path, Quarter), QuarterReport.Of(log, Quarter), log);
    }
}
