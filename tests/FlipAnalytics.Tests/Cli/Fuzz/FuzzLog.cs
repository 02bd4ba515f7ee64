namespace FlipAnalytics.Tests;

/// <summary>A small log with every table, from which the generated cases depart.</summary>
internal static class FuzzLog
{
    public static (string Name, string Text)[] Files { get; } =
    [
        ("pieces.csv", """
            id,type,title,count,width,depth,height,material,condition,color,finish,source,trip,lot,bought_on,sticker_price,bought_price,expected_price,ready_on,listed_on,asking_price,sold_on,sold_price,sales_tax,commission,channel,fees,delivery_charged,delivery_cost,hours,supplies_cost,left_on,left_as,notes
            P1,dresser,tall one,1,48,18,34,oak,worn,sage,satin,charity shop,T1,,2025-10-02,45,40,220,2025-10-09,2025-10-10,260,2025-11-01,240,12,,online,24,10,8,,,,,sold fast
            P2,desk,,1,44,22,30,pine,sound,navy,satin,roadside,,L1,2025-10-12,,30,150,,2025-10-20,180,2025-12-05,150,,,market,,,,6.5,14.20,,,
            P3,desk,,1,40,20,30,pine,damaged,sage,wax,roadside,,L1,2025-10-12,,,120,,2025-10-22,150,2026-01-15,140,,,online,14,,,5,,,,
            P4,chair,set,4,18,18,36,oak,worn,white,satin,auction,T2,,2025-11-03,60,50,200,,2025-11-20,240,2026-02-03,205,,,online,20.50,25,18,9,22,,,
            P5,dresser,,,36,18,40,,,navy,,charity shop,,,2025-12-01,35,25,,,2026-01-04,210,,,,,online,,,,7,,,,still here
            P6,nightstand,,2,16,14,24,pine,sound,sage,,,,,2026-01-06,20,15,,,,,,,,,,,,,,,2026-02-01,parts,
            P7,cabinet,theirs,1,30,15,50,oak,worn,white,,,,,2026-01-08,,,,,2026-01-12,300,2026-02-20,280,,0.4,online,,,,3,,,,
            P8,dresser,,1,50,19,35,oak,sound,sage,satin,auction,T2,,2026-01-20,70,60,260,2026-01-30,2026-02-01,290,2026-03-02,270,,,online,27,,,8,19,,,
            """),
        ("asking.csv", "id,date,price\nP5,2026-02-01,190\nP3,2025-12-20,145\n"),
        ("hours.csv", "id,date,task,hours\nP1,2025-10-05,sanding,3\nP1,2025-10-07,painting,4.5\n,2025-11-02,sourcing,2\nP8,2026-01-25,repair,2\n"),
        ("supplies.csv", "item,kind,bought_on,quantity,unit,price,coverage,coverage_unit\nsage paint,paint,2025-10-01,1,quart,24,100,ft2/quart\nsandpaper,abrasive,2025-10-01,20,sheet,12,,\nsage paint,paint,2026-01-02,1,quart,26,100,ft2/quart\n"),
        ("uses.csv", "id,date,item,quantity,unit,coats,area\nP1,2025-10-07,sage paint,0.3,quart,,\nP3,2025-10-20,sage paint,,,2,30\nP8,2026-01-26,sage paint,,,2,\n,2026-02-02,sage paint,0.1,quart,,\n"),
        ("counts.csv", "date,item,quantity,unit,notes\n2026-02-10,sage paint,0.5,quart,\n2026-02-10,sandpaper,empty,,\n"),
        ("trips.csv", "trip,date,distance,hours,other_cost,purpose,id,notes\nT1,2025-10-02,14,1.5,3,,,\nT2,2025-11-03,30,2,,sourcing,,\nT3,2026-02-21,12,1,,delivery,P7,\nT4,2026-03-01,9,1,,,,nothing\n"),
        ("tools.csv", "item,bought_on,price,salvage,life_pieces,life_months\nsander,2025-09-01,90,10,60,\nclamps,2025-10-01,48,,,36\n"),
        ("overheads.csv", "month,item,amount,channel\n2025-10,storage,60,\n2026-01,storage,60,\n2026-02,booth,80,market\n2026-03,storage,-10,\n"),
        ("moves.csv", "date,from,to,cost,notes\n2026-02-01,P6,P8,5,knobs\n"),
        ("money.csv", "date,kind,id,amount,notes\n2025-10-28,payment,P1,100,deposit\n2025-11-01,payment,P1,152,\n2026-01-10,sales_tax,,12,\n2026-02-25,paid_owner,P7,168,\n2026-02-26,taken,,50,\n"),
        ("colors.csv", "color,family,hex\nsage,green,#8fa68e\nnavy,,#1f2a44\n"),
        ("workshop.toml", """
            name = "The Shed"
            currency = "USD"
            symbol = "$"
            length_unit = "in"
            distance_unit = "mi"
            target_wage = 15
            hours_per_week = 12

            [fees.online]
            rate = 0.10
            fixed = 0.30

            [mileage]
            2025-01-01 = 0.70
            2026-01-01 = 0.725

            [costing]
            method = "fifo"
            capital_rate = 0.05
            storage = 0.01

            [car]
            width = 40
            length = 60
            height = 30

            [guess.bench]
            sale_price = [60, 90, 140]
            hours = {low = 2, likely = 4, high = 7}
            days = [5, 20, 60]
            supplies = [5, 9, 15]
            """),
    ];

    /// <summary>A list of pieces in a store.</summary>
    public const string Candidates = """
        id,type,count,width,depth,height,material,condition,color,finish,hours,supplies,sale_price,sticker_price,my notes
        A,dresser,1,48,18,34,oak,worn,sage,satin,7,20,250,45,by the door
        B,desk,,44,,,,,navy,,,,,30,
        C,bench,2,,,,pine,sound,,,4.123456789,,90.55,,
        """;
}
