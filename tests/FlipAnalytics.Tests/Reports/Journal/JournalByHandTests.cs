namespace FlipAnalytics.Tests;

/// <summary>
/// A first quarter small enough to be kept on paper, every entry written by hand as perpetual inventory has it (Weygandt,
/// Kimmel and Kieso, Accounting Principles, chapters 5 and 6, from memory).
/// </summary>
/// <remarks>
/// A dresser bought in 2025 for 40 is there at the start, with 30 of paint in a can and a sander of 120 over 12 months, of
/// which November and December have worn 20. In January an outing of 10 miles at 0.5 and 3 of tolls brings a desk of 25 home;
/// a third of the can, 10, goes on the dresser; in February it sells for 200, 15 for delivery, fees 20, delivery 12. In March
/// the desk, for which 6 of supplies are stated, is stolen. Rent is 50 a month from February.
/// </remarks>
public sealed class JournalByHandTests
{
    private const string Expected = """
        ; Journal by flip: the books of Test from 2026-01-01
        ; to 2026-03-31, as known on 2026-04-10.
        ; Profit:      hledger -f FILE incomestatement    or: ledger -f FILE balance income expenses
        ; What is here: hledger -f FILE balancesheet      or: ledger -f FILE balance assets
        ; What you had in money at the start is not in the log, so assets:money begins at 0.
        ; Your hours are no cost in these books.

        commodity USD
            format 1000.00 USD
        account assets:money
            ; type: C
        account assets:pieces:P1
        account assets:pieces:P2
        account assets:supplies
        account assets:tools
        account equity:driving reckoned
        account equity:opening balances
        account equity:stated supplies
        account expenses:cost of pieces sold:purchase
        account expenses:cost of pieces sold:supplies
        account expenses:delivery
        account expenses:fees
        account expenses:overhead:rent
        account expenses:wear of tools
        account expenses:written off
        account income:delivery charged
        account income:sales

        2026-01-01 opening balances
            assets:supplies            30.00 USD = 30.00 USD
            assets:tools              100.00 USD = 100.00 USD
            assets:pieces:P1           40.00 USD = 40.00 USD
            equity:opening balances  -170.00 USD

        2026-01-20 bought P2, desk, oak, 1930s  ; pieces.csv, line 3. The price paid, as written down.
            assets:pieces:P2   25.00 USD
            assets:money      -25.00 USD

        2026-01-20 outing T1  ; trips.csv, line 2. 10 miles at 0.5, the rate of workshop.toml from 2025-01-01, and 3 of other cost.
            assets:pieces:P2          8.00 USD
            equity:driving reckoned  -5.00 USD
            assets:money             -3.00 USD

        2026-01-25 supplies used on P1, dresser
            assets:pieces:P1   10.00 USD  ; paint, uses.csv, line 2. 1 quart measured, taken from line 2 of supplies.csv, first in, first out.
            assets:supplies   -10.00 USD

        2026-01-31 wear of sander  ; tools.csv, line 2. 120 less 0 at the end, over 12 months, the first in full, by hours within a month.
            expenses:wear of tools   10.00 USD
            assets:tools            -10.00 USD

        2026-02-01 overhead, rent  ; overheads.csv, line 2. 50 for 2026-02.
            expenses:overhead:rent   50.00 USD
            assets:money            -50.00 USD

        2026-02-14 sold P1, dresser  ; pieces.csv, line 2. As written down.
            assets:money              200.00 USD
            assets:money               15.00 USD
            assets:money              -20.00 USD
            assets:money              -12.00 USD
            income:sales             -200.00 USD
            income:delivery charged   -15.00 USD
            expenses:delivery          12.00 USD
            expenses:fees              20.00 USD

        2026-02-14 cost of P1, dresser  ; pieces.csv, line 2. All that the piece had cost.
            expenses:cost of pieces sold:purchase   40.00 USD
            expenses:cost of pieces sold:supplies   10.00 USD
            assets:pieces:P1                       -50.00 USD = 0.00 USD

        2026-02-28 wear of sander  ; tools.csv, line 2. 120 less 0 at the end, over 12 months, the first in full, by hours within a month.
            expenses:wear of tools   10.00 USD
            assets:tools            -10.00 USD

        2026-03-01 overhead, rent  ; overheads.csv, line 3. 50 for 2026-03.
            expenses:overhead:rent   50.00 USD
            assets:money            -50.00 USD

        2026-03-05 supplies stated for P2, desk, oak, 1930s
            assets:pieces:P2         6.00 USD  ; supplies as stated, pieces.csv, line 3. The cost of supplies, as written down, no can on record was charged for it.
            equity:stated supplies  -6.00 USD

        2026-03-05 written off P2, desk, oak, 1930s  ; pieces.csv, line 3. All that the piece had cost, stolen.
            expenses:written off   39.00 USD
            assets:pieces:P2      -39.00 USD = 0.00 USD

        2026-03-31 wear of sander  ; tools.csv, line 2. 120 less 0 at the end, over 12 months, the first in full, by hours within a month.
            expenses:wear of tools   10.00 USD
            assets:tools            -10.00 USD

        2026-03-31 closing balances
            assets:money     0.00 USD = 55.00 USD
            assets:supplies  0.00 USD = 20.00 USD
            assets:tools     0.00 USD = 70.00 USD

        """;

