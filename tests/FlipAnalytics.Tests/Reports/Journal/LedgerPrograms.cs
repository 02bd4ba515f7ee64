using System.Globalization;
using System.Text.Json;

using FlipAnalytics.Tests.Notebooks;

namespace FlipAnalytics.Tests;

/// <summary>Has hledger and ledger read a journal, and gives what they find in it.</summary>
internal static class LedgerPrograms
{
    private static readonly TimeSpan Limit = TimeSpan.FromMinutes(2);

    /// <summary>What hledger, which also checks every assertion, account and commodity, holds in each account.</summary>
    public static async Task<Dictionary<string, decimal>> Hledger(string file, params string[] query)
    {
        string output = await Run(
            OutsideProgram.Hledger, file, ["-s", "balance", "--flat", "-N", "--layout", "bare", "-O", "csv", .. query]);
        return output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1)
            .Select(line => line.Trim('"').Split("\",\""))
            .ToDictionary(cells => cells[0], cells => Number(cells[2]));
    }

    /// <summary>What ledger, which checks the same, holds in each account.</summary>
    public static async Task<Dictionary<string, decimal>> Ledger(string file, params string[] query)
    {
        string output = await Run(
            OutsideProgram.Ledger, file,
            ["--pedantic", "balance", "--flat", "--no-total", "--balance-format", "%(account)|%(display_total)\n", .. query]);
        return output.Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(line => line.Split('|'))
            .ToDictionary(cells => cells[0], cells => Number(cells[1].Split(' ')[0]));
    }

    /// <summary>A statement of hledger, such as its income statement: what it holds of each account, and its net.</summary>
    public static async Task<(Dictionary<string, decimal> Accounts, decimal Net)> Statement(string file, string name)
    {
        using var document = JsonDocument.Parse(await Run(OutsideProgram.Hledger, file, [name, "-O", "json"]));
        Dictionary<string, decimal> accounts = [];
        foreach (JsonElement part in document.RootElement.GetProperty("cbrSubreports").EnumerateArray())
        {
            foreach (JsonElement row in part[1].GetProperty("prRows").EnumerateArray())
                accounts.Add(row.GetProperty("prrName").GetString()!, Amount(row.GetProperty("prrTotal")));
        }

        return (accounts, Amount(document.RootElement.GetProperty("cbrTotals").GetProperty("prrTotal")));
    }

    /// <summary>What an account and those below it hold.</summary>
    public static decimal Sum(IEnumerable<KeyValuePair<string, decimal>> accounts, string account) => accounts
        .Where(held => held.Key == account || held.Key.StartsWith(account + ":", StringComparison.Ordinal))
        .Sum(held => held.Value);

    private static Task<string> Run(OutsideProgram program, string file, IEnumerable<string> arguments) => ChildProcess.Run(
        program.Path, Path.GetDirectoryName(file)!, Limit, ["-f", file, .. arguments],
        // Both read names in the computer's alphabet, and settings of whoever runs the test.
        ("LC_ALL", "C.UTF-8"), ("HOME", Path.GetDirectoryName(file)!));

    private static decimal Amount(JsonElement amounts) => amounts.EnumerateArray().Sum(amount =>
    {
        JsonElement quantity = amount.GetProperty("aquantity");
        decimal mantissa = quantity.GetProperty("decimalMantissa").GetDecimal();
        for (int i = quantity.GetProperty("decimalPlaces").GetInt32(); i > 0; i--)
            mantissa /= 10;
        return mantissa;
    });

    private static decimal Number(string text) => decimal.Parse(text, NumberStyles.Number, CultureInfo.InvariantCulture);
}