    private static readonly ReportPeriod FirstQuarter = ReportPeriod.Parse("2026-Q1")!;

    private static LogReading Read()
    {
        using LogFolder folder = new();
        return folder
            .With("workshop.toml", "name = \"Test\"\ncurrency = \"USD\"\n[mileage]\n\"2025-01-01\" = 0.5\n")
            .With("pieces.csv", """
                id,type,title,trip,bought_on,bought_price,sold_on,sold_price,fees,delivery_charged,delivery_cost,hours,supplies_cost,left_on,left_as
                P1,dresser,,,2025-12-10,40,2026-02-14,200,20,15,12,,,,
                P2,desk,"oak; 1930s",T1,2026-01-20,25,,,,,,,6,2026-03-05,stolen

                """)
            .With("supplies.csv", "item,bought_on,quantity,unit,price\npaint,2025-12-01,3,quart,30\n")
            .With("uses.csv", "id,date,item,quantity,unit\nP1,2026-01-25,paint,1,quart\n")
            .With("trips.csv", "trip,date,distance,other_cost\nT1,2026-01-20,10,3\n")
            .With("tools.csv", "item,bought_on,price,life_months\nsander,2025-11-01,120,12\n")
            .With("overheads.csv", "month,item,amount\n2026-02,rent,50\n2026-03,Rent,50\n")
            .Read();
    }

    [Fact]
    public void AQuarterOnPaper()
    {
        LogReading reading = Read();
        Assert.Empty(reading.Problems);
        Assert.Equal(Expected, JournalText.Render(Journal.Of(reading.Log!.AsOf(new(2026, 4, 10)), FirstQuarter)));
    }

    [Fact]
    public void WhatThePaperSaysOfProfitAndMoney()
    {
        Journal journal = Journal.Of(Read().Log!.AsOf(new(2026, 4, 10)), FirstQuarter);
        // 200 + 15, less 50 for the dresser, 32 to sell it, 39 stolen, 30 of wear and 100 of rent.
        Assert.Equal(36, journal.Balance("income") + journal.Balance("expenses"));
        // 215 less 32, 25 for the desk, 3 of tolls and 100 of rent.
        Assert.Equal(55, journal.Balance(JournalAccounts.Money));
        Assert.Equal(0, journal.Balance(JournalAccounts.Pieces));
        Assert.Equal(0, journal.Balance("asset"));
    }

    [Fact]
    public void WhatHasNoDayIsInNoSpanAndTheFirstLinesSaySo()
    {
        using LogFolder folder = new();
        SalesLog log = folder.With("pieces.csv", """
            id,type,bought_on,bought_price,sold_on,sold_price,left_on,left_as
            P1,dresser,,40,,90,,
            P2,desk,,25,,,,
            P3,chair,2026-01-05,7,,,2026-02-01,kept

            """).Read().Log!.AsOf(new(2026, 3, 31));
        Journal journal = Journal.Of(log, FirstQuarter);
        // The desk is still here, so the books open with it; the chair was taken out of the workshop.
        Assert.Equal(-25, journal.Balance(JournalAccounts.Opening));
        Assert.Equal(25, journal.Balance(JournalAccounts.Pieces));
        Assert.Equal(7, journal.Balance(JournalAccounts.Owner));
        Assert.Equal(-7, journal.Balance(JournalAccounts.Money));
        Assert.Equal(0, journal.Balance("income"));
        string text = JournalText.Render(journal);
        Assert.Contains("; Not counted, for want of a day: pieces sold: 1, 90.00 (sold_on in pieces.csv)\n", text, StringComparison.Ordinal);
        Assert.Contains("; Not counted, for want of a day: pieces bought: 2, 65.00 (bought_on in pieces.csv)\n", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-02-01..2026-02-07", 12.5, -50)]
    [InlineData("2026-02-08..2026-02-28", 37.5, 0)]
    [InlineData("2026-02", 50, -50)]
    public void RentIsACostOfItsDaysAndPaidOnTheFirst(string span, decimal cost, decimal paid)
    {
        Journal journal = Journal.Of(Read().Log!.AsOf(new(2026, 4, 10)), ReportPeriod.Parse(span)!);
        Assert.Equal(cost, journal.Balance(JournalAccounts.Overhead));
        Assert.Equal(-cost - paid, journal.Balance(JournalAccounts.PaidOnAnotherDay));
        Assert.Equal(
            paid,
            journal.Transactions.Where(transaction => transaction.Description == "overhead, rent")
                .SelectMany(transaction => transaction.Postings)
                .Where(posting => posting.Account == JournalAccounts.Money).Sum(posting => posting.Amount));
    }

    /// <summary>
    /// A deposit of 60 in January on a dresser sold for 200 in February, with 16 of sales tax of which 10 is paid over; the buyer
    /// pays 150 on the day. A lamp of a neighbour sells for 100, a quarter of it ours. The owner takes 30 out.
    /// </summary>
    [Fact]
    public void MoneyOfOthersIsADebtAndNoIncome()
    {
        using LogFolder folder = new();
        LogReading reading = folder
            .With("pieces.csv", """
                id,type,bought_on,bought_price,sold_on,sold_price,sales_tax,commission
                P1,dresser,2026-01-05,40,2026-02-10,200,16,
                P2,lamp,,,2026-02-20,100,,0.25

                """)
            .With("money.csv", """
                date,kind,id,amount
                2026-01-20,payment,P1,60
                2026-02-10,payment,P1,150
                2026-03-10,sales_tax,,10
                2026-03-15,taken,,30

                """)
            .With("trips.csv", "trip,date,other_cost,purpose\nT1,2026-03-01,4,supplies\n")
            .Read();
        Assert.Empty(reading.Problems);
        Journal journal = Journal.Of(reading.Log!.AsOf(new(2026, 3, 31)), FirstQuarter);
        Assert.Equal(-225, journal.Balance(JournalAccounts.Sales));
        Assert.Equal(-6, journal.Balance(JournalAccounts.SalesTax));
        Assert.Equal(6, journal.Balance(JournalAccounts.Buyers));
        Assert.Equal(0, journal.Balance(JournalAccounts.OwnersOfPieces));
        Assert.Equal(30, journal.Balance(JournalAccounts.Owner));
        Assert.Equal(4, journal.Balance("expenses:overhead:supply runs"));
        // 60 and 150 and 100 in; 40, 75, 10, 30 and 4 out.
        Assert.Equal(151, journal.Balance(JournalAccounts.Money));
        Assert.Equal(
            ["bought P1, dresser", "money, P1 paid by the buyer", "sold P1, dresser", "cost of P1, dresser", "sold P2, lamp"],
            journal.Transactions.Take(5).Select(transaction => transaction.Description));
    }

    [Fact]
    public void ASpanThatHasNotBegunHasNoJournal() => Assert.Throws<ArgumentOutOfRangeException>(
        () => Journal.Of(Read().Log!.AsOf(new(2026, 4, 10)), ReportPeriod.Parse("2027")!));
}
